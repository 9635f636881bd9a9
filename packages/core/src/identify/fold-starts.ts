// Where folding starts: the groups of rotations a shell may have, and for each the panels that may
// lie on its highest axis, at every radius the kinds may have. Radii are tried in steps; within a
// step the search learns the radius from the stars it closes.

import { TAU } from '../math/angle.ts';
import { polygonOnSphere } from '../sphere/polygon.ts';
import { type CornerModel, cornerModel } from './corner-model.ts';
import type { Fold, FoldSeed } from './folded-net.ts';
import { mayBeEqual, type SideBelief } from './side-belief.ts';

/** Rotations of the icosahedron, octahedron and tetrahedron, the largest group first. */
export const solidFolds: readonly Fold[] = [
  { name: 'icosahedral', order: 60, axes: [5, 3, 2] },
  { name: 'octahedral', order: 24, axes: [4, 3, 2] },
  { name: 'tetrahedral', order: 12, axes: [3, 3, 2] },
];

/** A seed with the model to grow from. */
export interface FoldStart {
  readonly seed: FoldSeed;
  readonly model: CornerModel;
}

/** Step from one trial radius to the next; κ then changes by 17 %. */
const RADIUS_STEP = 1.08;
/** Half of that step in κ / κ₀, with some overlap: what one start is answerable for. */
export const KAPPA_REACH = 0.1;
/** Trial radii: from every kind used once for each rotation, to each about five times. */
const RADIUS_STEPS = 11;

/** All starts of a fold for these readings, smallest radius first. `gate` in standard deviations. */
export function foldStarts(readings: SideBelief, fold: Fold, gate: number): FoldStart[] {
  const top = fold.axes[0] as number;
  const least = radiusCovering(
    readings.sides,
    readings.sides.map((_, k) => 1 / largestAxis(readings, k, fold, gate)),
    1 / fold.order,
  );
  const starts: FoldStart[] = [];
  for (let step = 0; step < RADIUS_STEPS; step++) {
    const radius = least * RADIUS_STEP ** step;
    const model = cornerModel(readings.sides, 1 / radius ** 2);
    if (!model) continue;
    for (let k = 0; k < readings.sides.length; k++)
      if (mayTurn(readings, k, top, gate))
        starts.push({ seed: { kindSide: model.first[k] as number, through: 'panel' }, model });
    for (let s = 0; s < model.lengths.length; s++)
      if (mayLieOnHub(readings, model, s, TAU / top, gate))
        starts.push({ seed: { kindSide: s, through: 'hub' }, model });
  }
  return starts;
}

/** Whether equal corners like this one may close around a hub on the axis. */
function mayLieOnHub(
  readings: SideBelief,
  model: CornerModel,
  corner: number,
  angle: number,
  gate: number,
): boolean {
  const kind = model.kindOf[corner] as number;
  const start = model.first[kind] as number;
  const own = readings.sides[kind] as readonly number[];
  const before = model.before[corner] as number;
  if (!mayBeEqual(readings, kind, before - start, corner - start, gate)) return false;
  const at = model.slopeStart[corner] as number;
  let variance = ((model.kappaSlopes[corner] as number) * KAPPA_REACH) ** 2;
  for (let i = 0; i < own.length; i++)
    variance +=
      (model.slopes[at + i] as number) ** 2 *
      ((readings.variances[kind] as readonly number[])[i] as number);
  return ((model.angles[corner] as number) - angle) ** 2 <= gate ** 2 * variance;
}

/** The highest axis of the fold that may run through the middle of a kind, 1 for none. */
const largestAxis = (readings: SideBelief, kind: number, fold: Fold, gate: number): number =>
  fold.axes.find((axis) => mayTurn(readings, kind, axis, gate)) ?? 1;

/** Whether a panel turned about its middle by 1 / axis of a turn may look the same. */
function mayTurn(readings: SideBelief, kind: number, axis: number, gate: number): boolean {
  const count = (readings.sides[kind] as readonly number[]).length;
  if (count % axis !== 0) return false;
  for (let i = 0; i + count / axis < count; i++)
    if (!mayBeEqual(readings, kind, i, i + count / axis, gate)) return false;
  return true;
}

/** Radius at which these panels, each so many times, cover a share of the sphere, metres; the
 * smallest sphere that holds every panel where they cover more than that already. */
export function radiusCovering(
  sides: readonly (readonly number[])[],
  times: readonly number[],
  share: number,
): number {
  const covered = (radius: number): number => {
    let sum = 0;
    for (let k = 0; k < sides.length; k++) {
      const polygon = polygonOnSphere(sides[k] as readonly number[], radius);
      if (!polygon.ok) return Number.POSITIVE_INFINITY;
      sum += (times[k] as number) * polygon.solidAngle;
    }
    return sum;
  };
  let low = Math.max(...sides.flat()) / 4;
  let high = low;
  while (covered(high) > 2 * TAU * share) high *= 2;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (covered(middle) > 2 * TAU * share) low = middle;
    else high = middle;
  }
  return high;
}
