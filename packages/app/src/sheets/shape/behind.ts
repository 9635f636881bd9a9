// The rows of a pile that a kind rests on, each with how its sides lie on the kind's.

import type { Kind, Pile, PileKinds } from '@shellraise/core';

/** One row of the pile behind a kind. */
export interface RowBehind {
  readonly list: 'readings' | 'kinds';
  readonly row: number;
  /** Side as written (from 0) → side of the kind. */
  readonly liesOn: readonly number[];
}

/** The kind's row of the file and all its readings, in the order of the pile. */
export function rowsBehind(id: string, worked: PileKinds, pile: Pile): RowBehind[] {
  const kind = worked.kinds.find((one) => one.id === id);
  const rows = pile.kinds.flatMap((one, row): RowBehind[] =>
    one.id === id && kind
      ? [{ list: 'kinds', row, liesOn: rowLiesOn(one.sides, kind, pile.hubAllowance ?? 0) }]
      : [],
  );
  const readings = worked.assigned.flatMap((one): RowBehind[] =>
    (one.kind ?? one.candidates[0]) === id && pile.readings[one.reading]
      ? [{ list: 'readings', row: one.reading, liesOn: one.liesOn }]
      : [],
  );
  return [...rows, ...readings];
}

/** A row of the file is never turned; it is read backwards where it was written from inside. */
function rowLiesOn(sides: readonly number[], kind: Kind, allowance: number): number[] {
  const ahead = sides.map((_, i) => i);
  const back = [...ahead].reverse();
  const off = (liesOn: readonly number[]): number =>
    sides.reduce((sum, x, i) => sum + (x + allowance - (kind.sides[liesOn[i] ?? 0] ?? x)) ** 2, 0);
  return off(back) < off(ahead) ? back : ahead;
}

/** Whether the sides of a row run the same way round as its kind's. */
export function runsAhead({ liesOn }: Pick<RowBehind, 'liesOn'>): boolean {
  const n = liesOn.length;
  return n < 2 || (liesOn[1] as number) === ((liesOn[0] as number) + 1) % n;
}
