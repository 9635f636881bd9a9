// Places against stock: what a shell needs of each family of kinds, and what is there.

import type { Kind } from '../pile/kind.ts';
import type { Shell } from '../shell/shell.ts';
import { type Family, familyIndex } from './families.ts';

/** One family of kinds: what the shell needs and what the pile has. Panels, all of them. */
export interface StockRow {
  /** Ids of the kinds that share this stock. */
  readonly kinds: readonly string[];
  readonly need: number;
  readonly good: number;
  readonly repair: number;
  /** Panels that must be mended first, counted among those used: 0 unless repair is allowed. */
  readonly mended: number;
  /** Places that nothing in stock fills. */
  readonly short: number;
  /** Of these, places that mending what is broken would fill. */
  readonly mendable: number;
  /** Usable panels that the shell leaves over. */
  readonly left: number;
  /** False where one of the kinds was not counted: taken as unlimited, so never short, and what
   * is left is not known (0). */
  readonly counted: boolean;
}

/** A row for each family, those the shell needs none of as well. With `repaired`, broken panels
 * that can be mended fill places once the good ones are used up. */
export function stockRows(
  kinds: readonly Kind[],
  families: readonly Family[],
  need: ArrayLike<number>,
  repaired: boolean,
): StockRow[] {
  return families.map((family, f) => {
    const members = family.kinds.map((k) => kinds[k] as Kind);
    const sum = (of: (kind: Kind) => number): number =>
      members.reduce((total, kind) => total + of(kind), 0);
    const counted = members.every((kind) => kind.counted);
    const [good, repair] = [sum((kind) => kind.good), sum((kind) => kind.repair)];
    const wanted = need[f] as number;
    const lacking = counted ? Math.max(0, wanted - good) : 0;
    const mended = repaired ? Math.min(lacking, repair) : 0;
    const short = lacking - mended;
    return {
      kinds: members.map((kind) => kind.id),
      need: wanted,
      good,
      repair,
      mended,
      short,
      mendable: repaired ? 0 : Math.min(short, repair),
      left: counted ? Math.max(0, good + (repaired ? repair : 0) - wanted) : 0,
      counted,
    };
  });
}

/** Family → places of some of a shell's places. Throws for a place whose kind is not in the list. */
export function needOf(
  shell: Shell,
  places: Iterable<number>,
  kinds: readonly Kind[],
  families: readonly Family[],
): Int32Array {
  const family = familyIndex(kinds, families);
  const need = new Int32Array(families.length);
  for (const p of places) {
    const f = family[shell.kind[p] as number];
    if (f === undefined) throw new Error(`place ${p} has kind ${shell.kind[p]}, not in the list`);
    need[f] = (need[f] as number) + 1;
  }
  return need;
}
