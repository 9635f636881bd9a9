// Shims: how much goes under each base hub so that the base ring stands as it was designed, level
// or within what is allowed. Ground is never dug away, so no shim is negative: the hub whose ground
// stands highest, less its own rise, gets none. Metres; plan as in base.ts.
//
// Under a strictly level base the least total and the least thickest shim are one and the same.
// They part where a tilt of the whole base is allowed, which strains no seam: over all planes
// within the tilt the total, and the thickest, are convex in the two slopes, so that a search by
// sections of each slope in turn finds the least. Where hubs may be out of the plane by a little
// (steps between neighbours, and over all), the lowest allowed height of every hub at once is
// max over j of (what hub j needs less what may be lost from j to i), for both aims.

import { assertNumber } from '../math/doors.ts';
import type { Fault, Read } from '../measure/fault.ts';
import type { Base } from './base.ts';

/** What the shims are to have least of. */
export type ShimAim = 'total' | 'max';

/** Options of `shims`; lengths in metres. */
export interface ShimOptions {
  /** Least total of all shims, or least thickest; total unless told. */
  readonly aim?: ShimAim;
  /** Most slope of the base plane, metres of rise in a metre; 0, level, unless told. */
  readonly tilt?: number;
  /** A hub may be this much lower than the plane asks, against its neighbours in the ring and
   * against any other; 0 unless told. */
  readonly neighbour?: number;
  readonly overall?: number;
  /** Thicknesses of the shims in hand; none: cut to measure. */
  readonly pieces?: readonly number[];
}

/** What goes under one base hub. */
export interface Shim {
  /** Number of the base hub. */
  readonly hub: number;
  /** Height of its ground above the lowest ground of all base hubs, metres. */
  readonly ground: number;
  /** Thickness asked for, metres, from 0. */
  readonly thickness: number;
  /** Shims in hand that come nearest to it, thickest first; null where they are cut to measure. */
  readonly pieces: readonly number[] | null;
  /** Height of the hub above the base plane as shimmed, metres: negative is low. */
  readonly off: number;
}

/** Shims for the whole base. */
export interface ShimPlan {
  readonly shims: readonly Shim[];
  /** Numbers of the hubs whose ground decides: they get no shim. */
  readonly highest: readonly number[];
  /** Slope of the base plane along x (towards the datum) and y, metres a metre. */
  readonly slope: readonly [number, number];
  /** Sum and largest of the thicknesses asked for, metres. */
  readonly total: number;
  readonly max: number;
  /** Most that neighbours, and any two hubs, differ from the plane as shimmed, metres. */
  readonly neighbourStep: number;
  readonly overallStep: number;
}

/** The shims for ground heights by hub number, metres; a fault for each base hub without one.
 * RangeError for an option that is no length from 0. */
export function shims(
  base: Base,
  heights: ReadonlyMap<number, number>,
  options: ShimOptions = {},
): Read<ShimPlan> {
  const { aim = 'total', tilt = 0, neighbour = 0, overall = 0, pieces = [] } = options;
  for (const [name, value] of Object.entries({ tilt, neighbour, overall }))
    assertNumber(name, value, 0);
  for (const piece of pieces) assertNumber('a shim in hand', piece, SMALLEST);
  const faults = base.hubs.flatMap(({ number }): Fault[] =>
    Number.isFinite(heights.get(number))
      ? []
      : [{ path: `levels, hub ${number}`, found: 'no height', expected: 'a level at every hub' }],
  );
  if (faults.length > 0) return { ok: false, faults };
  const needs = base.hubs.map(({ number, rise }) => (heights.get(number) as number) - rise);
  const lost = lossTable(base.hubs.length, neighbour, overall);
  const thicknesses = (slope: readonly [number, number]): number[] => {
    const flat = needs.map((need, i) => need - planeAt(base, i, slope));
    if (Math.min(neighbour, overall) === 0) {
      const top = Math.max(...flat);
      return flat.map((own) => top - own);
    }
    return flat.map((own, i) => Math.max(...flat.map((h, j) => h - lost(i, j))) - own);
  };
  const cost = (slope: readonly [number, number]): number => {
    const each = thicknesses(slope);
    return aim === 'max' ? Math.max(...each) : each.reduce((sum, t) => sum + t, 0);
  };
  const slope = leastInDisc(cost, tilt);
  return { ok: true, value: planOf(base, heights, thicknesses(slope), slope, pieces) };
}

function planOf(
  base: Base,
  heights: ReadonlyMap<number, number>,
  each: readonly number[],
  slope: readonly [number, number],
  inHand: readonly number[],
): ShimPlan {
  const ground = base.hubs.map(({ number }) => heights.get(number) as number);
  const lowest = Math.min(...ground);
  const packed = inHand.length === 0 ? null : nearestPacks(each, inHand);
  const tops = base.hubs.map(({ rise }, i) => {
    const pieces = packed?.[i] ?? null;
    const thick = pieces === null ? (each[i] as number) : sum(pieces);
    return (ground[i] as number) + thick - rise - planeAt(base, i, slope);
  });
  const highestTop = Math.max(...tops);
  const off = tops.map((top) => top - highestTop);
  const n = off.length;
  return {
    shims: base.hubs.map(({ number }, i) => ({
      hub: number,
      ground: (ground[i] as number) - lowest,
      thickness: each[i] as number,
      pieces: packed?.[i] ?? null,
      off: off[i] as number,
    })),
    highest: base.hubs.flatMap(({ number }, i) => ((each[i] as number) < NOTHING ? [number] : [])),
    slope,
    total: sum(each),
    max: Math.max(...each),
    neighbourStep: Math.max(...off.map((o, i) => Math.abs(o - (off[(i + 1) % n] as number)))),
    overallStep: -Math.min(...off),
  };
}

/** Shims thinner than this are none, metres. */
const NOTHING = 1e-6;

/** The thinnest shim that counts, metres; also the step in which packs are made up. */
const SMALLEST = 1e-4;

const sum = (values: readonly number[]): number => values.reduce((total, v) => total + v, 0);

const planeAt = (base: Base, i: number, [a, b]: readonly [number, number]): number => {
  const [x, y] = (base.hubs[i] as Base['hubs'][number]).at;
  return a * x + b * y;
};

/** What hub i may be lower than hub j asks: steps along the ring, at most the overall one. */
function lossTable(n: number, neighbour: number, overall: number) {
  return (i: number, j: number): number => {
    const apart = Math.abs(i - j);
    return Math.min(overall, neighbour * Math.min(apart, n - apart));
  };
}

/** Steps of a section search: the bracket shrinks by 0.618 each, to 1e-10 of the tilt. */
const SECTIONS = 48;

/** The point of the disc of a radius where a convex function is least, by golden sections within
 * golden sections; the middle for radius 0. */
function leastInDisc(
  f: (at: readonly [number, number]) => number,
  radius: number,
): readonly [number, number] {
  if (radius === 0) return [0, 0];
  const across = (a: number): number => {
    const half = Math.sqrt(Math.max(0, radius * radius - a * a));
    return leastOn((b) => f([a, b]), -half, half);
  };
  const a = leastOn((x) => f([x, across(x)]), -radius, radius);
  return [a, across(a)];
}

function leastOn(f: (x: number) => number, from: number, to: number): number {
  const share = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [p, q] = [high - share * (high - low), low + share * (high - low)];
  let [fp, fq] = [f(p), f(q)];
  for (let i = 0; i < SECTIONS; i++)
    if (fp <= fq) {
      [high, q, fq] = [q, p, fp];
      p = high - share * (high - low);
      fp = f(p);
    } else {
      [low, p, fp] = [p, q, fq];
      q = low + share * (high - low);
      fq = f(q);
    }
  return (low + high) / 2;
}

/** For each thickness the pieces, any number of each, whose sum comes nearest (ties: thinner), as
 * few as do. */
function nearestPacks(each: readonly number[], inHand: readonly number[]): number[][] {
  const steps = [...new Set(inHand.map((piece) => Math.round(piece / SMALLEST)))].sort(
    (a, b) => b - a,
  );
  const most = Math.ceil(Math.max(...each) / SMALLEST) + (steps[0] as number);
  const fewest = new Float64Array(most + 1).fill(Number.POSITIVE_INFINITY);
  const last = new Int32Array(most + 1);
  fewest[0] = 0;
  for (let amount = 1; amount <= most; amount++)
    for (const step of steps)
      if (step <= amount && (fewest[amount - step] as number) + 1 < (fewest[amount] as number)) {
        fewest[amount] = (fewest[amount - step] as number) + 1;
        last[amount] = step;
      }
  return each.map((thickness) => {
    const wanted = thickness / SMALLEST;
    let best = 0;
    for (let amount = 1; amount <= most; amount++)
      if (fewest[amount] !== Infinity && Math.abs(amount - wanted) < Math.abs(best - wanted) - 1e-9)
        best = amount;
    const pieces: number[] = [];
    for (let rest = best; rest > 0; rest -= last[rest] as number)
      pieces.push((last[rest] as number) * SMALLEST);
    return pieces.sort((a, b) => b - a);
  });
}
