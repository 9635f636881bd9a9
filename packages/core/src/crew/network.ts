// The network of tasks: their order, the critical path (J. E. Kelley, M. R. Walker, 1959) and its
// moments by the three-point rule of PERT (D. G. Malcolm et al., 1959): mean (a + 4m + b)/6, variance
// ((b − a)/6)². Tasks by index; times in the unit of the durations.

import { chiSquareTail } from '../math/statistics.ts';
import type { Range, Task } from './task.ts';

/** Tasks by index with what comes after each: those after task i are `next[start[i] … start[i + 1] − 1]`. */
export interface Network {
  readonly count: number;
  readonly start: Int32Array;
  readonly next: Int32Array;
  /** How many tasks come right before each. */
  readonly before: Int32Array;
  /** Every task behind all that come before it; ties by index. */
  readonly order: Int32Array;
}

/** The network of tasks without faults (`taskFaults`); throws on an unknown id or a circle. */
export function networkOf(tasks: readonly Pick<Task, 'id' | 'after'>[]): Network {
  const ids = new Map(tasks.map(({ id }, i) => [id, i]));
  const pairs = tasks.flatMap(({ id, after }, i) =>
    [...new Set(after)].map((name) => {
      const from = ids.get(name);
      if (from === undefined) throw new Error(`task ${id} comes after ${name}, which is no task`);
      return [from, i] as const;
    }),
  );
  return networkOfPairs(tasks.length, pairs);
}

/** The network of `count` tasks from pairs of one and another that comes right after it, each once. */
export function networkOfPairs(
  count: number,
  pairs: readonly (readonly [number, number])[],
): Network {
  const start = new Int32Array(count + 1);
  const before = new Int32Array(count);
  for (const [from, to] of pairs) {
    start[from + 1]++;
    before[to]++;
  }
  for (let i = 0; i < count; i++) start[i + 1] += start[i];
  const next = new Int32Array(pairs.length);
  const at = start.slice();
  for (const [from, to] of pairs) next[at[from]++] = to;
  const left = before.slice();
  const order: number[] = [];
  for (let i = 0; i < count; i++) if (left[i] === 0) order.push(i);
  for (let k = 0; k < order.length; k++)
    for (let e = start[order[k]]; e < start[order[k] + 1]; e++)
      if (--left[next[e]] === 0) order.push(next[e]);
  if (order.length < count) throw new Error('tasks wait for each other in a circle');
  return { count, start, next, before, order: Int32Array.from(order) };
}

/** The critical path: earliest and latest starts, slack, the length, and the tasks without slack in
 * order. */
export interface CriticalPath {
  readonly length: number;
  readonly earliest: Float64Array;
  readonly latest: Float64Array;
  readonly slack: Float64Array;
  readonly critical: readonly number[];
}

/** The critical path with these durations, resources and calendar not asked. */
export function criticalPath(network: Network, duration: ArrayLike<number>): CriticalPath {
  const { count, start, next, order } = network;
  const earliest = new Float64Array(count);
  let length = 0;
  for (const i of order) {
    const end = earliest[i] + duration[i];
    length = Math.max(length, end);
    for (let e = start[i]; e < start[i + 1]; e++)
      earliest[next[e]] = Math.max(earliest[next[e]], end);
  }
  const latest = new Float64Array(count);
  for (let k = count - 1; k >= 0; k--) {
    const i = order[k];
    let end = length;
    for (let e = start[i]; e < start[i + 1]; e++) end = Math.min(end, latest[next[e]]);
    latest[i] = end - duration[i];
  }
  const slack = latest.map((x, i) => x - earliest[i]);
  const critical = [...order].filter((i) => slack[i] <= 1e-9 * Math.max(1, length));
  return { length, earliest, latest, slack, critical };
}

/** Mean and variance of a range by PERT's rule. */
export const pertMoments = ({ low, likely, high }: Range): { mean: number; variance: number } => ({
  mean: (low + 4 * likely + high) / 6,
  variance: ((high - low) / 6) ** 2,
});

/** Mean and variance of a range as the simulation draws it: a triangle from low over likely to high. */
export const triangleMoments = ({
  low,
  likely,
  high,
}: Range): { mean: number; variance: number } => ({
  mean: (low + likely + high) / 3,
  variance:
    (low * low + likely * likely + high * high - low * likely - low * high - likely * high) / 18,
});

/** Mean and variance of the critical path by PERT: over its tasks, as if no other could become critical
 * and tasks were independent, which makes it too sure of itself. The variance of several paths is that
 * of the most uncertain. */
export function pertPath(
  network: Network,
  ranges: readonly Range[],
): { mean: number; variance: number; path: CriticalPath } {
  const moments = ranges.map(pertMoments);
  const mean = moments.map((one) => one.mean);
  const path = criticalPath(network, mean);
  const onPath = new Set(path.critical);
  const { start, next, order, count } = network;
  // Most variance along a critical path that ends with each task.
  const most = new Float64Array(count);
  let variance = 0;
  for (const i of order) {
    if (!onPath.has(i)) continue;
    most[i] += moments[i].variance;
    variance = Math.max(variance, most[i]);
    for (let e = start[i]; e < start[i + 1]; e++) {
      const j = next[e];
      const tight = path.earliest[i] + mean[i] >= path.earliest[j] - 1e-9 * path.length;
      if (tight) most[j] = Math.max(most[j], most[i]);
    }
  }
  return { mean: path.length, variance, path };
}

/** Probability that a normal variable is `z` standard deviations over its mean or less. */
export const normalBelow = (z: number): number => {
  const tail = chiSquareTail(z * z, 1) / 2;
  return z > 0 ? 1 - tail : tail;
};
