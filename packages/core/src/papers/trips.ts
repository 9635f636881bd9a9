// Stacks of panels in a given van or trailer: trip by trip, from the door inwards, what goes up first nearest
// the door and on top. Metres, kilograms. An estimate: how much a vehicle may carry, on which axle, and how
// the load is tied is for its driver.

import { OVERHANG, type PackedStack } from './packing.ts';

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
  /** In the order in which they come out. */
  readonly stacks: readonly number[];
  /** Where they stand: rows from the door inwards, in each the spots from left to right, on each spot the
   * stacks from the top down. */
  readonly rows: readonly (readonly (readonly number[])[])[];
  readonly mass: number;
}

/** All trips, and stacks that do not go in at all, each with its panels and why. */
export interface Trips {
  readonly trips: readonly Trip[];
  readonly left: readonly {
    readonly stack: number;
    readonly panels: readonly string[];
    readonly why: string;
  }[];
}

/** The trips of a vehicle, stacks in turn: in rows from its door, one below another where its height
 * allows, lying with their length along or across. Not the fewest for sure. RangeError for a measure that
 * is not above 0. */
export function tripsOf(stacks: readonly PackedStack[], vehicle: Vehicle): Trips {
  for (const key of ['length', 'width', 'height', 'payload'] as const)
    if (!(vehicle[key] > 0))
      throw new RangeError(
        `${key} of ${vehicle.name}: found ${vehicle[key]}, expected more than 0`,
      );
  const refused = stacks.map((stack) => whyNot(stack, vehicle));
  let rest = stacks.filter((_, i) => refused[i] === null);
  const trips: Trip[] = [];
  while (rest.length > 0) {
    const [along, across] = [oneTrip(rest, vehicle, false), oneTrip(rest, vehicle, true)];
    const { trip, taken } = across.taken.size > along.taken.size ? across : along;
    trips.push(trip);
    rest = rest.filter((stack) => !taken.has(stack));
  }
  const left = stacks.flatMap(({ number, panels }, i) => {
    const why = refused[i] as string | null;
    return why === null
      ? []
      : [{ stack: number, panels: panels.map((panel) => panel.number), why }];
  });
  return { trips, left };
}

const m = (length: number): string => length.toFixed(2);

/** Why a stack does not go in however it lies, with the room that it needs; null where it does. */
function whyNot({ size: [long, wide, high], mass }: PackedStack, vehicle: Vehicle): string | null {
  const { length, width, height, payload } = vehicle;
  if (mass > payload)
    return `it weighs ${mass.toFixed(0)} kg, the load may be ${payload.toFixed(0)} kg: make lower stacks`;
  const lies = (a: number, b: number): boolean =>
    (a <= length && b <= width) || (b <= length && a <= width);
  if (lies(long, wide))
    return high <= height
      ? null
      : `it is ${m(high)} m high, the room ${m(height)} m: make lower stacks`;
  const room = `the room is ${m(length)} × ${m(width)} m and ${m(height)} m high`;
  const needs = `lying it needs a floor of ${m(long)} × ${m(wide)} m`;
  const onEdge = (
    [
      [long, wide],
      [wide, long],
    ] as const
  ).find(([along, up]) => lies(along, high) && up <= height);
  if (onEdge !== undefined)
    return `${needs}, ${room}: it goes in on edge, on ${m(onEdge[0])} × ${m(high)} m of floor and ${m(onEdge[1])} m high, well tied`;
  return `${needs}, on edge ${m(long)} × ${m(high)} m and ${m(wide)} m of height, ${room}: find a larger one`;
}

interface Spot {
  readonly along: number;
  readonly across: number;
  readonly high: number;
  /** From the top down. */
  readonly stacks: readonly PackedStack[];
}

/** Spots side by side; as deep as the deepest. */
type Row = readonly Spot[];

/** `turned`: with their length along the vehicle first. */
function oneTrip(
  stacks: readonly PackedStack[],
  vehicle: Vehicle,
  turned: boolean,
): { readonly trip: Trip; readonly taken: ReadonlySet<PackedStack> } {
  const taken = new Set<PackedStack>();
  let rows: readonly Row[] = [];
  let mass = 0;
  for (const stack of stacks) {
    if (mass + stack.mass > vehicle.payload + 1e-9) continue;
    const next = ways(rows, stack, vehicle.height, turned).find((way) => goesIn(way, vehicle));
    if (next === undefined) continue;
    rows = next;
    mass += stack.mass;
    taken.add(stack);
  }
  const trip = {
    stacks: [...taken].map(({ number }) => number),
    rows: rows.map((row) => row.map((spot) => spot.stacks.map(({ number }) => number))),
    mass,
  };
  return { trip, taken };
}

/** Where a stack can go, the thriftiest first: below those of the last spot, beside it, in a new row. */
function ways(
  rows: readonly Row[],
  stack: PackedStack,
  room: number,
  turned: boolean,
): (readonly Row[])[] {
  const [long, wide, high] = stack.size;
  const last = rows.at(-1) ?? [];
  const spot = last.at(-1);
  const lying: (readonly [along: number, across: number])[] = [
    [wide, long],
    [long, wide],
  ];
  const spots = (turned ? lying.reverse() : lying).map(
    ([along, across]): Spot => ({ along, across, high, stacks: [stack] }),
  );
  const below =
    spot === undefined
      ? []
      : spots
          .filter(
            ({ along, across }) =>
              spot.along <= OVERHANG * along &&
              spot.across <= OVERHANG * across &&
              spot.high + high <= room + 1e-9,
          )
          .map(
            ({ along, across }): Row => [
              ...last.slice(0, -1),
              {
                along: Math.max(along, spot.along),
                across: Math.max(across, spot.across),
                high: spot.high + high,
                stacks: [...spot.stacks, stack],
              },
            ],
          );
  const beside = spot === undefined ? [] : spots.map((one): Row => [...last, one]);
  const inLast = [...below, ...beside].map((row) => [...rows.slice(0, -1), row]);
  return [...inLast, ...spots.map((one) => [...rows, [one]])];
}

/** Whether rows fit the floor. */
function goesIn(rows: readonly Row[], { length, width }: Vehicle): boolean {
  const sum = (of: readonly number[]): number => of.reduce((all, one) => all + one, 0);
  return (
    sum(rows.map((row) => Math.max(...row.map(({ along }) => along)))) <= length + 1e-9 &&
    rows.every((row) => sum(row.map(({ across }) => across)) <= width + 1e-9)
  );
}
