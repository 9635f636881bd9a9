// How a dismantled shell is stacked and carried: stacks of single panels, course by course so that the base
// comes off the van first, each within what is allowed; trips of a given van or trailer. Metres, kilograms.
// An estimate: how much a vehicle may carry and how the load is tied is for its driver.

import type { Piece } from '../raise/lifts/piece.ts';

/** A panel to be stacked. */
export interface PackedPanel {
  readonly number: string;
  readonly kind: string;
  readonly course: number;
  /** Null where nobody weighed it. */
  readonly mass: number | null;
  /** Length and width of the smallest rectangle that it lies in. */
  readonly size: readonly [number, number];
}

/** A stack, from 1. */
export interface PackedStack {
  readonly number: number;
  readonly course: number;
  /** From the bottom up. */
  readonly panels: readonly PackedPanel[];
  /** Of the panels weighed; how many are not. */
  readonly mass: number;
  readonly unweighed: number;
  /** Length, width, height with battens. */
  readonly size: readonly [length: number, width: number, height: number];
}

/** What a stack may be. */
export interface StackLimits {
  /** Panels at most; 12 where left out. */
  readonly most?: number;
  /** Mass at most, kg; 150 where left out. */
  readonly mass?: number;
  /** Depth of a panel with its flanges, m; 0.06 where left out or null. */
  readonly depth?: number | null;
}

/** Battens under a stack, m, and room that panels that lie askew take besides: common practice, no
 * source. */
const BATTENS = 0.1;
const DEPTH = 0.06;
const MOST = 12;
const HEAVIEST = 150;

/** The stacks: courses from the ground up, panels alike together, so that stacks lie flat. RangeError for
 * a limit that is not above 0. */
export function stacksOf(panels: readonly PackedPanel[], limits: StackLimits = {}): PackedStack[] {
  const { most = MOST, mass: heaviest = HEAVIEST } = limits;
  const depth = limits.depth ?? DEPTH;
  for (const [name, value] of [
    ['panels', most],
    ['mass', heaviest],
    ['depth', depth],
  ] as const)
    if (!(value > 0))
      throw new RangeError(`${name} of a stack: found ${value}, expected more than 0`);
  const sorted = [...panels].sort(
    (a, b) => a.course - b.course || (a.kind < b.kind ? -1 : a.kind > b.kind ? 1 : 0),
  );
  const stacks: PackedPanel[][] = [];
  for (const panel of sorted) {
    const last = stacks.at(-1);
    const mass = (last ?? []).reduce((sum, one) => sum + (one.mass ?? 0), 0) + (panel.mass ?? 0);
    if (last && last[0]?.course === panel.course && last.length < most && mass <= heaviest)
      last.push(panel);
    else stacks.push([panel]);
  }
  return stacks.map((own, i) => ({
    number: i + 1,
    course: (own[0] as PackedPanel).course,
    // The largest lie at the bottom.
    panels: [...own].sort((a, b) => b.size[0] * b.size[1] - a.size[0] * a.size[1]),
    mass: own.reduce((sum, one) => sum + (one.mass ?? 0), 0),
    unweighed: own.filter((one) => one.mass === null).length,
    size: [
      Math.max(...own.map((one) => one.size[0])),
      Math.max(...own.map((one) => one.size[1])),
      BATTENS + own.length * depth,
    ],
  }));
}

/** A panel of a piece that is a single one. */
export const packedPanel = (piece: Piece, kind: string, course: number): PackedPanel => ({
  number: piece.numbers[0] as string,
  kind,
  course,
  mass: piece.mass,
  size: [piece.size[0], piece.size[1]],
});

/** A van or trailer: the room to load, m, and what it may carry, kg. */
export interface Vehicle {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly height: number;
  readonly payload: number;
}

/** What goes with one trip. */
export interface Trip {
  readonly stacks: readonly number[];
  readonly mass: number;
}

/** All trips, and stacks that do not go in at all, each with why. */
export interface Trips {
  readonly trips: readonly Trip[];
  readonly left: readonly { readonly stack: number; readonly why: string }[];
}

/** The trips of a vehicle, stacks in turn: in rows across its floor, one on another where its height
 * allows, lying with their length along or across. Not the fewest for sure. RangeError for a measure that
 * is not above 0. */
export function tripsOf(stacks: readonly PackedStack[], vehicle: Vehicle): Trips {
  for (const key of ['length', 'width', 'height', 'payload'] as const)
    if (!(vehicle[key] > 0))
      throw new RangeError(
        `${key} of ${vehicle.name}: found ${vehicle[key]}, expected more than 0`,
      );
  const left: { stack: number; why: string }[] = [];
  const rest = stacks.filter((stack) => {
    const why = whyNot(stack, vehicle);
    if (why !== null) left.push({ stack: stack.number, why });
    return why === null;
  });
  const trips: Trip[] = [];
  while (rest.length > 0) {
    const taken = oneTrip(rest, vehicle);
    trips.push({
      stacks: taken.map(({ number }) => number),
      mass: taken.reduce((sum, { mass }) => sum + mass, 0),
    });
    for (const stack of taken) rest.splice(rest.indexOf(stack), 1);
  }
  return { trips, left };
}

function whyNot({ size: [long, wide, high], mass }: PackedStack, vehicle: Vehicle): string | null {
  if (mass > vehicle.payload)
    return `it weighs ${mass.toFixed(0)} kg, the load may be ${vehicle.payload.toFixed(0)} kg: make lower stacks`;
  if (high > vehicle.height)
    return `it is ${high.toFixed(2)} m high, the room ${vehicle.height.toFixed(2)} m: make lower stacks`;
  const fits = (a: number, b: number): boolean => a <= vehicle.length && b <= vehicle.width;
  if (fits(long, wide) || fits(wide, long)) return null;
  return `it is ${long.toFixed(2)} × ${wide.toFixed(2)} m, the floor ${vehicle.length.toFixed(2)} × ${vehicle.width.toFixed(2)} m: lean panels on edge, well tied, or find a larger one`;
}

/** Stacks in rows: a row is as deep as its first stack, a spot as high as fits. */
function oneTrip(stacks: readonly PackedStack[], vehicle: Vehicle): PackedStack[] {
  const taken: PackedStack[] = [];
  let mass = 0;
  let from = 0;
  let row = { depth: 0, used: 0 };
  let spot = { along: 0, across: 0, high: 0 };
  for (const stack of stacks) {
    if (mass + stack.mass > vehicle.payload) continue;
    const [long, wide, high] = stack.size;
    const lies = ([along, across]: readonly [number, number]): boolean => {
      if (along <= spot.along && across <= spot.across && spot.high + high <= vehicle.height) {
        spot = { ...spot, high: spot.high + high };
        return true;
      }
      if (along <= row.depth && row.used + across <= vehicle.width) {
        row = { ...row, used: row.used + across };
        spot = { along, across, high };
        return true;
      }
      if (from + row.depth + along <= vehicle.length && across <= vehicle.width) {
        from += row.depth;
        row = { depth: along, used: across };
        spot = { along, across, high };
        return true;
      }
      return false;
    };
    if (!lies([wide, long]) && !lies([long, wide])) continue;
    mass += stack.mass;
    taken.push(stack);
  }
  return taken;
}
