// One tag on two panels: a slip of the pen that would make one panel of two, and one kind of theirs.
// Readings of one tag are taken for two panels where they lie further apart than two readings of one
// panel do, and each is like readings of other tags, as no slip of the tape is. Metres.

import { turned } from '../math/cyclic.ts';
import { fromOtherFace } from './polygon.ts';
import type { ReadingRow } from './schema.ts';
import { LONE_Z, NEIGHBOUR_Z, TAG_APART } from './tolerances.ts';

/** A reading with its place in the pile's list. */
export interface WrittenRow {
  readonly row: ReadingRow;
  readonly index: number;
}

/** Panels of other tags that each of two must look like. */
const COMPANY = 2;

/** The readings of one tag by the panels that they are of: one list, save where the tag was put on two.
 * `sd`: of one reading. */
export function partedByPanel(
  group: readonly WrittenRow[],
  all: readonly WrittenRow[],
  sd: number,
): readonly (readonly WrittenRow[])[] {
  const parts: WrittenRow[][] = [];
  for (const item of group) {
    const own = parts.find((part) => part.some((other) => !isApart(item.row, other.row, sd)));
    if (own) own.push(item);
    else parts.push([item]);
  }
  if (parts.length < 2) return [group];
  const inCompany = parts.map((part) => part.some((item) => hasCompany(item.row, all, sd)));
  const [first, ...others] = parts.filter((_, i) => inCompany[i]);
  if (!first || others.length === 0) return [group];
  return [[...first, ...parts.filter((_, i) => !inCompany[i]).flat()], ...others];
}

/** Whether two readings can't be of one panel: further apart in some side than noise tears them, however
 * they are turned or turned over, and whatever the two tapes begin at. */
function isApart({ sides: a }: ReadingRow, { sides: b }: ReadingRow, sd: number): boolean {
  if (a.length !== b.length) return true;
  return (
    leastOver(a, b, (off) => {
      const mean = off.reduce((sum, x) => sum + x, 0) / off.length;
      return Math.max(...off.map((x) => Math.abs(x - mean)));
    }) > Math.max(LONE_Z * sd, TAG_APART)
  );
}

function hasCompany(row: ReadingRow, all: readonly WrittenRow[], sd: number): boolean {
  const like = new Set<string | undefined>();
  for (const { row: other } of all) {
    if (other.tag === row.tag || other.sides.length !== row.sides.length) continue;
    const least = leastOver(row.sides, other.sides, (off) => Math.max(...off.map(Math.abs)));
    if (least > NEIGHBOUR_Z * sd) continue;
    if (other.tag === undefined || other.count !== undefined) return true;
    like.add(other.tag);
    if (like.size >= COMPANY) return true;
  }
  return false;
}

/** The least measure of what one list of sides is off another, over its turns from either face. */
function leastOver(
  a: readonly number[],
  b: readonly number[],
  measure: (off: readonly number[]) => number,
): number {
  let least = Number.POSITIVE_INFINITY;
  for (const face of [a, fromOtherFace(a)])
    for (let turn = 0; turn < face.length; turn++) {
      const off = turned(face, turn).map((x, i) => x - (b[i] as number));
      least = Math.min(least, measure(off));
    }
  return least;
}
