import { describe, expect, test } from 'vitest';
import { durationOf, effortOf, paceSd } from '../../src/crew/durations.ts';
import { learningFactor } from '../../src/crew/learning.ts';
import { commonRates, updatedRate, updatedRates, type WorkObserved } from '../../src/crew/rates.ts';
import { seededRandom } from '../../src/math/random.ts';

const flat = { ...commonRates, learning: 1, perMetre: 0 };
const bolts = (seconds: number, over: Partial<WorkObserved> = {}): WorkObserved => ({
  work: 'bolt',
  count: 10,
  people: 2,
  seconds,
  panelsBefore: 40,
  height: 1,
  ...over,
});

describe('durations', () => {
  const amount = { counts: { panel: 1, bolt: 9 }, height: 1, panelsBefore: 50 };
  test('twice the people take half the time, no work takes none', () => {
    const [two, four] = [durationOf(flat, amount, 2), durationOf(flat, amount, 4)];
    expect(two.likely).toBeCloseTo((600 + 9 * 120) / 2, 9);
    expect(four.likely).toBeCloseTo(two.likely / 2, 9);
    expect(two.low).toBeLessThan(two.likely);
    expect(two.high).toBeGreaterThan(two.likely);
    expect(durationOf(flat, { ...amount, counts: {} }, 2)).toEqual({ low: 0, likely: 0, high: 0 });
    expect(() => durationOf(flat, amount, 0)).toThrow('people is 0');
  });
  test('the first panel is slow, high work is slow, and unit 20 is as the rate says', () => {
    const first = effortOf(commonRates, { ...amount, panelsBefore: 0 });
    const settled = effortOf(commonRates, { ...amount, panelsBefore: 19 });
    expect(settled).toBeCloseTo(600 + 9 * 120, 9);
    expect(first / settled).toBeGreaterThan(1.5);
    const high = effortOf(commonRates, { ...amount, panelsBefore: 19, height: 4.2 });
    expect(high / settled).toBeCloseTo(1.3, 9);
  });
  test('pieces learn as the same panels one by one do', () => {
    const one = [0, 1, 2, 3].map((done) => learningFactor(done, 1, 20, 0.9));
    expect(learningFactor(0, 4, 20, 0.9)).toBeCloseTo(one.reduce((a, b) => a + b) / 4, 12);
  });
  test('the pace of the whole job is as unsure as the rates of its work', () => {
    expect(paceSd(flat, [{ ...amount, counts: { bolt: 9 } }])).toBeCloseTo(0.35, 12);
    const both = paceSd(flat, [amount]);
    expect(both).toBeGreaterThan(0.35);
    expect(both).toBeLessThan(0.5);
    expect(paceSd(flat, [])).toBe(0);
  });
});

describe('rates from the record', () => {
  test('no observation leaves a rate as it is', () => {
    expect(updatedRates(flat, [])).toEqual(flat);
  });
  test('the conjugate rule: equal precisions meet half way, and are twice as sure', () => {
    const rate = { median: 100, logSd: 0.3, scatter: 0.3, observed: 0 };
    const got = updatedRate(rate, [Math.log(400)]);
    expect(got.median).toBeCloseTo(200, 9);
    expect(got.logSd).toBeCloseTo(0.3 / Math.SQRT2, 12);
    expect(got.observed).toBe(1);
  });
  test('many jobs of 80 person-seconds a bolt outweigh the common 120', () => {
    const random = seededRandom(3);
    const seen = Array.from({ length: 60 }, () => bolts(400 * Math.exp(0.2 * random.normal())));
    const { bolt, panel } = updatedRates(flat, seen).work;
    expect(bolt.median).toBeGreaterThan(74);
    expect(bolt.median).toBeLessThan(86);
    expect(bolt.logSd).toBeLessThan(0.04);
    expect(bolt.scatter).toBeGreaterThan(0.15);
    expect(bolt.scatter).toBeLessThan(0.26);
    expect(panel).toEqual(flat.work.panel);
  });
  test('early and high jobs count as they would low down and settled', () => {
    const early = updatedRates(commonRates, [bolts(900, { panelsBefore: 0, height: 4.2 })]);
    const slow = learningFactor(0, 0, 20, 0.9) * 1.3;
    const same = updatedRates(commonRates, [bolts(900 / slow, { panelsBefore: 19 })]);
    expect(early.work.bolt.median).toBeCloseTo(same.work.bolt.median, 9);
  });
  test('a job of no seconds or nobody is refused', () => {
    expect(() => updatedRates(flat, [bolts(0)])).toThrow('seconds is 0');
    expect(() => updatedRates(flat, [bolts(9, { people: 0 })])).toThrow('people is 0');
    expect(() => updatedRates(flat, [bolts(9, { count: Number.NaN })])).toThrow('count is NaN');
  });
});
