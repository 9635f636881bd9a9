// A room of 4 by 4 m, 3 m high, with one hole in its +x wall: what closed forms are held to.

import type { Vec3 } from '../../src/math/vector.ts';
import { type Barrier, type Triangle, wallSolid } from '../../src/passage/wall.ts';

type Spot = readonly [y: number, z: number];

/** The room; the hole anticlockwise seen from outside, in y and z over the floor; that wall 2 cm thick or
 * as told. */
export function roomWith(hole: readonly Spot[], thick = 0.02): Barrier {
  const [inner, outer, far] = [2 - thick, 2, 6];
  const slab = (low: Vec3, high: Vec3): Vec3[] =>
    [low[0], high[0]].flatMap((x) =>
      [low[1], high[1]].flatMap((y) => [low[2], high[2]].map((z): Vec3 => [x, y, z])),
    );
  const middle: Spot = [0, 1].map(
    (i) => hole.reduce((sum, p) => sum + (p[i] as number), 0) / hole.length,
  ) as unknown as Spot;
  const beyond = ([y, z]: Spot): Spot => [
    middle[0] + far * (y - middle[0]),
    middle[1] + far * (z - middle[1]),
  ];
  const front = hole.map((a, i) => {
    const b = hole[(i + 1) % hole.length] as Spot;
    return [a, b, beyond(a), beyond(b)].flatMap(([y, z]): Vec3[] => [
      [inner, y, z],
      [outer, y, z],
    ]);
  });
  const solids = [
    ...front,
    slab([-2.1, -2, -1], [-2, 2, 3]),
    slab([-2, -2.1, -1], [2, -2, 3]),
    slab([-2, 2, -1], [2, 2.1, 3]),
    slab([-2, -2, 3], [2, 2, 3.1]),
  ].map(wallSolid);
  const at = (x: number): Vec3[] => hole.map(([y, z]): Vec3 => [x, y, z]);
  const fan = (x: number): Triangle[] =>
    at(x)
      .slice(2)
      .map((c, i) => [at(x)[0] as Vec3, at(x)[i + 1] as Vec3, c]);
  const ribs = hole.flatMap((a, i) =>
    [0, 0.25, 0.5, 0.75].map((t): Vec3[] => {
      const b = hole[(i + 1) % hole.length] as Spot;
      const [y, z] = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
      return [
        [inner, y, z],
        [outer, y, z],
      ];
    }),
  );
  return {
    solids,
    floor: 0,
    radius: 4,
    gaps: fan(outer).map((corners) => ({ place: 0, corners, normal: [1, 0, 0] })),
    closing: fan((inner + outer) / 2),
    loops: [at(outer), at(inner), ...ribs],
  };
}

/** A rectangle, its lower edge so high. */
export const rectangle = (width: number, height: number, sill: number): Spot[] => [
  [-width / 2, sill],
  [width / 2, sill],
  [width / 2, sill + height],
  [-width / 2, sill + height],
];

/** An equilateral triangle on its side. */
export const triangle = (side: number, sill: number): Spot[] => [
  [-side / 2, sill],
  [side / 2, sill],
  [0, sill + (side * Math.sqrt(3)) / 2],
];
