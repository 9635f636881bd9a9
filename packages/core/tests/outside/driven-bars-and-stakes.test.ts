// Bars and stakes. From memory: EN 13782 and EN 13814, design resistance of a driven bar, d and l in
// cm, N: 6.5 d l straight up and 10 d l at 45° or less in stiff cohesive soil, 17 d l in dense
// non-cohesive soil. InTents, Anchoring in wet soil, June 2009 (intentsmag.com/?p=312): a stake
// 1 in by 36 in holds about 1,000 lb in a lawn, half of it in saturated ground.

import { expect, test } from 'vitest';
import type { Soil } from '../../src/ground/anchors/soil.ts';
import { drivenBar, lawnStake } from '../../src/ground/anchors/stakes.ts';
import { misfits } from './data/pairs.ts';

const clay: Soil = { kind: 'clay', firm: true, wet: false };
const gravel: Soil = { kind: 'gravel', firm: true, wet: false };
const up = { way: 'up' } as const;
const oblique = { way: 'guy', elevation: Math.PI / 4 } as const;
const examples = [
  { d: 2.5, l: 80, expected: [1300, 2000, 3400] },
  { d: 2.0, l: 60, expected: [780, 1200, 2040] },
  { d: 1.6, l: 50, expected: [520, 800, 1360] },
];

test('the bar formula agrees with nine values, from memory, to 0.01 N; ten times that is refused', () => {
  const pairs = examples.flatMap(({ d, l, expected }) =>
    (
      [
        [clay, up],
        [clay, oblique],
        [gravel, up],
      ] as const
    ).map(([soil, pull], i) => {
      const read = drivenBar(d / 100, l / 100, soil, pull);
      return {
        what: `${d} × ${l} cm, ${i}`,
        actual: read.ok ? read.value.pull : Number.NaN,
        expected: expected[i] as number,
      };
    }),
  );
  expect(misfits(pairs, 0.01)).toEqual([]);
  expect(misfits(pairs, 0.01, 0.1)).toHaveLength(9);
});

test('a bar’s value always carries that it is from memory', () => {
  const read = drivenBar(0.025, 0.8, clay, up);
  expect(read.ok && read.value.sources.map(({ confirmation }) => confirmation)).toEqual([
    'from memory',
  ]);
});

test('a guy steeper than 45° counts as straight up', () => {
  const steep = drivenBar(0.025, 0.8, clay, { way: 'guy', elevation: 0.9 });
  expect(steep.ok && steep.value.pull).toBeCloseTo(1300, 6);
});

test('a lawn stake holds 1,000 lb along a guy, 500 lb in wet ground, to 0.1 lb; ten times that is refused', () => {
  const hold = (wet: boolean): number => {
    const read = lawnStake({ kind: 'loam', firm: true, wet }, oblique);
    return read.ok ? read.value.pull / 4.4482216 : Number.NaN;
  };
  const pairs = [
    { what: 'lawn', actual: hold(false), expected: 1000 },
    { what: 'saturated', actual: hold(true), expected: 500 },
  ];
  expect(misfits(pairs, 0.1)).toEqual([]);
  expect(misfits(pairs, 0.1, 1)).toHaveLength(2);
});

test('soft ground, paving and bars that are none are refused', () => {
  const paths = [
    drivenBar(0.025, 0.8, { ...clay, firm: false }, up),
    drivenBar(0.025, 0.8, { ...clay, kind: 'paved' }, up),
    drivenBar(0.5, 0.8, clay, up),
    drivenBar(0.025, 80, clay, up),
    lawnStake(gravel, up),
  ].map((read) => (read.ok ? '' : read.faults[0]?.path));
  expect(paths).toEqual(['anchor', 'anchor', 'anchor.diameter', 'anchor.depth', 'anchor']);
});
