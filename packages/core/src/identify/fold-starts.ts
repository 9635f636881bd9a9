// Where folding starts: the groups of rotations a shell may have, and for each the panels that may
// lie on its highest axis, at every radius the kinds may have. Radii are tried in steps; within a
// step the search learns the radius from the stars it closes.

import { TAU } from '../math/angle.ts';
import { polygonOnSphere } from '../sphere/polygon.ts';
import { type CornerModel, cornerModel } from './corner-model.ts';
import type { Fold, FoldSeed } from './fold.ts';
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
  /** Largest change of κ / κ₀ that this start is answerable for. */
  readonly kappaReach: number;
}

/** Step from one trial radius to the next for a seed whose hub says little of the radius; κ then
 * changes by 17 %. The step is finer where no hub speaks at all, only the panel on the axis. */
const HUB_STEP = 1.08;
const PANEL_STEP = 1.02;
/** A hub that gives κ better than this (standard deviation, share of κ) needs no trial radii. */
const TELLING = 0.03;
/** Trial radii go from every kind used once for each rotation to each used about 300 times. */
const MOST_USES = 300;
/** Without rotations each kind is used once or a few times: radii up to this many times the least. */
const MOST_GROWTH = 2;

/** All starts of a fold at a radius that is known (metres), to be held within `kappaReach`. */
export function foldStartsAt(
  readings: SideBelief,
  fold: Fold,
  gate: number,
  radius: number,
  kappaReach: number,
): FoldStart[] {
  const top = fold.axes[0] as number;
  const model = cornerModel(readings.sides, 1 / radius ** 2);
  if (!model) return [];
  const seeds: FoldSeed[] = [];
  readings.sides.forEach((own, k) => {
    if (readings.bothWays?.mirrored[k]) return;
    if (mayTurn(readings, k, top, gate))
      seeds.push({ kindSide: model.first[k] as number, through: 'panel' });
    own.forEach((_, i) => {
      const before = (i + own.length - 1) % own.length;
      const off = (model.angles[(model.first[k] as number) + i] as number) - TAU / top;
      const sd = Math.hypot(cornerSd(readings, model, k, i), slopeAt(model, k, i) * kappaReach);
      if (mayBeEqual(readings, k, before, i, gate) && Math.abs(off) <= gate * sd)
        seeds.push(hubSeed(model, k, i));
    });
  });
  return seeds.map((seed) => ({ seed, model, kappaReach }));
}

/** All starts of a fold for these readings, smallest radius first. `gate` in standard deviations; `axis`:
 * the one that is planted, the highest unless told; 1 for none, so that it starts anywhere; `spareKinds`:
 * so many kinds, which may be the largest, need have no place. */
export function foldStarts(
  readings: SideBelief,
  fold: Fold,
  gate: number,
  axis: number | undefined = fold.axes[0],
  spareKinds = 0,
): FoldStart[] {
  const top = axis;
  const covering = (spare: ReadonlySet<number>): number =>
    radiusCovering(
      readings.sides,
      readings.sides.map((_, k) =>
        readings.bothWays?.added[k] || spare.has(k) ? 0 : 1 / largestAxis(readings, k, fold, gate),
      ),
      1 / fold.order,
    );
  const all = covering(new Set());
  const least = spareKinds > 0 ? covering(largestKinds(readings, spareKinds)) : all;
  const most = all * Math.sqrt(MOST_USES / fold.order);
  if (top === undefined || top === 1)
    return trialModels(
      readings,
      least,
      top === undefined ? least * MOST_GROWTH : most,
      PANEL_STEP,
    ).map((model) => ({
      seed: { kindSide: model.first[surelyUsed(readings)] as number, through: 'nothing' },
      model,
      kappaReach: reachOf(PANEL_STEP),
    }));
  const trials = trialModels(readings, least, most, HUB_STEP);
  const starts: FoldStart[] = [];
  readings.sides.forEach((own, k) => {
    if (readings.bothWays?.mirrored[k]) return;
    if (mayTurn(readings, k, top, gate)) starts.push(...panelStarts(readings, k, least, most));
    own.forEach((_, i) => {
      const before = (i + own.length - 1) % own.length;
      if (mayBeEqual(readings, k, before, i, gate))
        starts.push(...hubStarts(readings, k, i, TAU / top, { least, most, gate, trials }));
    });
  });
  return starts
    .map((start) => ({ ...start, seed: { ...start.seed, axis: top } }))
    .sort((a, b) => b.model.kappa - a.model.kappa);
}

/** So many kinds with the longest sides together. */
function largestKinds({ sides }: SideBelief, count: number): Set<number> {
  const around = sides.map((own) => own.reduce((sum, x) => sum + x, 0));
  const order = [...around.keys()].sort((a, b) => (around[b] as number) - (around[a] as number));
  return new Set(order.slice(0, count));
}

/** A kind that every net with all kinds has a place for, up to mirror images. */
function surelyUsed({ sides, bothWays }: SideBelief): number {
  if (!bothWays) return 0;
  const isSure = (k: number): boolean =>
    bothWays.other[k] === null || bothWays.mirrored[bothWays.other[k] as number] === true;
  return Math.max(
    0,
    sides.findIndex((_, k) => isSure(k)),
  );
}

function panelStarts(readings: SideBelief, kind: number, least: number, most: number): FoldStart[] {
  return trialModels(readings, least, most, PANEL_STEP).map((model) => ({
    seed: { kindSide: model.first[kind] as number, through: 'panel' },
    model,
    kappaReach: reachOf(PANEL_STEP),
  }));
}

/** Radii to try (metres, models at each) and the gate, in standard deviations. */
interface HubTrials {
  readonly least: number;
  readonly most: number;
  readonly gate: number;
  readonly trials: readonly CornerModel[];
}

/** Starts with equal corners around a hub on the axis: at the radius where they close, or, where
 * that is hardly known, at every trial radius where they may. */
function hubStarts(
  readings: SideBelief,
  kind: number,
  corner: number,
  angle: number,
  { least, most, gate, trials }: HubTrials,
): FoldStart[] {
  const exact = radiusClosing(readings.sides[kind] as readonly number[], corner, angle);
  if (exact !== null && exact > least / HUB_STEP && exact < most) {
    const model = cornerModel(readings.sides, 1 / exact ** 2);
    const kappaSd = model
      ? cornerSd(readings, model, kind, corner) / slopeAt(model, kind, corner)
      : 1;
    if (model && kappaSd < TELLING)
      return [{ seed: hubSeed(model, kind, corner), model, kappaReach: gate * TELLING }];
  }
  return trials
    .filter((model) => {
      const seed = (model.first[kind] as number) + corner;
      const off = (model.angles[seed] as number) - angle;
      const byRadius = slopeAt(model, kind, corner) * reachOf(HUB_STEP);
      const sd = Math.hypot(cornerSd(readings, model, kind, corner), byRadius);
      return Math.abs(off) <= gate * sd;
    })
    .map((model) => ({
      seed: hubSeed(model, kind, corner),
      model,
      kappaReach: reachOf(HUB_STEP),
    }));
}

const hubSeed = (model: CornerModel, kind: number, corner: number): FoldSeed => ({
  kindSide: (model.first[kind] as number) + corner,
  through: 'hub',
});

/** Half a radius step in κ / κ₀, with some overlap. */
const reachOf = (step: number): number => 0.6 * (step ** 2 - 1);

function trialModels(
  readings: SideBelief,
  least: number,
  most: number,
  step: number,
): CornerModel[] {
  const models: CornerModel[] = [];
  for (let radius = least; radius < most; radius *= step) {
    const model = cornerModel(readings.sides, 1 / radius ** 2);
    if (model) models.push(model);
  }
  return models;
}

/** The radius at which a corner takes an angle, metres; null where no sphere gives it. */
function radiusClosing(sides: readonly number[], corner: number, angle: number): number | null {
  const angleAt = (radius: number): number => {
    const polygon = polygonOnSphere(sides, radius);
    return polygon.ok ? (polygon.corners[corner] as number) : Number.POSITIVE_INFINITY;
  };
  const longest = Math.max(...sides);
  let low = longest / 2;
  let high = longest * 100;
  if (angleAt(high) > angle) return null;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (angleAt(middle) > angle) low = middle;
    else high = middle;
  }
  return Number.isFinite(angleAt(low)) ? high : null;
}

const slopeAt = (model: CornerModel, kind: number, corner: number): number =>
  Math.abs(model.kappaSlopes[(model.first[kind] as number) + corner] as number);

/** Standard deviation of a corner by its sides' readings, radians. */
function cornerSd(readings: SideBelief, model: CornerModel, kind: number, corner: number): number {
  const at = model.slopeStart[(model.first[kind] as number) + corner] as number;
  const variances = readings.variances[kind] as readonly number[];
  return Math.sqrt(
    variances.reduce(
      (sum, variance, i) => sum + (model.slopes[at + i] as number) ** 2 * variance,
      0,
    ),
  );
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
