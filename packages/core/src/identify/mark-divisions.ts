// The simple rules by which panels of equal sides may have been given different marks: by what stands
// beside them (the orbits of places under the net's rotations), or by how high they stand on an axis
// of the net. Each rule shares out the places of one family among its marks.

import { add, dot, normalize, type Vec3 } from '../math/vector.ts';
import { endHubAt, hubPoint, placeCentre } from '../shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../shell/ids.ts';
import { hubAt, hubCount, placeCount, type Shell, seamCount } from '../shell/shell.ts';
import {
  hubOrbits,
  placeOrbits,
  type Symmetry,
  seamOfSides,
  seamOrbits,
} from '../shell/symmetry.ts';

/** An axis of the net: how many turns about it lay the net upon itself. */
export interface NetAxis {
  readonly up: Vec3;
  readonly fold: number;
}

/** How marks may lie on the places of a family. */
export type MarkRule =
  /** By what stands beside them. */
  | { readonly by: 'neighbours' }
  /** By level on an axis: `runs` from its upper end down, each a mark (index) and its places. */
  | {
      readonly by: 'level';
      readonly axis: NetAxis;
      readonly runs: readonly { readonly mark: number; readonly places: number }[];
    }
  /** By none: each panel anywhere. */
  | { readonly by: 'none' };

/** One way to share out the places of a family among its marks. */
export interface Division {
  readonly rule: MarkRule;
  /** Which axis (index) it needs; null for none. */
  readonly axis: number | null;
  /** Mark index of each of the family's places, in their order; empty where no rule says. */
  readonly marks: readonly number[];
  /** Natural logarithm of its probability before the pile is looked at. */
  readonly prior: number;
}

/** How likely marks finer than shape follow each sort of rule: our own judgement. */
const PRIOR = { neighbours: Math.log(0.35), level: Math.log(0.45), none: Math.log(0.2) };
/** Against a rule that comes back to a mark that it had higher up. */
const BELT = Math.log(0.1);
/** Most ways of one sort that are tried for a family. */
const MOST_WAYS = 4000;
/** Heights nearer than this, in parts of the radius, are one level. */
const SAME_LEVEL = 1e-3;

/** The axes of the net, one of each sort, the most-fold first. */
export function axesOf(shell: Shell, rotations: readonly Symmetry[]): NetAxis[] {
  const hubs = hubOrbits(shell, rotations);
  const places = placeOrbits(shell, rotations);
  const seams = seamOrbits(shell, rotations);
  const seamOf = seamOfSides(shell);
  const axes: NetAxis[] = [];
  const note = (fixes: (g: Symmetry) => boolean, at: () => Vec3): void => {
    const fold = rotations.filter(fixes).length;
    if (fold > 1) axes.push({ up: normalize(at()), fold });
  };
  for (let h = 0; h < hubCount(shell); h++)
    if (hubs[h] === h)
      note(
        (g) => g.hubs[h] === h,
        () => hubPoint(shell, h as HubId),
      );
  for (let p = 0; p < placeCount(shell); p++)
    if (places[p] === p)
      note(
        (g) => g.places[p] === p,
        () => placeCentre(shell, p as PlaceId),
      );
  for (let m = 0; m < seamCount(shell); m++) {
    const side = shell.seams[2 * m] as SideId;
    if (seams[m] === m)
      note(
        (g) => seamOf[g.sides[side] as number] === m,
        () => seamMiddle(shell, side),
      );
  }
  return axes.sort((a, b) => b.fold - a.fold);
}

const seamMiddle = (shell: Shell, side: SideId): Vec3 =>
  add(hubPoint(shell, hubAt(shell, side)), hubPoint(shell, endHubAt(shell, side)));

/** Ways to share out the places of a family (`own`) among marks (indices, two or more). */
export function divisionsOf(
  shell: Shell,
  own: readonly number[],
  marks: readonly number[],
  orbits: ArrayLike<number>,
  axes: readonly NetAxis[],
): Division[] {
  return [
    ...byNeighbours(own, marks, orbits),
    ...axes.flatMap((axis, a) => byLevel(shell, own, marks, axis, a, axes.length)),
    { rule: { by: 'none' }, axis: null, marks: [], prior: PRIOR.none },
  ];
}

function byNeighbours(
  own: readonly number[],
  marks: readonly number[],
  orbits: ArrayLike<number>,
): Division[] {
  const cells = [...new Set(own.map((p) => orbits[p] as number))];
  if (cells.length < marks.length || marks.length ** cells.length > MOST_WAYS) return [];
  const ways = wordsOf(marks, cells.length).filter((word) => marks.every((m) => word.includes(m)));
  const prior = PRIOR.neighbours - Math.log(ways.length);
  return ways.map((word) => ({
    rule: { by: 'neighbours' },
    axis: null,
    marks: own.map((p) => word[cells.indexOf(orbits[p] as number)] as number),
    prior,
  }));
}

/** All words of so many letters. */
function wordsOf(letters: readonly number[], length: number): number[][] {
  let words: number[][] = [[]];
  for (let i = 0; i < length; i++)
    words = words.flatMap((word) => letters.map((letter) => [...word, letter]));
  return words;
}

function byLevel(
  shell: Shell,
  own: readonly number[],
  marks: readonly number[],
  axis: NetAxis,
  index: number,
  axes: number,
): Division[] {
  const heights = own.map((p) => dot(placeCentre(shell, p as PlaceId), axis.up) / shell.radius);
  const levels = levelsOf(heights);
  const count = 1 + Math.max(...levels);
  const sizes = new Array<number>(count).fill(0);
  for (const level of levels) sizes[level] = (sizes[level] as number) + 1;
  const plain = runsOf(marks, marks.length, count);
  const belts = runsOf(marks, marks.length + 1, count);
  const prior = PRIOR.level - Math.log(axes);
  const made = (ways: readonly (readonly number[])[], weight: number): Division[] =>
    ways.map((word) => ({
      rule: { by: 'level', axis, runs: runsIn(word, sizes) },
      axis: index,
      marks: levels.map((level) => word[level] as number),
      prior: prior + weight - Math.log(ways.length),
    }));
  return [...made(plain, 0), ...made(belts, BELT)];
}

/** Place → its level, 0 for the highest. */
function levelsOf(heights: readonly number[]): number[] {
  const order = heights
    .map((_, i) => i)
    .sort((a, b) => (heights[b] as number) - (heights[a] as number));
  const levels = new Array<number>(heights.length).fill(0);
  let level = 0;
  order.forEach((i, at) => {
    const before = heights[order[at - 1] ?? i] as number;
    if (before - (heights[i] as number) > SAME_LEVEL) level++;
    levels[i] = level;
  });
  return levels;
}

/** Words over the levels in exactly so many runs, with every mark; none where that is too many. */
function runsOf(marks: readonly number[], runs: number, levels: number): number[][] {
  if (levels < runs) return [];
  const orders = wordsOf(marks, runs).filter(
    (word) => marks.every((m) => word.includes(m)) && word.every((m, i) => m !== word[i - 1]),
  );
  const cuts = cutsOf(levels, runs - 1);
  if (orders.length * cuts.length > MOST_WAYS) return [];
  return orders.flatMap((order) =>
    cuts.map((cut) =>
      Array.from(
        { length: levels },
        (_, level) => order[cut.filter((c) => c <= level).length] as number,
      ),
    ),
  );
}

/** Increasing choices of so many cuts from 1 to levels − 1. */
function cutsOf(levels: number, count: number, from = 1): number[][] {
  if (count === 0) return [[]];
  const out: number[][] = [];
  for (let c = from; c < levels; c++)
    for (const rest of cutsOf(levels, count - 1, c + 1)) {
      out.push([c, ...rest]);
      if (out.length > MOST_WAYS) return out;
    }
  return out;
}

function runsIn(word: readonly number[], sizes: readonly number[]) {
  const runs: { mark: number; places: number }[] = [];
  word.forEach((mark, level) => {
    const last = runs.at(-1);
    if (last?.mark === mark) last.places += sizes[level] as number;
    else runs.push({ mark, places: sizes[level] as number });
  });
  return runs;
}
