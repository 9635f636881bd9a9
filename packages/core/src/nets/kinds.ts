// Sorts the places of a net into kinds by their sides: same lengths in the same turning order seen
// from outside. Mirror images are two kinds. Lengths in the unit of the hubs.

import { lowestTurn, turned } from '../math/cyclic.ts';
import { assertNumber } from '../math/doors.ts';
import { compareLists } from '../math/order.ts';
import { distance, pointAt } from '../math/vector.ts';
import { makeShell, type Shell } from '../shell/shell.ts';
import { type NetSpec, namedNet } from './named.ts';
import type { Net } from './net.ts';
import { SAME_SIDE } from './tolerances.ts';

/** Sides of one length. */
export interface SideClass {
  /** Mean length. */
  readonly length: number;
  /** Sides of places, not seams: a whole shell has two on every seam. */
  readonly count: number;
}

/** A kind of place. */
export interface NetKind {
  /** Lengths, anticlockwise seen from outside; of all starts the first in order of side class. */
  readonly sides: readonly number[];
  /** Index of each side in the list of side classes. */
  readonly sideClasses: readonly number[];
  /** Places of this kind. */
  readonly count: number;
  /** Index of the kind that is its mirror image, its own where it is one; null where none is. */
  readonly mirror: number | null;
}

/** The kinds of a net, the smallest circumference first, a left and right pair together. */
export interface NetKinds {
  readonly kinds: readonly NetKind[];
  /** Place → index of its kind. */
  readonly kind: Int32Array;
  /** Place → which of its kind's sides lies on the place's first side, the lowest that does. */
  readonly turn: Int32Array;
  /** Shortest first. */
  readonly sideClasses: readonly SideClass[];
  /** Place → class of each of its sides. */
  readonly sideClass: readonly (readonly number[])[];
}

/**
 * Kinds of the places of a net. In the order of their lengths, two neighbouring sides that differ
 * by no more than `tolerance` are of one class; RangeError where that is no number from 0.
 */
export function kindsOfNet(
  hubs: Float64Array,
  places: readonly (readonly number[])[],
  tolerance: number,
): NetKinds {
  assertNumber('the tolerance', tolerance, 0);
  const { sideClasses, sideClass } = classesOfSides(hubs, places, tolerance);
  const starts = sideClass.map(lowestTurn);
  const rounds = new Map<string, { classes: number[]; count: number }>();
  const keys = sideClass.map((classes, p) => {
    const round = turned(classes, starts[p] as number);
    const key = round.join();
    const known = rounds.get(key);
    if (known) known.count++;
    else rounds.set(key, { classes: round, count: 1 });
    return key;
  });
  const ordered = [...rounds.values()].sort((a, b) =>
    inOrderOfSize(a.classes, b.classes, sideClasses),
  );
  const index = new Map(ordered.map(({ classes }, i) => [classes.join(), i]));
  const kinds = ordered.map(({ classes, count }): NetKind => {
    const reversed = [...classes].reverse();
    const mirror = index.get(turned(reversed, lowestTurn(reversed)).join()) ?? null;
    const sides = classes.map((at) => (sideClasses[at] as SideClass).length);
    return { sides, sideClasses: classes, count, mirror };
  });
  return {
    kinds,
    kind: Int32Array.from(keys, (key) => index.get(key) as number),
    turn: Int32Array.from(sideClass, (classes, p) => turnOnto(classes, starts[p] as number)),
    sideClasses,
    sideClass,
  };
}

/** A shell with the kinds of its places. */
export interface NetShell {
  readonly shell: Shell;
  /** In the order of the shell's kind indices; sides in metres. */
  readonly kinds: readonly NetKind[];
}

/** The shell of a named net at a radius in metres. Throws RangeError as namedNet does. */
export const netShell = (spec: NetSpec, radius: number): NetShell =>
  shellOfNet(namedNet(spec), radius);

/** The shell of any net at a radius in metres, kinds by sides equal to a billionth of the radius. */
export function shellOfNet(net: Net, radius: number): NetShell {
  if (!(radius > 0 && radius < Infinity))
    throw new RangeError(`the radius is ${radius}, expected a positive length`);
  const hubs = net.hubs.map((x) => x * radius);
  const { kinds, kind, turn } = kindsOfNet(hubs, net.places, SAME_SIDE * radius);
  const places = net.places.map((place, p) => ({
    hubs: place,
    kind: kind[p] as number,
    turn: turn[p] as number,
  }));
  return { shell: makeShell({ radius, hubs, places }), kinds };
}

function classesOfSides(
  hubs: Float64Array,
  places: readonly (readonly number[])[],
  tolerance: number,
): { sideClasses: SideClass[]; sideClass: number[][] } {
  const lengths = places.map((place) =>
    place.map((hub, i) =>
      distance(pointAt(hubs, hub), pointAt(hubs, place[(i + 1) % place.length] as number)),
    ),
  );
  const sorted = Float64Array.from(lengths.flat()).sort();
  const firsts: number[] = [];
  for (let i = 0; i < sorted.length; i++)
    if (i === 0 || (sorted[i] as number) - (sorted[i - 1] as number) > tolerance) firsts.push(i);
  const sideClasses = firsts.map((first, c) => {
    const members = sorted.subarray(first, firsts[c + 1] ?? sorted.length);
    return { length: members.reduce((s, x) => s + x, 0) / members.length, count: members.length };
  });
  const least = firsts.map((first) => sorted[first] as number);
  return { sideClasses, sideClass: lengths.map((sides) => sides.map((x) => classOf(least, x))) };
}

/** Index of the last class that starts at or below x. */
function classOf(least: readonly number[], x: number): number {
  let low = 0;
  let high = least.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((least[middle] as number) <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** The lowest turn of the kind that brings it onto the place; some kinds fit in several. */
function turnOnto(classes: readonly number[], start: number): number {
  const round = turned(classes, start);
  for (let turn = 0; turn < round.length; turn++)
    if (compareLists(turned(round, turn), classes) === 0) return turn;
  throw new Error(`no turn of ${round} gives ${classes}`);
}

function inOrderOfSize(
  a: readonly number[],
  b: readonly number[],
  sideClasses: readonly SideClass[],
): number {
  const [p, q] = [a, b].map((round) => [...round].sort((x, y) => x - y)) as [number[], number[]];
  const length = (round: readonly number[]): number =>
    round.reduce((sum, at) => sum + (sideClasses[at] as SideClass).length, 0);
  return length(p) - length(q) || compareLists(p, q) || compareLists(a, b);
}
