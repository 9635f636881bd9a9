import { defaultGround, defaultLoads, partsSection } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import type { EngineBridge } from '../../src/engine/bridge.ts';
import type { GroundQuestion } from '../../src/engine/ground.ts';
import { stabilityDetail } from '../../src/engine/stability.ts';
import { createStabilityRuns, runOfStage } from '../../src/engine/stability-runs.ts';
import { kinds, numbers, shell } from '../places/notation.ts';

const question: GroundQuestion = {
  shell,
  numbers,
  leftOut: [],
  kinds,
  loads: { ...defaultLoads, wind: { as: 'gust', speed: 28 }, panelMass: 8 },
  ground: defaultGround,
  parts: partsSection.parse({
    panel: { material: 'fibreglass', thickness: 0.003 },
    flange: { depth: 0.05 },
  }),
  stages: undefined,
};
const detailOf = (n: number, asked = question, done: number[] = []) => {
  const read = stabilityDetail({ ...asked, n }, (one) => done.push(one));
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};

describe('buckling and swing on the sheet', () => {
  it('of the last stage are those of the whole shell, every seam tight, in its design wind', () => {
    const done: number[] = [];
    const all = shell.kind.length;
    const { whole, found, movements } = detailOf(all, question, done);
    expect(whole).toBe(true);
    expect(found).toMatchObject({ seams: 'snug', swing: { status: 'reckoned', slow: false } });
    expect(found.gust).toBeGreaterThan(15);
    expect(done.at(-1)).toBe(1);
    // Three directions a corner, the largest movement 1 long.
    const swing = movements.swing ?? new Float64Array();
    expect(swing.length).toBe(3 * shell.sideHub.length);
    const sizes = Array.from({ length: swing.length / 3 }, (_, c) =>
      Math.hypot(...swing.subarray(3 * c, 3 * c + 3)),
    );
    expect(Math.max(...sizes)).toBeCloseTo(1, 9);
  });

  it('of a half-built stage are reckoned finger-tight, in the gust at which work stops', () => {
    const { whole, found } = detailOf(4);
    expect(whole).toBe(false);
    expect(found).toMatchObject({ seams: 'finger-tight', cap: null });
    expect(found.gust).toBeLessThan(12);
  });

  it('say why they are not reckoned where nobody knows the parts', () => {
    const { found, movements } = detailOf(4, { ...question, parts: undefined });
    expect(found.buckling).toMatchObject({
      status: 'not reckoned',
      why: expect.stringMatching(/nobody said/),
    });
    expect(movements).toEqual({ buckling: null, snapThrough: null, swing: null });
  });
});

describe('a run of buckling and swing', () => {
  /** A bridge that never answers, with what was asked and how often it was ended. */
  function bridge() {
    const asked: number[] = [];
    const ends = { count: 0 };
    const ask = ((_: 'stability', { n }: { n: number }) => {
      asked.push(n);
      return {
        answer: new Promise(() => undefined),
        cancel: () => {
          ends.count += 1;
        },
      };
    }) as unknown as EngineBridge['ask'];
    return { asked, ends, runs: createStabilityRuns({ ask }, () => 0) };
  }

  it('is shown beside the stage that it was asked for alone, and ends the one before', () => {
    const { asked, ends, runs } = bridge();
    runs.start({ of: question, n: 3 });
    expect(runOfStage(runs.store.getState(), { of: question, n: 3 }).status).toBe('running');
    expect(runOfStage(runs.store.getState(), { of: question, n: 4 }).status).toBe('idle');
    expect(runOfStage(runs.store.getState(), { of: { ...question }, n: 3 }).status).toBe('idle');
    runs.start({ of: question, n: 4 });
    expect(asked).toEqual([3, 4]);
    expect(ends.count).toBe(1);
  });
});
