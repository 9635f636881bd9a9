import { describe, expect, test } from 'vitest';
import { executionReturnPeriod } from '../../src/loads/en-1991-1-4/probability.ts';
import { gbDome } from '../../src/loads/gb-50009/dome.ts';
import { crownHeight, externalPressure, inWindFrame, riseRatio } from '../../src/loads/law.ts';
import {
  codeWind,
  peakPressure,
  TERRAIN_WORDS,
  WIND_CODES,
} from '../../src/loads/peak-pressure.ts';
import { weakest } from '../../src/loads/provenance.ts';
import { gustOf, gustOfPressure, gustPressure } from '../../src/loads/reported-wind/gust.ts';

const gust = { as: 'gust', speed: 40 } as const;
const site = { terrain: 'open', altitude: 0 } as const;

describe.each(WIND_CODES)('peak pressure by %s', (code) => {
  const at = (speed: number, height = 5): number =>
    peakPressure(code, { ...gust, speed }, site, height).value;

  test('grows with the square of the wind', () => {
    expect(at(40) / at(20)).toBeCloseTo(4, 12);
  });
  test('never falls with height nor with smoother land', () => {
    for (let h = 0; h < 20; h += 0.5) expect(at(40, h + 0.5)).toBeGreaterThanOrEqual(at(40, h));
    const over = TERRAIN_WORDS.map(
      (terrain) => peakPressure(code, gust, { terrain, altitude: 0 }, 5).value,
    );
    expect(over).toEqual([...over].sort((a, b) => b - a));
  });
  test('of 40 m/s in the open lies by half the square of the gust', () => {
    expect(at(40) / 1000).toBeGreaterThan(0.7);
    expect(at(40) / 1000).toBeLessThan(1.1);
  });
  test('is lower for a shell that stands three days, and says by what', () => {
    const short = peakPressure(code, gust, { ...site, daysStanding: 3 }, 5);
    expect(short.value).toBeLessThan(at(40));
    expect(short.sources.map(({ text }) => text).join()).toMatch(/ASCE 37|EN 1991-1-6/);
  });
  test.each([0, -3, 116, Number.NaN, Infinity])('a gust of %d m/s is refused', (speed) => {
    expect(() => at(speed)).toThrow(`design gust is ${speed} m/s, expected 0.5 to 115 m/s`);
  });
  test.each([-1, 101, Number.NaN])('a height of %d m is refused', (height) => {
    expect(() => at(40, height)).toThrow(`height above ground is ${height} m, expected 0 to 100 m`);
  });
});

test('an altitude that is none is refused, with what is allowed', () => {
  for (const altitude of [-451, 6001, Number.NaN])
    expect(() => peakPressure('asce 7-16', gust, { ...site, altitude }, 5)).toThrow(
      `altitude is ${altitude} m, expected -450 to 6000 m`,
    );
});

test('a gust and a mean are turned into each other, and the result says that it was from memory', () => {
  const mean = codeWind('en 1991-1-4', gust, {});
  expect(mean.value).toBeCloseTo(40 / 1.43, 12);
  expect(weakest(mean.sources)).toBe('from memory');
  const back = codeWind('asce 7-16', { as: 'ten-minute mean', speed: mean.value }, {});
  expect(back.value).toBeCloseTo(40, 12);
  expect(codeWind('asce 7-16', gust, {})).toEqual({ value: 40, sources: [] });
});

describe('a wind as reported', () => {
  const ratio = { value: 1.5, sources: [] };
  test('a gust is itself, a mean is raised, a force is the top of its band', () => {
    expect(gustOf({ as: 'gust', speed: 12 }, ratio).value).toBe(12);
    expect(gustOf({ as: 'mean', speed: 12 }, ratio).value).toBe(18);
    expect(gustOf({ as: 'Beaufort', force: 6 }, ratio).value).toBeCloseTo(20.7, 12);
  });
  test('a calm, a force of 13 or of 2.5 and an odd ratio are refused', () => {
    expect(() => gustOf({ as: 'Beaufort', force: 0 }, ratio)).toThrow('mean wind is 0.2 m/s');
    expect(() => gustOf({ as: 'Beaufort', force: 13 }, ratio)).toThrow('Beaufort force is 13');
    expect(() => gustOf({ as: 'Beaufort', force: 2.5 }, ratio)).toThrow('a whole number 0 to 12');
    expect(() => gustOf({ as: 'mean', speed: 5 }, { value: 0.5, sources: [] })).toThrow(
      'gust over mean is 0.5, expected 1 to 3',
    );
  });
  test('pressure and gust are each other back', () => {
    expect(gustOfPressure(gustPressure(17.3, 1.25), 1.25)).toBeCloseTo(17.3, 12);
    expect(gustPressure(25, 1.25)).toBe(390.625);
  });
});

describe('a point of a shell', () => {
  test('the wind from the datum meets +x, a wind from a quarter on meets +y', () => {
    expect(inWindFrame([1, 0, 0], 0)).toEqual([1, 0, 0]);
    const [u, s] = inWindFrame([0, 1, 0], Math.PI / 2);
    expect(u).toBeCloseTo(1, 12);
    expect(s).toBeCloseTo(0, 12);
  });
  test('pressure there is q × coefficient, whatever the length of n, turned with the wind', () => {
    const law = gbDome({ radius: 3, baseZ: 0 });
    expect(externalPressure(law, 600, [3, 0, 0], 0)).toBeCloseTo(300, 9);
    expect(externalPressure(law, 600, [0, 0, 2], 1)).toBeCloseTo(-600, 9);
    expect(externalPressure(law, 600, [0, 1, 0], Math.PI / 2)).toBeCloseTo(300, 9);
    expect(() => externalPressure(law, 600, [0, 0, 0], 0)).toThrow('direction is (0, 0, 0)');
  });
  test('height and rise of a half sphere and of three quarters', () => {
    expect(crownHeight({ radius: 3, baseZ: -1.5, baseHeight: 0.4 })).toBeCloseTo(4.9, 12);
    expect(riseRatio({ radius: 3, baseZ: 0 })).toBe(0.5);
    expect(riseRatio({ radius: 2, baseZ: -1 })).toBeCloseTo(3 / (2 * Math.sqrt(3)), 12);
  });
  test.each([
    [{ radius: 0, baseZ: 0 }, 'radius is 0 m, expected 0.1 to 100 m'],
    [{ radius: Number.NaN, baseZ: 0 }, 'radius is NaN m'],
    [
      { radius: 3, baseZ: -3 },
      'base is at -3 m above the centre, expected more than -3 and less than 3 m',
    ],
    [{ radius: 3, baseZ: 0, baseHeight: -1 }, 'height of the base above the ground is -1 m'],
  ])('a form of %j is refused', (form, message) => {
    expect(() => gbDome(form)).toThrow(message);
  });
});

describe('a short exposure', () => {
  const years = [0.01, 3, 3.1, 92, 93, 365, 366, 36_500].map(executionReturnPeriod);

  test('EN 1991-1-6 (from memory): 2 years to three days, 5 to three months, 10 to a year, then 50', () => {
    expect(years).toEqual([2, 2, 5, 5, 10, 10, 50, 50]);
    expect(() => executionReturnPeriod(0)).toThrow('days standing is 0 days');
    expect(() => executionReturnPeriod(Number.NaN)).toThrow('days standing is NaN days');
  });
  test('ASCE 37: three quarters of the wind under six weeks, all of it from then on', () => {
    const at = (daysStanding: number): number =>
      codeWind('asce 7-16', gust, { daysStanding }).value / 40;
    expect([1, 41.9, 42, 400].map(at)).toEqual([0.75, 0.75, 1, 1]);
  });
  test('EN: the wind of the return period', () => {
    const mean = { as: 'ten-minute mean', speed: 26 } as const;
    expect(codeWind('en 1991-1-4', mean, { daysStanding: 60 }).value).toBeCloseTo(
      26 * 0.8545006,
      5,
    );
    expect(codeWind('en 1991-1-4', mean, { daysStanding: null }).value).toBe(26);
  });
});
