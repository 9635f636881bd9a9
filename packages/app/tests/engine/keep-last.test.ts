import { defaultGround } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import type { GroundQuestion } from '../../src/engine/ground.ts';
import { keepLast } from '../../src/engine/keep-last.ts';
import { siteKey } from '../../src/engine/site-key.ts';
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

describe('an answer that is kept', () => {
  it('is reckoned once for questions that say the same, and anew for any other', () => {
    let times = 0;
    const kept = keepLast(JSON.stringify, (one: { n: number }) => {
      times += 1;
      return 2 * one.n;
    });
    expect([kept({ n: 1 }), kept({ n: 1 }), times]).toEqual([2, 2, 1]);
    expect([kept({ n: 3 }), kept({ n: 1 }), times]).toEqual([6, 2, 3]);
  });
});

describe('the key of a site', () => {
  it('is the same for a copy, and whatever is only measured on it', () => {
    const key = siteKey(question);
    expect(siteKey(structuredClone(question))).toBe(key);
    const levels = [{ method: 'laser' as const, readings: [{ at: 1, reading: 1.4 }] }];
    expect(siteKey({ ...question, ground: { ...defaultGround, levels } })).toBe(key);
  });

  it('is another for another anchor, opening, kind of a place or hub', () => {
    const anchor = { type: 'lawn stake' as const };
    const hubs = Float64Array.from(shell.hubs, (value, i) => (i === 0 ? value + 1e-9 : value));
    const kind = Int32Array.from(shell.kind, (value, i) => (i === 0 ? value + 1 : value));
    const others: GroundQuestion[] = [
      { ...question, ground: { ...defaultGround, anchor } },
      { ...question, leftOut: [3] },
      { ...question, shell: { ...shell, hubs } },
      { ...question, shell: { ...shell, kind: kind as typeof shell.kind } },
    ];
    expect(new Set([question, ...others].map(siteKey)).size).toBe(5);
  });
});
