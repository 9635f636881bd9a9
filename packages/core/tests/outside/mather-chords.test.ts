// S. Mather, mailing-list posting reproduced in "Chord Factors - the nitty gritty"
// (scribd.com/document/317039265; its opening was read): three edge chords of the icosahedron in
// five steps and their central angles. They agree with an independent computation to 8 digits; the
// posting's own rounding shows in the ninth.

import { expect, test } from 'vitest';
import { toDegrees } from '../../src/math/angle.ts';
import { kindsOfNet } from '../../src/nets/kinds.ts';
import { namedNet } from '../../src/nets/named.ts';
import { chordToArc } from '../../src/sphere/chord.ts';
import { misfits } from './data/pairs.ts';

const published = [
  { side: 0, chord: 0.198147431, degrees: 11.3716678 },
  { side: 2, chord: 0.231597598, degrees: 13.29940137 },
  { side: 5, chord: 0.245346417, degrees: 14.09281254 },
];
const CHORD = 5e-9;
const DEGREES = 2e-6;

const net = namedNet({ solid: 'icosahedron', b: 5, c: 0, division: 'equal chords' });
const { sideClasses } = kindsOfNet(net.hubs, net.places, 1e-9);
const length = (side: number): number => sideClasses[side]?.length ?? Number.NaN;

test('the chords along an edge in five steps agree to 8 digits; ten times the tolerance is refused', () => {
  const pairs = published.map(({ side, chord }) => ({
    what: `side ${side}`,
    actual: length(side),
    expected: chord,
  }));
  expect(misfits(pairs, CHORD)).toEqual([]);
  expect(misfits(pairs, CHORD, 10 * CHORD)).toHaveLength(3);
});

test('their central angles agree to 2e-6°; ten times the tolerance is refused', () => {
  const pairs = published.map(({ side, degrees }) => ({
    what: `side ${side}`,
    actual: toDegrees(chordToArc(length(side), 1)),
    expected: degrees,
  }));
  expect(misfits(pairs, DEGREES)).toEqual([]);
  expect(misfits(pairs, DEGREES, 10 * DEGREES)).toHaveLength(3);
});
