// What there is to stand on and to lift with, as numbers by name: each is a resource of the schedule.

import type { Gear } from '../raise/gear.ts';

/** How many there are of each thing, by name; things of one name are counted together. */
export function gearCounts({
  ladders,
  platforms,
  towers,
  lifts,
  ginPole,
}: Gear): Record<string, number> {
  const found: Record<string, number> = {};
  const add = (name: string, count: number): void => {
    found[name] = (found[name] ?? 0) + count;
  };
  for (const { name, count } of [...ladders, ...platforms, ...towers]) add(name, count);
  for (const { name } of lifts) add(name, 1);
  if (ginPole !== null) add(ginPole.name, 1);
  return found;
}
