// Learning curves. AFIT-R/learningCurve, vignette (commit 159fc31): a 100, rate 85 %, the first million
// units by Crawford: 5,119,612 in all. R. M. Wideman, Canadian Journal of Civil Engineering 21, 1994,
// 939-953: 80 %, the average of the first two is 80 %, so the second took 60 %; of four, 64 %. Totals of
// 8 to 50 units at 80, 85 and 90 % (reckoned with another program).

import { expect, test } from 'vitest';
import { crawfordTotal, crawfordUnit, wrightTotal, wrightUnit } from '../../src/crew/learning.ts';
import { checked } from './data/checked.ts';

test('Wideman: the second unit takes 60 %, the average of four 64 %', () => {
  checked({ got: 100 * wrightUnit(2, 0.8), expected: 60, within: 1e-9 });
  checked({ got: (100 * wrightTotal(4, 0.8)) / 4, expected: 64, within: 1e-9 });
});

test('AFIT: a million units at 85 % take 5,119,612; a rate of 85.01 % is told', () => {
  checked({ got: 100 * crawfordTotal(1e6, 0.85), expected: 5_119_612, within: 0.5 });
  expect(Math.abs(100 * crawfordTotal(1e6, 0.8501) - 5_119_612)).toBeGreaterThan(5);
});

test.each([
  [
    0.8,
    [80, 64, 51.2, 47.651, 38.1208, 28.3827],
    [534.591, 631.537, 1048.494, 2012.171],
    [409.6, 476.51, 762.416, 1419.135],
  ],
  [
    0.85,
    [85, 72.25, 61.4125, 58.282, 49.5397, 39.9623],
    [593.584, 711.606, 1240.228, 2551.311],
    [491.3, 582.82, 990.795, 1998.115],
  ],
  [
    0.9,
    [90, 81, 72.9, 70.4688, 63.4219, 55.1761],
    [657.373, 799.448, 1460.776, 3214.196],
    [583.2, 704.688, 1268.438, 2758.807],
  ],
])('units 2 to 50 and totals of 8 to 50 at a rate of %d', (rate, unit, crawford, wright) => {
  const [units, totals] = [
    [2, 4, 8, 10, 20, 50],
    [8, 10, 20, 50],
  ];
  checked({
    what: 'unit',
    got: units.map((n) => 100 * crawfordUnit(n, rate)),
    expected: unit,
    within: 1e-3,
  });
  checked({
    what: 'Crawford',
    got: totals.map((n) => 100 * crawfordTotal(n, rate)),
    expected: crawford,
    within: 1e-3,
  });
  checked({
    what: 'Wright',
    got: totals.map((n) => 100 * wrightTotal(n, rate)),
    expected: wright,
    within: 1e-3,
  });
});

test('a rate over 1 or of 0 is refused', () => {
  expect(() => wrightTotal(3, 1.2)).toThrow('learning rate is 1.2');
  expect(() => wrightTotal(3, 0)).toThrow('learning rate is 0');
});
