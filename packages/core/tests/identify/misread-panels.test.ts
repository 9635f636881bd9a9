import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindWith, readKinds, truthOf } from './piles.ts';

const SD = 1e-3;

/** The kinds of (4, 0), sixty panels each, and a lone odd panel. */
const heap = (odd: readonly number[], good = 1): Kind[] => [
  ...readKinds(truthOf(4, 0), SD, 3).map((kind) => ({ ...kind, good: 60, counted: true })),
  { ...kindWith('odd', odd, SD), good, counted: true },
];

const truth = truthOf(4, 0).kinds.map(({ sides }) => sides);
/** A kind with no two sides equal, and the same with one side off. */
const uneven = truth.find(([a, b, c]) => new Set([a, b, c].map((x) => x?.toFixed(4))).size > 1);
const off = (by: number, sides = uneven as readonly number[]): number[] =>
  sides.map((x, i) => (i === 1 ? x + by : x));

const told = (kinds: readonly Kind[]) => identify({ kinds, groups: [] }).shapes[0]?.explained[0];

test('a lone panel with one side off is one more panel of its kind', () => {
  const one = told(heap(off(0.02)));
  expect(one).toMatchObject({ kind: 'odd', as: 'misread', slip: 'length', sides: [1] });
  if (one?.as !== 'misread') return;
  for (const [i, x] of one.expected.entries())
    expect(Math.abs(x - ((uneven as readonly number[])[i] as number))).toBeLessThan(5 * SD);
});

test('inches written down as centimetres are named so', () => {
  const one = told(heap((uneven as readonly number[]).map((x) => x / 2.54)));
  expect(one).toMatchObject({ as: 'misread', slip: 'unit', sides: [0, 1, 2] });
});

test('a reading from the other face should run the other way round', () => {
  const net = truthOf(3, 1);
  const handed = net.kinds.find(({ sides }) => new Set(sides.map((x) => x.toFixed(3))).size === 3);
  const sides = handed?.sides ?? [];
  const kinds = [
    ...readKinds(net, SD, 3).map((kind) => ({ ...kind, good: 60, counted: true })),
    { ...kindWith('odd', [...sides].reverse(), SD), good: 1, counted: true },
  ];
  const one = told(kinds);
  expect(one).toMatchObject({ as: 'misread', slip: 'face' });
  if (one?.as !== 'misread') return;
  const turns = sides.map((_, by) =>
    Math.max(...sides.map((x, i) => Math.abs(x - (one.expected[(i + by) % 3] as number)))),
  );
  expect(Math.min(...turns)).toBeLessThan(5 * SD);
});

test('a panel that no slip makes one of the kinds stays unexplained', () => {
  expect(told(heap([0.61, 0.83, 1.21]))).toMatchObject({ as: 'nothing' });
});

test('many panels are not misread alike', () => {
  expect(told(heap(off(0.02), 5))).toMatchObject({ as: 'nothing' });
});
