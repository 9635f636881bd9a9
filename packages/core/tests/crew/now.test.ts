// What to do now, with who is here; and what before a storm.

import { describe, expect, test } from 'vitest';
import { bufferJobs, cureHours } from '../../src/crew/buffer.ts';
import type { Here } from '../../src/crew/here.ts';
import { type NowAnswer, nowPlan } from '../../src/crew/now.ts';
import { type StormAnswer, stormPlan } from '../../src/crew/storm.ts';
import type { StormQuestion } from '../../src/crew/storm-steps.ts';
import { halfBall } from './raised.ts';
import { DATES } from './weekend.ts';

const facts = halfBall();
const here: Here = {
  date: DATES[0],
  time: '13:30',
  people: 6,
  climb: 2,
  lead: 1,
  lightHours: 4,
  gust: 5,
  stage: 7,
  lifts: 0,
};
const now = (over: Partial<Here> = {}): NowAnswer => {
  const read = nowPlan({
    ...facts,
    here: { ...here, ...over },
    repairs: [{ kind: '1', count: 2 }],
  });
  if (!read.ok) throw new Error(read.faults.map(({ path, found }) => `${path} ${found}`).join());
  return read.value;
};

describe('now', () => {
  test('tells the next lift first, jobs for the hands that are left, and new odds', () => {
    const { cards, spare, jobs, weekend, at } = now();
    expect(at).toBe(13.5 * 3600);
    expect(cards[0]?.id).toBe('lift 8.1');
    expect(spare).toBe(6 - cards.reduce((sum, { people }) => sum + people, 0));
    expect(jobs.some(({ what }) => what.includes('2 of kind 1'))).toBe(true);
    expect(weekend.days[0]?.odds.done).toBeGreaterThan(0);
    expect(weekend.tasks.every(({ start }) => start === null || start >= at)).toBe(true);
  });
  test('in gusts over the limit says so, and keeps hands busy on the ground', () => {
    const { cards, waiting, jobs } = now({ gust: 14 });
    expect(cards.filter(({ id }) => id.startsWith('lift'))).toEqual([]);
    expect(waiting.find(({ id }) => id === 'lift 8.1')?.why).toContain('gusts of 14.0 m/s');
    expect(jobs.length).toBeGreaterThan(2);
  });
  test('with too few says who is short', () => {
    expect(now({ people: 2, climb: 0, lead: 0 }).waiting[0]?.why).toContain(
      '3 people needed, 2 here',
    );
  });
  test('at night says how long it is dark, with the site and without', () => {
    const night = now({ time: '02:00', lightHours: null });
    expect(night.cards).toEqual([]);
    expect(night.waiting[0]?.why).toMatch(/dark until 0[3-5]:\d\d, and it needs daylight/);
    const late = nowPlan({
      ...facts,
      crew: { ...facts.crew, site: null },
      here: { ...here, time: '22:00', lightHours: null },
    });
    expect(late.ok && late.value.waiting[0]?.why).toContain('dark since 17:00');
  });
  test('takes the hour from the light that is left where no time is told', () => {
    const { at, assumed } = now({ time: null, lightHours: 3 });
    expect(at).toBeGreaterThan(18 * 3600);
    expect(assumed[0]).toContain('3 hours before the light goes');
  });
  test('takes up lifts in the midst of a stage', () => {
    expect(now({ lifts: 2 }).cards[0]?.id).toBe('lift 8.3');
  });
  test('refuses more climbers than people, gusts in another unit, and a shell that is up', () => {
    const faults = (over: Partial<Here>): string[] => {
      const read = nowPlan({ ...facts, here: { ...here, ...over } });
      return read.ok ? [] : read.faults.map(({ path }) => path);
    };
    expect(faults({ climb: 9 })).toEqual(['now.climb']);
    expect(faults({ gust: 90 })).toEqual(['now.gust']);
    expect(faults({ time: null, lightHours: null })).toEqual(['now.light']);
    expect(faults({ stage: 11 })).toEqual(['now.stage']);
  });
  test('cures twice as long ten degrees colder, and not at all in the cold', () => {
    expect(cureHours(10)).toBe(2 * cureHours(20));
    const [cold] = bufferJobs({
      hubPlates: 0,
      bags: 0,
      repairs: [{ kind: '2', count: 1 }],
      liftsAhead: 0,
      temperatureC: 4,
    });
    expect(cold?.cautions.some((one) => one.includes('nothing mixed on site cures'))).toBe(true);
  });
});

describe('a storm', () => {
  const storm = (over: Partial<StormQuestion> = {}, at: Partial<Here> = {}): StormAnswer => {
    const read = stormPlan({
      ...facts,
      here: { ...here, ...at },
      hours: 2,
      stormGust: 16,
      ...over,
    });
    if (!read.ok) throw new Error(read.faults.map(({ path, found }) => `${path} ${found}`).join());
    return read.value;
  };
  const weakened = (from: number): typeof facts.winds =>
    facts.winds.map((one) => ({ ...one, leave: one.stage >= from ? 10 : 18 }));
  test('that the stage stands in: stay, tie, close, leave in time', () => {
    const { verdict, chosen, steps } = storm();
    expect([verdict, chosen?.way, chosen?.stage]).toEqual(['holds', 'stay', 7]);
    expect(steps.map(({ what }) => what)).toEqual([
      'stop',
      'bolt',
      'tie',
      'guy',
      'close',
      'store',
      'leave',
    ]);
    expect(steps.at(-1)?.by).toBe(2 * 3600 - 900);
    for (let i = 1; i < steps.length; i++)
      expect(steps[i]?.by).toBeGreaterThanOrEqual(steps[i - 1]?.by as number);
  });
  test('in the midst of a stage: on to its end where there is time, back where there is not', () => {
    expect(storm({ hours: 6 }, { lifts: 2, time: '09:00', lightHours: 8 }).chosen?.way).toBe('on');
    const { chosen, steps } = storm({ hours: 0.8 }, { lifts: 2 });
    expect([chosen?.way, chosen?.stage]).toEqual(['back', 7]);
    expect(steps.filter(({ what }) => what === 'take down')).toHaveLength(2);
  });
  test('that the stage and those after do not stand in: back to the nearest that does', () => {
    const { chosen, verdict } = storm({ winds: weakened(7), hours: 5 });
    expect([chosen?.way, chosen?.stage, verdict]).toEqual(['back', 6, 'holds']);
  });
  test('in half an hour that nothing stands in: everybody leaves', () => {
    const { verdict, words } = storm({ winds: weakened(0), hours: 0.5 });
    expect(verdict).toBe('none');
    expect(words).toContain('everybody leaves');
  });
  test('where nobody knows the wind of a stage the answer says so', () => {
    const winds = facts.winds.map((one) => ({ ...one, leave: null }));
    const { verdict, words } = storm({ winds });
    expect(verdict).toBe('unknown');
    expect(words).toContain('nobody knows');
  });
  test('without a gust and a forecast is a fault', () => {
    const read = stormPlan({ ...facts, here: { ...here, gust: null }, hours: 2, stormGust: null });
    expect(read.ok ? '' : read.faults[0]?.path).toBe('storm.gust');
  });
});
