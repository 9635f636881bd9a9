import { describe, expect, test } from 'vitest';
import { internalPressure716, isPartiallyEnclosed } from '../../src/loads/asce-7-16/internal.ts';
import { internalBehindOpening, internalClosed } from '../../src/loads/en-1991-1-4/internal.ts';
import { internalLaw } from '../../src/loads/internal.ts';
import { facesOf } from '../../src/loads/panels.ts';
import { totalsOf } from '../../src/loads/totals.ts';
import { massByArea, personLoad, placeMasses, selfWeight } from '../../src/loads/weight/weight.ts';
import { all, dome } from './shells.ts';

describe('internal pressure', () => {
  test('by ASCE 7: 0.18 closed, 0.55 with a door, 0.18 half open', () => {
    expect(internalPressure716('closed').value).toBe(0.18);
    expect(internalPressure716('open door').value).toBe(0.55);
    expect(internalPressure716('half open').value).toBe(0.18);
    expect(internalPressure716('open door').sources[0]?.confirmation).toBe('confirmed');
  });
  test('a door of 2 m² in a wall of 30 m² with nothing else open makes it partially enclosed', () => {
    const areas = { openings: 2, wall: 30, otherOpenings: 0.5, otherSurface: 90 };
    expect(isPartiallyEnclosed(areas)).toBe(true);
    expect(isPartiallyEnclosed({ ...areas, otherOpenings: 1.9 })).toBe(false);
    expect(isPartiallyEnclosed({ ...areas, openings: 0.2, otherOpenings: 0 })).toBe(false);
    expect(isPartiallyEnclosed({ ...areas, openings: 40, otherOpenings: 19 })).toBe(false);
    expect(() => isPartiallyEnclosed({ ...areas, wall: -1 })).toThrow('wall is -1 m²');
  });
  test('by EN: −0.3 and +0.2 closed; behind a dominant opening 0.75 to 0.9 of what is outside it', () => {
    expect(internalClosed().value).toEqual([-0.3, 0.2]);
    expect(internalBehindOpening(0.8, 2).value).toBeCloseTo(0.6, 12);
    expect(internalBehindOpening(0.8, 2.5).value).toBeCloseTo(0.66, 12);
    expect(internalBehindOpening(-1, 9).value).toBeCloseTo(-0.9, 12);
    expect(() => internalBehindOpening(0.8, 1.9)).toThrow('opening is 1.9 times all others');
  });
  test('of worst of all: the lowest and highest of both codes', () => {
    expect(internalLaw('worst of all', 'closed').range(0)).toEqual([-0.3, 0.2]);
    expect(internalLaw('worst of all', 'open door').range(0.8)).toEqual([-0.55, 0.55 + 0.17]);
    expect(internalLaw('asce 7-16', 'closed').range(0)).toEqual([-0.18, 0.18]);
    expect(internalLaw('en 1991-1-4', 'half open').range(-1.2)[0]).toBeCloseTo(-1.08, 12);
    expect(internalLaw('asce 7-22', 'half open').range(-1.2)).toEqual([-0.6, 0.18]);
  });
});

describe('weight', () => {
  const shell = dome(4);
  const faces = facesOf(shell);
  const ten = { value: 10, sources: [] };

  test('is mass × gravity, straight down', () => {
    const { value } = selfWeight(all(shell), () => ten);
    const { force } = totalsOf(faces, value.loads, [0, 0, 0]);
    expect(force[2]).toBeCloseTo(-10 * all(shell).length * 9.80665, 6);
    expect(force[0]).toBe(0);
    expect(value.mass).toBe(10 * all(shell).length);
  });
  test('names the places whose mass nobody knows, and guesses none', () => {
    const { value } = selfWeight([1, 2, 3], (p) => (p === 2 ? null : ten));
    expect(value.unknown).toEqual([2]);
    expect(value.loads.force[5]).toBe(0);
    expect(value.mass).toBe(20);
  });
  test('by area: the mass of a square metre times the panels’ area, with its source', () => {
    const source = { text: 'weighed one', confirmation: 'entered' } as const;
    const massOf = massByArea(faces, { value: 8, sources: [source] });
    const { value, sources } = selfWeight(all(shell), massOf);
    expect(value.mass / (8 * 2 * Math.PI * 9)).toBeGreaterThan(0.93);
    expect(value.mass / (8 * 2 * Math.PI * 9)).toBeLessThan(1.05);
    expect(sources).toContainEqual(source);
  });
  test('of a place: its kind’s as weighed, else by its area, else unknown', () => {
    const kinds = Array.from({ length: Math.max(...shell.kind) + 1 }, () => ({
      mass: null as number | null,
    }));
    const place = all(shell).find((p) => shell.kind[p] !== shell.kind[0]) as number;
    (kinds[shell.kind[0] as number] as { mass: number | null }).mass = 9.6;
    const [both, weighed] = [placeMasses(shell, kinds, 8), placeMasses(shell, kinds, null)];
    for (const massOf of [both, weighed])
      expect(massOf(0)).toEqual({
        value: 9.6,
        sources: [{ text: 'mass of its kind, as weighed', confirmation: 'entered' }],
      });
    const area = massByArea(faces, { value: 8, sources: [] })(place).value;
    expect(both(place)).toEqual({
      value: area,
      sources: [{ text: 'mass of a square metre of panel', confirmation: 'entered' }],
    });
    expect(weighed(place)).toBeNull();
  });
  test.each([-1, 501, Number.NaN])('a panel of %d kg is refused', (mass) => {
    expect(() => selfWeight([7], () => ({ value: mass, sources: [] }))).toThrow(
      `mass of the panel at place 7 is ${mass} kg, expected 0 to 500 kg`,
    );
  });
  test('a person weighs 1330 N from memory, nobody weighs nothing', () => {
    expect(personLoad(true).value).toBe(1330);
    expect(personLoad(true).sources[0]?.confirmation).toBe('from memory');
    expect(personLoad(false)).toEqual({ value: 0, sources: [] });
  });
});
