import type { Identification } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import type { PileWork } from '../../src/engine/api.ts';
import type { Ask } from '../../src/engine/ask.ts';
import { askedQuestion, isStale, stageOf } from '../../src/sheets/shape/stage.ts';
import { answerOf, ball, kind, shapeOf } from './notation.ts';

const ask = <T>(more: Partial<Ask<T>>): Ask<T> => ({
  status: 'idle',
  input: null,
  value: null,
  fresh: false,
  since: 0,
  progress: null,
  fault: null,
  died: false,
  ...more,
});

const question = { kinds: [kind('1', [1, 1, 1])], groups: [] };
const worked = (kinds = question.kinds): Ask<PileWork> =>
  ask({
    status: 'done',
    fresh: true,
    value: { question: { kinds, groups: [] } } as unknown as PileWork,
  });
const { shell, kinds } = ball(1);
const found = (shapes = [shapeOf(shell, kinds)]): Ask<Identification> =>
  ask({
    status: 'done',
    fresh: true,
    input: JSON.stringify(question),
    value: answerOf(shapes),
  });

describe('where the sheet stands', () => {
  it('before the pile is worked up, without kinds, before the press', () => {
    expect(stageOf(ask({}), ask({}))).toBe('reading');
    expect(stageOf(worked([]), ask({}))).toBe('empty');
    expect(stageOf(worked(), ask({}))).toBe('ready');
    expect(stageOf(ask({ status: 'failed' }), ask({}))).toBe('unreadable');
  });

  it('while it runs, cancelled, failed, found, and where nothing closed', () => {
    expect(stageOf(worked(), { ...found(), status: 'running', fresh: false })).toBe('running');
    expect(stageOf(worked(), { ...found(), status: 'cancelled' })).toBe('cancelled');
    expect(stageOf(worked(), { ...found(), status: 'failed' })).toBe('failed');
    expect(stageOf(worked(), found())).toBe('found');
    expect(stageOf(worked(), found([]))).toBe('nothing');
  });

  it('a pile that lost its last kind is empty, whatever it closed into before', () => {
    expect(stageOf(worked([]), found())).toBe('empty');
  });
});

describe('stale results', () => {
  it('are those of another question than the present one', () => {
    expect(isStale(worked(), found())).toBe(false);
    expect(isStale(worked([kind('1', [1, 1, 1.01])]), found())).toBe(true);
  });

  it('are all results while the changed pile is being worked up, and none before any is found', () => {
    expect(isStale({ ...worked(), fresh: false }, found())).toBe(true);
    expect(isStale(worked(), ask({}))).toBe(false);
  });

  it('keep the kinds that they were asked for', () => {
    expect(askedQuestion(found().input)?.kinds).toEqual(question.kinds);
    expect(askedQuestion(null)).toBeNull();
  });
});
