// Critical paths and PERT moments of textbooks. B. W. Taylor, Introduction to Management Science, solved
// problem (flylib.com/books/en/3.287.1.117/1): path 1-3-5-7, mean 24, P(T ≤ 28) = 0.9633. A network of 14
// activities with printed starts and slacks (wizedu.com/questions/717873): A-C-E-H-I-K-M-N, mean 50.833,
// variance 11.1944. B. Render, R. M. Stair, Quantitative Analysis for Management, General Foundry (from
// memory): A-C-E-G-H, 15 weeks, variance 3.11, P(T ≤ 16) = 0.7146.

import { expect, test } from 'vitest';
import {
  networkOf,
  normalBelow,
  pertMoments,
  pertPath,
  triangleMoments,
} from '../../src/crew/network.ts';
import { checked } from './data/checked.ts';

type Row = readonly [name: string, low: number, likely: number, high: number, after: string];

const solved = (rows: readonly Row[]) => {
  const tasks = rows.map(([id, , , , after]) => ({ id, after: [...after] }));
  const ranges = rows.map(([, low, likely, high]) => ({ low, likely, high }));
  const answer = pertPath(networkOf(tasks), ranges);
  const by = (deadline: number): number =>
    normalBelow((deadline - answer.mean) / Math.sqrt(answer.variance));
  return { ...answer, by, names: answer.path.critical.map((i) => rows[i]?.[0]).join('-') };
};

test('Taylor: path 1-3-5-7, mean 24, variance 5, P(T ≤ 28) 0.9633', () => {
  // Arcs between events: 1-2, 1-3, 2-4, 3-4, 3-5, 4-5, 5-7 by the printed times and path.
  const answer = solved([
    ['1', 5, 8, 17, ''],
    ['2', 7, 10, 13, ''],
    ['3', 3, 5, 7, '1'],
    ['4', 1, 3, 5, '2'],
    ['5', 4, 6, 8, '3'],
    ['6', 3, 3, 3, '2'],
    ['7', 3, 4, 5, '5'],
  ]);
  expect(answer.names).toBe('1-3-5-7');
  checked({ got: answer.mean, expected: 24, within: 1e-9 });
  checked({ got: answer.variance, expected: 5, within: 1e-9 });
  checked({ got: answer.by(28), expected: 0.9633, within: 2e-4 });
  expect(Math.abs(answer.by(27.9) - 0.9633)).toBeGreaterThan(2e-3);
});

const NET: readonly Row[] = [
  ['A', 5, 5, 7, ''],
  ['B', 1, 2, 5, ''],
  ['C', 5, 5, 5, 'A'],
  ['D', 4, 8, 13, 'A'],
  ['E', 1, 10, 17, 'BC'],
  ['F', 1, 5, 7, 'D'],
  ['G', 2, 6, 9, 'D'],
  ['H', 4, 4, 6, 'EF'],
  ['I', 2, 7, 10, 'GH'],
  ['J', 2, 4, 7, 'I'],
  ['K', 6, 10, 13, 'I'],
  ['L', 2, 6, 6, 'J'],
  ['M', 2, 2, 3, 'K'],
  ['N', 7, 7, 12, 'LM'],
];

test('the network of 14: earliest starts, slacks, path, mean, variance, P(T ≤ 55)', () => {
  const answer = solved(NET);
  expect(answer.names).toBe('A-C-E-H-I-K-M-N');
  checked({
    what: 'earliest start',
    got: answer.path.earliest,
    expected: [0, 0, 5.33, 5.33, 10.33, 13.5, 13.5, 20, 24.33, 31, 31, 35.17, 40.83, 43],
    within: 0.006,
  });
  checked({
    what: 'slack',
    got: answer.path.slack,
    expected: [0, 8, 0, 1.83, 0, 1.83, 5, 0, 0, 2.5, 0, 2.5, 0, 0],
    within: 0.006,
  });
  checked({ what: 'mean', got: answer.mean, expected: 50.8333, within: 5e-5 });
  checked({ what: 'variance', got: answer.variance, expected: 11.19444, within: 5e-6 });
  checked({ what: 'by 55', got: answer.by(55), expected: 0.893496, within: 1e-5 });
  expect(Math.abs(answer.by(55.01) - 0.893496)).toBeGreaterThan(1e-4);
});

test('General Foundry: A-C-E-G-H, 15 weeks, variance 3.11, P(T ≤ 16) 0.7146', () => {
  const answer = solved([
    ['A', 1, 2, 3, ''],
    ['B', 2, 3, 4, ''],
    ['C', 1, 2, 3, 'A'],
    ['D', 2, 4, 6, 'AB'],
    ['E', 1, 4, 7, 'C'],
    ['F', 1, 2, 9, 'C'],
    ['G', 3, 4, 11, 'DE'],
    ['H', 1, 2, 3, 'FG'],
  ]);
  expect(answer.names).toBe('A-C-E-G-H');
  checked({ got: answer.mean, expected: 15, within: 1e-9, standing: 'from memory' });
  checked({ got: answer.variance, expected: 3.1111, within: 5e-5, standing: 'from memory' });
  checked({ got: answer.by(16), expected: 0.714625, within: 1e-5, standing: 'from memory' });
});

test('moments of 2, 4, 12: PERT 5 and 2.7778, triangle 6 and 4.6667', () => {
  const range = { low: 2, likely: 4, high: 12 };
  const [pert, triangle] = [pertMoments(range), triangleMoments(range)];
  checked({
    what: 'mean',
    got: [pert.mean, triangle.mean],
    expected: [5, 6],
    within: 1e-9,
    standing: 'reckoned',
  });
  checked({
    what: 'variance',
    got: [pert.variance, triangle.variance],
    expected: [2.777778, 4.666667],
    within: 1e-6,
    standing: 'reckoned',
  });
});
