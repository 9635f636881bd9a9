// What is suspect, with the readings that can be put right: sides that the closed net does not fit,
// and readings that disagree with the rest of their kind. Sides count from 0; lengths are metres as
// they were written down, without the hub allowance.

import type { Kind, Pile, PileKinds, Shape } from '@shellraise/core';
import type { Draft } from 'immer';
import type { Doc } from '../../state/doc.ts';

/** A length of the pile that can be corrected. */
export interface Target {
  readonly list: 'readings' | 'kinds';
  readonly row: number;
  readonly side: number;
}

/** One length behind a suspicion. */
export interface Behind {
  readonly target: Target;
  readonly tag: string | null;
  readonly by: string | null;
  readonly measured: number;
}

/** One suspicion. */
export interface Suspicion {
  /** `net`: the closed net does not fit; `pile`: the others of its kind say otherwise. */
  readonly why: 'net' | 'pile';
  readonly kind: string;
  /** Of the kind where the net says so, of the row as written otherwise. */
  readonly side: number;
  readonly measured: number;
  readonly expected: number;
  /** Worst first. */
  readonly behind: readonly Behind[];
}

/** All that is suspect: what the net says first, then what the pile itself says and the net has not
 * named already. Kinds with a mend are told by that. */
export function suspicionsOf(shape: Shape | null, worked: PileKinds, pile: Pile): Suspicion[] {
  const mended = new Set(shape?.mends.map(({ kind }) => kind));
  const left = (shape?.suspects ?? []).filter(({ kind }) => !mended.has(kind));
  const ofNet = left.map((suspect): Suspicion => {
    const allowance = pile.hubAllowance ?? 0;
    const { kind, side } = suspect;
    const expected = suspect.expected - allowance;
    const behind = readingsBehind(kind, side, worked, pile).sort(
      (a, b) => Math.abs(b.measured - expected) - Math.abs(a.measured - expected),
    );
    return { why: 'net', kind, side, measured: suspect.measured - allowance, expected, behind };
  });
  const named = new Set(ofNet.flatMap(({ behind }) => behind.map(({ target }) => keyOf(target))));
  const ofPile = worked.suspects.flatMap((suspect): Suspicion[] => {
    const { kind, side, measured, expected, reading, tag, by } = suspect;
    const row = reading ?? pile.kinds.findIndex(({ id }) => id === kind);
    const target: Target = { list: reading === null ? 'kinds' : 'readings', row, side };
    if (row < 0 || named.has(keyOf(target))) return [];
    return [
      { why: 'pile', kind, side, measured, expected, behind: [{ target, tag, by, measured }] },
    ];
  });
  return [...ofNet, ...ofPile];
}

/** The lengths that a kind's side is the mean of. */
export function readingsBehind(
  kind: Kind['id'],
  side: number,
  worked: PileKinds,
  pile: Pile,
): Behind[] {
  const rows = pile.kinds.flatMap(({ id, sides }, row): Behind[] => {
    const measured = sides[side];
    if (id !== kind || measured === undefined) return [];
    return [{ target: { list: 'kinds', row, side }, tag: null, by: null, measured }];
  });
  const readings = worked.assigned.flatMap(({ reading, kind: own, liesOn }): Behind[] => {
    const row = pile.readings[reading];
    const at = liesOn.indexOf(side);
    const measured = row?.sides[at];
    if (own !== kind || !row || measured === undefined) return [];
    const target: Target = { list: 'readings', row: reading, side: at };
    return [{ target, tag: row.tag ?? null, by: row.by ?? null, measured }];
  });
  return [...rows, ...readings];
}

/** A target's name. */
export const keyOf = ({ list, row, side }: Target): string => `${list} ${row} ${side}`;

/** Puts one length right in a project. */
export function correct(doc: Draft<Doc>, { list, row, side }: Target, metres: number): void {
  const one = doc.project.pile[list][row];
  if (one && side < one.sides.length) one.sides[side] = metres;
}

/** Shortest and longest side that a pile may have, metres: as core's project schema. */
export const sideRange = { least: 0.05, most: 12 } as const;

/** Whether the panel still closes with this length: the longest side shorter than the others. */
export function stillMeets(pile: Pile, { list, row, side }: Target, metres: number): boolean {
  const sides = (pile[list][row]?.sides ?? []).map((own, i) => (i === side ? metres : own));
  const sum = sides.reduce((total, own) => total + own, 0);
  return 2 * Math.max(...sides) < sum;
}
