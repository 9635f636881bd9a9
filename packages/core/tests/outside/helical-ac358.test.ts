// ICC-ES AC358 as quoted at basementsystemscarolinas.com and docplayer 11577751: Qult = K T with
// K = 10 a foot for a 1.5 in square shaft, safety factor 2: 500 ft·lb give 5,000 lb and 2,500 lb.
// Bearing of the plates, both pages: Qult = Σ A (9 c + q Nq).

import { expect, test } from 'vitest';
import { helical, helicalBearing } from '../../src/ground/anchors/helical.ts';
import { allowedPull, practices } from '../../src/ground/anchors/practice.ts';
import { misfits } from './data/pairs.ts';

const POUND = 4.4482216152605;
const FOOT_POUND = POUND * 0.3048;

test('500 ft·lb give 5,000 lb at most and 2,500 lb allowed, to 0.1 lb; ten times that is refused', () => {
  const read = helical(
    { torque: 500 * FOOT_POUND, plate: 0.2 },
    { kind: 'clay', firm: true, wet: false },
  );
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const pairs = [
    { what: 'ultimate', actual: read.value.pull / POUND, expected: 5000 },
    {
      what: 'allowed',
      actual: allowedPull(read.value, practices.working) / POUND,
      expected: 2500,
    },
  ];
  expect(misfits(pairs, 0.1)).toEqual([]);
  expect(misfits(pairs, 0.1, 1)).toHaveLength(2);
});

test('two plates bear the sum of A (9 c + q Nq)', () => {
  const plates = [
    { area: 0.02, overburden: 20_000 },
    { area: 0.03, overburden: 15_000 },
  ];
  expect(helicalBearing(plates, 40_000, 0)).toBeCloseTo(0.05 * 9 * 40_000, 6);
  expect(helicalBearing(plates, 0, 12)).toBeCloseTo(12 * (400 + 450), 6);
});

test('no torque, a torque in the wrong unit and paving are refused', () => {
  const clay = { kind: 'clay', firm: true, wet: false } as const;
  const paths = [
    helical({ torque: 0, plate: 0.2 }, clay),
    helical({ torque: 500_000, plate: 0.2 }, clay),
    helical({ torque: 500, plate: 20 }, clay),
    helical({ torque: 500, plate: 0.2 }, { ...clay, kind: 'paved' }),
  ].map((read) => (read.ok ? '' : read.faults[0]?.path));
  expect(paths).toEqual(['anchor.torque', 'anchor.torque', 'anchor.plate', 'anchor']);
});
