// How many different stars the panels of a shell can form: by side classes alone, by closing on the
// sphere, and those of the net itself; up to rotation and reflection, panels of both hands. Computed
// apart from this project; nothing published was found.

import { describe, expect, test } from 'vitest';
import { kindsOfNet, type NetKinds } from '../../src/nets/kinds.ts';
import { type NetSpec, namedNet } from '../../src/nets/named.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';
import { factsOf } from './data/net-facts.ts';
import { eitherHand, starKey } from './data/net-table.ts';

// Solid, b, c; stars of five and of six: by side classes, closing on the sphere; stars of the net.
const rows: [NetSpec['solid'], number, number, [number, number], [number, number], number][] = [
  ['icosahedron', 2, 0, [8, 13], [1, 2], 2],
  ['icosahedron', 3, 0, [8, 15], [1, 2], 3],
  ['icosahedron', 4, 0, [48, 123], [1, 12], 4],
  ['icosahedron', 5, 0, [75, 215], [1, 18], 5],
  ['icosahedron', 6, 0, [52, 155], [1, 13], 7],
  ['icosahedron', 1, 1, [3, 5], [1, 1], 2],
  ['icosahedron', 2, 2, [17, 34], [1, 5], 4],
  ['icosahedron', 3, 3, [101, 288], [1, 13], 6],
  ['icosahedron', 2, 1, [6, 10], [1, 1], 2],
  ['icosahedron', 3, 1, [21, 48], [1, 5], 3],
  ['octahedron', 2, 0, [8, 13], [1, 2], 2],
  ['octahedron', 3, 0, [8, 15], [0, 2], 3],
];
const RADIANS = 1e-8;

describe.each(rows)('%s (%i, %i)', (solid, b, c, matching, closing, actual) => {
  const net = namedNet({ solid, b, c, division: 'equal chords' });
  const kinds = kindsOfNet(net.hubs, net.places, 1e-9);
  const found = [5, 6].map((n) => starsOf(kinds, n));

  test('stars whose side classes match', () => {
    expect(found.map((stars) => stars.size)).toEqual(matching);
  });
  test('stars that close on the sphere', () => {
    const closed = found.map((stars) => [...stars.values()].filter(closes).length);
    expect(closed).toEqual(closing);
  });
  test('stars of the net', () => {
    expect(factsOf(net).stars.size).toBe(actual);
  });
});

const closes = (angle: number): boolean => Math.abs(angle - 2 * Math.PI) < RADIANS;

interface Corner {
  first: number;
  last: number;
  panel: string;
  angle: number;
}

/** Sum of the corners of every star of n panels whose touching sides are of one class. */
function starsOf(kinds: NetKinds, n: number): Map<string, number> {
  const corners = cornersOf(kinds);
  const stars = new Map<string, number>();
  const grow = (run: readonly Corner[], angle: number): void => {
    const end = run.at(-1) as Corner;
    if (run.length === n) {
      if (end.last === run[0]?.first)
        stars.set(starKey(run.map(({ first, panel }) => [first, panel])), angle);
      return;
    }
    for (const next of corners)
      if (next.first === end.last) grow([...run, next], angle + next.angle);
  };
  for (const corner of corners) grow([corner], corner.angle);
  return stars;
}

/** Different corners of all kinds; going round a hub anticlockwise, `first` is the side that starts
 * there and `last` the side before it. */
function cornersOf(kinds: NetKinds): Corner[] {
  const corners = new Map<string, Corner>();
  for (const { sides, sideClasses } of kinds.kinds) {
    const polygon = polygonOnSphere(sides, 1);
    if (!polygon.ok) throw new Error(polygon.why.reason);
    sideClasses.forEach((first, i) => {
      const last = sideClasses.at(i - 1) as number;
      const panel = eitherHand(sideClasses);
      const corner = { first, last, panel, angle: polygon.corners[i] as number };
      corners.set(`${first} ${last} ${panel}`, corner);
    });
  }
  return [...corners.values()];
}
