// The constant error of each person's tape (a worn hook, a stretched tape): least squares over
// panels that several people measured, panel means eliminated, made robust by leaving out readings
// that stand off by more than four standard deviations. The mean side of a reading is used, so that
// no turning order is needed. Only differences between people can be known; the mean over the
// people who share panels, weighted by their readings, is taken to be right, those left out who stand
// far off the others.

import { joinInto, rootInto, singletons } from '../math/sets.ts';
import { BIAS_Z, SHIFT_Z } from './tolerances.ts';

/** One reading as the estimate sees it. */
export interface SharedReading {
  readonly by: string;
  /** What was measured: readings with the same key are of the same thing. */
  readonly panel: string;
  /** Mean of the sides, metres. */
  readonly meanSide: number;
  readonly sideCount: number;
}

/** What is known of one person's tape. */
export interface PersonBias {
  readonly by: string;
  readonly readings: number;
  /** Metres; positive: reads too long. 0 where nothing is known. */
  readonly bias: number;
  /** Standard deviation of the bias, metres; null where nothing is known. */
  readonly sd: number | null;
  /** What it rests on: panels measured by two people, only kinds measured by two people, nothing. */
  readonly basis: 'panels' | 'kinds' | 'nothing';
  /** Whether it was taken off this person's readings: a bias known from panels and beyond three of
   * its standard deviations; one known from kinds only where whole kinds stand apart by it (see
   * shifts.ts); what the file states. */
  readonly applied: boolean;
  /** True where the file states it, 0 included; then nothing is estimated. */
  readonly stated?: boolean;
}

const REJECT_Z = 4;
const PASSES = 12;

/** The bias of everyone in `readings`, in order of name. `sd` is the noise of one side, metres. */
export function biasesOf(
  readings: readonly SharedReading[],
  sd: number,
  basis: 'panels' | 'kinds',
): PersonBias[] {
  const people = [...new Set(readings.map((r) => r.by))].sort();
  const index = new Map(people.map((by, q) => [by, q]));
  const shared = sharedGroups(readings);
  const components = linkedPeople(shared, index, () => 1);
  let weights = shared.map((group) => group.map((r) => r.sideCount));
  let solved = solve(shared, index, weights);
  for (let pass = 0; pass < PASSES; pass++) {
    const limit = REJECT_Z * Math.max(1, (PASSES - 2 - pass) / 2);
    weights = shared.map((group, g) =>
      keep(group, weights[g] as number[], solved, index, sd, limit),
    );
    solved = solve(shared, index, weights);
  }
  const shares = people.map((by) => shared.flat().filter((r) => r.by === by).length);
  return people.map((by, q) => {
    const linked = [...people.keys()].filter((p) => components[p] === components[q]);
    const known = linked.length > 1;
    const zero = zeroOf(linked, solved.bias, shares, sd);
    const bias = known ? (solved.bias[q] as number) - zero : 0;
    const biasSd = known ? sd * Math.sqrt(Math.max(0, solved.variance[q] as number)) : null;
    return {
      by,
      readings: readings.filter((r) => r.by === by).length,
      bias,
      sd: biasSd,
      basis: known ? basis : 'nothing',
      applied: biasSd !== null && basis === 'panels' && Math.abs(bias) > BIAS_Z * biasSd,
    };
  });
}

/** What is taken to be right among linked people: 0, their weighted mean; but where most agree and a
 * few stand far off, the mean of those that agree. A broken hook says nothing of the other tapes. */
function zeroOf(
  linked: readonly number[],
  biases: readonly number[],
  shares: readonly number[],
  sd: number,
): number {
  const sorted = linked.map((q) => biases[q] as number).sort((a, b) => a - b);
  const middle = sorted[sorted.length >> 1] ?? 0;
  const near = linked.filter((q) => Math.abs((biases[q] as number) - middle) <= SHIFT_Z * sd);
  if (near.length === linked.length || 2 * near.length <= linked.length) return 0;
  const total = near.reduce((sum, q) => sum + (shares[q] as number), 0);
  return near.reduce((sum, q) => sum + (shares[q] as number) * (biases[q] as number), 0) / total;
}

/** Readings of one thing by more than one person, thing by thing. */
function sharedGroups(readings: readonly SharedReading[]): SharedReading[][] {
  const groups = new Map<string, SharedReading[]>();
  for (const r of readings) {
    const group = groups.get(r.panel);
    if (group) group.push(r);
    else groups.set(r.panel, [r]);
  }
  return [...groups.values()].filter((group) => new Set(group.map((r) => r.by)).size > 1);
}

/** Person → lowest of the people linked to them by shared things, by readings of some weight. */
function linkedPeople(
  groups: readonly (readonly SharedReading[])[],
  index: ReadonlyMap<string, number>,
  weight: (group: number, reading: number) => number,
): number[] {
  const linked = singletons(index.size);
  const at = (reading: SharedReading | undefined): number =>
    index.get((reading as SharedReading).by) as number;
  groups.forEach((group, g) => {
    const counted = group.filter((_, i) => weight(g, i) > 0);
    for (const r of counted) joinInto(linked, at(counted[0]), at(r));
  });
  return [...linked.keys()].map((q) => rootInto(linked, q));
}

interface Solved {
  readonly bias: readonly number[];
  /** Of each bias, in units of the variance of one side. */
  readonly variance: readonly number[];
}

/** Weighted least squares with panel means eliminated, and the weighted mean of the biases of each
 * linked set held at 0. */
function solve(
  groups: readonly (readonly SharedReading[])[],
  index: ReadonlyMap<string, number>,
  weights: readonly (readonly number[])[],
): Solved {
  const n = index.size;
  const components = linkedPeople(groups, index, (g, i) => weights[g]?.[i] as number);
  const a = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  const b = new Array<number>(n).fill(0);
  const load = new Array<number>(n).fill(0);
  const add = (i: number, j: number, value: number): void => {
    const row = a[i] as number[];
    row[j] = (row[j] as number) + value;
  };
  groups.forEach((group, g) => {
    const w = weights[g] as readonly number[];
    const total = w.reduce((sum, x) => sum + x, 0);
    if (total === 0) return;
    const mean = group.reduce((sum, r, i) => sum + (w[i] as number) * r.meanSide, 0) / total;
    const own = new Map<number, number>();
    group.forEach((r, i) => {
      const q = index.get(r.by) as number;
      const wi = w[i] as number;
      own.set(q, (own.get(q) ?? 0) + wi);
      b[q] = (b[q] as number) + wi * (r.meanSide - mean);
    });
    for (const [q, wq] of own) {
      load[q] = (load[q] as number) + wq;
      add(q, q, wq);
      for (const [p, wp] of own) add(q, p, (-wq * wp) / total);
    }
  });
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++)
      if (components[i] === components[j]) add(i, j, (load[i] as number) * (load[j] as number));
    if (load[i] === 0) add(i, i, 1);
  }
  const inverse = inverseOf(a);
  const row = (i: number): readonly number[] => inverse[i] as readonly number[];
  return {
    bias: b.map((_, i) => row(i).reduce((sum, x, j) => sum + x * (b[j] as number), 0)),
    variance: varianceWithoutGauge(inverse, a, load, components),
  };
}

/** diag(A⁻¹ N A⁻¹), N the normal matrix without the gauge rows: the spread of the estimate. */
function varianceWithoutGauge(
  inverse: readonly (readonly number[])[],
  a: readonly (readonly number[])[],
  load: readonly number[],
  components: readonly number[],
): number[] {
  const normal = a.map((row, i) =>
    row.map((x, j) =>
      components[i] === components[j] ? x - (load[i] as number) * (load[j] as number) : x,
    ),
  );
  return inverse.map((row) => {
    const left = normal.map((column) =>
      column.reduce((sum, x, k) => sum + x * (row[k] as number), 0),
    );
    return left.reduce((sum, x, k) => sum + x * (row[k] as number), 0);
  });
}

/** Weights with the readings left out that stand off from their thing's mean. */
function keep(
  group: readonly SharedReading[],
  weights: readonly number[],
  solved: Solved,
  index: ReadonlyMap<string, number>,
  sd: number,
  limit: number,
): number[] {
  const clean = group.map((r) => r.meanSide - (solved.bias[index.get(r.by) as number] as number));
  const total = weights.reduce((sum, w) => sum + w, 0);
  if (total === 0) return [...weights];
  const mean = clean.reduce((sum, x, i) => sum + x * (weights[i] as number), 0) / total;
  return group.map((r, i) => {
    const off = Math.abs((clean[i] as number) - mean);
    return off > (limit * sd) / Math.sqrt(r.sideCount) ? 0 : r.sideCount;
  });
}

/** The inverse of a small symmetric positive definite matrix (Gauss–Jordan with pivoting). */
function inverseOf(matrix: readonly (readonly number[])[]): number[][] {
  const n = matrix.length;
  const m = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++)
      if (Math.abs(m[i]?.[k] as number) > Math.abs(m[pivot]?.[k] as number)) pivot = i;
    const top = m[pivot] as number[];
    if (top[k] === 0) throw new Error('the normal equations of the biases are singular');
    m[pivot] = m[k] as number[];
    const scaled = top.map((x) => x / (top[k] as number));
    m[k] = scaled;
    for (let i = 0; i < n; i++) {
      const row = m[i] as number[];
      const factor = row[k] as number;
      if (i !== k && factor !== 0) m[i] = row.map((x, j) => x - factor * (scaled[j] as number));
    }
  }
  return m.map((row) => row.slice(n));
}
