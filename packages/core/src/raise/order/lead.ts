// What the lead has fixed, between the numbers that the project file keeps and the indices that the
// search works on.

import type { Fault, Read } from '../../measure/fault.ts';
import { hubCount, placeCount, type Shell } from '../../shell/shell.ts';
import type { RaisingSettings } from '../schema.ts';
import type { Group } from './pieces.ts';
import type { Pins } from './pins.ts';

/** What the lead has fixed, by index. */
export interface LeadFixed {
  readonly pins: Pins;
  readonly order: readonly (readonly number[])[] | null;
  readonly wayOut: readonly number[] | null;
  readonly groups: readonly Group[];
}

/** What is kept, by index; every number that no place of the shell bears, and every hub that its places
 * do not share, is a fault. `numbers`: place → its number. */
export function leadFixed(
  kept: RaisingSettings,
  shell: Shell,
  numbers: readonly string[],
): Read<LeadFixed> {
  const at = new Map(numbers.map((number, i) => [number, i]));
  const faults: Fault[] = [];
  const place = (path: string, number: string): number => {
    const found = at.get(number);
    if (found === undefined)
      faults.push({ path, found: `place ${number}`, expected: 'a place that stands' });
    return found ?? -1;
  };
  const places = (path: string, list: readonly string[]): number[] =>
    list.map((number) => place(path, number));
  const before = kept.before.map((pin, i) => ({
    place: place(`raising.before[${i}].place`, pin.place),
    than: place(`raising.before[${i}].than`, pin.than),
  }));
  const order = kept.order?.map((lift, i) => places(`raising.order[${i}]`, lift)) ?? null;
  const wayOut = kept.wayOut && places('raising.wayOut', kept.wayOut);
  const groups = kept.groups.map(
    (group, i): Group => ({ places: places(`raising.groups[${i}]`, group), made: 'made up' }),
  );
  const hubs = kept.props.map((around, i) => {
    const known = places(`raising.props[${i}]`, around);
    const hub = known.includes(-1) ? null : hubAmong(shell, known);
    if (hub === null && !known.includes(-1))
      faults.push({
        path: `raising.props[${i}]`,
        found: around.join(', '),
        expected: 'all the places that meet at one hub',
      });
    return hub ?? -1;
  });
  if (faults.length > 0) return { ok: false, faults };
  return { ok: true, value: { pins: { before, props: hubs }, order, wayOut, groups } };
}

/** The numbers of the places that meet at a hub, in the order of the places: how the file names it. */
export const hubPlaces = (shell: Shell, numbers: readonly string[], hub: number): string[] =>
  aroundHubs(shell)[hub]?.map((p) => numbers[p] as string) ?? [];

/** The hub at which just these places meet; null where there is none. */
function hubAmong(shell: Shell, places: readonly number[]): number | null {
  const wanted = [...new Set(places)].sort((a, b) => a - b).join();
  const hub = aroundHubs(shell).findIndex((around) => around.join() === wanted);
  return hub < 0 ? null : hub;
}

function aroundHubs(shell: Shell): number[][] {
  const around = Array.from({ length: hubCount(shell) }, (): number[] => []);
  for (let p = 0; p < placeCount(shell); p++)
    for (
      let side = shell.placeStart[p] as number;
      side < (shell.placeStart[p + 1] as number);
      side++
    )
      around[shell.sideHub[side] as number]?.push(p);
  return around;
}
