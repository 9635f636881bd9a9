import { expect, test } from 'vitest';
import { nearEqual } from '../../bench/heaps/near-equal.ts';
import { answerOf, heapOf } from '../../bench/heaps/run.ts';
import { exchangeCost, interchangeCosts } from '../../src/identify/interchange-cost.ts';
import { kindWith } from './piles.ts';

test('a panel that is another turned costs nothing', () => {
  expect(exchangeCost([0.5, 0.6, 0.7], [0.6, 0.7, 0.5])).toBe(0);
});

test('the other hand of a panel costs the root mean square of what its sides differ by', () => {
  expect(exchangeCost([0.5, 0.6, 0.7], [0.5, 0.7, 0.6])).toBeCloseTo(Math.sqrt(0.02 / 3), 12);
});

test('panels with different numbers of sides never stand for one another', () => {
  expect(exchangeCost([0.5, 0.6, 0.7], [0.5, 0.6, 0.7, 0.6])).toBe(Number.POSITIVE_INFINITY);
});

test('three kinds cost the root mean square over their pairs', () => {
  const sides = [
    [0.5, 0.5, 0.5],
    [0.501, 0.501, 0.501],
    [0.503, 0.503, 0.503],
  ];
  const kinds = sides.map((own, i) => kindWith(`${i + 1}`, own, 1e-3));
  const shape = { added: [], fittedSides: sides, interchangeable: [['1', '2', '3']] };
  const [cost] = interchangeCosts(shape, kinds);
  expect(cost).toBeCloseTo(Math.sqrt((1 + 4 + 9) / 3) / 1000, 12);
});

test('piles of near-equal kinds cost less than what the tape can tell, seeds 1 to 6', () => {
  let lists = 0;
  for (let seed = 1; seed <= 6; seed++) {
    const { shapes } = answerOf(heapOf(nearEqual, seed, 320)).answer;
    for (const { interchangeable, interchangeCosts: costs } of shapes) {
      expect(costs.length).toBe(interchangeable.length);
      for (const cost of costs) expect(cost).toBeLessThan(0.004);
      lists += costs.length;
    }
  }
  expect(lists).toBeGreaterThan(0);
});
