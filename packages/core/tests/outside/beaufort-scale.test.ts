// Beaufort scale: bands in mph of the US National Weather Service (weather.gov/tbw/beaufort); in m/s
// of a stored copy (ramsdocs.co.uk) for force 3 to 8, the rest from memory; V = 0.836 B^1.5 from
// memory. Wind limits of NFRC guidance: gust over mean 26/17 and 35/23 mph.

import { expect, test } from 'vitest';
import { BEAUFORT, beaufortForce, beaufortMiddle } from '../../src/loads/beaufort/beaufort.ts';
import { numberOf } from '../../src/loads/numbers.ts';
import { gustOf } from '../../src/loads/reported-wind/gust.ts';
import { checked } from './data/checked.ts';

const topMph = [1, 3, 7, 12, 18, 24, 31, 38, 46, 54, 63, 73];
const middle: [number, number][] = [
  [1, 0.84],
  [3, 4.34],
  [4, 6.69],
  [5, 9.35],
  [6, 12.29],
  [7, 15.48],
  [8, 18.92],
  [10, 26.44],
  [12, 34.75],
];

test.each(topMph.map((mph, force) => [force, mph] as const))(
  'force %i ends at %i mph, within the half mile that both tables round by',
  (force, mph) => {
    expect(Math.abs(beaufortForce(force).to / 0.44704 - mph)).toBeLessThan(0.65);
  },
);

test.each(middle)('the formula gives force %i %d m/s, within its band', (force, speed) => {
  checked({ got: beaufortMiddle(force), expected: speed, within: 0.005001 });
  expect(Math.abs(beaufortMiddle(force) - speed - 0.05)).toBeGreaterThan(0.005);
  expect(beaufortMiddle(force)).toBeLessThan((BEAUFORT[force] as { to: number }).to);
});

test('gust over mean 1.5 lies between the guidance of NFRC for 17 and 23 mph', () => {
  const ratio = numberOf('gustOverMean').value;
  expect(ratio).toBeGreaterThanOrEqual(35 / 23 - 0.03);
  expect(ratio).toBeLessThanOrEqual(26 / 17);
  expect(gustOf({ as: 'Beaufort', force: 5 }, numberOf('gustOverMean')).value).toBeCloseTo(
    16.05,
    9,
  );
});
