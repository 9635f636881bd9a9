import { describe, expect, test } from 'vitest';
import { wrightUnit } from '../../src/crew/learning.ts';
import { raiseTasks } from '../../src/crew/raise-tasks.ts';
import { commonRates, type WorkObserved } from '../../src/crew/rates.ts';
import { crewRates, learntRate, recordedRates } from '../../src/crew/recorded-rates.ts';
import { defaultCrew } from '../../src/crew/schema.ts';
import { seededRandom } from '../../src/math/random.ts';
import { phone, placed, plan, seam } from '../record/fixtures.ts';
import { halfBall } from './raised.ts';

/** Panels one by one, the first taking `first` person-seconds, with so much scatter. */
function panels(count: number, first: number, learning: number, scatter = 0): WorkObserved[] {
  const random = seededRandom(5);
  return Array.from({ length: count }, (_, k) => ({
    work: 'panel',
    count: 1,
    people: 3,
    seconds: (first * wrightUnit(k + 1, learning) * Math.exp(scatter * random.normal())) / 3,
    panelsBefore: k,
    height: 1,
  }));
}

describe('learning from the record', () => {
  test('comes near the curve that the panels were made by, from the common 90 %', () => {
    for (const learning of [0.8, 1]) {
      const found = learntRate(commonRates, panels(80, 1200, learning, 0.1));
      expect(Math.abs(found - learning)).toBeLessThan(Math.abs(0.9 - learning) / 2);
    }
  });
  test('stays what it was before eight panels, and where all were placed at one number', () => {
    expect(learntRate(commonRates, panels(7, 1200, 0.7))).toBe(0.9);
    const same = panels(20, 1200, 0.7).map((one) => ({ ...one, panelsBefore: 9 }));
    expect(learntRate(commonRates, same)).toBe(0.9);
  });
  test('is never over 1, however tired people get', () => {
    const slower = panels(40, 600, 1).map((one, k) => ({ ...one, seconds: 200 * (1 + k) ** 2 }));
    expect(learntRate(commonRates, slower)).toBe(1);
  });
});

describe('the rates of a crew', () => {
  test('are the file’s or the common ones where the record shows nothing', () => {
    expect(crewRates(defaultCrew)).toEqual(commonRates);
    expect(crewRates(defaultCrew, [])).toEqual(commonRates);
  });
  test('come out of a record entry by entry, with words for what was left out', () => {
    const site = plan();
    const ada = phone('Ada');
    for (const place of site.places.slice(0, 12)) {
      ada.say(placed(place, null, 3));
      ada.wait(100);
    }
    ada.say(seam(site.seams[0] as string, 'finger', 2));
    ada.wait(120);
    ada.say(seam(site.seams[1] as string, 'finger', 2));
    const found = recordedRates(defaultCrew, ada.log, site, () => 4);
    expect(found.hourly.map(({ work, jobs }) => [work, jobs])).toEqual([
      ['panel', 11],
      ['bolt', 2],
    ]);
    // Five person-minutes a panel where ten are common: nearer to what was seen.
    expect(found.rates.work.panel.median).toBeLessThan(450);
    expect(found.rates.work.panel.logSd).toBeLessThan(commonRates.work.panel.logSd / 2);
    expect(found.words.join(' ')).toMatch(/panel \d+\.\d \(11 noted\).*learning \d+ %.*1 left out/);
    expect(recordedRates(defaultCrew, phone('Bo').log, site, () => 4).words[0]).toContain(
      'no piece of work of known length yet',
    );
  });
  test('shorten the forecast of a crew that is faster than common', () => {
    const facts = halfBall();
    const hours = (observed: readonly WorkObserved[]): number =>
      raiseTasks({ ...facts, observed }).tasks.reduce(
        (sum, { people, duration }) => sum + people * duration.likely,
        0,
      );
    expect(hours(panels(30, 400, 0.95))).toBeLessThan(hours([]));
    expect(hours([])).toBe(
      raiseTasks(facts).tasks.reduce((s, { people, duration }) => s + people * duration.likely, 0),
    );
  });
});
