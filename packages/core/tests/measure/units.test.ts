import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Read } from '../../src/measure/fault.ts';
import * as units from '../../src/measure/units.ts';

const SEED = 41;
const value = (read: Read<number>): number => {
  if (!read.ok) throw new Error(read.faults[0]?.expected);
  return read.value;
};
const refusal = (read: Read<number>): string => {
  if (read.ok) throw new Error(`was read as ${read.value}`);
  return read.faults[0]?.expected ?? '';
};

test.each([
  [units.readMass('9.6 kg'), 9.6],
  [units.readMass('21 lb 4 oz'), 21.25 * 0.45359237],
  [units.readMass('340 g'), 0.34],
  [units.readMass('9,6', { unit: 'kg' }), 9.6],
  [units.readForce('2.5 kN'), 2500],
  [units.readForce('1500 daN'), 15000],
  [units.readForce('100 lbf'), 444.82216152605],
  [units.readForce('1 kgf'), 9.80665],
  [units.readPressure('0,6 kN/m2'), 600],
  [units.readPressure('20 psf'), 957.6051796],
  [units.readPressure('20 lb/ft^2'), 957.6051796],
  [units.readPressure('600 Pa'), 600],
  [units.readSpeed('12 m/s'), 12],
  [units.readSpeed('25 mph'), 11.176],
  [units.readSpeed('36 km/h'), 10],
  [units.readSpeed('20 kn'), 18520 / 1800],
  [units.readAngle('180°'), Math.PI],
  [units.readAngle('36° 30\' 36"'), (36.51 * Math.PI) / 180],
  [units.readAngle('36 deg'), Math.PI / 5],
  [units.readAngle('0.5 rad'), 0.5],
  [units.readAngle('36', { unit: 'deg' }), Math.PI / 5],
  [units.readAngle('0.5', { unit: 'rad' }), 0.5],
  [units.readAngle('1,103 rad', { decimal: 'comma' }), 1.103],
  [units.readTemperatureC('4 °C'), 4],
  [units.readTemperatureC('-3C'), -3],
  [units.readTemperatureC('41 ° F'), 5],
  [units.readTemperatureC('-40 °F'), -40],
  [units.readTemperatureC('41', { unit: 'F' }), 5],
  [units.readTemperatureC('5', { unit: 'C' }), 5],
])('quantity %# is read to SI', (read, expected) => expect(value(read)).toBeCloseTo(expected, 5));

describe('a value with two meanings is refused', () => {
  test.each([
    [units.readMass('12'), '12 kg or'],
    [units.readForce('500 kg'), 'lbf, kgf'],
    [units.readForce('500 lb'), 'lbf, kgf'],
    [units.readSpeed('12'), '12 m/s or'],
    [units.readAngle('36'), '36 ° or 36 rad'],
    [units.readTemperatureC('5'), '5 °C or 5 °F'],
    [units.readTemperatureC('0'), '°C or °F'],
    [units.readMass('1,103 kg'), '1103 kg or 1.103 kg'],
  ])('case %#', (read, expected) => expect(refusal(read)).toContain(expected));
});

type Pair = readonly [string, (x: number) => string, (s: string) => Read<number>, number];
const pairs: readonly Pair[] = [
  ...(['kg', 'g', 't', 'lb', 'oz'] as const).map(
    (u) =>
      [
        u,
        (x: number) => units.writeMass(x, u),
        units.readMass,
        0.05 * value(units.readMass(`1 ${u}`)),
      ] as const,
  ),
  ...(['N', 'daN', 'kN', 'lbf', 'kgf'] as const).map(
    (u) =>
      [
        u,
        (x: number) => units.writeForce(x, u),
        units.readForce,
        0.05 * value(units.readForce(`1 ${u}`)),
      ] as const,
  ),
  ...(['Pa', 'kPa', 'psf'] as const).map(
    (u) =>
      [
        u,
        (x: number) => units.writePressure(x, u),
        units.readPressure,
        0.005 * value(units.readPressure(`1 ${u}`)),
      ] as const,
  ),
  ...(['m/s', 'km/h', 'mph', 'kn'] as const).map(
    (u) =>
      [
        u,
        (x: number) => units.writeSpeed(x, u),
        units.readSpeed,
        0.05 * value(units.readSpeed(`1 ${u}`)),
      ] as const,
  ),
  ['deg', (x) => units.writeAngle(x, 'deg'), units.readAngle, (0.05 * Math.PI) / 180],
  ['rad', (x) => units.writeAngle(x, 'rad'), units.readAngle, 0.05],
  ['°C', (x) => units.writeTemperatureC(x, 'C'), units.readTemperatureC, 0.5],
  ['°F', (x) => units.writeTemperatureC(x, 'F'), units.readTemperatureC, (0.5 * 5) / 9],
];
test.each(pairs)(
  `written in %s and read back, it is within half the last place (seed ${SEED})`,
  (_unit, write, read, half) => {
    let worst = 0;
    fc.assert(
      fc.property(fc.double({ min: -900, max: 900, noNaN: true }), (x) => {
        const off = Math.abs(value(read(write(x))) - x);
        worst = Math.max(worst, off);
        return off <= half * (1 + 1e-9) + 1e-9;
      }),
      { seed: SEED, numRuns: 200 },
    );
    expect(worst).toBeGreaterThan(half / 10);
  },
);

test('a quantity that is no number is never written', () => {
  expect(() => units.writeMass(Number.NaN, 'kg')).toThrow('finite');
  expect(units.writeMass(-0.001, 'kg')).toBe('0.0 kg');
});
