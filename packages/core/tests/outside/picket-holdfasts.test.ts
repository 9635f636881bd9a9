// Picket holdfasts. NAVEDTRA 14251, Steelworker, vol. 2 (constructionmanuals.tpub.com/14251, pages
// 172-174): wood pickets in undisturbed loam hold 700 lb alone, 1,800 lb as 1-1-1, 4,000 lb as
// 3-2-1. From memory: FM 5-125, chapter 4, adds 1,400 lb as 1-1, 2,000 lb as 2-1, and takes 0.9 in
// wet clay and gravel, 0.5 in river clay and sand. Australian Emergency Manual, Disaster Rescue,
// 8.3 (nzdl.org): steel pickets hold 350 kg each, safe, to about 2 t.

import { expect, test } from 'vitest';
import { type Combination, steelPickets, woodPickets } from '../../src/ground/anchors/pickets.ts';
import type { Soil } from '../../src/ground/anchors/soil.ts';
import { misfits } from './data/pairs.ts';

const loam: Soil = { kind: 'loam', firm: true, wet: false };
const guy = { way: 'guy', elevation: Math.PI / 6 } as const;
const POUND = 4.4482216;
const published: readonly (readonly [Combination, number, string])[] = [
  ['1', 700, 'confirmed'],
  ['1-1', 1400, 'from memory'],
  ['1-1-1', 1800, 'confirmed'],
  ['2-1', 2000, 'from memory'],
  ['3-2-1', 4000, 'confirmed'],
];
const wood = (combination: Combination, soil: Soil) => {
  const read = woodPickets(combination, soil, guy);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};

test('each combination holds what is published, to 0.1 lb; ten times that is refused', () => {
  const pairs = published.map(([combination, lb]) => ({
    what: combination,
    actual: wood(combination, loam).pull / POUND,
    expected: lb,
  }));
  expect(misfits(pairs, 0.1)).toEqual([]);
  expect(misfits(pairs, 0.1, 1)).toHaveLength(5);
});

test('values from memory carry that flag, the manual’s do not', () => {
  for (const [combination, , confirmation] of published)
    expect(wood(combination, loam).sources[0]?.confirmation).toBe(confirmation);
});

test('wet factors, from memory: 0.9 in gravel, 0.5 in clay, sand and loam that may be saturated', () => {
  const factor = (kind: Soil['kind']): number =>
    wood('1', { kind, firm: true, wet: true }).pull / POUND / 700;
  expect(factor('gravel')).toBeCloseTo(0.9, 6);
  for (const kind of ['clay', 'sand', 'loam'] as const) expect(factor(kind)).toBeCloseTo(0.5, 6);
  expect(
    wood('1', { kind: 'clay', firm: true, wet: true }).sources.some(
      ({ confirmation }) => confirmation === 'from memory',
    ),
  ).toBe(true);
});

test('steel pickets hold 350 kg each, and no more than 2 t however many', () => {
  const hold = (count: number): number => {
    const read = steelPickets(count, loam, guy);
    return read.ok ? read.value.pull / 9.80665 : Number.NaN;
  };
  const pairs = [1, 2, 5, 6, 9].map((count) => ({
    what: `${count}`,
    actual: hold(count),
    expected: Math.min(350 * count, 2000),
  }));
  expect(misfits(pairs, 0.1)).toEqual([]);
  expect(misfits(pairs, 0.1, 1)).toHaveLength(5);
});

test('a holdfast is refused for a straight lift, a guy at 60° and soft ground', () => {
  const faults = [
    woodPickets('3-2-1', loam, { way: 'up' }),
    woodPickets('3-2-1', loam, { way: 'guy', elevation: Math.PI / 3 }),
    woodPickets('3-2-1', { ...loam, firm: false }, guy),
    steelPickets(2, { kind: 'paved', firm: true, wet: false }, guy),
    steelPickets(0, loam, guy),
  ].map((read) => (read.ok ? '' : read.faults[0]?.path));
  expect(faults).toEqual(['anchor.pull', 'anchor.elevation', 'anchor', 'anchor', 'anchor.count']);
});
