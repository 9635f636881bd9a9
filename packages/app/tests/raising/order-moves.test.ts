import { expect, it } from 'vitest';
import {
  isPlanned,
  movableStages,
  movedTo,
  rowAt,
  stageOfLift,
} from '../../src/sheets/raising/order-moves.ts';

it('puts a stage anywhere, the others keeping their order', () => {
  expect(movedTo([1, 2, 3, 4], 4, 1)).toEqual([1, 4, 2, 3]);
  expect(movedTo([1, 2, 3, 4], 1, 2)).toEqual([2, 3, 1, 4]);
  expect(movedTo([1, 2, 3], 2, 99)).toEqual([1, 3, 2]);
  expect(movedTo([1, 2, 3], 2, -1)).toEqual([2, 1, 3]);
  expect(movedTo([1, 2, 3], 9, 0)).toEqual([1, 2, 3]);
});

it('knows the planned order again after a stage went there and back', () => {
  const moved = movedTo([1, 2, 3], 3, 0);
  expect(isPlanned(moved)).toBe(false);
  expect(isPlanned(movedTo(moved, 3, 2))).toBe(true);
});

const plan = { stages: [3, 1, 2, 0].map((lifts) => ({ lifts: new Array(lifts).fill(null) })) };
type Plan = Parameters<typeof stageOfLift>[0];

it('tells whose lift it is in an order that is tried', () => {
  const order = [2, 1, 3, 4];
  const found = [0, 1, 3, 4, 5, 6].map((lift) => stageOfLift(plan as unknown as Plan, order, lift));
  expect(found).toEqual([2, 1, 1, 3, 3, null]);
});

it('leaves the stage that lifts nothing at the end', () => {
  expect(movableStages(plan as unknown as Plan)).toBe(3);
});

it('finds the row that a pointer is over', () => {
  expect([-5, 14, 16, 99].map((y) => rowAt([10, 20, 30], y))).toEqual([0, 0, 1, 2]);
  expect(rowAt([], 5)).toBe(0);
});
