// A gin pole's head. A tower riggers' list (lists.contesting.com/_towertalk/1997-07/msg00589.html): a load
// hauled by hand puts twice its weight on the pole, tag lines add. Reckoned: two equal pulls W at an angle
// t have the resultant 2 W cos(t / 2).

import { expect, test } from 'vitest';
import { ginPoleHead } from '../../src/raise/lifts/gin-pole.ts';
import { misfits, type Pair } from './data/pairs.ts';

test('hauled straight down the head bears twice the load, to a part in 10⁹; ten times that is refused', () => {
  const pairs: Pair[] = [
    { what: '1 N', actual: ginPoleHead(1).value, expected: 2 },
    { what: '1 N, tag lines 0.2 N', actual: ginPoleHead(1, 0, 0, 0.2).value, expected: 2.4 },
  ];
  expect(misfits(pairs, 1e-9)).toEqual([]);
  expect(misfits(pairs, 1e-9, 1e-8)).toHaveLength(2);
});

test('hauled aside it is 2 W cos(t / 2), to a part in 10⁹; ten times that is refused', () => {
  const pairs = [15, 45, 90, 120].map((deg): Pair => {
    const t = (deg * Math.PI) / 180;
    return { what: `${deg}°`, actual: ginPoleHead(1, t).value, expected: 2 * Math.cos(t / 2) };
  });
  expect(misfits(pairs, 1e-9)).toEqual([]);
  expect(misfits(pairs, 1e-9, 1e-8)).toHaveLength(4);
});

test('a pulley that rubs makes it more, never less', () => {
  expect(ginPoleHead(100, 0, 0.1).value).toBeCloseTo(210, 9);
  expect(() => ginPoleHead(-1)).toThrow('load is -1');
});
