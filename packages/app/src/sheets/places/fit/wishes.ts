// The lead's wishes as a form: the order of what counts, and the limits, read and written. Lengths in
// metres; floors as people measure them, across, where the file keeps radii.

import {
  defaultWishes,
  fullOrder,
  type LengthUnit,
  type Nearest,
  type Objective,
  objectives,
  type Project,
  readLength,
  type Wishes,
} from '@shellraise/core';
import type { Typed } from '../../../ui/use-typed.ts';

/** The wishes of a project, or those where nobody said anything. */
export const wishesOf = ({ wishes }: Pick<Project, 'wishes'>): Wishes => wishes ?? defaultWishes;

/** What counts, in order: what the order names, then what always counts. A demand that is named in it
 * may be missed for what stands before it; one that is not must be kept. */
export const orderOf = ({ order }: Pick<Wishes, 'order'>): readonly Objective[] => fullOrder(order);

/** What could count as well. */
export const notCounted = (wishes: Wishes): readonly Objective[] =>
  objectives.filter((one) => !orderOf(wishes).includes(one));

/** Whether it may be taken out of the order again. */
export const isOptional = (what: Objective): boolean => !fullOrder([]).includes(what);

/** The wishes with one more thing that counts, the last of all. */
export const withCounted = (wishes: Wishes, what: Objective): Wishes => ({
  ...wishes,
  order: [...orderOf(wishes), what],
});

/** The wishes with one thing less that counts. */
export const withoutCounted = (wishes: Wishes, what: Objective): Wishes => ({
  ...wishes,
  order: orderOf(wishes).filter((one) => one !== what),
});

/** The wishes with one of the things that count moved up (−1) or down (1); the same where it is at
 * the end already. */
export function moved(wishes: Wishes, what: Objective, by: -1 | 1): Wishes {
  const order = [...orderOf(wishes)];
  const at = order.indexOf(what);
  const other = order[at + by];
  if (at < 0 || other === undefined) return wishes;
  order[at] = other;
  order[at + by] = what;
  return { ...wishes, order };
}

/** Limits that are whole numbers, each with the most that may be asked. */
export const wholeLimits = {
  spares: 100,
  mostGaps: 50,
  mostBought: 1000,
  mostParted: 1000,
} as const;
/** A limit that is a whole number. */
export type WholeLimit = keyof typeof wholeLimits;

/** Limits that are lengths. */
export const lengthLimits = ['leastHeight', 'leastFloor', 'mostFloor'] as const;
/** A limit that is a length. */
export type LengthLimit = (typeof lengthLimits)[number];

/** How many of a limit's metres a metre of the field is: floors are typed across. */
const perMetre: Readonly<Record<LengthLimit, number>> = {
  leastHeight: 1,
  leastFloor: 0.5,
  mostFloor: 0.5,
};

/** The limit as it is typed, metres; undefined where there is none. */
export function shownLimit(wishes: Wishes, limit: LengthLimit): number | undefined {
  const own = wishes[limit];
  return own === undefined ? undefined : own / perMetre[limit];
}

/** The wishes with a limit set, as typed, or taken away. */
export function withLength(wishes: Wishes, limit: LengthLimit, typed: number | undefined): Wishes {
  const { [limit]: _, ...rest } = wishes;
  return typed === undefined ? rest : { ...rest, [limit]: typed * perMetre[limit] };
}

/** The wishes with a number set; where nothing is typed, some are then no limit, the others none. */
export function withWhole(wishes: Wishes, limit: WholeLimit, value: number | undefined): Wishes {
  if (!hasNoLimit(limit)) return { ...wishes, [limit]: value ?? 0 };
  const { [limit]: _, ...rest } = wishes;
  return value === undefined ? rest : { ...rest, [limit]: value };
}

/** Whether nothing typed means no limit. */
export const hasNoLimit = (limit: WholeLimit): limit is 'mostBought' | 'mostParted' =>
  limit === 'mostBought' || limit === 'mostParted';

/** The size that a door has until somebody says otherwise, metres: common practice, no source. */
export const USUAL_DOOR = { width: 0.9, height: 2 } as const;

/** The wishes without a door. */
export function withoutDoor({ door: _, ...rest }: Wishes): Wishes {
  return rest;
}

/** The wishes with one size of the door, metres. */
export function withDoor(wishes: Wishes, size: 'width' | 'height', value: number): Wishes {
  return { ...wishes, door: { ...(wishes.door ?? USUAL_DOOR), [size]: value } };
}

/** The wishes with where the wind comes from, whole degrees clockwise from the datum; undefined: not known. */
export function withWind({ windFrom: _, ...rest }: Wishes, degrees: number | undefined): Wishes {
  return degrees === undefined ? rest : { ...rest, windFrom: (-degrees * Math.PI) / 180 };
}

/** A whole number from 0 to `most` as typed. */
export function readWhole(text: string, most: number): Typed {
  const plain = text.trim();
  if (plain === '') return { ok: true, value: undefined };
  if (!/^\d{1,6}$/.test(plain) || Number(plain) > most) return { ok: false };
  return { ok: true, value: Number(plain) };
}

/** Lengths of a shell or a door are no longer, metres. */
const MOST_LENGTH = 50;

/** A length of more than nothing as typed. */
export function readLimit(text: string, unit: LengthUnit): Typed {
  const plain = text.trim();
  if (plain === '') return { ok: true, value: undefined };
  const read = readLength(plain, { unit });
  return read.ok && read.value > 0 && read.value <= MOST_LENGTH
    ? { ok: true, value: read.value }
    : { ok: false };
}

/** Whether two wishes ask for the same fits. */
export const sameWishes = (a: Wishes, b: Wishes): boolean => keyOf(a) === keyOf(b);

const keyOf = ({ order, ...rest }: Wishes): string =>
  JSON.stringify([orderOf({ order }), Object.entries(rest).sort(([a], [b]) => (a < b ? -1 : 1))]);

/** The wishes without one demand: a limit taken away, a level base ring no longer asked for. What is
 * no demand on its own leaves them as they are. */
export function withoutDemand(wishes: Wishes, demand: string): Wishes {
  if (demand === 'flatBase') return { ...wishes, flatBase: false };
  if (demand === 'spares') return { ...wishes, spares: 0 };
  const rest = Object.entries(wishes).filter(([key]) => key !== demand);
  return optional.has(demand) ? (Object.fromEntries(rest) as Wishes) : wishes;
}

/** The wishes with one demand eased to the nearest that works with the others kept. */
export function eased(wishes: Wishes, nearest: Nearest): Wishes {
  switch (nearest.demand) {
    case 'flatBase':
      return { ...wishes, flatBase: false };
    case 'door': {
      const [door] = nearest.doors;
      return door ? { ...wishes, door: { ...door } } : withoutDoor(wishes);
    }
    case 'leastHeight':
    case 'leastFloor':
      return { ...wishes, [nearest.demand]: Math.floor(nearest.value * 1000) / 1000 };
    case 'mostFloor':
      return { ...wishes, mostFloor: Math.ceil(nearest.value * 1000) / 1000 };
    case 'mostBought':
    case 'mostParted':
    case 'spares':
      return { ...wishes, [nearest.demand]: nearest.value };
  }
}

const optional: ReadonlySet<string> = new Set([
  ...lengthLimits,
  'mostBought',
  'mostParted',
  'door',
]);
