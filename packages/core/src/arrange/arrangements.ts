// Net and stock -> the shells that can stand: every distinct way up, every natural cut at the
// ground, what each needs of every kind against what the pile has.

import { assertNumber } from '../math/doors.ts';
import type { Kind } from '../pile/kind.ts';
import { checkShell } from '../shell/check.ts';
import { type Courses, coursesOf, layersFrom } from '../shell/courses.ts';
import { type Cut, type CutOptions, naturalCuts } from '../shell/cuts.ts';
import { type Lean, orientShell } from '../shell/orient.ts';
import { type Part, partOf } from '../shell/part.ts';
import { placeCount, type Shell } from '../shell/shell.ts';
import { COVERED_ONCE } from '../shell/tolerances.ts';
import { type Family, familiesOf } from './families.ts';
import { leanedWay, leanedWays } from './leaned-ways.ts';
import { needOf, type StockRow, stockRows } from './stock.ts';
import { RISE_STEP } from './tolerances.ts';
import { type CrownAt, type WayUp, waysUpOf } from './ways-up.ts';

/** Options of `arrangements`. */
export interface ArrangeOptions {
  /** Lists of ids that may stand for one another and share their stock. */
  readonly interchangeable?: readonly (readonly string[])[];
  /** True to count panels that must be mended first; false unless told. */
  readonly repaired?: boolean;
  /** What may be the crown; all three unless told. */
  readonly crowns?: readonly CrownAt[];
  /** Ways up off the crowns as well (see leaned-ways.ts); only crowns unless told. */
  readonly leaned?: boolean;
  /** Only ways up that lean like this from a crown; the crowns themselves unless told. */
  readonly lean?: Lean;
  /** Ways up to look at; all unless told. */
  readonly only?: (way: WayUp) => boolean;
  /** Below the equator, base rings of less mean radius than this part of the sphere's are left
   * out: such a ball would stand on a foot. 0.5 unless told. */
  readonly leastFloor?: number;
  readonly cuts?: CutOptions;
  /** Ways up looked at, at most, in their order; 300 unless told. Only nets of little symmetry
   * have more. */
  readonly mostWays?: number;
  /** Arrangements listed, at most, the best; 500 unless told. */
  readonly most?: number;
}

/** One shell that could stand. */
export interface Arrangement {
  /** Index in the list of ways up. */
  readonly wayUp: number;
  /** Places and hubs of the net, heights with that way up. */
  readonly cut: Cut;
  /** Places in each course, from the ground up. */
  readonly courses: readonly number[];
  /** Sides that stand on the ground and are bolted to nothing. */
  readonly openSides: number;
  /** One row for each family of kinds, in the order of the kinds' list. */
  readonly stock: readonly StockRow[];
  /** Places that nothing in stock fills, over all kinds. */
  readonly short: number;
}

/** What `arrangements` finds. */
export interface Arrangements {
  /** `open`: the net was never complete, so no ways up are told; `unsound`: it is no sound
   * surface. Both leave the lists empty and give the reason. */
  readonly status: 'arranged' | 'open' | 'unsound';
  /** Why not, in words; empty when arranged. */
  readonly reason: string;
  /** Rotations that lay the net on itself, with the one that moves nothing; 0 if not arranged. */
  readonly rotations: number;
  readonly waysUp: readonly WayUp[];
  /** Nothing short first, the tallest of these first; then those that lack fewest, then tallest;
   * tallest by the crown's rise over the mean of the base hubs, then more places. */
  readonly arrangements: readonly Arrangement[];
  /** Index of the tallest with nothing short, null where there is none. */
  readonly tallest: number | null;
  /** The same among those with a flat base ring. */
  readonly tallestFlat: number | null;
  /** Ids of kinds that nobody counted: taken as unlimited. */
  readonly uncounted: readonly string[];
  /** False where `mostWays` or `most` left something out. */
  readonly complete: boolean;
}

/** Every distinct shell that a closed net can stand as, against the stock. Places name kinds by
 * their index in `kinds`. RangeError for an option that is no number from 0. */
export function arrangements(
  shell: Shell,
  kinds: readonly Kind[],
  options: ArrangeOptions = {},
): Arrangements {
  for (const name of ['leastFloor', 'mostWays', 'most'] as const)
    assertNumber(name, options[name] ?? 0, 0);
  const fault = faultOf(shell);
  if (fault) return { ...NOTHING, ...fault };
  const families = familiesOf(kinds, options.interchangeable);
  const { waysUp: crownsUp, rotations, turns } = waysUpOf(shell, kinds, families);
  const { lean } = options;
  const leaned = options.leaned ? leanedWays(shell, crownsUp, turns) : [];
  const waysUp = lean ? crownsUp.map((way) => leanedWay(way, lean)) : [...crownsUp, ...leaned];
  const crowns = options.crowns ?? (['hub', 'place', 'seam'] as const);
  const asked = (way: WayUp): boolean => crowns.includes(way.at) && (options.only?.(way) ?? true);
  const wanted = waysUp.flatMap((way, i) => (asked(way) ? [i] : []));
  const rank = (a: { readonly cut: Cut }): number =>
    Math.round(a.cut.rise / (RISE_STEP * shell.radius));
  const looked = wanted.slice(0, options.mostWays ?? 300);
  const all = looked
    .flatMap((i) => cutsOf(shell, kinds, families, waysUp, i, options))
    .sort(
      (a, b) =>
        a.short - b.short ||
        rank(b) - rank(a) ||
        b.cut.places.length - a.cut.places.length ||
        a.wayUp - b.wayUp,
    );
  const listed = all
    .slice(0, options.most ?? 500)
    .map((found) => ({ ...found, courses: courseCounts(shell, found.cut) }));
  return {
    status: 'arranged',
    reason: '',
    rotations,
    waysUp,
    arrangements: listed,
    tallest: indexWhere(listed, (a) => a.short === 0),
    tallestFlat: indexWhere(listed, (a) => a.short === 0 && a.cut.flat),
    uncounted: kinds.filter((kind) => !kind.counted).map((kind) => kind.id),
    complete: looked.length === wanted.length && listed.length === all.length,
  };
}

/** A shell as it will stand, with where its hubs and places are in the net. */
export interface Standing extends Part {
  readonly courses: Courses;
}

/** The shell of an arrangement: crown up, datum towards +x turned on by `datumTurn` (radians,
 * anticlockwise seen from above), its places numbered. */
export function standingShell(shell: Shell, way: WayUp, cut: Cut, datumTurn = 0): Standing {
  const part = partOf(orientShell(shell, way.crown, datumTurn), cut.places);
  return { ...part, courses: coursesOf(part.shell) };
}

const NOTHING: Arrangements = {
  status: 'open',
  reason: '',
  rotations: 0,
  waysUp: [],
  arrangements: [],
  tallest: null,
  tallestFlat: null,
  uncounted: [],
  complete: true,
};

function faultOf(shell: Shell): Pick<Arrangements, 'status' | 'reason'> | null {
  const verdict = checkShell(shell);
  if (!verdict.closed || placeCount(shell) === 0) {
    const open = shell.mate.filter((mate) => mate < 0).length;
    return { status: 'open', reason: `the net is not complete: ${open} sides meet nothing` };
  }
  if (verdict.sound) return null;
  const faults = [
    verdict.components > 1 && `it is ${verdict.components} pieces`,
    verdict.pinchedHubs.length > 0 && `parts touch in hub ${verdict.pinchedHubs[0]} alone`,
    verdict.looseHubs.length > 0 && `hub ${verdict.looseHubs[0]} has no place`,
    verdict.insideOut.length > 0 && `place ${verdict.insideOut[0]} is inside out`,
    verdict.offSphere.length > 0 && `hub ${verdict.offSphere[0]} is off the sphere`,
    Math.abs(verdict.coverage - 1) > COVERED_ONCE &&
      `it covers the sphere ${verdict.coverage} times`,
  ].filter((text) => text !== false);
  return { status: 'unsound', reason: `the net is no sound surface: ${faults.join('; ')}` };
}

/** The natural cuts of one way up, against the stock. */
function cutsOf(
  shell: Shell,
  kinds: readonly Kind[],
  families: readonly Family[],
  waysUp: readonly WayUp[],
  wayUp: number,
  options: ArrangeOptions,
): Omit<Arrangement, 'courses'>[] {
  const up = orientShell(shell, (waysUp[wayUp] as WayUp).crown);
  const leastFloor = (options.leastFloor ?? 0.5) * shell.radius;
  return naturalCuts(up, options.cuts)
    .filter((cut) => cut.baseZ.mean >= 0 || cut.floor.mean >= leastFloor)
    .map((cut) => {
      const need = needOf(shell, cut.places, kinds, families);
      const stock = stockRows(kinds, families, need, options.repaired ?? false);
      const short = stock.reduce((sum, row) => sum + row.short, 0);
      return { wayUp, cut, openSides: cut.base.length, stock, short };
    });
}

function courseCounts(shell: Shell, cut: Cut): number[] {
  const keep = new Uint8Array(placeCount(shell));
  for (const p of cut.places) keep[p] = 1;
  const course = layersFrom(shell, Array.from(cut.base), keep).places;
  const counts: number[] = [];
  for (const c of course)
    if (c > 0) {
      while (counts.length < c) counts.push(0);
      counts[c - 1] = (counts[c - 1] as number) + 1;
    }
  return counts;
}

function indexWhere<T>(list: readonly T[], test: (item: T) => boolean): number | null {
  const i = list.findIndex(test);
  return i < 0 ? null : i;
}
