import { groundSection } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  anchorFields,
  anchorStarts,
  furtherReadings,
  heightFrom,
  lengthWithin,
  surveyValue,
  withHeight,
  within,
  withLevel,
  withMethod,
  withoutHeight,
  withReading,
} from '../../src/sheets/ground/edits.ts';

const accepts = (anchor: object): boolean => groundSection.safeParse({ anchor }).success;

describe('the sorts of anchors', () => {
  it('start as the project file takes them', () => {
    for (const start of Object.values(anchorStarts)) expect(accepts(start)).toBe(true);
  });

  it('have limits that the project file has too, and none beyond', () => {
    for (const start of Object.values(anchorStarts))
      for (const field of anchorFields[start.type]) {
        if (field.as === 'choice')
          for (const one of field.of) expect(accepts({ ...start, [field.key]: one })).toBe(true);
        if (field.as !== 'length' && field.as !== 'number') continue;
        expect(accepts({ ...start, [field.key]: field.least })).toBe(true);
        expect(accepts({ ...start, [field.key]: field.most })).toBe(true);
        expect(accepts({ ...start, [field.key]: 10 * field.most })).toBe(false);
      }
  });
});

describe('what is typed', () => {
  it('is a number within limits, or nothing', () => {
    expect(within('8,5', 0, 10)).toEqual({ ok: true, value: 8.5 });
    expect(within(' ', 0, 10)).toEqual({ ok: true, value: undefined });
    expect(within('11', 0, 10)).toEqual({ ok: false });
    expect(within('x', 0, 10)).toEqual({ ok: false });
  });

  it('is a length of either sign within limits', () => {
    expect(lengthWithin('-12', 'mm', -20, 20)).toEqual({ ok: true, value: -0.012 });
    expect(lengthWithin('3 ft', 'm', 0, 20)).toEqual({ ok: true, value: 0.9144 });
    expect(lengthWithin('21 m', 'm', 0, 20)).toEqual({ ok: false });
  });
});

describe('readings', () => {
  it('take the place of the same one, a chord from either end', () => {
    const first = withReading([], 'chord', 1, 2, 1.1);
    expect(withReading(first, 'chord', 2, 1, 1.2)).toEqual([
      { what: 'chord', from: 2, to: 1, length: 1.2 },
    ]);
    expect(surveyValue(first, 'chord', 2, 1)).toBe(1.1);
    expect(surveyValue(first, 'radius', 1, 2)).toBeUndefined();
    expect(withReading(first, 'chord', 1, 2, undefined)).toEqual([]);
  });

  it('of levels keep the set-ups behind the first, and drop a set-up that is empty', () => {
    const rest = { method: 'heights' as const, readings: [{ at: 1, reading: 0 }] };
    const laser = { method: 'laser' as const, readings: [{ at: 3, reading: 1.4 }] };
    expect(withLevel([laser, rest], 3, 1.5, 'heights')).toEqual([
      { method: 'laser', readings: [{ at: 3, reading: 1.5 }] },
      rest,
    ]);
    expect(withLevel([laser, rest], 3, undefined, 'laser')).toEqual([rest]);
  });

  it('of levels begin with the method that was chosen, which may change later', () => {
    const first = withLevel([], 2, 1.4, 'water level');
    expect(first).toEqual([{ method: 'water level', readings: [{ at: 2, reading: 1.4 }] }]);
    expect(withMethod(first, 'laser')).toEqual([
      { method: 'laser', readings: [{ at: 2, reading: 1.4 }] },
    ]);
    expect(withMethod([], 'laser')).toEqual([]);
  });

  it('of a survey that no field shows are counted', () => {
    const radius = { what: 'radius' as const, hub: 1, length: 2 };
    const chord = { what: 'chord' as const, from: 3, to: 1, length: 2 };
    expect(furtherReadings([radius, chord], 3)).toBe(0);
    expect(furtherReadings([radius, chord], 5)).toBe(1);
    expect(furtherReadings([radius, { ...radius, length: 2.01 }], 5)).toBe(1);
  });
});

describe('heights of upper hubs', () => {
  const metres = (text: string) =>
    Number.isFinite(Number(text)) && text !== ''
      ? ({ ok: true, value: Number(text) } as const)
      : ({ ok: false } as const);

  it('are read with ring and hub, one a hub, and go again', () => {
    const first = heightFrom({ ring: '1', number: ' 3 ', height: '0.9' }, metres);
    if (!first) throw new Error('not read');
    expect(first).toEqual({ what: 'height', ring: 1, number: 3, height: 0.9 });
    const again = withHeight(withHeight([], first), { ...first, height: 0.91 });
    expect(again).toEqual([{ ...first, height: 0.91 }]);
    expect(withoutHeight(again, first)).toEqual([]);
  });

  it.each([
    { ring: '0', number: '1', height: '1' },
    { ring: '1.5', number: '1', height: '1' },
    { ring: '1', number: 'two', height: '1' },
    { ring: '1', number: '1', height: '' },
    { ring: '1', number: '1', height: '21' },
  ])('cannot be ring $ring, hub $number, height $height', (typed) => {
    expect(heightFrom(typed, metres)).toBeNull();
  });
});
