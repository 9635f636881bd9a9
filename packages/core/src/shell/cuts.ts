// Where a shell can meet the ground. A natural cut runs along seams: it keeps every place whose
// hubs all lie at or above a level, or within so many rings of places around the crown. Panels
// that a plane would cut through are told by plane-cut.ts.
// The shell stands as it will be built: crown up (+z), origin at the sphere's centre, metres.

import { assertNumber } from '../math/doors.ts';
import { layersFrom } from './courses.ts';
import { endHubAt, meanSideLength } from './geometry.ts';
import type { HubId, SideId } from './ids.ts';
import { distanceToSegment, isInside, type Point } from './inside.ts';
import { hubCount, placeCount, type Shell, sideCount } from './shell.ts';
import { FLAT_BASE, RAGGED_BASE, SAME_LEVEL } from './tolerances.ts';

/** A natural cut: the places kept and the ring that they stand on. */
export interface Cut {
  /** Places kept, ascending, of the shell that was cut. */
  readonly places: Int32Array;
  /** Hubs of the base ring in turn, anticlockwise seen from above, of the shell that was cut. */
  readonly base: Int32Array;
  /** Heights of the base hubs, metres. */
  readonly baseZ: { readonly min: number; readonly mean: number; readonly max: number };
  /** From the lowest base hub to the topmost hub, metres. */
  readonly height: number;
  /** From the mean height of the base hubs to the topmost hub, metres: what cuts are ranked by, so
   * that a ragged ring gains nothing by its lowest hub. */
  readonly rise: number;
  /** Distances of the base hubs from the axis, metres; `inside` is the radius of the largest
   * circle about the axis that no side of the base ring enters, seen from above. */
  readonly floor: {
    readonly inside: number;
    readonly min: number;
    readonly mean: number;
    readonly max: number;
  };
  /** True where the base hubs spread in height no more than the flatness tolerance. */
  readonly flat: boolean;
}

/** Options of `naturalCuts`; all are parts of the mean side. */
export interface CutOptions {
  /** Hubs this near in height are at one level; 0.02 unless told. */
  readonly sameLevel?: number;
  /** A base ring that spreads no more in height is flat; 0.02 unless told. */
  readonly flatWithin?: number;
  /** A base ring that spreads more in height is no natural cut; 0.6 unless told. */
  readonly ragged?: number;
}

/** Every distinct natural cut of a shell, the tallest by `rise` first (ties: more places). Left out
 * are cuts whose remainder is not one sound piece with one rim, or has a place that hangs by fewer
 * than two seams, or whose base ring is ragged, does not go round the axis, or has a hub of the
 * shell below it. The uncut ball is none. RangeError for an option
 * that is no number from 0. */
export function naturalCuts(shell: Shell, options: CutOptions = {}): Cut[] {
  for (const [name, part] of Object.entries(options)) assertNumber(name, part, 0);
  const side = meanSideLength(shell);
  const spread = (options.ragged ?? RAGGED_BASE) * side;
  const flat = (options.flatWithin ?? FLAT_BASE) * side;
  const cuts: Cut[] = [];
  const seen = new Set<string>();
  const level = (options.sameLevel ?? SAME_LEVEL) * side;
  const consider = (keep: Uint8Array): void => {
    const base = soleRim(shell, keep);
    if (!base || hangs(shell, keep)) return;
    const key = base.slice().sort().join();
    if (seen.has(key)) return;
    seen.add(key);
    const cut = cutOf(shell, keep, base, flat);
    const ragged = cut.baseZ.max - cut.baseZ.min > spread;
    if (!ragged && standsOn(shell, cut, level)) cuts.push(cut);
  };
  for (const z of levelsOf(shell, level)) consider(placesFrom(shell, z, level));
  const layers = layersFrom(shell, crownHubs(shell, level)).hubs;
  const last = layers.reduce((most, layer) => Math.max(most, layer), 0);
  for (let layer = 1; layer <= last; layer++)
    consider(placesWithin(shell, (hub) => within(layers[hub] as number, layer)));
  return cuts.sort((a, b) => b.rise - a.rise || b.places.length - a.places.length);
}

const within = (layer: number, limit: number): boolean => layer >= 0 && layer <= limit;

/** Heights of the lowest hub of each level, from the ground up. */
function levelsOf(shell: Shell, tolerance: number): number[] {
  const heights = Array.from(
    { length: hubCount(shell) },
    (_, h) => shell.hubs[3 * h + 2] as number,
  ).sort((a, b) => a - b);
  const levels: number[] = [];
  for (const z of heights)
    if (levels.length === 0 || z > (levels[levels.length - 1] as number) + tolerance)
      levels.push(z);
  return levels;
}

function crownHubs(shell: Shell, tolerance: number): HubId[] {
  let top = Number.NEGATIVE_INFINITY;
  for (let h = 0; h < hubCount(shell); h++) top = Math.max(top, shell.hubs[3 * h + 2] as number);
  const found: HubId[] = [];
  for (let h = 0; h < hubCount(shell); h++)
    if ((shell.hubs[3 * h + 2] as number) >= top - tolerance) found.push(h as HubId);
  return found;
}

/** Place → 1 where all its hubs pass the test. */
function placesWithin(shell: Shell, test: (hub: number) => boolean): Uint8Array {
  const keep = new Uint8Array(placeCount(shell)).fill(1);
  for (let s = 0; s < sideCount(shell); s++)
    if (!test(shell.sideHub[s] as number)) keep[shell.sidePlace[s] as number] = 0;
  return keep;
}

/** Place → 1 where no hub lies below height z and not all lie at it: a panel that would lie flat
 * on the ground is left out. */
function placesFrom(shell: Shell, z: number, tolerance: number): Uint8Array {
  const rises = new Uint8Array(placeCount(shell));
  for (let s = 0; s < sideCount(shell); s++)
    if ((shell.hubs[3 * (shell.sideHub[s] as number) + 2] as number) > z + tolerance)
      rises[shell.sidePlace[s] as number] = 1;
  const keep = placesWithin(shell, (hub) => (shell.hubs[3 * hub + 2] as number) >= z);
  return keep.map((flag, p) => flag & (rises[p] as number));
}

/** The hubs of the rim of the places kept, in turn, where that rim is a single loop that meets no
 * hub twice; else null. On a ball such a loop has one piece on either side of it, so that the
 * places kept hang together and are a disc. */
function soleRim(shell: Shell, keep: Uint8Array): Int32Array | null {
  const openFrom = new Map<number, number>();
  for (let s = 0; s < sideCount(shell); s++) {
    if (!keep[shell.sidePlace[s] as number] || isBolted(shell, keep, s)) continue;
    const hub = shell.sideHub[s] as number;
    if (openFrom.has(hub)) return null;
    openFrom.set(hub, endHubAt(shell, s as SideId));
  }
  const first = openFrom.keys().next();
  if (first.done) return null;
  const ring = [first.value];
  for (let hub = openFrom.get(first.value); hub !== first.value; hub = openFrom.get(hub)) {
    if (hub === undefined || ring.length > openFrom.size) return null;
    ring.push(hub);
  }
  return ring.length === openFrom.size ? Int32Array.from(ring) : null;
}

/** Whether a kept place is held by fewer than two seams. */
function hangs(shell: Shell, keep: Uint8Array): boolean {
  const seams = new Int32Array(keep.length);
  for (let s = 0; s < sideCount(shell); s++) {
    const p = shell.sidePlace[s] as number;
    if (keep[p] && isBolted(shell, keep, s)) seams[p] = (seams[p] as number) + 1;
  }
  return keep.some((flag, p) => flag === 1 && (seams[p] as number) < 2);
}

function isBolted(shell: Shell, keep: Uint8Array, side: number): boolean {
  const mate = shell.mate[side] as number;
  return mate >= 0 && keep[shell.sidePlace[mate] as number] === 1;
}

function cutOf(shell: Shell, keep: Uint8Array, base: Int32Array, flat: number): Cut {
  const places = Int32Array.from(Array.from(keep.keys()).filter((p) => keep[p]));
  let top = Number.NEGATIVE_INFINITY;
  for (const p of places)
    for (let s = shell.placeStart[p] as number; s < (shell.placeStart[p + 1] as number); s++)
      top = Math.max(top, shell.hubs[3 * (shell.sideHub[s] as number) + 2] as number);
  const baseZ = spanOf(Array.from(base, (hub) => shell.hubs[3 * hub + 2] as number));
  return {
    places,
    base,
    baseZ,
    height: top - baseZ.min,
    rise: top - baseZ.mean,
    floor: floorOf(shell, base),
    flat: baseZ.max - baseZ.min <= flat,
  };
}

/** Whether the base ring goes round the axis and no kept hub lies more than `level` below it: else
 * the ring is the rim of a hole in the side of a ball. */
function standsOn(shell: Shell, { places, base, baseZ }: Cut, level: number): boolean {
  for (const p of places)
    for (let s = shell.placeStart[p] as number; s < (shell.placeStart[p + 1] as number); s++)
      if ((shell.hubs[3 * (shell.sideHub[s] as number) + 2] as number) < baseZ.min - level)
        return false;
  return isInside(fromAbove(shell, base), AXIS);
}

function floorOf(shell: Shell, base: Int32Array): Cut['floor'] {
  const ring = fromAbove(shell, base);
  const inside = ring.map((a, i) =>
    distanceToSegment(AXIS, a, ring[(i + 1) % ring.length] as Point),
  );
  return { inside: Math.min(...inside), ...spanOf(ring.map(([x, y]) => Math.hypot(x, y))) };
}

const AXIS: Point = [0, 0];

const fromAbove = (shell: Shell, base: Int32Array): Point[] =>
  Array.from(base, (hub) => [shell.hubs[3 * hub] as number, shell.hubs[3 * hub + 1] as number]);

function spanOf(values: readonly number[]): Cut['baseZ'] {
  return {
    min: Math.min(...values),
    mean: values.reduce((sum, v) => sum + v, 0) / values.length,
    max: Math.max(...values),
  };
}
