import { describe, expect, it } from 'vitest';
import { type PassChange, passAfter, type RaisingStage } from '../../src/raise/plan.ts';

const stage = (number: number, pass: Partial<PassChange>): RaisingStage =>
  ({ number, pass: { finger: [], snug: [], final: [], ...pass } }) as unknown as RaisingStage;

describe('the passes of a plan', () => {
  const stages = [
    stage(1, { finger: [0, 1] }),
    stage(2, { finger: [2], snug: [0] }),
    stage(3, { snug: [1, 2], final: [0] }),
  ];

  it('are those of every stage up to the one asked for', () => {
    expect(passAfter(stages, 0, 4)).toEqual([null, null, null, null]);
    expect(passAfter(stages, 2, 4)).toEqual(['snug', 'finger', 'finger', null]);
    expect(passAfter(stages, 3, 4)).toEqual(['final', 'snug', 'snug', null]);
  });
});
