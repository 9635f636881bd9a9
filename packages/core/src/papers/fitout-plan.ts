// What the sheets of the fit-out share: the flat plan as lines of the ground's page, and points of an
// upright picture on it.

import type { PlanPoint } from '../ground/base.ts';
import { flatPlan } from '../shell/flat-plan.ts';
import type { PlaceId } from '../shell/ids.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import { type Fill, type Item, type PathItem, type Point, polygon, text } from './drawing.ts';
import type { GroundPlacing } from './ground-plan.ts';
import type { LengthsShown } from './length-text.ts';
import type { Paper } from './page.ts';
import { planSides, pointsOf } from './plan-sides.ts';

/** Options of every sheet of the fit-out. */
export interface FitoutSheetOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
}

/** A point of a picture, right and up, in the page's plan coordinates. */
export const upright = ([right, up]: readonly [number, number]): PlanPoint => [up, -right];

/** The flat plan with its outlines and sides in the page's coordinates. */
export interface LaidPlan {
  readonly outlines: readonly (readonly PlanPoint[])[];
  /** Side → its drawn points. */
  readonly sides: readonly (readonly PlanPoint[])[];
  readonly labels: readonly PlanPoint[];
  readonly hubs: readonly PlanPoint[];
  /** Corners of a box that holds all. */
  readonly box: readonly PlanPoint[];
}

/** The flat plan of a standing shell, datum up, seen from above. */
export function laidPlan(shell: Shell): LaidPlan {
  const plan = flatPlan(shell);
  const flat = (values: Float64Array): PlanPoint[] => pointsOf(values).map(upright);
  const r = plan.radius * 1.02;
  return {
    outlines: plan.outlines.map(flat),
    sides: planSides(shell, plan).map((points) => points.map(upright)),
    labels: flat(plan.labels),
    hubs: flat(plan.hubs),
    box: [
      [-r, -r],
      [r, r],
    ],
  };
}

/** Every place's outline in a thin line, filled where `fillOf` says so. */
export const placeItems = (
  shell: Shell,
  plan: LaidPlan,
  placing: GroundPlacing,
  fillOf: (place: number) => Fill | null = () => null,
): Item[] =>
  Array.from({ length: placeCount(shell) }, (_, p) => p as PlaceId).map((p) =>
    polygon(
      (plan.outlines[p] ?? []).map(placing.at),
      { weight: 'hair', ink: 'grey' },
      fillOf(p) ?? null,
    ),
  );

/** A number in the middle of each place that `wordOf` has one for. */
export const placeWords = (
  plan: LaidPlan,
  placing: GroundPlacing,
  wordOf: (place: number) => string | null,
  size = 2,
): Item[] =>
  plan.labels.flatMap((at, place) => {
    const words = wordOf(place);
    return words === null
      ? []
      : [text(placing.at(at), words, size, { anchor: 'middle', halo: 0.5 })];
  });

/** An open run of lines on paper. */
export const run = (
  points: readonly Point[],
  stroke: NonNullable<PathItem['stroke']>,
): PathItem => ({
  type: 'path',
  points,
  closed: false,
  stroke,
});

/** The datum as a short arrow above the plan. */
export function datumItems(plan: LaidPlan, placing: GroundPlacing): Item[] {
  const top = placing.at([(plan.box[1] as PlanPoint)[0], 0]);
  return [
    polygon(
      [
        [top[0], top[1] - 3],
        [top[0] - 1.3, top[1]],
        [top[0] + 1.3, top[1]],
      ],
      { weight: 'thin', ink: 'accent' },
    ),
    text([top[0] + 3, top[1] - 1.5], 'datum', 3, { bold: true, ink: 'accent' }),
  ];
}
