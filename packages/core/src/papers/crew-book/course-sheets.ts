// A sheet for each course: where it lies in the plan, and its places round from the datum with kind, stage
// and neighbours.

import { coursesOf } from '../../shell/courses.ts';
import type { PlaceId } from '../../shell/ids.ts';
import { mateOf, placeAt, sidesOf } from '../../shell/shell.ts';
import type { Drawing } from '../drawing.ts';
import type { SheetFacts } from '../flat-plan-sheet.ts';
import { flowSheets } from '../flow.ts';
import type { FlowColumn } from '../flow-blocks.ts';
import { lengthsNote } from '../length-text.ts';
import { chosenPlanItems, movedPlan, stagePlan } from '../stage-plan.ts';
import { type CrewBookContent, plural } from './content.ts';
import type { BookLook } from './stage-cards.ts';

/** Width of the drawing's room on every paper: that of Letter; its height, and that where the course would
 * run on to a second sheet. */
const WIDTH = 168;
const HEIGHT = 100;
const LOW = 76;

/** The sheets, from the ground up. */
export function courseSheets(
  content: CrewBookContent,
  facts: SheetFacts,
  look: BookLook,
): Drawing[] {
  const { shell, numbers, kinds, leftOut, plan } = content;
  const { course } = coursesOf(shell);
  const out = new Set(leftOut);
  const stageOf = new Map(
    plan.stages.flatMap(({ number, pieces }) => pieces.flat().map((place) => [place, number])),
  );
  // Feet of the frame and the flow's own pad stand before the drawing.
  const baseOf = (height: number) =>
    stagePlan(shell, numbers, leftOut, { x: 26, y: 0, width: WIDTH, height });
  const courses = [...new Set(course)].sort((a, b) => a - b);
  return courses.flatMap((one) => {
    const places = [...course.keys()]
      .filter((place) => course[place] === one && !out.has(place))
      .sort((a, b) => byNumber(numbers[a] ?? '', numbers[b] ?? ''));
    if (places.length === 0) return [];
    const rows = places.map((place) => [
      numbers[place] ?? '',
      kinds[shell.kind[place] as number]?.id ?? '?',
      String(stageOf.get(place) ?? '–'),
      neighbours(content, place as PlaceId).join(', '),
    ]);
    const sheets = (height: number): Drawing[] =>
      flowSheets(
        [
          {
            block: 'figure',
            height: height + 4,
            draw: ({ y }) => chosenPlanItems(movedPlan(baseOf(height), [0, y]), new Set(places)),
          },
          { block: 'table', columns: [...columns, ...columns], rows: twoAcross(rows) },
        ],
        { ...facts, sheet: `Course ${one}` },
        {
          paper: look.paper,
          heading: `Course ${one}: ${plural(places.length, 'panel')}`,
          remark:
            'Seen from above; clockwise from the datum. Inside, looking up, it runs the other way.',
          lengths: lengthsNote(look.lengths),
          size: 3.7,
        },
      );
    const tall = sheets(HEIGHT);
    return tall.length === 1 ? tall : sheets(LOW);
  });
}

/** The rows of a table in two halves, side by side. */
function twoAcross(rows: readonly (readonly string[])[]): string[][] {
  const half = Math.ceil(rows.length / 2);
  return Array.from({ length: half }, (_, i) => [
    ...(rows[i] ?? []),
    ...(rows[half + i] ?? ['', '', '', '']),
  ]);
}

const columns: readonly FlowColumn[] = [
  { name: 'place', share: 0.09, bold: true },
  { name: 'kind', share: 0.07, bold: true },
  { name: 'stage', share: 0.08 },
  { name: 'beside', share: 0.26 },
];

const byNumber = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });

function neighbours({ shell, numbers, leftOut }: CrewBookContent, place: PlaceId): string[] {
  return sidesOf(shell, place).map((side) => {
    const mate = mateOf(shell, side);
    return mate === null || leftOut.includes(placeAt(shell, mate))
      ? 'open'
      : (numbers[placeAt(shell, mate)] ?? '?');
  });
}
