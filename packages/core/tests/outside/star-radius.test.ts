// Radius of the sphere through a star of n equal panels round a hub, spokes s and rim r:
// R = s² / (2 √(s² − (r / (2 sin(π/n)))²)). Exact (Pythagoras); sizes in inches computed apart from
// this project.

import { expect, test } from 'vitest';
import { kindsOfNet } from '../../src/nets/kinds.ts';
import { namedNet } from '../../src/nets/named.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';
import { misfits } from './data/pairs.ts';

const stars: [number, number, number][] = [
  [5, 0.3486154888, 0.4035482123],
  [6, 0.4124114893, 0.4035482123],
];
const radiusOf = (n: number, s: number, r: number): number =>
  s ** 2 / (2 * Math.sqrt(s ** 2 - (r / (2 * Math.sin(Math.PI / n))) ** 2));

test.each(stars)(
  '%i corners between spokes of %f over a rim of %f make a full turn at the radius of the formula',
  (n, s, r) => {
    for (const size of [1, 2.7, 144]) {
      const radius = radiusOf(n, s * size, r * size);
      expect(radius / size).toBeCloseTo(1, 8);
      const panel = polygonOnSphere([s * size, r * size, s * size], radius);
      expect(panel.ok && n * (panel.corners[0] as number)).toBeCloseTo(2 * Math.PI, 12);
    }
  },
);

const sizes: [string, number, number, number[]][] = [
  ['18 ft, three steps', 108, 3, [37.6505, 43.5832, 44.5404]],
  ['24 ft, three steps', 144, 3, [50.2006, 58.1109, 59.3873]],
  ['22 ft, four steps', 132, 4, [33.4204, 38.8781, 38.9719, 39.4136, 41.2987, 42.8894]],
];
const INCHES = 5e-5;

test.each(sizes)(
  'sides in inches of a shell of %s; ten times the tolerance is refused',
  (_, radius, b, inches) => {
    const net = namedNet({ solid: 'icosahedron', b, c: 0, division: 'equal chords' });
    const pairs = kindsOfNet(net.hubs, net.places, 1e-9).sideClasses.map(({ length }, i) => ({
      what: `side ${i}`,
      actual: length * radius,
      expected: inches[i] as number,
    }));
    expect(misfits(pairs, INCHES)).toEqual([]);
    expect(misfits(pairs, INCHES, 10 * INCHES)).toHaveLength(inches.length);
  },
);
