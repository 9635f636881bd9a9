import { describe, expect, it } from 'vitest';
import { prepareFrame } from '../../src/frame/answer.ts';
import { frameBuckling, frameFrequencies } from '../../src/frame/frame-modes.ts';
import { frameOf } from '../../src/frame/from-shell.ts';
import { frameParts } from '../../src/frame/parts.ts';
import { partsSection } from '../../src/frame/schema.ts';
import { ball, heldRow, hinged, tiers } from './fixtures.ts';

const parts = frameParts(
  partsSection.parse({
    panel: { material: 'fibreglass', thickness: 0.003 },
    flange: { depth: 0.04 },
  }),
);
const shell = ball(3);
const stage = { placed: tiers(shell, 0, 4), supports: heldRow(shell, 4) };
const grown = (size: number, pass: 'finger' | 'snug' = 'snug') => {
  const model = frameOf(shell, { ...stage, pass: () => pass });
  return prepareFrame({ ...model, hubs: model.hubs.map((x) => x * size) }, parts);
};

describe('a dome under pressure', () => {
  const pressure = stage.placed.map(() => 1000);

  it('buckles at a factor that halves when the pressure doubles', () => {
    const one = frameBuckling(grown(2.7), { pressure, weight: 0 }, 4);
    const two = frameBuckling(grown(2.7), { pressure: pressure.map((p) => 2 * p), weight: 0 }, 4);
    if (one.status !== 'stands' || two.status !== 'stands') throw new Error('it stands');
    expect(one.complete).toBe(true);
    expect(one.values).toHaveLength(4);
    expect(one.supposed).toEqual(parts.supposed);
    expect(one.sources.map(({ text }) => text).join()).toMatch(/handbook.*a third to a fifth/);
    one.values.forEach((value, k) => {
      expect(value / two.values[k]).toBeCloseTo(2, 7);
      expect(value).toBeGreaterThanOrEqual(one.values[Math.max(0, k - 1)] * (1 - 1e-9));
    });
  });

  it('buckles sooner with finger-tight seams', () => {
    const snug = frameBuckling(grown(2.7), { pressure, weight: 0 });
    const loose = frameBuckling(grown(2.7, 'finger'), { pressure, weight: 0 });
    if (snug.status !== 'stands' || loose.status !== 'stands') throw new Error('it stands');
    expect(loose.values[0]).toBeLessThan(0.8 * snug.values[0]);
  });
});

describe('a dome that swings', () => {
  it('does so in pairs, one by its five-fold turn, and slower when larger', () => {
    const small = frameFrequencies(grown(2.7), 3);
    const large = frameFrequencies(grown(5.4), 3);
    if (small.status !== 'stands' || large.status !== 'stands') throw new Error('it stands');
    expect(small.complete).toBe(true);
    expect(small.sources).toEqual(parts.sources);
    const [a, b, c] = small.values;
    const pairs = [b / a - 1, c / b - 1];
    expect(Math.min(...pairs)).toBeLessThan(1e-6);
    expect(large.values[0]).toBeLessThan(small.values[0]);
  });
});

describe('a stage that does not stand', () => {
  it('has its movement for an answer to both', () => {
    const two = ball(2);
    const band = hinged(two, { placed: tiers(two, 2, 3), supports: heldRow(two, 3) });
    const frame = prepareFrame(band, parts);
    expect(frameBuckling(frame, {}).status).toBe('unstable');
    expect(frameFrequencies(frame).status).toBe('unstable');
  });
});
