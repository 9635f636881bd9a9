// Families of kinds that may stand for one another, and the labels that they give to the sides of
// a net: two sides have one label where a panel may be turned or swapped so that one lies where
// the other did. Symmetries of the net keep these labels.

import { joinInto, rootInto, singletons } from '../math/sets.ts';
import type { Kind } from '../pile/kind.ts';
import type { SideId } from '../shell/ids.ts';
import { cornerCount, kindSide, placeAt, type Shell, sideCount } from '../shell/shell.ts';
import { EQUAL_SIDE, EQUAL_SIDE_Z } from './tolerances.ts';

/** Kinds that share their stock. Most families are one kind. */
export interface Family {
  /** Indices of its kinds, ascending; the first speaks for all. */
  readonly kinds: readonly number[];
  /** For each of its kinds the side that lies where side 0 of the first does. */
  readonly offsets: readonly number[];
  /** Turns that bring the panel onto itself repeat after this many sides: 1 where all sides are
   * equal, the number of sides where no turn does. */
  readonly period: number;
}

/** The families of a list of kinds. `interchangeable` lists ids that may stand for one another;
 * lists that share an id are joined. Throws for an unknown id, and for kinds with different
 * numbers of sides. */
export function familiesOf(
  kinds: readonly Kind[],
  interchangeable: readonly (readonly string[])[] = [],
): Family[] {
  const shared = singletons(kinds.length);
  for (const ids of interchangeable) {
    const [first, ...others] = ids.map((id) => indexOf(kinds, id));
    for (const other of others) joinInto(shared, first as number, other);
  }
  const leader = kinds.map((_, k) => rootInto(shared, k));
  return [...new Set(leader)].map((lead) => {
    const members = leader.flatMap((l, k) => (l === lead ? [k] : []));
    const first = kinds[lead] as Kind;
    const offsets = members.map((k) => bestOffset(first, kinds[k] as Kind));
    return { kinds: members, offsets, period: periodOf(first) };
  });
}

/** Labels of the sides of a net, for `symmetries`. */
export interface NetLabels {
  /** Side → label. */
  readonly labels: Int32Array;
  /** Side → the label it bears in a mirror, −1 where the panel's mirror image is no kind. */
  readonly mirrored: Int32Array;
}

/** The labels that families give to the sides of a net whose places name kinds by index. Throws
 * where a place's kind is not in the list or has another number of sides. */
export function labelsOf(
  shell: Shell,
  kinds: readonly Kind[],
  families: readonly Family[],
): NetLabels {
  const start: number[] = [];
  families.reduce((total, family, f) => {
    start[f] = total;
    return total + family.period;
  }, 0);
  const familyOf = familyIndex(kinds, families);
  const mirrors = families.map((family) => mirrorOf(kinds, families, family));
  const labels = new Int32Array(sideCount(shell));
  const mirrored = new Int32Array(sideCount(shell));
  for (let s = 0; s < labels.length; s++) {
    const kind = shell.kind[placeAt(shell, s as SideId)] as number;
    const n = kinds[kind]?.sides.length;
    if (n === undefined || n !== cornerCount(shell, placeAt(shell, s as SideId)))
      throw new Error(`place ${shell.sidePlace[s]} and its kind ${kind} do not fit`);
    const f = familyOf[kind] as number;
    const family = families[f] as Family;
    const offset = family.offsets[family.kinds.indexOf(kind)] as number;
    const side = (kindSide(shell, s as SideId) - offset + n) % n;
    labels[s] = (start[f] as number) + (side % family.period);
    const mirror = mirrors[f];
    mirrored[s] = mirror
      ? (start[mirror.family] as number) + (((mirror.offset - side + n) % n) % family.period)
      : -1;
  }
  return { labels, mirrored };
}

/** Kind → its family. */
export function familyIndex(kinds: readonly Kind[], families: readonly Family[]): Int32Array {
  const index = new Int32Array(kinds.length);
  families.forEach((family, f) => {
    for (const k of family.kinds) index[k] = f;
  });
  return index;
}

function indexOf(kinds: readonly Kind[], id: string): number {
  const k = kinds.findIndex((kind) => kind.id === id);
  if (k < 0) throw new Error(`interchangeable kind ${id} is not in the list of kinds`);
  return k;
}

/** The turn of `other` whose sides lie nearest to those of `first`; ties: the smallest. */
function bestOffset(first: Kind, other: Kind): number {
  const n = first.sides.length;
  if (other.sides.length !== n)
    throw new Error(`kinds ${first.id} and ${other.id} differ in number of sides`);
  const misfit = (offset: number): number =>
    first.sides.reduce(
      (sum, x, i) => sum + (x - (other.sides[(i + offset) % n] as number)) ** 2,
      0,
    );
  let best = 0;
  for (let offset = 1; offset < n; offset++) if (misfit(offset) < misfit(best)) best = offset;
  return best;
}

function periodOf(kind: Kind): number {
  const n = kind.sides.length;
  for (let period = 1; period < n; period++)
    if (n % period === 0 && kind.sides.every((_, i) => equal(kind, i, kind, (i + period) % n)))
      return period;
  return n;
}

/** The family whose panels, mirrored, are of the given one: its side `offset − i` is side i. */
function mirrorOf(
  kinds: readonly Kind[],
  families: readonly Family[],
  family: Family,
): { family: number; offset: number } | null {
  const one = kinds[family.kinds[0] as number] as Kind;
  const n = one.sides.length;
  for (let f = 0; f < families.length; f++) {
    const other = kinds[families[f]?.kinds[0] as number] as Kind;
    if (other.sides.length !== n || families[f]?.period !== family.period) continue;
    for (let offset = 0; offset < n; offset++)
      if (one.sides.every((_, i) => equal(one, i, other, (offset - i + n) % n)))
        return { family: f, offset };
  }
  return null;
}

function equal(a: Kind, i: number, b: Kind, j: number): boolean {
  const [x, y] = [a.sides[i] as number, b.sides[j] as number];
  const sd = Math.hypot(a.sideSds[i] as number, b.sideSds[j] as number);
  return Math.abs(x - y) <= EQUAL_SIDE_Z * sd + EQUAL_SIDE * Math.max(x, y);
}
