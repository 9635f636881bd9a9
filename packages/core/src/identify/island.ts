// Panels that stand together while a part grows (grow-part.ts), each kind once: a piece is its kind and
// its sides are the kind-sides of the corner model. With what is believed of sides and curvature.

import { type Belief, copyBeliefInto } from './belief.ts';
import type { CornerModel } from './corner-model.ts';

/** Panels that stand together; changed in place while they are glued. */
export interface Island {
  /** Kind-side → the kind-side it is glued to, −1 where it is open. */
  readonly mate: Int16Array;
  /** Kind → whether it is laid. */
  readonly laid: Uint8Array;
  /** Corner → whether its hub is taken to be on the rim. */
  readonly rim: Uint8Array;
  readonly belief: Belief;
  /** Corner angles under that belief and their standard deviations, radians. */
  readonly angles: Float64Array;
  readonly sds: Float64Array;
  /** Natural logarithm of how much better it closes than chance. */
  score: number;
  /** Axes left: hubs at which the corners of one share of a turn may close. */
  axes: number;
}

/** The corners around a hub as far as they are glued: see HubRun. */
export interface Run {
  readonly angle: number;
  readonly sd: number;
  readonly from: number;
  readonly to: number;
  readonly corners: readonly number[];
  /** Whether its hub is taken to be on the rim. */
  readonly isRim: boolean;
}

/** An island without a panel. `belief`: what the readings say, taken over and changed. */
export function emptyIsland(model: CornerModel, belief: Belief, axes: number): Island {
  const sides = model.lengths.length;
  const island: Island = {
    mate: new Int16Array(sides).fill(-1),
    laid: new Uint8Array(model.first.length - 1),
    rim: new Uint8Array(sides),
    belief,
    angles: new Float64Array(sides),
    sds: new Float64Array(sides),
    score: 0,
    axes,
  };
  refresh(model, island);
  return island;
}

/** Makes one island like another of the same model. */
export function copyIslandInto(from: Island, to: Island): void {
  copyBeliefInto(from.belief, to.belief);
  to.mate.set(from.mate);
  to.laid.set(from.laid);
  to.rim.set(from.rim);
  to.angles.set(from.angles);
  to.sds.set(from.sds);
  to.score = from.score;
  to.axes = from.axes;
}

/** Sets corner angles and their deviations to what is believed. */
export function refresh(model: CornerModel, island: Island): void {
  const { mean, covariance, size } = island.belief;
  const last = size - 1;
  for (let c = 0; c < last; c++) {
    const kind = model.kindOf[c] as number;
    const start = model.first[kind] as number;
    const n = (model.first[kind + 1] as number) - start;
    const at = model.slopeStart[c] as number;
    const byKappa = model.kappaSlopes[c] as number;
    let angle = (model.angles[c] as number) + byKappa * (mean[last] as number);
    let variance = byKappa ** 2 * (covariance[last * size + last] as number);
    for (let i = 0; i < n; i++) {
      const a = model.slopes[at + i] as number;
      const row = (start + i) * size;
      angle += a * (mean[start + i] as number);
      variance += 2 * a * byKappa * (covariance[row + last] as number);
      for (let j = 0; j < n; j++)
        variance += a * (model.slopes[at + j] as number) * (covariance[row + start + j] as number);
    }
    island.angles[c] = angle;
    island.sds[c] = Math.sqrt(Math.max(0, variance));
  }
}

/** The run of an open side, from it on anticlockwise. */
export function runFrom(model: CornerModel, island: Island, from: number): Run {
  const { mate, rim, angles, sds } = island;
  const corners: number[] = [];
  let [angle, sd, isRim] = [0, 0, false];
  let corner = from;
  for (;;) {
    corners.push(corner);
    angle += angles[corner] as number;
    sd += sds[corner] as number;
    if (rim[corner]) isRim = true;
    const to = model.before[corner] as number;
    const across = mate[to] as number;
    if (across < 0) return { angle, sd, from, to, corners, isRim };
    corner = across;
  }
}

/** The open run at the hub where a side starts; null where the hub is closed. */
export function runAround(model: CornerModel, island: Island, side: number): Run | null {
  let from = side;
  while ((island.mate[from] as number) >= 0) {
    from = model.after[island.mate[from] as number] as number;
    if (from === side) return null;
  }
  return runFrom(model, island, from);
}

/** The corners around the closed hub where a side starts; null where it is open. */
export function starAt(model: CornerModel, { mate }: Island, side: number): number[] | null {
  const star: number[] = [];
  let corner = side;
  do {
    star.push(corner);
    corner = mate[model.before[corner] as number] as number;
  } while (corner >= 0 && corner !== side);
  return corner < 0 ? null : star;
}

/** Square of how far two sides are from being of one length, in deviations. */
export function seamZ2(model: CornerModel, { belief }: Island, a: number, b: number): number {
  const { mean, covariance, size } = belief;
  const lengthOf = (s: number): number => (model.lengths[s] as number) + (mean[s] as number);
  const variance =
    (covariance[a * (size + 1)] as number) +
    (covariance[b * (size + 1)] as number) -
    2 * (covariance[a * size + b] as number);
  return (lengthOf(a) - lengthOf(b)) ** 2 / Math.max(variance, LEAST_VARIANCE);
}

/** Two sides are not known to be of one length better than this, m². */
const LEAST_VARIANCE = 1e-10;
