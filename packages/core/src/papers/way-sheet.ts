// How a thing passes: the opening seen from outside (or from above), the thing in it and on its way, the
// panels that stand round it; and the poses as a list.

import type { CarryAnswer } from '../fitout/carry.ts';
import { angleBetween, type Pose } from '../passage/pose.ts';
import { type ViewAt, wayView } from '../passage/way-view.ts';
import type { Shell } from '../shell/shell.ts';
import { type Drawing, type Item, line, onPaper, polygon, text } from './drawing.ts';
import { type FitoutSheetOptions, upright } from './fitout-plan.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { type GroundPlacing, groundSheets, plainRow } from './ground-plan.ts';
import { largeFirst, lengthFirst, lengthsNote } from './length-text.ts';
import { pageOf } from './page.ts';

const caution =
  'A motion found by search for stiff bodies, with nothing else in the way: whoever carries it decides. Try it with laths or cardboard before the thing itself.';

/** The sheet of a thing that passes; none of one for which no motion was found. */
export function waySheets(
  drawn: {
    readonly shell: Shell;
    readonly numbers: readonly string[];
    readonly leftOut: readonly number[];
    readonly floor: number;
    readonly carried: CarryAnswer;
  },
  facts: SheetFacts,
  options: FitoutSheetOptions = {},
): Drawing[] {
  const { shell, leftOut, floor, carried } = drawn;
  const { answer, seen, placed, name, roughly } = carried;
  if (answer.status !== 'passes' || seen.length === 0) return [];
  const shown = options.lengths ?? 'metric';
  const view = wayView(shell, placed, leftOut, seen);
  const flip = ([x, y]: ViewAt): [number, number] => [x, -y];
  const [first] = answer.motion;
  const all = [...view.panels.flatMap(({ at }) => at), ...view.poses.flat(2)];
  return groundSheets(pageOf(options.paper ?? 'A4', 'across'), {
    heading: `${name} passes`,
    remark: `Seen from ${view.from}, ${lengthFirst(answer.clearance, shown)} clear at the least of its poses`,
    facts,
    lengths: lengthsNote(shown),
    caution: cautionOf(facts, caution),
    notes: [
      'Bold: in the opening. Thin: on its way from inside to outside; a way in is the same turned round.',
      'Between two poses it moves and turns evenly. Panels are solid to the depth of their flanges.',
      roughly
        ? 'A body that holds the thing was carried, not the thing itself: there is more room than shown.'
        : '',
    ].filter((words) => words !== ''),
    points: all.map((at) => upright(flip(at))),
    plan: (placing) => items(drawn, view, placing, (at) => placing.at(upright(flip(at)))),
    columns: [
      { name: 'pose', share: 0.16, align: 'start' },
      { name: 'from the axis', share: 0.3, align: 'end' },
      { name: 'middle over floor', share: 0.32, align: 'end' },
      { name: 'turned', share: 0.22, align: 'end' },
    ],
    rows: answer.motion.map((pose, i) =>
      plainRow([
        String(i + 1),
        largeFirst(Math.hypot(pose.at[0], pose.at[1]), shown),
        largeFirst(Math.max(0, pose.at[2] - floor), shown),
        `${((angleBetween((first as Pose).turn, pose.turn) * 180) / Math.PI).toFixed(0)}°`,
      ]),
    ),
  });
}

function items(
  { numbers, floor }: { readonly numbers: readonly string[]; readonly floor: number },
  view: ReturnType<typeof wayView>,
  placing: GroundPlacing,
  at: (point: ViewAt) => readonly [number, number],
): Item[] {
  const through = view.poses[view.through] ?? [];
  const inWay = through.flat();
  const centre = inWay.reduce<[number, number]>(
    ([x, y], p) => [x + p[0] / inWay.length, y + p[1] / inWay.length],
    [0, 0],
  );
  const near =
    2.2 * Math.max(0.6, ...inWay.map((p) => Math.hypot(p[0] - centre[0], p[1] - centre[1])));
  const xs = view.panels.flatMap(({ at: corners }) => corners.map(([x]) => x));
  return [
    ...view.panels.map(({ at: corners, isIn }) =>
      polygon(
        corners.map(at),
        { weight: isIn ? 'thin' : 'hair', ...(isIn ? {} : { dash: 'dashed' as const }) },
        isIn ? onPaper : null,
      ),
    ),
    ...(view.from === 'outside'
      ? [line(at([Math.min(...xs), -floor]), at([Math.max(...xs), -floor]), { weight: 'medium' })]
      : []),
    ...view.panels.flatMap(({ place, at: corners, isIn }) => {
      const middle = corners.reduce<[number, number]>(
        ([x, y], p) => [x + p[0] / corners.length, y + p[1] / corners.length],
        [0, 0],
      );
      return isIn && Math.hypot(middle[0] - centre[0], middle[1] - centre[1]) < near
        ? [
            text(
              at(middle),
              numbers[place] ?? '',
              Math.max(1.6, Math.min(2.6, 180 / placing.scale)),
              { anchor: 'middle', ink: 'grey' },
            ),
          ]
        : [];
    }),
    ...view.poses.flatMap((parts, i) =>
      i === view.through
        ? []
        : parts.map((part) => polygon(part.map(at), { weight: 'hair', ink: 'accent' })),
    ),
    ...through.map((part) => polygon(part.map(at), { weight: 'bold', ink: 'accent' })),
  ];
}
