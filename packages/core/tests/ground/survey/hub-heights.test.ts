import { expect, test } from 'vitest';
import { asBuilt } from '../../../src/ground/survey/as-built.ts';
import { hubHeights, hubRings } from '../../../src/ground/survey/hub-heights.ts';
import type { SurveyReading } from '../../../src/ground/survey/readings.ts';
import { surveyAnswer } from '../../../src/ground/survey/verdict.ts';
import { hubPoint } from '../../../src/shell/geometry.ts';
import { hubCount } from '../../../src/shell/shell.ts';
import { baseThere, dome } from '../bases.ts';
import { moved, readAll } from './standing.ts';

const shell = dome(3, 0, -0.2, 2.5);
const base = baseThere(shell);
const rings = hubRings(shell, base);
/** Heights of all hubs of a ring, read over the level of the base's readings (1.3 m below). */
const heightsOf = (ring: number, off = 0): SurveyReading[] =>
  (rings[ring] ?? []).map((hub, k) => ({
    what: 'height',
    ring,
    number: k + 1,
    height: 1.3 + hubPoint(shell, hub)[2] - base.level + (k === 0 ? off : 0),
  }));
const heights = (readings: readonly SurveyReading[]) => {
  const built = asBuilt(base, readings);
  if (!built.ok) throw new Error(JSON.stringify(built.faults));
  return hubHeights(shell, base, built.value, readings);
};

test('every hub is in one ring, and rings go up', () => {
  expect(rings.flat().sort((a, b) => a - b)).toEqual([...Array(hubCount(shell)).keys()]);
  const mean = rings.map(
    (ring) => ring.reduce((sum, hub) => sum + hubPoint(shell, hub)[2], 0) / ring.length,
  );
  mean.slice(1).forEach((z, r) => {
    expect(z).toBeGreaterThan(mean[r] as number);
  });
});

test('heights as planned are off by nothing, and the sphere is the planned one', () => {
  const found = heights([...readAll(moved(base)), ...heightsOf(1), ...heightsOf(2)]);
  if (!found.ok) throw new Error('faults');
  for (const { off } of found.value.hubs) expect(Math.abs(off)).toBeLessThan(1e-4);
  expect(found.value.sphere?.radius).toBeCloseTo(2.5, 4);
  expect(found.value.sphere?.rms).toBeLessThan(1e-4);
});

test('one hub 14 mm high is told by ring and number, and is no reason to stop', () => {
  const read = surveyAnswer(shell, base, [...readAll(moved(base)), ...heightsOf(2, 0.014)]);
  if (!read.ok) throw new Error('faults');
  expect(read.value.verdict).toBe('go, keep slack');
  expect(read.value.reasons.join(' ')).toMatch(/Hub 1 of ring 2 stands 14\.0 mm off its height/);
});

test('a ring or a hub that is none is a fault', () => {
  const wrong = (ring: number, number: number): SurveyReading[] => [
    { what: 'height', ring, number, height: 2 },
  ];
  for (const [ring, number] of [
    [0, 1],
    [99, 1],
    [1, 999],
  ] as const) {
    const found = heights(wrong(ring, number));
    expect(found.ok ? '' : found.faults[0]?.found).toBe(`hub ${number} of ring ${ring}`);
  }
});
