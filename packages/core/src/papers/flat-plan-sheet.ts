// The flat plan on a sheet: the drawing people point at, with what each kind looks like, how many
// places it has, and what the numbers mean. Crown in the middle, base ring outside, datum up.

import type { Kind } from '../pile/kind.ts';
import { coursesOf } from '../shell/courses.ts';
import { flatPlan } from '../shell/flat-plan.ts';
import type { Shell } from '../shell/shell.ts';
import { sideClasses } from '../takeoff/side-classes.ts';
import {
  type Box,
  type Drawing,
  type Fill,
  group,
  type Item,
  line,
  type Point,
  polygon,
  text,
} from './drawing.ts';
import { columnItems } from './flat-plan-column.ts';
import { kindFills } from './hatch.ts';
import { type LengthsShown, largeFirst, lengthsNote } from './length-text.ts';
import { frameItems, headingItems, type Paper, pageOf, scales, titleBlockItems } from './page.ts';
import { type Placing, planDrawing } from './plan-drawing.ts';
import { pointsOf } from './plan-sides.ts';

/** What the sheet says of the project; dates and texts are the caller's. */
export interface SheetFacts {
  readonly project: string;
  /** `3 Places`, `2 of 7`. */
  readonly sheet: string;
  readonly date: string;
  readonly assumes: string;
  readonly caution?: string | null;
}

/** The caution of a sheet in one run of words: what its facts bring, then its own. */
export const cautionOf = ({ caution }: Pick<SheetFacts, 'caution'>, ...own: string[]): string =>
  [caution ?? '', ...own].filter((words) => words !== '').join(' ');

/** Options of `flatPlanSheet`. */
export interface FlatPlanSheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
  /** True for the plan as people inside see it looking up. */
  readonly fromBelow?: boolean;
  /** Places left out on purpose, by index. */
  readonly leftOut?: readonly number[];
  /** Places that no panel is there for, by index. */
  readonly missing?: readonly number[];
  /** The upper courses alone, on a larger scale: from this course up. The rest belongs on a sheet
   * of the whole. */
  readonly fromCourse?: number;
  /** True where the numbers are those painted on the panels, kept from an earlier decision. */
  readonly painted?: boolean;
}

/** The flat plan of a shell that stands crown up, its places numbered `numbers`. Opening places
 * belong to the shell and are named in `leftOut`, so that they keep their numbers. */
export function flatPlanSheet(
  shell: Shell,
  numbers: readonly string[],
  kinds: readonly Kind[],
  facts: SheetFacts,
  options: FlatPlanSheetOptions = {},
): Drawing {
  const page = pageOf(options.paper ?? 'A4', 'across');
  const shown = options.lengths ?? 'metric';
  const leftOut = new Set(options.leftOut ?? []);
  const missing = new Set(options.missing ?? []);
  const { course } = coursesOf(shell);
  const only = upperPlaces(course, options.fromCourse);
  const fills = kindFills(kinds);
  const classes = sideClasses(shell, kinds);
  const plan = flatPlan(shell, { fromBelow: options.fromBelow ?? false });
  const kindAt = Array.from(shell.kind, (k) => k as number);

  const column = columnBox(page.frame);
  const main: Box = { ...page.frame, width: column.x - page.frame.x };
  const placing = placingOf(
    plan.outlines.filter((_, p) => only?.has(p) ?? true).flatMap(pointsOf),
    main,
  );
  const drawn = planDrawing(
    {
      shell,
      plan,
      numbers,
      kindIds: kindAt.map((k) => kinds[k]?.id ?? null),
      fills: kindAt.map((k) => fills[k] as Fill),
      leftOut,
      missing,
      only,
      classes,
    },
    placing.placing,
  );
  const block = titleBlockItems(
    {
      ...facts,
      scale: `1 : ${placing.placing.scale}`,
      lengths: lengthsNote(shown),
      more: [['radius', largeFirst(shell.radius, shown)]],
    },
    column.x,
    page.frame.y + page.frame.height,
    column.width,
  );
  const { heading, remark } = headingOf(options, Math.max(...course), plan.outer !== null);
  const places = numbers.filter((_, p) => !leftOut.has(p) && (only?.has(p) ?? true)).length;
  return {
    width: page.width,
    height: page.height,
    title: `${facts.project}: ${heading}`,
    description: `${places} places of ${new Set(kindAt).size} kinds, ${remark}. ${facts.assumes}`,
    items: [
      ...frameItems(page),
      line([column.x, page.frame.y], [column.x, page.frame.y + page.frame.height], {
        weight: 'medium',
      }),
      ...headingItems([main.x + 5, main.y + 7], heading, remark),
      ...datumItems(placing.top, placing.placing.centre[0]),
      group(drawn.items, { part: 'flat-plan' }),
      ...columnItems(
        { ...column, height: block.top - column.y },
        {
          shell,
          kinds,
          kindAt,
          fills,
          classes: drawn.seamsNumbered ? classes : null,
          leftOut,
          missing,
          only,
          shown,
          nadir: plan.outer !== null,
          small: drawn.smallestNumber < legible,
          numbersNote: numbersNote(numbers, options),
          caution: facts.caution ?? '',
        },
      ),
      ...block.items,
    ],
  };
}

/** Places from a course up; null for all. */
function upperPlaces(
  course: Int32Array,
  fromCourse: number | undefined,
): ReadonlySet<number> | null {
  if (fromCourse === undefined) return null;
  return new Set(Array.from(course.keys()).filter((p) => (course[p] as number) >= fromCourse));
}

/** How to read the numbers. */
function numbersNote(
  numbers: readonly string[],
  { painted, fromBelow }: FlatPlanSheetOptions,
): string {
  const way = fromBelow ? 'anticlockwise on this sheet' : 'clockwise';
  if (!painted) return `3-07: course 3 from the ground up, seventh place ${way} from the datum.`;
  const added = numbers.some((number) => /^[A-Z]/.test(number))
    ? ` A-07: added since; ring A next to the painted places, seventh ${way} from the datum.`
    : '';
  return `Numbers as painted: course and place of the shell that they were painted for.${added}`;
}

function headingOf(
  { fromBelow, fromCourse }: FlatPlanSheetOptions,
  top: number,
  nadir: boolean,
): { readonly heading: string; readonly remark: string } {
  const seen = fromBelow ? 'Flat plan, seen from below' : 'Flat plan, seen from above';
  const mirrored = 'mirrored: for people inside looking up';
  if (fromCourse !== undefined) {
    const courses = `courses ${fromCourse} to ${top}; the sheet of the whole has the others`;
    return {
      heading: `${seen}: upper courses`,
      remark: fromBelow ? `${mirrored}; ${courses}` : courses,
    };
  }
  const outside = nadir ? 'lowest point outside' : 'base ring outside';
  return { heading: seen, remark: fromBelow ? mirrored : `crown in the middle, ${outside}` };
}

/** The words and tables stand in a column on the right. */
function columnBox(frame: Box): Box {
  const width = Math.max(72, Math.min(95, frame.width - frame.height + 8));
  return { x: frame.x + frame.width - width, y: frame.y, width, height: frame.height };
}

const headRoom = 20;

/** Numbers below this size ask for larger paper, millimetres. */
const legible = 1.5;

const margin = 4;

/** The largest scale at which the plan fits below its heading and datum arrow. */
function placingOf(points: readonly Point[], main: Box): { placing: Placing; top: number } {
  const [us, vs] = [points.map((p) => p[0]), points.map((p) => p[1])];
  const [left, right] = [Math.min(...us), Math.max(...us)];
  const [low, high] = [Math.min(...vs), Math.max(...vs)];
  const room = { width: main.width - 2 * margin, height: main.height - headRoom - margin };
  const fits = (n: number): boolean =>
    ((right - left) * 1000) / n <= room.width && ((high - low) * 1000) / n <= room.height;
  const scale = scales.find(fits) ?? (scales.at(-1) as number);
  const k = 1000 / scale;
  const spare = room.height - (high - low) * k;
  const top = main.y + headRoom + Math.min(spare / 2, 6);
  const x = main.x + main.width / 2 - ((left + right) / 2) * k;
  return { placing: { centre: [x, top + high * k], scale }, top };
}

/** An arrow above the drawing, towards the datum. */
function datumItems(top: number, x: number): Item[] {
  const [foot, tip] = [top - 1.5, top - 8];
  const accent = { weight: 'medium', ink: 'accent' } as const;
  const head: Point[] = [
    [x, tip],
    [x - 1.1, tip + 2.6],
    [x + 1.1, tip + 2.6],
  ];
  return [
    line([x, foot], [x, tip + 2], accent),
    { ...polygon(head, null), fill: { tint: '#bf3b0b', hatch: null } },
    text([x + 2.6, tip + 2.6], 'datum', 3.2, { bold: true, ink: 'accent' }),
  ];
}
