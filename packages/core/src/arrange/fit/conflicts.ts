// Wishes that can't all be kept: the fewest that stand against each other, and for each of them what it
// could be with the others kept.

import type { Arrangement } from '../arrangements.ts';
import { fewestInConflict } from '../program/conflict.ts';
import type { FitSearch } from './fit-search.ts';
import { heightOf } from './outlines.ts';
import { isRanked, type Wishes } from './wishes.ts';

/** Demands that can stand against each other. */
export type Demand =
  | 'flatBase'
  | 'leastHeight'
  | 'leastFloor'
  | 'mostFloor'
  | 'mostBought'
  | 'spares'
  | 'door'
  | 'mostParted';

/** All of them, in the order in which they are told. */
const demands: readonly Demand[] = [
  'flatBase',
  'leastHeight',
  'leastFloor',
  'mostFloor',
  'mostBought',
  'spares',
  'door',
  'mostParted',
];

/** What works instead of one demand, the others kept. */
export type Nearest =
  /** Height, radius in metres, or number of panels, spares or groups. */
  | { readonly demand: Exclude<Demand, 'flatBase' | 'door'>; readonly value: number }
  /** How uneven the evenest base ring is, metres. */
  | { readonly demand: 'flatBase'; readonly value: number }
  /** The highest door of the width asked for, the widest of the height asked for, metres. */
  | {
      readonly demand: 'door';
      readonly doors: readonly { readonly width: number; readonly height: number }[];
    };

/** Why no outline keeps these wishes. Empty where it could not be settled in time. */
export function conflictOf(
  search: FitSearch,
  wishes: Wishes,
): { readonly conflict: readonly Demand[]; readonly nearest: readonly Nearest[] } {
  const asked = demands.filter((one) => isAsked(wishes, one));
  const possible = (kept: readonly Demand[]): boolean | null => {
    const found = search.firstThat(only(wishes, kept));
    return found === null ? null : found !== false;
  };
  const conflict = fewestInConflict(asked, possible);
  const nearest = conflict.flatMap((one) => nearestTo(search, wishes, one) ?? []);
  return { conflict, nearest };
}

/** Whether a demand is made: those that the order ranks are none. */
function isAsked(wishes: Wishes, demand: Demand): boolean {
  if (demand === 'flatBase') return wishes.flatBase && !isRanked(wishes, 'level base');
  if (demand === 'spares') return wishes.spares > 0 && !isRanked(wishes, 'spares kept');
  if (demand === 'door') return wishes.door !== undefined && !isRanked(wishes, 'door');
  return wishes[demand] !== undefined;
}

/** The wishes with only some of the demands. */
function only(wishes: Wishes, kept: readonly Demand[]): Wishes {
  const { flatBase, leastHeight, leastFloor, mostFloor, mostBought, spares, ...others } = wishes;
  const { door, mostParted, ...rest } = others;
  const keeps = (demand: Demand): boolean => kept.includes(demand);
  return {
    ...rest,
    flatBase: keeps('flatBase') && flatBase,
    spares: keeps('spares') ? spares : 0,
    ...(keeps('leastHeight') && { leastHeight }),
    ...(keeps('leastFloor') && { leastFloor }),
    ...(keeps('mostFloor') && { mostFloor }),
    ...(keeps('mostBought') && { mostBought }),
    ...(keeps('door') && { door }),
    ...(keeps('mostParted') && { mostParted }),
  };
}

/** What a demand could be with all others kept; null where nothing would do, or the time was up. */
function nearestTo(search: FitSearch, wishes: Wishes, demand: Demand): Nearest | null {
  const others = only(
    wishes,
    demands.filter((one) => one !== demand && isAsked(wishes, one)),
  );
  const best = (rank: (one: Arrangement) => number): number | null => {
    const found = search.firstThat(others, rank);
    return found ? rank(found.arrangement) : null;
  };
  const told = (own: Exclude<Demand, 'door'>, value: number | null | undefined): Nearest | null =>
    value === null || value === undefined ? null : { demand: own, value };
  switch (demand) {
    case 'leastHeight': {
      const value = best(({ cut }) => -heightOf(cut, wishes));
      return told(demand, value === null ? null : -value);
    }
    case 'leastFloor': {
      const value = best(({ cut }) => -cut.floor.inside);
      return told(demand, value === null ? null : -value);
    }
    case 'mostFloor':
      return told(
        demand,
        best(({ cut }) => cut.floor.max),
      );
    case 'flatBase':
      return told(
        demand,
        best(({ cut }) => cut.baseZ.max - cut.baseZ.min),
      );
    case 'mostBought':
      return told(demand, fewestOf(search, { ...others, order: ['fewest bought'] })?.bought);
    case 'mostParted':
      return told(demand, fewestOf(search, { ...others, order: ['groups joined'] })?.parted);
    case 'spares': {
      const most = largest(0, wishes.spares, (spares) => !!search.firstThat({ ...others, spares }));
      return told(demand, most);
    }
    case 'door': {
      const { width = 0, height = 0 } = wishes.door ?? {};
      const can = (own: Wishes['door']): boolean => !!search.firstThat({ ...others, door: own });
      const high = largest(0, Math.ceil(height / STEP), (n) =>
        n === 0 ? true : can({ width, height: metres(n) }),
      );
      const wide = largest(0, Math.ceil(width / STEP), (n) =>
        n === 0 ? true : can({ width: metres(n), height }),
      );
      const doors = [
        ...(high ? [{ width, height: metres(high) }] : []),
        ...(wide ? [{ width: metres(wide), height }] : []),
      ];
      return doors.length > 0 ? { demand, doors } : null;
    }
  }
}

/** Doors are told in steps of this, metres. */
const STEP = 0.05;
const metres = (steps: number): number => Math.round(steps * STEP * 100) / 100;

const fewestOf = (search: FitSearch, wishes: Wishes) => search.run(wishes).fits[0];

/** The largest whole number from `low` to below `high` that will do, where smaller ones do if larger ones
 * do; null where not even the least does. */
function largest(low: number, high: number, can: (n: number) => boolean): number | null {
  if (!can(low)) return null;
  let [good, bad] = [low, high];
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (can(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
