// Nets of flat panels with more than three sides, all corners on one sphere: solids that are cut
// from a regular one so that every hub looks like every other. Hexagon-and-pentagon shells of more
// than 32 panels are missing on purpose: their hexagons can't be flat with all corners on a sphere.
//
//   truncated    a third off each end of each edge: hexagons, and a polygon at each corner
//   rectified    only the middle of each edge left: triangles, and a polygon at each corner
//   cantellated  faces drawn apart until the gap along each edge is a square
//   dual         a hub over each face, a polygon round each corner

import { add, distance, normalize, scale, type Vec3 } from '../math/vector.ts';
import type { Net } from './net.ts';
import { type Solid, type SolidName, solidOf } from './solid.ts';

/** A net of this file; the field's names. */
export type MixedNetName =
  | 'cube'
  | 'dodecahedron'
  | 'truncated tetrahedron'
  | 'truncated octahedron'
  | 'truncated icosahedron'
  | 'cuboctahedron'
  | 'icosidodecahedron'
  | 'rhombicuboctahedron'
  | 'rhombicosidodecahedron';

type Cut = (solid: Solid) => Round[];

/** A place as the keys and positions of its hubs. */
type Round = readonly (readonly [key: string, at: Vec3])[];

/** The net of this name on the unit sphere. */
export function mixedNet(name: MixedNetName): Net {
  const [solid, cut] = recipes[name];
  const known = new Map<string, number>();
  const hubs: number[] = [];
  const places = cut(solidOf(solid)).map((round) =>
    round.map(([key, at]) => {
      const index = known.get(key) ?? known.size;
      if (index === known.size) hubs.push(...normalize(at));
      known.set(key, index);
      return index;
    }),
  );
  return { hubs: Float64Array.from(hubs), places };
}

const truncated: Cut = (solid) => {
  const near = (a: number, b: number): Round[number] => [
    `${a}>${b}`,
    add(scale(corner(solid, a), 2), corner(solid, b)),
  ];
  return [
    ...solid.faces.map(([a, b, c]) => [
      near(a, b),
      near(b, a),
      near(b, c),
      near(c, b),
      near(c, a),
      near(a, c),
    ]),
    ...solid.corners.map((_, v) => around(solid, v).map(([w]) => near(v, w))),
  ];
};

const rectified: Cut = (solid) => {
  const middle = (a: number, b: number): Round[number] => [
    `${Math.min(a, b)}-${Math.max(a, b)}`,
    add(corner(solid, a), corner(solid, b)),
  ];
  return [
    ...solid.faces.map(([a, b, c]) => [middle(a, b), middle(b, c), middle(c, a)]),
    ...solid.corners.map((_, v) => around(solid, v).map(([w]) => middle(v, w))),
  ];
};

/** Face edges keep the share of the corner, gaps the share of the face's middle; with each weighted
 * by the other's length they come out equal. */
const cantellated: Cut = (solid) => {
  const first = around(solid, 0).map(([, face]) => face) as [number, number];
  const gap = distance(middleOf(solid, first[0]), middleOf(solid, first[1]));
  const edge = distance(corner(solid, 0), corner(solid, around(solid, 0)[0]?.[0] as number));
  const drawn = (v: number, face: number): Round[number] => [
    `${v}:${face}`,
    add(scale(corner(solid, v), gap), scale(middleOf(solid, face), edge)),
  ];
  const squares = solid.corners.flatMap((_, a) =>
    around(solid, a)
      .filter(([b]) => a < b)
      .map(([b, left]) => {
        const right = around(solid, b).find(([c]) => c === a)?.[1] as number;
        return [drawn(a, right), drawn(b, right), drawn(b, left), drawn(a, left)];
      }),
  );
  return [
    ...solid.faces.map((face, f) => face.map((v) => drawn(v, f))),
    ...solid.corners.map((_, v) => around(solid, v).map(([, face]) => drawn(v, face))),
    ...squares,
  ];
};

const dual: Cut = (solid) =>
  solid.corners.map((_, v) =>
    around(solid, v).map(([, face]): Round[number] => [`${face}`, middleOf(solid, face)]),
  );

const recipes: Record<MixedNetName, readonly [SolidName, Cut]> = {
  cube: ['octahedron', dual],
  dodecahedron: ['icosahedron', dual],
  'truncated tetrahedron': ['tetrahedron', truncated],
  'truncated octahedron': ['octahedron', truncated],
  'truncated icosahedron': ['icosahedron', truncated],
  cuboctahedron: ['octahedron', rectified],
  icosidodecahedron: ['icosahedron', rectified],
  rhombicuboctahedron: ['octahedron', cantellated],
  rhombicosidodecahedron: ['icosahedron', cantellated],
};

/** Every mixed net's name. */
export const mixedNetNames = Object.keys(recipes) as readonly MixedNetName[];

const corner = (solid: Solid, v: number): Vec3 => solid.corners[v] as Vec3;

const middleOf = (solid: Solid, face: number): Vec3 => {
  const [a, b, c] = solid.faces[face] as readonly [number, number, number];
  return scale(add(add(corner(solid, a), corner(solid, b)), corner(solid, c)), 1 / 3);
};

/** Neighbours of a corner anticlockwise seen from outside, each with the face to the left of the
 * way there. */
function around(solid: Solid, v: number): [neighbour: number, face: number][] {
  const steps = new Map<number, [number, number]>();
  solid.faces.forEach((face, f) => {
    const m = face.indexOf(v);
    if (m >= 0) steps.set(face[(m + 1) % 3] as number, [face[(m + 2) % 3] as number, f]);
  });
  const round: [number, number][] = [];
  let at = Math.min(...steps.keys());
  while (round.length < steps.size) {
    const [next, face] = steps.get(at) as [number, number];
    round.push([at, face]);
    at = next;
  }
  return round;
}
