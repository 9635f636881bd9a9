// Piles whose lowest panels the ground cut, by the seeded generator of the hard piles; the truth is
// the plane that cut them.

import { expect, test } from 'vitest';
import { cutBase } from '../../bench/heaps/cut-base.ts';
import { runPile } from '../../bench/heaps/run.ts';
import { cutLooking } from '../../src/identify/cut-base.ts';
import { cutFits } from '../../src/identify/cut-panels.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindWith, readKinds, truthOf } from './piles.ts';

const SD = 0.001;

/** The triangle 3, 4, 5 with its right angle between the sides 3 and 4, cut across both: 1 m of the
 * first and 2 m of the second are left. */
const whole = kindWith('w', [3, 4, 5], SD);

test('a corner cut off a panel fits it at that corner alone', () => {
  const fits = cutFits(kindWith('c', [Math.sqrt(5), 1, 2], SD), whole, 7);
  expect(fits).toEqual([{ from: 7, first: 1, last: 1, cutSide: 0, before: 1, after: 2 }]);
});

test('a panel that lost a corner fits with one full side', () => {
  const [before, after] = [3 - 1, 4 - 2];
  const fits = cutFits(kindWith('c', [5, after, Math.sqrt(5), before], SD), whole, 0);
  expect(fits).toEqual([{ from: 0, first: 2, last: 0, cutSide: 2, before: after, after: before }]);
});

test('a cut within three deviations fits and one thirty off does not', () => {
  const cut = (off: number): Kind => kindWith('c', [Math.sqrt(5) + off, 1, 2], SD);
  expect(cutFits(cut(3 * SD), whole, 0)).toHaveLength(1);
  expect(cutFits(cut(30 * SD), whole, 0)).toHaveLength(0);
});

test('no kind of a whole net looks cut', () => {
  expect(cutLooking(readKinds(truthOf(3, 1), SD, 1))).toEqual([]);
});

test.each([1, 2, 5, 8, 13, 20])(
  'the ball, the cut kinds, their base sides and the plane are found, seed %i',
  (seed) => {
    const { verdict, answer } = runPile(cutBase, seed);
    expect(verdict).toMatchObject({ outcome: 'right', lacks: [] });
    expect(answer?.shapes[0]?.probability).toBeGreaterThan(0.9);
  },
);
