// The weekend of a half ball: tasks in the order of the plan, evenings by the night rule, odds, what
// changes buy, and what keeps it from being done.

import { describe, expect, test } from 'vitest';
import { heavyTroubles } from '../../src/crew/heavy-troubles.ts';
import { raiseTasks } from '../../src/crew/raise-tasks.ts';
import { taskFaults } from '../../src/crew/task.ts';
import {
  FIRST_RUNS,
  type Weekend,
  type WeekendOptions,
  weekendPlan,
} from '../../src/crew/weekend.ts';
import { changedCrew } from '../../src/crew/what-if.ts';
import { noGear } from '../../src/raise/gear.ts';
import { halfBall } from './raised.ts';
import { DATES, weekend } from './weekend.ts';

const facts = halfBall();
const few: WeekendOptions = { runs: 400, whatIfRuns: 400, tries: 20, changes: [] };
const planned = (over: Partial<typeof facts> = {}, options: WeekendOptions = few): Weekend => {
  const read = weekendPlan({ ...facts, ...over }, options);
  if (!read.ok) throw new Error(read.faults.map(({ found }) => found).join());
  return read.value;
};
const calm = [...DATES, '2026-06-15'].flatMap((date) =>
  Array.from({ length: 24 }, (_, hour) => ({
    at: `${date}T${String(hour).padStart(2, '0')}:00`,
    mean: 3,
    gust: 6,
  })),
);
const stormyNights = calm.map((one) => ({
  ...one,
  gust: Number(one.at.slice(11, 13)) >= 22 ? 25 : 6,
}));

describe('the tasks of a raising plan', () => {
  const { tasks, tooHeavy, unweighed } = raiseTasks(facts);
  test('can be planned, hold every lift once, every bolt once and every seam finally tight', () => {
    expect(taskFaults(tasks)).toEqual([]);
    const lifts = facts.plan.stages.flatMap((stage) => stage.lifts);
    expect(tasks.filter(({ sort }) => sort === 'lift')).toHaveLength(lifts.length);
    const sum = (work: 'panel' | 'bolt' | 'tighten'): number =>
      tasks.reduce((all, { amount }) => all + (amount?.counts[work] ?? 0), 0);
    const seams = lifts.reduce((all, lift) => all + lift.seams.length, 0);
    expect(sum('panel')).toBe(40);
    expect(sum('bolt')).toBe(5 * seams);
    const final = facts.plan.stages.reduce((all, { pass }) => all + pass.final.length, 0);
    const snug = facts.plan.stages.reduce((all, { pass }) => all + pass.snug.length, 0);
    expect(sum('tighten')).toBe(5 * (final + snug));
    expect([tooHeavy, unweighed]).toEqual([[], 0]);
  });
  test('have a stop point where the plan may be left, and nowhere else', () => {
    const stops = tasks.filter(({ stopPoint }) => stopPoint).map(({ stage }) => stage);
    expect(stops).toEqual(
      facts.plan.stages.filter(({ stopPoint }) => stopPoint).map(({ number }) => number),
    );
  });
  test('ask for those who lift, who bolt and who calls where a piece is heavy', () => {
    const heavy = { value: 30, sources: [] };
    const high = raiseTasks({ ...facts, massOf: () => heavy }).tasks.filter(
      ({ sort }) => sort === 'lift',
    );
    // Two who lift, two who bolt, one who calls.
    expect(new Set(high.map(({ leads, people }) => `${leads} ${people}`))).toEqual(
      new Set(['1 5']),
    );
    const light = tasks.filter(({ sort }) => sort === 'lift');
    expect(new Set(light.map(({ leads, people }) => `${leads} ${people}`))).toEqual(
      new Set(['0 3']),
    );
  });
});

describe('a weekend', () => {
  test('is hardly ever caught between two stop points by dark, though helpers stay away and crews are slow', () => {
    for (const noShow of [0.4, 0]) {
      const days = planned({ crew: weekend({ noShow }) }, { ...few, runs: 1000 }).days;
      // Reckoned with the people planned for, 6 % of Fridays were, and 14 % with nobody staying away.
      for (const { odds } of days) expect(odds.caught).toBeLessThan(0.02);
      expect(days.at(-1)?.odds.done).toBeGreaterThan(0.85);
    }
  });
  test('is hardly ever caught where most go hours before dark and a few stay', () => {
    const people = weekend().people.map((one, i) =>
      i < 3 ? one : { ...one, shifts: one.shifts.map((shift) => ({ ...shift, to: '16:00' })) },
    );
    const { days } = planned({ crew: weekend({ people }) }, { ...few, runs: 1000 });
    for (const { odds } of days) expect(odds.caught).toBeLessThan(0.02);
    expect(days.at(-1)?.odds.done).toBeGreaterThan(0.3);
  });
  test('goes on in the afternoon where all but one go away at noon, and not all come back', () => {
    const people = weekend().people.map((one, i) => ({
      ...one,
      shifts: one.shifts.flatMap((shift) =>
        i === 0
          ? [shift]
          : [{ ...shift, to: '11:00' }, ...(i < 5 ? [{ ...shift, from: '12:00' }] : [])],
      ),
    }));
    const { days, tasks } = planned({ crew: weekend({ people }) }, { ...few, runs: 1000 });
    const lifts = tasks.filter(({ sort, start }) => sort === 'lift' && start !== null);
    expect(lifts.some(({ start }) => ((start as number) % 86_400) / 3600 > 12)).toBe(true);
    for (const { odds } of days) expect(odds.caught).toBeLessThan(0.04);
    expect(days.at(-1)?.odds.done).toBeGreaterThan(0.3);
  });
  test('tells first odds by a few hundred runs, near those that follow, before any change is asked about', () => {
    const told: Weekend[] = [];
    const last = planned({}, { ...few, runs: 2000, onFirst: (first) => told.push(first) });
    expect(told).toHaveLength(1);
    const [first] = told;
    expect(first).toMatchObject({ runs: FIRST_RUNS, whatIfs: [], end: last.end });
    first?.days.forEach(({ odds }, k) => {
      expect(Math.abs(odds.done - (last.days[k]?.odds.done ?? 0))).toBeLessThan(0.06);
    });
  });
  test('keeps the order of the lifts, the breaks of the night, and its own lower bound', () => {
    const { tasks, end, bound } = planned();
    const lifts = tasks.filter(({ sort }) => sort === 'lift');
    for (let i = 1; i < lifts.length; i++)
      expect(lifts[i]?.start).toBeGreaterThanOrEqual(lifts[i - 1]?.finish as number);
    expect(end).toBeGreaterThanOrEqual(bound as number);
    expect(lifts.map(({ places }) => places)).toEqual(
      facts.plan.stages.flatMap(({ pieces }) => pieces),
    );
  });
  test('comes out the same from the same seed, and is plain data', () => {
    const first = planned();
    expect(planned()).toEqual(first);
    expect(JSON.parse(JSON.stringify(first))).toEqual(first);
  });
  test('ends every evening at a stop point that stands in the wind of the night, with its card', () => {
    const { days } = planned({ crew: weekend({ forecast: calm }) });
    for (const { evening, closeDown } of days) {
      expect(['holds', 'nothing stands']).toContain(evening.verdict);
      if (evening.verdict === 'holds') expect(closeDown?.steps.length).toBeGreaterThan(4);
    }
    expect(days[0]?.odds.at.reduce((sum, { odds }) => sum + odds, 0)).toBeCloseTo(1, 9);
  });
  test('begins nothing that would be left in a night that it does not stand in', () => {
    const { tasks, troubles, days } = planned({ crew: weekend({ forecast: stormyNights }) });
    expect(tasks.filter(({ sort }) => sort === 'lift').every(({ start }) => start === null)).toBe(
      true,
    );
    expect(troubles.some(({ sort }) => sort === 'night')).toBe(true);
    expect(days.every(({ evening }) => evening.verdict === 'nothing stands')).toBe(true);
  });
  test('is sooner done with one more pair of hands and four more hours, later without a helper', () => {
    const { whatIfs, finish } = planned(
      {},
      {
        ...few,
        changes: [
          { what: 'one more', climbs: true, leads: true },
          { what: 'more hours', date: DATES[0], hours: 4 },
          { what: 'without', name: 'Bram' },
        ],
      },
    );
    const [more, hours, less] = whatIfs.map(({ gain }) => gain[0]?.gain ?? 0);
    expect(more).toBeGreaterThan(0);
    expect(hours).toBeGreaterThan(more as number);
    expect(less).toBeLessThan(0);
    expect(whatIfs[0]?.p50).toBeLessThan(finish.p50 as number);
  });
  test('with a helper removed is planned anew as if they had never been there', () => {
    const crew = changedCrew(facts.crew, { what: 'without', name: 'Esme' });
    expect(planned({ crew })).toEqual(
      planned({
        crew: { ...facts.crew, people: facts.crew.people.filter((one) => one.name !== 'Esme') },
      }),
    );
  });
});

describe('what keeps a weekend from being done is told with the least change that helps', () => {
  test('nobody can climb', () => {
    const people = facts.crew.people.map((one) => ({ ...one, climbs: false }));
    const high = halfBall({
      crew: { ...facts.crew, people },
      shell: {
        ...facts.shell,
        hubs: facts.shell.hubs.map((x) => 3 * x),
        radius: 3 * facts.shell.radius,
      },
    });
    const read = weekendPlan(high, few);
    const trouble = read.ok ? read.value.troubles.find(({ sort }) => sort === 'people') : null;
    expect(trouble?.found).toContain('people who climb; nobody offered');
    expect(trouble?.change).toBe('2 more people who climb');
    // Nights are not blamed for what people lack.
    expect(read.ok && read.value.troubles.map(({ sort }) => sort)).toEqual(['people']);
  });
  test('no daylight on the dates', () => {
    const site = { latitudeDeg: 78.2, longitudeDeg: 15.6, utcOffsetHours: 1 };
    const dark = { ...weekend({ site, dates: ['2026-12-12'] }) };
    const { troubles } = planned({ crew: dark });
    expect(troubles.find(({ sort }) => sort === 'daylight')?.change).toMatch(
      /another date: the nearest/,
    );
    expect(troubles.map(({ sort }) => sort)).not.toContain('night');
    for (const { found } of troubles) expect(found).not.toMatch(/\.$|-\d+ h/);
  });
  test('a piece too heavy for anybody, and it is told with its mass', () => {
    const { troubles } = planned({ massOf: () => ({ value: 400, sources: [] }) });
    const heavy = troubles.filter(({ sort }) => sort === 'too heavy');
    expect(heavy[0]?.found).toContain('400 kg');
    expect(heavy[0]?.change).toMatch(/^a lift or gin pole for 400 kg .*[^.]$/);
    // Pieces that lack the same are one trouble, which names every lift.
    const { tooHeavy } = raiseTasks({ ...facts, massOf: () => ({ value: 400, sources: [] }) });
    expect(tooHeavy.length).toBeGreaterThan(heavy.length);
    expect(heavy.flatMap(({ tasks }) => tasks).sort()).toEqual(
      tooHeavy.map(({ stage, lift }) => `lift ${stage}.${lift + 1}`).sort(),
    );
    expect(heavy.some(({ found }) => found.includes(`(the highest: panel `))).toBe(true);
  });
  test('a lift that one piece needs is not told for another that needs more of it', () => {
    const piece = { stage: 1, numbers: ['1-01'], why: ['nothing lifts it'] };
    const lift = (mass: number, high: number) => ({
      ...piece,
      mass,
      high,
      change: `Least change that helps: a lift or gin pole for ${mass} kg with its hook at ${high} m.`,
    });
    const told = heavyTroubles([
      { lift: 0, ...lift(110, 5) },
      { lift: 1, ...lift(160, 2) },
      { lift: 2, ...lift(150, 4.5) },
    ]);
    expect(told.map(({ change }) => change)).toEqual([
      'a lift or gin pole for 110 kg with its hook at 5 m',
      'a lift or gin pole for 160 kg with its hook at 2 m',
      'a lift or gin pole for 150 kg with its hook at 4.5 m',
    ]);
  });
  test('nothing to stand on is no reason while hands reach every place', () => {
    expect(planned({ gear: noGear }).troubles).toEqual([]);
  });
  test('no day of work is a fault of the question', () => {
    const read = weekendPlan({ ...facts, crew: { ...facts.crew, dates: [] } }, few);
    expect(read.ok ? [] : read.faults.map(({ path }) => path)).toEqual(['crew.dates']);
  });
  test('panels that nobody weighed are supposed, and said to be', () => {
    const { assumed, troubles } = planned({ massOf: () => null });
    expect(assumed.some((one) => one.includes('Nobody weighed 40'))).toBe(true);
    expect(troubles.filter(({ sort }) => sort === 'too heavy')).toEqual([]);
  });
});
