import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { NetFit } from '../../src/identify/fit.ts';
import { type Case, probabilities } from '../../src/identify/odds.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindWith } from './piles.ts';

const fit = (chi2 = 10, conditions = 10): NetFit => ({
  sides: [],
  radius: 2.7,
  radiusSd: 0.001,
  variances: new Float64Array(),
  chi2,
  conditions,
  evidence: 0,
});
const one = (changes: Partial<Case> = {}): Case => ({
  fit: fit(),
  evidence: 40,
  places: [60, 60],
  misfitCount: 0,
  unused: [],
  doubted: false,
  ...changes,
});
const kinds = (...counts: (number | null)[]): Kind[] =>
  counts.map((count, i) => ({
    ...kindWith(`${i}`, [1, 1, 1], 1e-3),
    good: count ?? 0,
    counted: count !== null,
  }));
const uncounted = kinds(null, null);
const odds = (cases: readonly Case[], pile = uncounted): number[] => probabilities(cases, pile);
const ratio = (a: Case, b: Case, pile = uncounted): number => {
  const [p, q] = odds([a, b], pile) as [number, number];
  return p / q;
};

test('probabilities are none below 0 and together at most 1, seed 11', () => {
  const anyCase = fc.record({
    chi2: fc.double({ min: 0, max: 300, noNaN: true }),
    conditions: fc.integer({ min: 0, max: 60 }),
    evidence: fc.double({ min: -50, max: 200, noNaN: true }),
    misfitCount: fc.nat(6),
    unused: fc.subarray([0, 1]),
    doubted: fc.boolean(),
    places: fc.tuple(fc.nat(120), fc.nat(120)),
  });
  const law = fc.property(fc.array(anyCase, { minLength: 1, maxLength: 12 }), (drawn) => {
    const cases = drawn.map(({ chi2, conditions, ...rest }) =>
      one({ ...rest, fit: fit(chi2, conditions) }),
    );
    const all = odds(cases, kinds(30, 60));
    expect(all.every((p) => p >= 0 && p <= 1)).toBe(true);
    expect(all.reduce((sum, p) => sum + p, 0)).toBeLessThanOrEqual(1 + 1e-12);
  });
  fc.assert(law, { seed: 11 });
});

test('a net that fits as it should and stands alone is all but certain', () => {
  expect(odds([one()])[0]).toBeCloseTo(1 / 1.001, 9);
});

test('the rest goes to a net that was not found: more the worse the best one fits', () => {
  const rest = (chi2: number): number => 1 - (odds([one({ fit: fit(chi2) })])[0] as number);
  expect(rest(15)).toBeCloseTo(rest(10), 12);
  expect(rest(25)).toBeGreaterThan(2 * rest(15));
  expect(rest(60)).toBeGreaterThan(0.9);
});

test('a doubted side and a kind left out each leave more to a net not found', () => {
  const [plain, doubted, spare] = [one(), one({ doubted: true }), one({ unused: [1] })].map(
    (own) => odds([own])[0] as number,
  ) as [number, number, number];
  expect(doubted).toBeLessThan(0.9);
  expect(spare).toBeLessThan(0.96);
  expect(plain).toBeGreaterThan(0.99);
});

test('evidence weighs as its exponential', () => {
  expect(ratio(one({ evidence: 42 }), one())).toBeCloseTo(Math.exp(2), 9);
});

test('each misread group weighs 100 to 1, and three or more as three', () => {
  expect(ratio(one(), one({ misfitCount: 1 }))).toBeCloseTo(100, 6);
  expect(ratio(one(), one({ misfitCount: 3 }))).toBeCloseTo(1e6, 0);
  expect(ratio(one(), one({ misfitCount: 8 }))).toBeCloseTo(1e6, 0);
});

test('counts near a net’s places speak for it', () => {
  const [right, half] = [one(), one({ places: [30, 60] })];
  expect(ratio(right, half)).toBeCloseTo(1, 12);
  expect(ratio(right, half, kinds(60, 60))).toBeGreaterThan(5);
  expect(ratio(right, half, kinds(30, 60))).toBeLessThan(1 / 5);
  expect(ratio(right, half, kinds(60, 60))).toBeCloseTo(1 / ratio(right, half, kinds(30, 60)), 9);
});

test('repairs and scrap count as panels that were built; uncounted kinds say nothing', () => {
  const [right, half] = [one(), one({ places: [30, 60] })];
  const [all, other] = kinds(20, 60) as [Kind, Kind];
  const broken = [{ ...all, repair: 30, scrap: 10 }, other];
  expect(ratio(right, half, broken)).toBeCloseTo(ratio(right, half, kinds(60, 60)), 12);
  expect(ratio(right, half, kinds(null, 60))).toBeCloseTo(1, 12);
});

test('one count far off counts no more than three deviations', () => {
  const far = one({ places: [600, 60] });
  const farther = one({ places: [60000, 60] });
  expect(ratio(far, farther, kinds(60, 60))).toBeCloseTo(1, 12);
  expect(ratio(one(), far, kinds(60, 60))).toBeCloseTo(Math.exp(4.5), 6);
});

test('a net that asks nothing of the readings is no proof, unless the counts are just right', () => {
  const asks = (conditions: number, pile = uncounted): number =>
    odds([one({ fit: fit(conditions, conditions) })], pile)[0] as number;
  expect(asks(1)).toBeLessThan(0.7);
  expect(asks(4)).toBeGreaterThan(0.99);
  expect(asks(1, kinds(60, 60))).toBeGreaterThan(0.9);
  expect(asks(1, kinds(60, 75))).toBeLessThan(0.7);
});
