import { defaultGround } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import type { EngineBridge } from '../../src/engine/bridge.ts';
import type { GroundQuestion } from '../../src/engine/ground.ts';
import { createStageRuns } from '../../src/engine/stage-runs.ts';
import { kinds, numbers, shell } from '../places/notation.ts';

const question: GroundQuestion = {
  shell,
  numbers,
  leftOut: [],
  kinds,
  loads: undefined,
  ground: defaultGround,
  parts: undefined,
  stages: undefined,
};

/** Runs with a bridge that never answers, and how often it was asked. */
function counted() {
  const asked: GroundQuestion[] = [];
  const ask = ((_: 'stages', one: GroundQuestion) => {
    asked.push(one);
    return { answer: new Promise(() => undefined), cancel: () => undefined };
  }) as unknown as EngineBridge['ask'];
  return { asked, runs: createStageRuns({ ask }, () => 0) };
}

describe('a run of stages', () => {
  it('goes on when a reading is entered that no stage hangs on', () => {
    const { asked, runs } = counted();
    runs.follow(question);
    const survey = [{ what: 'radius' as const, hub: 1, length: 3.65 }];
    runs.follow({ ...question, ground: { ...defaultGround, survey } });
    runs.follow(structuredClone(question));
    expect(asked.length).toBe(1);
  });

  it('starts anew for another shell, or when it is asked to', () => {
    const { asked, runs } = counted();
    runs.follow(question);
    runs.follow({ ...question, leftOut: [0] });
    runs.start({ ...question, leftOut: [0] });
    expect(asked.length).toBe(3);
  });
});
