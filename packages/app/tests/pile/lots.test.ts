import type { HardwareRow } from '@shellraise/core';
import { expect, test } from 'vitest';
import { lotText, readLot } from '../../src/sheets/pile/lots.ts';
import { lengthsIn } from '../../src/ui/lengths.ts';

const { side } = lengthsIn('metric');
const bolt: HardwareRow = {
  item: 'bolt',
  thread: '5/16-18',
  length: 0.03175,
  grade: 'SAE J429 Gr 5',
  count: 620,
  state: 'used',
  price: 0.24,
  pack: 50,
};
const read = (text: Partial<ReturnType<typeof lotText>>, before: HardwareRow | null = null) =>
  readLot({ ...lotText(before, side), ...text }, before, 'mm', side);

test('a lot that is opened and closed is the same lot', () => {
  expect(read({}, bolt).lot).toEqual(bolt);
});

test('a new lot takes lengths in any unit', () => {
  const { lot } = read({ count: '40', thread: ' M8 ', length: `1 1/4"`, state: 'new' });
  expect(lot).toEqual({ item: 'bolt', thread: 'M8', length: 0.03175, count: 40, state: 'new' });
});

test('every fault of a lot is told at once', () => {
  const { lot, faults } = read({ item: 'plate', count: 'many', length: 'long', corners: '1' });
  expect(lot).toBeNull();
  expect(faults.map(({ field }) => field)).toEqual(['length', 'count', 'corners']);
});

test('corners belong to plates alone', () => {
  const plate: HardwareRow = { item: 'plate', count: 7, corners: 5, rim: true, state: 'used' };
  expect(read({}, plate).lot).toEqual(plate);
  expect(read({ item: 'washer' }, plate).lot).toEqual({ item: 'washer', count: 7, state: 'used' });
});
