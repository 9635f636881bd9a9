// The flat plan of one stage of the build, small: what stands, what goes up now, props; the rest dotted.
// Made to be read in black and white: what goes up now is hatched, outlined in bold, and numbered.
// Millimetres on the sheet.

import type { RaisingPlan } from '../raise/plan.ts';
import { flatPlan } from '../shell/flat-plan.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import {
  type Box,
  circle,
  type Fill,
  group,
  type Item,
  inkColours,
  onPaper,
  type Point,
  polygon,
  type Stroke,
  type TextItem,
  text,
} from './drawing.ts';
import { tints } from './hatch.ts';
import { onSheet, type Placing, planDrawing } from './plan-drawing.ts';
import { pointsOf } from './plan-sides.ts';

/** The plan, placed: laid out once for all stages. */
export interface StagePlan {
  /** Place → its outline. */
  readonly outlines: readonly (readonly Point[])[];
  /** Place → its number, as large as fits. */
  readonly labels: readonly TextItem[];
  /** Hub → its point. */
  readonly hubs: readonly Point[];
  readonly leftOut: ReadonlySet<number>;
  readonly placing: Placing;
  readonly top: Point;
}

/** Room over the plan for the datum's arrow. */
const DATUM = 8;

/** The plan of a shell in a box, as large as fits. */
export function stagePlan(
  shell: Shell,
  numbers: readonly string[],
  leftOut: readonly number[],
  box: Box,
): StagePlan {
  const plan = flatPlan(shell);
  const all = plan.outlines.flatMap(pointsOf);
  const [us, vs] = [all.map((p) => p[0]), all.map((p) => p[1])];
  const [left, right] = [Math.min(...us), Math.max(...us)];
  const [low, high] = [Math.min(...vs), Math.max(...vs)];
  const k = Math.min(box.width / (right - left), (box.height - DATUM) / (high - low));
  const scale = 1000 / k;
  const centre: Point = [
    box.x + box.width / 2 - ((left + right) / 2) * k,
    box.y + DATUM + (box.height - DATUM - (high - low) * k) / 2 + high * k,
  ];
  const placing = { centre, scale };
  const count = placeCount(shell);
  const drawn = planDrawing(
    {
      shell,
      plan,
      numbers,
      kindIds: new Array<null>(count).fill(null),
      fills: new Array<Fill>(count).fill({ tint: null, hatch: null }),
      leftOut: new Set(),
      missing: new Set(),
      only: null,
      classes: null,
    },
    placing,
  );
  const labels: TextItem[] = [];
  for (const item of drawn.items)
    if (item.type === 'group' && item.data?.label !== undefined && item.items[0]?.type === 'text')
      labels[Number(item.data.label)] = item.items[0];
  return {
    outlines: plan.outlines.map((flat) => pointsOf(flat).map((p) => onSheet(placing, p))),
    labels,
    hubs: pointsOf(plan.hubs).map((p) => onSheet(placing, p)),
    leftOut: new Set(leftOut),
    placing,
    top: [centre[0], centre[1] - high * k],
  };
}

/** How a place is drawn. */
type State = 'later' | 'placed' | 'now';

const looks: Readonly<Record<State, { readonly stroke: Stroke; readonly fill: Fill | null }>> = {
  later: { stroke: { weight: 'thin', dash: 'dotted', ink: 'grey' }, fill: null },
  placed: { stroke: { weight: 'light' }, fill: { tint: tints.mist, hatch: null } },
  now: { stroke: { weight: 'bold' }, fill: { tint: tints.rose, hatch: 'slant-right' } },
};

/** Numbers of what stands are left away below this size. */
const LEAST = 1.5;

/** The items of a stage: what stood before it, what goes up in it, props at its end. */
export function stagePlanItems(
  base: StagePlan,
  plan: Pick<RaisingPlan, 'stages' | 'props'>,
  number: number,
): Item[] {
  const stage = plan.stages[number - 1];
  const now = new Set(stage?.pieces.flat());
  const placed = new Set(stage?.placed);
  const stateOf = (place: number): State =>
    now.has(place) ? 'now' : placed.has(place) ? 'placed' : 'later';
  return placesAndLabels(base, stateOf, propItems(base, plan, number));
}

/** The items of places that are told apart as `now`, the rest as standing. */
export const chosenPlanItems = (base: StagePlan, chosen: ReadonlySet<number>): Item[] =>
  placesAndLabels(base, (place) => (chosen.has(place) ? 'now' : 'later'), []);

function placesAndLabels(
  base: StagePlan,
  stateOf: (place: number) => State,
  between: readonly Item[],
): Item[] {
  const places = base.outlines.flatMap((outline, place) =>
    base.leftOut.has(place) ? [] : [{ outline, place, state: stateOf(place) }],
  );
  const drawn = (['later', 'placed', 'now'] as const).flatMap((state) =>
    places
      .filter((one) => one.state === state)
      .map(({ outline, place }): Item => {
        const { stroke, fill } = looks[state];
        return group([polygon(outline, stroke, fill)], { place: String(place) });
      }),
  );
  const labels = places.flatMap(({ place, state }): Item[] => {
    const label = base.labels[place];
    if (label === undefined || state === 'later') return [];
    if (state === 'placed')
      return label.size < LEAST ? [] : [{ ...label, bold: false, ink: 'grey', halo: 0 }];
    return [{ ...label, halo: 0.5 }];
  });
  return [...drawn, ...between, ...labels, ...datum(base.top)];
}

function propItems(
  { hubs }: StagePlan,
  { props }: Pick<RaisingPlan, 'props'>,
  number: number,
): Item[] {
  return props.flatMap(({ hub, from, until }): Item[] => {
    if (from.stage > number || (until !== null && until.stage < number)) return [];
    const goes = until?.stage === number;
    const at = hubs[hub] as Point;
    return [
      circle(at, 1.3, { weight: 'medium' }, goes ? onPaper : { tint: inkColours.ink, hatch: null }),
    ];
  });
}

function datum([x, y]: Point): Item[] {
  const tip = y - 7;
  return [
    {
      type: 'path',
      points: [
        [x, y - 1.5],
        [x, tip + 2],
      ],
      closed: false,
      stroke: { weight: 'light' },
    },
    polygon(
      [
        [x, tip],
        [x - 1, tip + 2.4],
        [x + 1, tip + 2.4],
      ],
      null,
      { tint: inkColours.ink, hatch: null },
    ),
    text([x + 2.2, tip + 1.8], 'datum', 2.8),
  ];
}

/** The plan shifted on its sheet, millimetres. */
export function movedPlan(base: StagePlan, [dx, dy]: Point): StagePlan {
  const by = ([x, y]: Point): Point => [x + dx, y + dy];
  return {
    ...base,
    outlines: base.outlines.map((outline) => outline.map(by)),
    labels: base.labels.map((label) => ({ ...label, at: by(label.at) })),
    hubs: base.hubs.map(by),
    top: by(base.top),
  };
}
