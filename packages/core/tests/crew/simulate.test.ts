import { describe, expect, test } from 'vitest';
import { compilePlan } from '../../src/crew/compile.ts';
import { triangleMoments } from '../../src/crew/network.ts';
import { firstList, searchSchedule } from '../../src/crew/search.ts';
import { type Simulation, type SimulationOptions, simulate } from '../../src/crew/simulate.ts';
import { type Task, taskOf } from '../../src/crew/task.ts';
import { DATES, stages, weekend } from './weekend.ts';

const RANGE = { low: 60, likely: 120, high: 300 };

/** Twenty tasks one after the other, by lamp, put down for no break. */
const chain = (over: Partial<Task> = {}): Task[] =>
  Array.from({ length: 20 }, (_, i) =>
    taskOf({
      id: `${i}`,
      after: i > 0 ? [`${i - 1}`] : [],
      duration: RANGE,
      daylight: false,
      ...over,
    }),
  );

const alone = weekend({
  people: [
    { name: 'Ada', sure: true, shifts: [{ date: DATES[0], from: '00:00', to: '24:00' }] },
    { name: 'Bram', sure: true, shifts: [{ date: DATES[0], from: '00:00', to: '24:00' }] },
  ],
  breaks: [],
});

function run(
  tasks: readonly Task[],
  crew = alone,
  over: Partial<SimulationOptions> = {},
): Simulation {
  const plan = compilePlan(tasks, crew, {});
  const list = firstList(plan.serial.network, plan.serial.planned, new Float64Array(tasks.length));
  return simulate(plan, { seed: 5, runs: 4000, list, look: 12, paceSd: 0, ...over });
}

const moments = (finish: Float64Array): { mean: number; variance: number } => {
  const mean = finish.reduce((sum, x) => sum + x, 0) / finish.length;
  return {
    mean,
    variance: finish.reduce((sum, x) => sum + (x - mean) ** 2, 0) / (finish.length - 1),
  };
};

describe('a chain of tasks with nothing in the way', () => {
  const one = triangleMoments(RANGE);
  const [mean, variance] = [20 * one.mean, 20 * one.variance];
  test('takes the sum of the means, to four standard errors; a tenth longer is told', () => {
    const got = moments(run(chain()).finish);
    const error = 4 * Math.sqrt(variance / 4000);
    expect(Math.abs(got.mean - mean)).toBeLessThan(error);
    expect(Math.abs(got.mean - 1.1 * mean)).toBeGreaterThan(10 * error);
    expect(Math.abs(got.variance / variance - 1)).toBeLessThan(0.1);
  });
  test('a pace of the crew widens it as a factor does, and leaves the mean', () => {
    const got = moments(run(chain(), alone, { paceSd: 0.3 }).finish);
    const factor = Math.exp(0.09) - 1;
    const wide = (variance + mean * mean) * (1 + factor) - mean * mean;
    expect(Math.abs(got.mean - mean)).toBeLessThan(4 * Math.sqrt(wide / 4000));
    expect(Math.abs(got.variance / wide - 1)).toBeLessThan(0.15);
  });
  test('every task is on the critical chain of every run, and correlates as one of twenty', () => {
    const { critical, correlation } = run(chain());
    expect([...critical]).toEqual(new Array(20).fill(1));
    for (const r of correlation) expect(Math.abs(r - Math.sqrt(1 / 20))).toBeLessThan(0.07);
  });
  test('sure durations give the schedule itself, in every run', () => {
    const tasks = stages(3, 4, { duration: { low: 900, likely: 900, high: 900 } });
    const crew = weekend({ noShow: 0, gustSd: 0 });
    const plan = compilePlan(tasks, crew, {});
    const found = searchSchedule(plan.serial, plan.calendar, new Float64Array(tasks.length), {
      seed: 1,
      tries: 20,
      look: 12,
      bound: 0,
    });
    const { list, look } = found;
    const { finish } = simulate(plan, { seed: 1, runs: 20, list, look, paceSd: 0 });
    expect([...finish]).toEqual(new Array(20).fill(found.end));
  });
});

describe('two paths that meet', () => {
  test('take longer than either: the mean of the later of two', () => {
    // Two triangles alike: E max = mean + E|difference| / 2, by a fine sum over both.
    const tasks = ['a', 'b'].map((id) =>
      taskOf({ id, duration: RANGE, people: 1, daylight: false }),
    );
    const finish = moments(run(tasks, alone, { runs: 20_000 }).finish).mean;
    const draws = Array.from({ length: 400 }, (_, i) => {
      const u = (i + 0.5) / 400;
      return u < 0.25 ? 60 + Math.sqrt(u * 240 * 60) : 300 - Math.sqrt((1 - u) * 240 * 180);
    });
    const sum = draws.flatMap((x) => draws.map((y) => Math.max(x, y))).reduce((a, b) => a + b, 0);
    const later = sum / 400 ** 2;
    expect(Math.abs(finish - later)).toBeLessThan(1.5);
    expect(later - triangleMoments(RANGE).mean).toBeGreaterThan(15);
  });
});

describe('a weekend', () => {
  const tasks = stages(5, 6);
  test('the same seed gives the same runs, another seed others', () => {
    const [a, b, c] = [1, 1, 2].map((seed) =>
      run(tasks, weekend(), { seed, runs: 50, paceSd: 0.2 }),
    );
    expect(a?.finish).toEqual(b?.finish);
    expect(a?.finish).not.toEqual(c?.finish);
  });
  test('odds grow from evening to evening, and every evening is somewhere', () => {
    const got = run(tasks, weekend(), { runs: 500, paceSd: 0.3 });
    expect(got.doneBy[0]).toBeLessThanOrEqual(got.doneBy[1] as number);
    expect(got.doneBy[1]).toBeLessThanOrEqual(got.doneBy[2] as number);
    for (let k = 0; k < 3; k++) {
      const parts = got.reached.slice(k * 6, k * 6 + 6).reduce((sum, x) => sum + x, 0);
      expect(parts).toBeCloseTo(1, 12);
    }
  });
  test('without no-shows no run is later: the same luck otherwise', () => {
    const [few, all] = [0.6, 0].map((noShow) => run(tasks, weekend({ noShow }), { runs: 300 }));
    few?.finish.forEach((end, i) => {
      expect(all?.finish[i]).toBeLessThanOrEqual(end + 1e-6);
    });
  });
  test('when nobody who climbs comes, work at height never ends', () => {
    const crew = weekend();
    const people = crew.people.map((person) => ({ ...person, climbs: false }));
    const got = run(tasks, { ...crew, people }, { runs: 20 });
    expect(got.finish.every((x) => x === Number.POSITIVE_INFINITY)).toBe(true);
    expect(got.doneBy[2]).toBe(0);
    expect(got.critical.every((x) => x === 0)).toBe(true);
  });
  test('a gust over the limit holds the work, a day’s gusts over the forecast hold it longer', () => {
    const forecast = DATES.flatMap((date) =>
      Array.from({ length: 24 }, (_, h) => ({
        at: `${date}T${String(h).padStart(2, '0')}:00`,
        mean: 4,
        gust: h < 13 ? 12 : 8,
      })),
    );
    const calm = run(tasks, weekend({ noShow: 0 }), { runs: 1 });
    const held = run(tasks, weekend({ noShow: 0, forecast, gustSd: 0 }), { runs: 1 });
    const drawn = run(tasks, weekend({ noShow: 0, forecast, gustSd: 0.3 }), { runs: 200 });
    expect(held.finish[0]).toBeGreaterThan((calm.finish[0] as number) + 3600);
    expect(Math.max(...drawn.finish)).toBeGreaterThan(held.finish[0] as number);
  });
});
