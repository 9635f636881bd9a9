import { type Item, RecordLog, recordPlan, recordState, type What } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { pickNearest, spotAt } from '../../src/drawing/plan-view/pick.ts';
import { recordItems } from '../../src/sheets/record/record-items.ts';
import { courses, numbers, picture, places, shell } from '../places/notation.ts';

const plan = recordPlan(shell, { numbers, course: courses.course });

function drawn(
  whats: readonly What[],
  noting: 'seams' | 'seal' = 'seams',
  next: readonly number[] = [],
): readonly Item[] {
  const log = new RecordLog();
  for (const what of whats)
    log.add(log.write(what, { writer: 'writer0001', by: 'Ada', at: 1_781_254_800_000 }));
  const state = recordState(log, plan);
  return recordItems({ plan, state, forgotten: [], noting, leftOut: [], next, picture });
}

const all: readonly What[] = numbers.map((place) => ({
  kind: 'panel placed',
  place,
  tag: null,
  turn: null,
}));
const strokes = (items: readonly Item[], weight: string) =>
  items.filter((item) => item.type === 'path' && item.stroke?.weight === weight).length;
const circles = (items: readonly Item[]) => items.filter(({ type }) => type === 'circle').length;

describe('the plan of the record', () => {
  it('draws a seam by its pass, and by its seal where that is noted', () => {
    const seam = plan.seams[0] as string;
    const final: What = { kind: 'seam pass', seam, pass: 'final' };
    const sealed: What = { kind: 'seam sealed', seam, sealed: true };
    expect(strokes(drawn(all), 'heavy')).toBe(0);
    expect(strokes(drawn([...all, final]), 'heavy')).toBe(1);
    expect(strokes(drawn([...all, final], 'seal'), 'heavy')).toBe(0);
    expect(strokes(drawn([...all, sealed], 'seal'), 'heavy')).toBe(1);
  });

  it('draws every place and every number, plates and props where they are', () => {
    const hub = plan.hubs.find((name) => name !== '') as string;
    const items = drawn([...all, { kind: 'hub plate', hub, on: true }]);
    const named = (key: 'place' | 'label') =>
      items.filter((item) => item.type === 'group' && item.data?.[key] !== undefined).length;
    expect(named('place')).toBe(places.length);
    expect(named('label')).toBe(places.length);
    expect(circles(items)).toBe(1);
    expect(circles(drawn([...all, { kind: 'prop', hub, set: true }]))).toBe(1);
  });
});

describe('the panels that go up next', () => {
  const accented = (items: readonly Item[]) =>
    items.flatMap((item) =>
      item.type === 'group' &&
      item.items.some((one) => one.type === 'text' && one.ink === 'accent' && one.bold)
        ? [Number(item.data?.label)]
        : [],
    );

  it('stand out by their numbers until they are up', () => {
    expect(accented(drawn([]))).toEqual([]);
    expect(accented(drawn([], 'seams', [2, 3])).sort()).toEqual([2, 3]);
    expect(accented(drawn(all, 'seams', [2]))).toEqual([]);
  });
});

describe('a gloved tap', () => {
  it('means the sort that is noted, wherever it falls on the shell', () => {
    const middle = spotAt(picture.labels, 0);
    expect(pickNearest(shell, picture, middle, 'place')).toEqual({ type: 'place', place: 0 });
    expect(pickNearest(shell, picture, middle, 'seam')?.type).toBe('seam');
    expect(pickNearest(shell, picture, spotAt(picture.hubs, 3), 'hub')).toEqual({
      type: 'hub',
      hub: 3,
    });
    for (const sort of ['place', 'seam', 'hub'] as const)
      expect(pickNearest(shell, picture, [1e4, 1e4], sort)).toBeNull();
  });
});
