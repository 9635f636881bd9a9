// What a process weighs, and whether it grows by more than what it holds.

/** What a process has, bytes, with what it holds. */
export interface Weight {
  /** Heap and what hangs on it outside (buffers), after a collection. */
  readonly heap: number;
  /** Resident set: all that the system has given it. */
  readonly rss: number;
  /** Entries of the record in it. */
  readonly entries: number;
}

/** The same at an hour of the simulated weekend. */
export interface HourWeight extends Weight {
  readonly hour: number;
}

/** How a heap grew: least squares of `heap = a + perEntry · entries + perHour · hours`, bytes. */
export interface Growth {
  readonly perEntry: number;
  readonly perHour: number;
  /** Standard error of `perHour`. */
  readonly perHourSd: number;
  readonly hours: number;
  /** At the first and the last hour. */
  readonly first: number;
  readonly last: number;
}

/** Weighs this process; needs `--expose-gc`. */
export function weigh(entries: number): Weight {
  const { gc } = globalThis as { gc?: () => void };
  if (!gc) throw new Error('started without --expose-gc');
  gc();
  gc();
  const { heapUsed, external, rss } = process.memoryUsage();
  return { heap: heapUsed + external, rss, entries };
}

/** The growth over some hours, at least five; entries are left out where their number never changes. */
export function growthOf(weights: readonly HourWeight[]): Growth {
  const [first, last] = [weights[0], weights.at(-1)];
  if (!first || !last || weights.length < 5) throw new Error(`${weights.length} hours are too few`);
  const grew = weights.some(({ entries }) => entries !== first.entries);
  // From the first hour, so that the sums stay small.
  const rows = weights.map(({ hour, entries }) =>
    grew ? [1, hour - first.hour, entries - first.entries] : [1, hour - first.hour],
  );
  const inverse = inverted(
    (rows[0] as number[]).map((_, i) =>
      (rows[0] as number[]).map((_, j) => sum(rows.map((row) => at(row, i) * at(row, j)))),
    ),
  );
  const right = (rows[0] as number[]).map((_, i) =>
    sum(rows.map((row, n) => at(row, i) * ((weights[n] as HourWeight).heap - first.heap))),
  );
  const found = inverse.map((row) => sum(row.map((x, j) => x * at(right, j))));
  const left = sum(
    rows.map(
      (row, n) =>
        ((weights[n] as HourWeight).heap - first.heap - sum(row.map((x, i) => x * at(found, i)))) **
        2,
    ),
  );
  const variance = left / Math.max(1, rows.length - found.length);
  return {
    perEntry: found[2] ?? 0,
    perHour: at(found, 1),
    perHourSd: Math.sqrt(variance * at(inverse[1] as number[], 1)),
    hours: last.hour - first.hour,
    first: first.heap,
    last: last.heap,
  };
}

/** Whether a heap is flat: what it grew by the hour alone, over `hours`, less twice what may be chance, is
 * at most `share` of what it began with. */
export const isFlat = (
  { perHour, perHourSd, first }: Growth,
  hours: number,
  share: number,
): boolean => (perHour - 2 * perHourSd) * hours <= share * first;

const at = (list: readonly number[], i: number): number => list[i] as number;
const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);

/** The inverse of a small positive definite matrix, by Gauss and Jordan. */
function inverted(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < n; i++) {
    const pivot = at(rows[i] as number[], i);
    if (!(pivot > 0)) throw new Error('the hours do not tell one thing from another');
    rows[i] = (rows[i] as number[]).map((x) => x / pivot);
    for (let k = 0; k < n; k++) {
      const factor = at(rows[k] as number[], i);
      if (k !== i)
        rows[k] = (rows[k] as number[]).map((x, j) => x - factor * at(rows[i] as number[], j));
    }
  }
  return rows.map((row) => row.slice(n));
}
