// A key for each row of a list that has no name: a row keeps its key while others are put in or taken out,
// so that what was typed into its fields and could not be read stays with it.

import { useState } from 'react';

/** Rows with their keys, and the next key that is free. */
export interface KeyedRows {
  readonly rows: readonly object[];
  readonly keys: readonly number[];
  readonly next: number;
}

/** No rows yet. */
export const noRows: KeyedRows = { rows: [], keys: [], next: 0 };

/** The keys of the rows that come after `before`: the same object keeps its key; a row that was written
 * anew in its turn, in a list as long as before, keeps it too; any other gets one that no row had. */
export function keyedRows(before: KeyedRows, rows: readonly object[]): KeyedRows {
  const isSame = rows.length === before.rows.length;
  if (isSame && rows.every((row, i) => row === before.rows[i])) return before;
  const free = new Map<object, number[]>();
  before.rows.forEach((row, i) => {
    free.set(row, [...(free.get(row) ?? []), before.keys[i] as number]);
  });
  const kept = rows.map((row) => free.get(row)?.shift() ?? null);
  const taken = new Set(kept);
  let { next } = before;
  const keys = kept.map((key, i) => {
    if (key !== null) return key;
    const own = before.keys[i];
    return isSame && own !== undefined && !taken.has(own) ? own : next++;
  });
  return { rows, keys, next };
}

/** A key for each row, for React. */
export function useRowKeys(rows: readonly object[]): readonly number[] {
  const [kept, keep] = useState(() => keyedRows(noRows, rows));
  const now = keyedRows(kept, rows);
  if (now !== kept) keep(now);
  return now.keys;
}
