// A chain of twenty tasks, one after the other, by closed forms. Triangle from 60 to 300 with its mode at
// 120: mean (a + m + b)/3 = 160, variance (a² + m² + b² − am − ab − mb)/18 = 2600 (S. Kotz and
// J. R. van Dorp, Beyond Beta, 2004, chapter 1, from memory). Independent sums: 3200 and 52,000. With a
// common log-normal factor of mean 1 and log-deviation s: the mean stays, the second moment grows by
// exp s² (law of total variance, reckoned).

import { expect, test } from 'vitest';
import { compilePlan } from '../../src/crew/compile.ts';
import { firstList } from '../../src/crew/search.ts';
import { simulate } from '../../src/crew/simulate.ts';
import { taskOf } from '../../src/crew/task.ts';
import { weekend } from '../crew/weekend.ts';
import { checked } from './data/checked.ts';

const RUNS = 10_000;
const day = [{ date: '2026-06-12', from: '00:00', to: '24:00' }];
const crew = weekend({
  people: ['Ada', 'Bram'].map((name) => ({ name, sure: true, shifts: day })),
  breaks: [],
});

function moments(paceSd: number): { readonly mean: number; readonly variance: number } {
  const tasks = Array.from({ length: 20 }, (_, i) =>
    taskOf({
      id: `${i}`,
      after: i > 0 ? [`${i - 1}`] : [],
      duration: { low: 60, likely: 120, high: 300 },
      daylight: false,
    }),
  );
  const plan = compilePlan(tasks, crew, {});
  const list = firstList(plan.serial.network, plan.serial.planned, new Float64Array(20));
  const { finish } = simulate(plan, { seed: 7, runs: RUNS, list, look: 12, paceSd });
  const mean = finish.reduce((sum, x) => sum + x, 0) / RUNS;
  return { mean, variance: finish.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (RUNS - 1) };
}

/** Four standard errors of a mean of the runs. */
const error = (variance: number): number => 4 * Math.sqrt(variance / RUNS);

test('the mean of ten thousand runs is the sum of the triangles’ means, to four standard errors', () => {
  const { mean, variance } = moments(0);
  checked({ got: mean, expected: 3200, within: error(52_000) });
  checked({ got: variance, expected: 52_000, ratio: 0.06, what: 'variance' });
  expect(Math.abs(mean - 1.03 * 3200)).toBeGreaterThan(10 * error(52_000));
});

test('a common pace of log-deviation 0.3 leaves the mean and widens the spread', () => {
  const { mean, variance } = moments(0.3);
  const wide = (52_000 + 3200 ** 2) * Math.exp(0.09) - 3200 ** 2;
  checked({ got: mean, expected: 3200, within: error(wide) });
  checked({ got: variance, expected: wide, ratio: 0.1, what: 'variance' });
  expect(Math.abs(variance / 52_000 - 1)).toBeGreaterThan(1);
});
