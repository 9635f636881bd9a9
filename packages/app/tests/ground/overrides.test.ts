import { LOAD_NUMBER_KEYS, LOAD_NUMBERS, loadsSection, type Override } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { lengthsWithin } from '../../src/sheets/ground/edits.ts';
import {
  overridesNow,
  readOwn,
  withOverride,
  withoutOverride,
  withUnit,
} from '../../src/sheets/ground/overrides.ts';

const air: Override = { number: 'airDensity', value: 1.1, reason: 'high ground' };
const person: Override = { number: 'personLoad', value: 900, reason: 'weighed' };

describe('numbers of the lead’s own', () => {
  it('take the place of the same one, and go again', () => {
    const both = withOverride(withOverride([], person), air);
    const again = withOverride(both, { ...air, value: 1.2, reason: ' colder ' });
    expect(again).toEqual([person, { ...air, value: 1.2, reason: 'colder' }]);
    expect(withoutOverride(again, 'personLoad')).toEqual([
      { ...air, value: 1.2, reason: 'colder' },
    ]);
  });

  it('are told once each, in the table’s order, the last one of a file counting', () => {
    expect(overridesNow([person, air, { ...air, value: 1 }])).toEqual([
      { ...air, value: 1 },
      person,
    ]);
  });

  it.each(LOAD_NUMBER_KEYS)(
    '%s is read to its very limits, as the project file takes it',
    (key) => {
      const { least, most } = LOAD_NUMBERS[key];
      const kept = (value: number): boolean =>
        loadsSection.safeParse({ overrides: [{ number: key, value, reason: 'r' }] }).success;
      for (const value of [least, most]) {
        expect(readOwn(key, String(value))).toEqual({ ok: true, value });
        expect(kept(value)).toBe(true);
      }
      const beyond = most + Math.max(1e-3, Math.abs(most) * 1e-3);
      expect(readOwn(key, String(beyond))).toEqual({ ok: false });
      expect(kept(beyond)).toBe(false);
    },
  );

  it('are refused where nothing or no number is typed', () => {
    expect(readOwn('airDensity', '')).toEqual({ ok: false });
    expect(readOwn('airDensity', 'thin')).toEqual({ ok: false });
    expect(readOwn('crownB', '−0.9')).toEqual({ ok: true, value: -0.9 });
    expect(withUnit(-0.9, 'kN')).toBe('−0.9 kN');
  });
});

describe('several lengths in a row', () => {
  const shims = (text: string) => lengthsWithin(text, 'mm', 1e-4, 0.2, 3);

  it('are read each with its unit, or with that after the last', () => {
    expect(shims('1, 2, 5 mm')).toEqual({ ok: true, value: [0.001, 0.002, 0.005] });
    expect(shims('1 mm; 1 cm')).toEqual({ ok: true, value: [0.001, 0.01] });
    expect(shims('2, 3')).toEqual({ ok: true, value: [0.002, 0.003] });
    expect(lengthsWithin('1/16, 1/8 in', 'in', 1e-4, 0.2, 3)).toEqual({
      ok: true,
      value: [0.0254 / 16, 0.0254 / 8],
    });
    expect(shims('')).toEqual({ ok: true, value: [] });
  });

  it('are refused where one is no length, too long, or one too many', () => {
    expect(shims('1, thick')).toEqual({ ok: false });
    expect(shims('1, 300')).toEqual({ ok: false });
    expect(shims('1, 2, 3, 4')).toEqual({ ok: false });
  });
});
