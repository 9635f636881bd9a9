// Ballast of a half sphere 20 ft across in 25 m/s by GB 50009-2012, Table 8.3.1 item 36 (closed
// forms reckoned twice): drag 3357.85 N, lift 5700.46 N, shell 3000 N. With 1.2 on the wind,
// (G + B − 1.2 L) μ ≥ 1.2 H asks 23987.6, 13914.1 and 10039.7 N of ballast for μ 0.2, 0.4 and 0.65,
// and 3840.55 N against lift alone. On 12 equal anchors a pull of 225.04 N each before any factor.
// Friction on concrete: Concrete Society, after Pallett and others 2002 and HSE Research Report 071;
// on soil, from memory, EN 13814.

import { expect, test } from 'vitest';
import { ballastWeight, friction } from '../../src/ground/anchors/ballast.ts';
import { sharedForces } from '../../src/ground/anchors/demand.ts';
import type { Soil } from '../../src/ground/anchors/soil.ts';
import { ring } from '../ground/bases.ts';
import { misfits } from './data/pairs.ts';

const [H, L, G] = [3357.85, 5700.46, 3000];

test('ballast agrees with the example to 0.1 N; ten times that is refused', () => {
  const pairs = [
    [0.2, 23987.6],
    [0.4, 13914.1],
    [0.65, 10039.7],
  ].map(([mu, expected]) => ({
    what: `friction ${mu}`,
    actual: ballastWeight(1.2 * L, 1.2 * H, G, mu as number),
    expected: expected as number,
  }));
  pairs.push({ what: 'lift', actual: ballastWeight(1.2 * L, 0, G, 0.4), expected: 3840.55 });
  expect(misfits(pairs, 0.1)).toEqual([]);
  expect(misfits(pairs, 0.1, 1)).toHaveLength(4);
});

test('twelve anchors of a half sphere are pulled 225.04 N each, to 0.01 N; ten times that is refused', () => {
  const { hubs } = sharedForces(
    ring(12, 3.048),
    { drag: H, lift: L, weight: G, armHeight: 0 },
    '25 m/s',
  );
  const pairs = hubs.map((hub) => ({
    what: `hub ${hub.hub}`,
    actual: hub.lift - hub.weight,
    expected: 225.04,
  }));
  expect(misfits(pairs, 0.01)).toEqual([]);
  expect(misfits(pairs, 0.01, 0.1)).toHaveLength(12);
});

test('above the middle the most is (L − G)/N + 2 M/(N r), M the drag times the height of the centre', () => {
  const [n, r, arm] = [15, 2.6, 1.5];
  const { hubs } = sharedForces(ring(n, r), { drag: H, lift: L, weight: G, armHeight: arm }, '');
  const pairs = hubs.map((hub) => ({
    what: `hub ${hub.hub}`,
    actual: hub.lift - hub.weight,
    expected: (L - G) / n + (2 * H * arm) / (n * r),
  }));
  expect(misfits(pairs, 1e-6)).toEqual([]);
  expect(misfits(pairs, 1e-6, 1e-5)).toHaveLength(n);
});

test('friction is the least measured on concrete, and the code’s on soil, flagged as from memory', () => {
  const on = (kind: Soil['kind'], wet = false) => ({ kind, firm: true, wet });
  const value = (underlay: 'steel' | 'wood' | 'concrete', soil: Soil): number => {
    const read = friction(underlay, soil);
    return read.ok ? read.value.value : Number.NaN;
  };
  const pairs = [
    { what: 'concrete on paving', actual: value('concrete', on('paved')), expected: 0.4 },
    { what: 'steel on paving', actual: value('steel', on('paved')), expected: 0.1 },
    { what: 'wood on paving', actual: value('wood', on('paved')), expected: 0.7 },
    { what: 'steel on loam', actual: value('steel', on('loam')), expected: 0.2 },
    { what: 'wood on clay', actual: value('wood', on('clay')), expected: 0.25 },
    { what: 'wood on loam', actual: value('wood', on('loam')), expected: 0.4 },
    { what: 'concrete on sand', actual: value('concrete', on('sand')), expected: 0.65 },
    { what: 'concrete on gravel', actual: value('concrete', on('gravel')), expected: 0.65 },
    { what: 'concrete on wet loam', actual: value('concrete', on('loam', true)), expected: 0.25 },
  ];
  expect(misfits(pairs, 0.001)).toEqual([]);
  expect(misfits(pairs, 0.001, 0.01)).toHaveLength(9);
  const soil = friction('wood', on('loam'));
  expect(soil.ok && soil.value.sources[0]?.confirmation).toBe('from memory');
  const paved = friction('wood', on('paved'));
  expect(paved.ok && paved.value.sources[0]?.confirmation).toBe('confirmed');
});
