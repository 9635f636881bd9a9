import { describe, expect, test } from 'vitest';
import { threePointRatios } from '../../src/loads/asce-7-16/dome.ts';
import { threePoints } from '../../src/loads/asce-7-16/dome-values.ts';
import { isTruncated, lawsFor } from '../../src/loads/laws.ts';
import { flagsOf } from '../../src/loads/provenance.ts';
import { seededRandom } from '../../src/math/random.ts';

const half = { radius: 3, baseZ: 0 };
const names = (code: Parameters<typeof lawsFor>[1], choice: Parameters<typeof lawsFor>[2]) =>
  lawsFor(half, code, choice).map(({ name }) => name);

describe('which laws are taken', () => {
  test('of the code: both cases of ASCE 7, the one of EN', () => {
    const asce = ['ASCE 7 three points, case A', 'ASCE 7 three points, case B'];
    expect(names('asce 7-16', 'of the code')).toEqual(asce);
    expect(names('asce 7-22', 'of the code')).toEqual(asce);
    expect(names('en 1991-1-4', 'of the code')).toEqual(['EN 1991-1-4 three points']);
    expect(names('worst of all', 'of the code')).toHaveLength(3);
  });
  test('one law alone', () => {
    expect(names('asce 7-16', 'gb 50009')).toEqual(['GB 50009 shell roof']);
    expect(names('asce 7-16', 'sphere')).toEqual(['sphere as measured']);
  });
  test('all of them beyond a half sphere, within 5 % of the radius not yet', () => {
    expect(isTruncated({ radius: 3, baseZ: -0.15 })).toBe(false);
    expect(isTruncated({ radius: 3, baseZ: -0.16 })).toBe(true);
    expect(lawsFor({ radius: 3, baseZ: -0.16 }, 'asce 7-16', 'sphere')).toHaveLength(6);
  });
  test('a steady shape on a peak pressure says that it is', () => {
    for (const law of lawsFor(half, 'en 1991-1-4', 'worst of all'))
      expect(law.sources.some(({ text }) => text.startsWith('a steady pressure shape'))).toBe(
        !law.name.includes('three points'),
      );
  });
});

test('every law is finite over the whole sphere, 1.2 to −1.6, and the same on either side, seed 5', () => {
  const random = seededRandom(5);
  for (const baseZ of [-2, -0.1, 0, 1, 2])
    for (const law of lawsFor({ radius: 3, baseZ }, 'worst of all', 'worst of all'))
      for (let i = 0; i < 200; i++) {
        const z = 2 * random.uniform() - 1;
        const a = 2 * Math.PI * random.uniform();
        const across = Math.sqrt(1 - z * z);
        const [u, s] = [across * Math.cos(a), across * Math.sin(a)];
        const c = law.coefficient(u, s, z);
        expect(c).toBeGreaterThanOrEqual(-1.6);
        expect(c).toBeLessThanOrEqual(1.2);
        expect(law.coefficient(u, -s, z)).toBeCloseTo(c, 12);
      }
});

describe('A, B and C', () => {
  const at = (baseZ: number, baseHeight = 0) => threePoints({ radius: 3, baseZ, baseHeight }).value;

  test('of a half sphere on the ground are those of the table, all from memory', () => {
    expect(at(0)).toEqual({ a: 0.8, b: -1.2, c: 0 });
    expect(flagsOf(threePoints(half))).toHaveLength(3);
  });
  test('C falls as the springline rises, to −0.5 at half the width', () => {
    expect(at(0, 1.5).c).toBeCloseTo(-0.25, 12);
    expect(at(0, 3).c).toBe(-0.5);
    expect(at(0, 9).c).toBe(-0.5);
  });
  test('more than a half sphere stands on its own lower part', () => {
    expect(threePointRatios({ radius: 3, baseZ: -1.5 })).toEqual({ rise: 0.5, raise: 0.25 });
    expect(at(-1.5).c).toBeCloseTo(-0.25, 12);
  });
  test('a flatter dome has less pressure in front', () => {
    expect(at(1.5).a).toBeLessThan(0.8);
    expect(at(1.5).a).toBeGreaterThan(0);
  });
  test('a dome that is nearly flat is refused, with its rise', () => {
    expect(() => at(2.99)).toThrow(/rise over width of the dome is 0.0\d+, expected 0.05 to 0.5/);
  });
});

test('the figure is entered with the raise over the width at the base, not over the sphere', () => {
  // A cap of radius 3 from 1.8 up is 4.8 wide at its base.
  const { rise, raise } = threePointRatios({ radius: 3, baseZ: 1.8, baseHeight: 1.2 });
  expect(raise).toBeCloseTo(0.25, 12);
  expect(rise).toBeCloseTo(0.25, 12);
});
