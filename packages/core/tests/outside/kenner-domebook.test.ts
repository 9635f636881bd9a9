// H. Kenner, "Geodesic Math and How to Use It", University of California Press (1976), and
// "Domebook 2" (1971): chords of class I shells to five digits, shortest first. From memory; the
// printed pages could not be read.

import { expect, test } from 'vitest';
import { kindsOfNet } from '../../src/nets/kinds.ts';
import { namedNet } from '../../src/nets/named.ts';
import { misfits } from './data/pairs.ts';

const chords: [number, number[]][] = [
  [2, [0.54653, 0.61803]],
  [3, [0.34862, 0.40355, 0.41241]],
  [4, [0.25318, 0.29453, 0.29524, 0.29859, 0.31287, 0.32492]],
  [5, [0.19815, 0.22569, 0.2316, 0.23179, 0.24509, 0.24535, 0.24724, 0.25517, 0.2616]],
  [6, [0.16257, 0.18191, 0.18738, 0.19048, 0.19801, 0.20282, 0.20591, 0.21535, 0.21663]],
];
const HALF_DIGIT = 5e-6;

test.each(chords)(
  'chords in %i steps are those of the tables, from memory; ten half digits off are refused',
  (b, expected) => {
    const net = namedNet({ solid: 'icosahedron', b, c: 0, division: 'equal chords' });
    const { sideClasses } = kindsOfNet(net.hubs, net.places, 1e-9);
    const pairs = sideClasses.map(({ length }, i) => ({
      what: `side ${i}`,
      actual: length,
      expected: expected[i] as number,
    }));
    expect(sideClasses).toHaveLength(expected.length);
    expect(misfits(pairs, HALF_DIGIT)).toEqual([]);
    expect(misfits(pairs, HALF_DIGIT, 10 * HALF_DIGIT)).toHaveLength(pairs.length);
  },
);
