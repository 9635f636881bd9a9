import { describe, expect, test } from 'vitest';
import { finishBounds } from '../../src/crew/bounds.ts';
import { networkOfPairs } from '../../src/crew/network.ts';
import { firstList, searchSchedule } from '../../src/crew/search.ts';
import {
  runSerialInto,
  type SerialCalendar,
  type SerialTasks,
  serialWork,
} from '../../src/crew/serial.ts';
import { alwaysOpen, plainTasks, randomProblem, scheduleFaults } from './serial-problems.ts';

const ranks = (list: Int32Array): Int32Array => {
  const rank = new Int32Array(list.length);
  list.forEach((j, k) => {
    rank[j] = k;
  });
  return rank;
};

function run(tasks: SerialTasks, calendar: SerialCalendar, list: readonly number[], look = 1) {
  const work = serialWork(tasks, calendar.dark.length);
  const order = Int32Array.from(list);
  const end = runSerialInto(work, tasks, calendar, order, ranks(order), tasks.planned, look);
  return { end, start: [...work.start], finish: [...work.finish], work };
}

/** Every order of the tasks in which each is behind those that come before it. */
function orders(tasks: SerialTasks): number[][] {
  const { network } = tasks;
  const grow = (done: readonly number[], left: Int32Array): number[][] => {
    if (done.length === network.count) return [[...done]];
    return [...left.keys()].flatMap((i) => {
      if (left[i] !== 0 || done.includes(i)) return [];
      const after = left.slice();
      for (let e = network.start[i]; e < network.start[i + 1]; e++) after[network.next[e]]--;
      return grow([...done, i], after);
    });
  };
  return grow([], network.before);
}

describe('without hours', () => {
  test('30 seeded problems of 12 tasks keep order and capacity, and no bound is crossed, either way read', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const { tasks, calendar } = randomProblem(seed, 12);
      const none = new Float64Array(12);
      const bound = finishBounds(tasks, calendar, tasks.planned).finish;
      for (const look of [1, 12]) {
        const found = searchSchedule(tasks, calendar, none, { seed, tries: 200, look, bound });
        expect(scheduleFaults(tasks, calendar, found.start)).toEqual([]);
        expect(found.end).toBeGreaterThanOrEqual(bound);
      }
    }
  });
  test('the search finds the best of all orders in 20 seeded problems of 7 tasks', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { tasks, calendar } = randomProblem(seed, 7);
      const best = Math.min(...orders(tasks).map((list) => run(tasks, calendar, list).end));
      const options = { seed, tries: 2000, look: 7, bound: 0 };
      expect(searchSchedule(tasks, calendar, new Float64Array(7), options).end).toBe(best);
    }
  });
  test('the same seed gives the same schedule', () => {
    const { tasks, calendar } = randomProblem(4, 15);
    const options = { seed: 9, tries: 300, look: 8, bound: 0 };
    const [a, b] = [0, 1].map(() => searchSchedule(tasks, calendar, new Float64Array(15), options));
    expect(a?.list).toEqual(b?.list);
  });
  test('a higher priority goes first, then what must end soonest', () => {
    const network = networkOfPairs(3, []);
    expect([...firstList(network, [1, 5, 3], [0, 0, 0])]).toEqual([0, 1, 2]);
    expect([...firstList(network, [1, 5, 3], [0, 0, 7])]).toEqual([2, 0, 1]);
    expect([...firstList(networkOfPairs(3, [[1, 2]]), [1, 5, 3], [0, 0, 0])]).toEqual([1, 0, 2]);
  });
  test('a task that needs more than there is is never begun', () => {
    const tasks = plainTasks(networkOfPairs(2, []), [5, 5], [[1], [3]]);
    const { end, finish } = run(tasks, alwaysOpen([2]), [0, 1], 2);
    expect(end).toBe(Number.POSITIVE_INFINITY);
    expect(finish).toEqual([5, Number.POSITIVE_INFINITY]);
  });
  test('spare hands go to what was just begun, as far as it has a use for them', () => {
    const plain = plainTasks(networkOfPairs(1, []), [60], [[2]]);
    const tasks = { ...plain, extra: Int32Array.of(2), shared: Float64Array.of(0.5) };
    expect(run(tasks, alwaysOpen([3]), [0]).end).toBeCloseTo(60 * (0.5 + (0.5 * 2) / 3), 9);
    expect(run(tasks, alwaysOpen([9]), [0]).end).toBeCloseTo(60 * 0.75, 9);
    expect(run(tasks, alwaysOpen([2]), [0]).end).toBe(60);
  });
  test('lent hands are taken back where another task needs them, and lent again', () => {
    // Task 0 is helped; 1 waits for nobody; 2 comes after it and needs four of the six.
    const plain = plainTasks(networkOfPairs(3, [[1, 2]]), [60, 10, 12], [[2], [0], [4]]);
    const tasks = {
      ...plain,
      extra: Int32Array.of(4, 0, 0),
      shared: Float64Array.of(1, 0, 0),
    };
    const { start, finish } = run(tasks, alwaysOpen([6]), [0, 1, 2]);
    // 10 s of six hands, 12 s of two, then six again: 60 + 24 + 36 of its 120 hand seconds.
    expect([...start]).toEqual([0, 0, 10]);
    expect(finish[2]).toBeCloseTo(22, 9);
    expect(finish[0]).toBeCloseTo(28, 9);
    // Nobody waits for hands that are only lent: one more hand never makes it later.
    const ends = [4, 5, 6, 7, 8, 9].map((hands) => run(tasks, alwaysOpen([hands]), [0, 1, 2]).end);
    for (let i = 1; i < ends.length; i++)
      expect(ends[i]).toBeLessThanOrEqual(ends[i - 1] as number);
  });
});

/** Two days of four slots of an hour; the second and third of each are open. */
const days = (over: Partial<SerialCalendar> = {}): SerialCalendar => ({
  slot: 3600,
  slots: 8,
  slotsPerDay: 4,
  endless: false,
  until: Int32Array.of(0, 3, 3, 3, 4, 7, 7, 7),
  next: Int32Array.of(1, 1, 2, 5, 5, 5, 6, 8),
  pieceOf: new Int32Array(8),
  pieceEnd: Float64Array.of(Number.POSITIVE_INFINITY),
  capacity: Int32Array.of(2),
  pace: new Float64Array(8).fill(1),
  gust: new Float64Array(8).fill(Number.NaN),
  dark: Float64Array.of(3 * 3600, 7 * 3600),
  ...over,
});

describe('by the hours of two days', () => {
  const HOUR = 3600;
  const chain = (durations: readonly number[], need = 1): SerialTasks =>
    plainTasks(
      networkOfPairs(
        durations.length,
        durations.slice(1).map((_, i) => [i, i + 1] as const),
      ),
      durations.map((hours) => hours * HOUR),
      durations.map(() => [need]),
    );
  test('work begins when it is open, and what does not fit waits for the next day', () => {
    const { start, end } = run(chain([1.5, 1]), days(), [0, 1]);
    expect(start).toEqual([1 * HOUR, 5 * HOUR]);
    expect(end).toBe(6 * HOUR);
  });
  test('what may be put down is taken up again the next day', () => {
    const plain = chain([3]);
    expect(run(plain, days(), [0]).end).toBe(Number.POSITIVE_INFINITY);
    const pausing = { ...plain, pauses: Uint8Array.of(1) };
    expect(run(pausing, days(), [0]).end).toBe(6 * HOUR);
    expect(run({ ...pausing, planned: Float64Array.of(9 * HOUR) }, days(), [0]).end).toBe(
      Number.POSITIVE_INFINITY,
    );
  });
  test('lent hands go home with those who are lent', () => {
    const plain = { ...chain([6], 2), pauses: Uint8Array.of(1) };
    const tasks = { ...plain, extra: Int32Array.of(2), shared: Float64Array.of(1) };
    const fewer = days({
      pieceOf: Int32Array.of(0, 0, 0, 0, 1, 1, 1, 1),
      pieceEnd: Float64Array.of(4 * HOUR, Number.POSITIVE_INFINITY),
      capacity: Int32Array.of(4, 2),
    });
    // Twelve hours of one hand: two of four on the first day, two of two on the second.
    expect(run(tasks, fewer, [0]).finish[0]).toBeCloseTo(7 * HOUR, 6);
    expect(run(tasks, days({ capacity: Int32Array.of(4) }), [0]).finish[0]).toBeCloseTo(
      6 * HOUR,
      6,
    );
  });
  test('in heat the work goes slower', () => {
    const pace = new Float64Array(8).fill(0.5);
    expect(run(chain([0.5]), days({ pace }), [0]).end).toBe(2 * HOUR);
  });
  test('nobody is begun with who leaves before the end', () => {
    const calendar = days({
      pieceOf: Int32Array.of(0, 0, 1, 1, 1, 1, 1, 1),
      pieceEnd: Float64Array.of(2 * HOUR, Number.POSITIVE_INFINITY),
      capacity: Int32Array.of(1, 2),
    });
    expect(run(chain([1], 2), calendar, [0]).start).toEqual([2 * HOUR]);
    const leaving = { ...calendar, capacity: Int32Array.of(2, 1) };
    expect(run(chain([0.5, 0.75], 2), leaving, [0, 1]).start[1]).toBe(Number.POSITIVE_INFINITY);
  });
  test('what commits is begun only if its stop point is reached before dark', () => {
    const plain = chain([0.5, 0.75, 1]);
    // The second and third task lead to stop 0, two hours away with closing down.
    const night = {
      stops: 1,
      stopOf: Int32Array.of(-1, -1, 0),
      commits: Uint8Array.of(0, 1, 1),
      begunBefore: Int32Array.of(0, 2),
      toStop: Float64Array.of(2 * HOUR, 0, 2 * HOUR, 0),
      way: Float64Array.of(1.75 * HOUR, 0, 1.75 * HOUR, 0),
      gustLimit: Float64Array.of(10),
    };
    const { start, work } = run({ ...plain, night }, days(), [0, 1, 2]);
    expect(start).toEqual([1 * HOUR, 5 * HOUR, 5.75 * HOUR]);
    expect([...work.reached]).toEqual([0, 1]);
    expect([...work.between]).toEqual([0, 0]);
    const loose = { ...night, toStop: new Float64Array(4) };
    const caught = run({ ...plain, night: loose }, days(), [0, 1, 2]);
    expect(caught.start[1]).toBe(1.5 * HOUR);
    expect([...caught.work.between]).toEqual([1, 0]);
    // Wind over the limit in the seventh hour: not begun before it is over.
    const gust = Float64Array.of(3, 3, 3, 3, 3, 12, 3, 3);
    expect(run({ ...plain, night: loose }, days({ gust }), [0, 1, 2]).start[1]).toBe(1.5 * HOUR);
    const windy = Float64Array.of(3, 12, 3, 3, 3, 3, 3, 3);
    const held = run(
      { ...plain, night: { ...loose, way: night.way } },
      days({ gust: windy }),
      [0, 1, 2],
    );
    expect(held.start[1]).toBeGreaterThanOrEqual(2 * HOUR);
  });
});
