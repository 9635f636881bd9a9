// Plain scheduling problems without hours, for the serial generation.

import { type Network, networkOfPairs } from '../../src/crew/network.ts';
import type { SerialCalendar, SerialTasks } from '../../src/crew/serial.ts';
import { seededRandom } from '../../src/math/random.ts';

/** Tasks with needs (task × resources) and nothing else asked. */
export function plainTasks(
  network: Network,
  duration: readonly number[],
  need: readonly (readonly number[])[],
): SerialTasks {
  const n = network.count;
  return {
    network,
    resources: need[0]?.length ?? 0,
    need: Int32Array.from(need.flat()),
    extra: new Int32Array(n),
    shared: new Float64Array(n),
    planned: Float64Array.from(duration),
    pauses: new Uint8Array(n),
    classOf: new Int32Array(n),
    night: {
      stops: 0,
      stopOf: new Int32Array(n).fill(-1),
      commits: new Uint8Array(n),
      begunBefore: new Int32Array(1),
      toStop: new Float64Array(1),
      way: new Float64Array(1),
      gustLimit: new Float64Array(1),
    },
  };
}

/** Hours without end, with so much of each resource. */
export const alwaysOpen = (capacity: readonly number[]): SerialCalendar => ({
  slot: 3600,
  slots: 1,
  slotsPerDay: 24,
  endless: true,
  until: Int32Array.of(1),
  next: Int32Array.of(0),
  pieceOf: Int32Array.of(0),
  pieceEnd: Float64Array.of(Number.POSITIVE_INFINITY),
  capacity: Int32Array.from(capacity),
  pace: Float64Array.of(1),
  gust: Float64Array.of(Number.NaN),
  dark: new Float64Array(0),
});

/** A seeded problem: each task waits for up to two earlier ones, needs up to all of two resources. */
export function randomProblem(
  seed: number,
  count: number,
): { tasks: SerialTasks; calendar: SerialCalendar } {
  const random = seededRandom(seed);
  const pairs = new Map<string, readonly [number, number]>();
  for (let i = 1; i < count; i++)
    for (let k = 0; k < random.below(3); k++) {
      const from = random.below(i);
      pairs.set(`${from} ${i}`, [from, i]);
    }
  const duration = Array.from({ length: count }, () => random.below(9));
  const need = duration.map(() => [random.below(5), random.below(3)]);
  return {
    tasks: plainTasks(networkOfPairs(count, [...pairs.values()]), duration, need),
    calendar: alwaysOpen([4, 2]),
  };
}

/** What is wrong with a schedule: a task before one that it waits for, or more in use than there is. */
export function scheduleFaults(
  { network, need, resources, planned }: SerialTasks,
  { capacity }: SerialCalendar,
  start: ArrayLike<number>,
): string[] {
  const faults: string[] = [];
  for (let i = 0; i < network.count; i++)
    for (let e = network.start[i]; e < network.start[i + 1]; e++)
      if (start[network.next[e]] < start[i] + planned[i] - 1e-9)
        faults.push(`${network.next[e]} before ${i} is done`);
  for (const at of Array.from(start))
    for (let r = 0; r < resources; r++) {
      let used = 0;
      for (let i = 0; i < network.count; i++)
        if (start[i] <= at && at < start[i] + planned[i]) used += need[i * resources + r];
      if (used > capacity[r]) faults.push(`${used} of resource ${r} at ${at}`);
    }
  return faults;
}
