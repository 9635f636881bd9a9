// three.js 0.187, examples/jsm/math/ConvexHull: the hull of a net's hubs, found by a general-purpose
// program from the points alone, is the net: the same triangles, none more; and for nets of larger
// panels their faces, in the same planes.

import { Vector3 } from 'three';
import { ConvexHull } from 'three/examples/jsm/math/ConvexHull.js';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { pointAt } from '../../src/math/vector.ts';
import { mixedNet, mixedNetNames } from '../../src/nets/mixed.ts';
import { movedNet } from '../../src/nets/moved.ts';
import { type NetSpec, namedNet } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';

const specs: [NetSpec['solid'], number, number, NetSpec['division']][] = [
  ['icosahedron', 1, 0, 'equal chords'],
  ['icosahedron', 4, 0, 'equal chords'],
  ['icosahedron', 6, 0, 'equal chords'],
  ['icosahedron', 8, 0, 'equal chords'],
  ['icosahedron', 5, 0, 'equal arcs'],
  ['icosahedron', 6, 0, 'equal arcs by great circles'],
  ['icosahedron', 1, 1, 'equal chords'],
  ['icosahedron', 3, 3, 'equal chords'],
  ['icosahedron', 2, 1, 'equal chords'],
  ['icosahedron', 1, 2, 'equal chords'],
  ['icosahedron', 3, 2, 'equal chords'],
  ['octahedron', 4, 0, 'equal chords'],
  ['octahedron', 3, 1, 'equal chords'],
  ['tetrahedron', 3, 0, 'equal chords'],
];

describe.each(specs)('%s (%i, %i) by %s', (solid, b, c, division) => {
  const net = namedNet({ solid, b, c, division });
  test('the hull of the hubs has exactly the places as its faces', () => {
    expect(hullFaces(net)).toEqual(net.places.map(fromLowest).sort());
  });
});

test('one place with a hub of its neighbour’s is told from the hull', () => {
  const net = namedNet({ solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' });
  const places = net.places.map((place, p) => (p === 0 ? [place[0], place[1], 41] : place));
  expect(hullFaces(net)).not.toEqual(places.map((place) => fromLowest(place as number[])).sort());
});

test('seeds 1 to 5: a net moved by a twentieth of a side is still the hull of its hubs', () => {
  const net = namedNet({ solid: 'icosahedron', b: 5, c: 0, division: 'equal chords' });
  for (let seed = 1; seed <= 5; seed++) {
    const moved = movedNet(net, {
      solid: 'icosahedron',
      fraction: 0.05,
      random: seededRandom(seed),
    });
    expect(hullFaces(moved)).toEqual(moved.places.map(fromLowest).sort());
  }
});

test.each(mixedNetNames)(
  'every face of the hull of the %s lies in one of its panels, which they fill',
  (name) => {
    const net = mixedNet(name);
    const triangles = hullTriangles(net);
    const filled = net.places.map(
      (place) => triangles.filter((face) => face.every((hub) => place.includes(hub))).length,
    );
    expect(filled).toEqual(net.places.map((place) => place.length - 2));
    expect(triangles).toHaveLength(filled.reduce((sum, n) => sum + n, 0));
  },
);

/** Faces of the hull as hub indices, anticlockwise from outside. */
function hullTriangles({ hubs }: Net): number[][] {
  const points = Array.from(
    { length: hubs.length / 3 },
    (_, h) => new Vector3(...pointAt(hubs, h)),
  );
  const index = new Map(points.map((point, h) => [point, h]));
  const hull = new ConvexHull().setFromPoints(points);
  return hull.faces.map((face) => {
    const round: number[] = [];
    let edge = face.edge;
    do {
      round.push(index.get(edge.head().point) as number);
      edge = edge.next as typeof edge;
    } while (edge !== face.edge);
    return round;
  });
}

const hullFaces = (net: Net): string[] => hullTriangles(net).map(fromLowest).sort();

/** A round of hubs as text, its lowest first. */
function fromLowest(round: readonly number[]): string {
  const start = round.indexOf(Math.min(...round));
  return [...round.slice(start), ...round.slice(0, start)].join();
}
