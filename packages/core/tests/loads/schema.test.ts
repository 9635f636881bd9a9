import { describe, expect, test } from 'vitest';
import { formOf, settingsPressure, snowCases, windQuestion } from '../../src/loads/question.ts';
import { defaultLoads, loadsSection } from '../../src/loads/schema.ts';
import { projectFrom } from '../../src/project/project.ts';

const project = (loads: unknown) => projectFrom({ shellraise: 1, pile: { kinds: [] }, loads });
const faultsOf = (loads: unknown): string[] => {
  const read = project(loads);
  return read.ok ? [] : read.faults.map((f) => `${f.path}: ${f.found}, ${f.expected}`);
};

describe('the loads of a project file', () => {
  test('say nothing unless told: worst of all codes and laws, no wind, no snow, nobody up there', () => {
    expect(defaultLoads).toEqual({
      code: 'worst of all',
      law: 'worst of all',
      wind: null,
      terrain: 'open',
      altitude: 0,
      daysStanding: null,
      baseHeight: 0,
      snowCode: 'worst of all',
      groundSnow: null,
      slippery: false,
      doorOpen: false,
      person: false,
      panelMass: null,
      overrides: [],
    });
  });

  test.each([
    [{ wind: { as: 'gust', speed: 0 } }, 'loads.wind.speed: 0, a number of at least 0.5'],
    [{ wind: { as: 'gust', speed: 300 } }, 'loads.wind.speed: 300, a number of at most 115'],
    [
      { wind: { as: 'hourly', speed: 30 } },
      'loads.wind.as: "hourly", one of gust, ten-minute mean',
    ],
    [{ altitude: 7000 }, 'loads.altitude: 7000, a number of at most 6000'],
    [{ groundSnow: -1 }, 'loads.groundSnow: -1, a number of at least 0'],
    [{ terrain: 'moor' }, 'loads.terrain: "moor", one of sea, lake, open, suburb, town'],
    [
      { overrides: [{ number: 'crownB', value: -7, reason: 'x' }] },
      'loads.overrides[0].value: -7, a number of -3 to 0.5 for crownB',
    ],
    [
      { overrides: [{ number: 'gravity', value: 20, reason: 'x' }] },
      'loads.overrides[0].value: 20, a number of 9.7 to 9.9 m/s² for gravity',
    ],
    [
      { overrides: [{ number: 'gravity', value: 9.8, reason: '  ' }] },
      'loads.overrides[0].reason: "  ", text of at least 1 characters',
    ],
  ])('%j is refused with its place and what is allowed', (loads, fault) => {
    expect(faultsOf(loads)).toContain(fault);
  });
});

describe('from what the lead chose to what the laws are asked', () => {
  const chosen = loadsSection.parse({
    wind: { as: 'gust', speed: 35 },
    groundSnow: 1000,
    baseHeight: 0.3,
    overrides: [{ number: 'airDensity', value: 1.2, reason: 'hot site' }],
  });
  const form = formOf(chosen, 3, 0);

  test('the form has the height of the base, the question the overrides', () => {
    expect(form).toEqual({ radius: 3, baseZ: 0, baseHeight: 0.3 });
    expect(windQuestion(chosen, form, [0]).overrides).toEqual(chosen.overrides);
  });

  test('worst of all is the highest of the codes, and says which', () => {
    const codes = ['asce 7-16', 'asce 7-22', 'en 1991-1-4'] as const;
    const each = codes.map((code) => settingsPressure({ ...chosen, code }, form)?.value as number);
    const worst = settingsPressure(chosen, form);
    expect(worst?.value).toBe(Math.max(...each));
    expect(worst?.code).toBe(codes[each.indexOf(Math.max(...each))]);
  });

  test('without a wind there is no pressure, without snow no snow', () => {
    expect(settingsPressure(defaultLoads, form)).toBeNull();
    expect(snowCases(defaultLoads, form)).toEqual([]);
    expect(snowCases({ ...chosen, groundSnow: 0 }, form)).toEqual([]);
  });

  test('snow by one code or by both', () => {
    expect(snowCases(chosen, form)).toHaveLength(4);
    expect(snowCases({ ...chosen, snowCode: 'en 1991-1-3' }, form).map(({ name }) => name)).toEqual(
      ['EN 1991-1-3 even snow', 'EN 1991-1-3 drifted snow'],
    );
  });
});
