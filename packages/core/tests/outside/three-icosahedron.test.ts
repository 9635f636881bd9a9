// three.js 0.187, IcosahedronGeometry(1, detail): a general-purpose construction of the subdivided
// icosahedron (faces cut in equal steps, points pushed out to the sphere), here held against class I
// nets by equal chords as sets of points, detail + 1 steps. Its vertices are 32-bit floats and its
// icosahedron stands otherwise; both sets are turned so that the first is taken onto the second.

import { IcosahedronGeometry } from 'three';
import { describe, expect, test } from 'vitest';
import { distance, normalize, pointAt, type Vec3 } from '../../src/math/vector.ts';
import { namedNet } from '../../src/nets/named.ts';
import { frameOf, turnBetween } from './data/frames.ts';

const FLOAT32 = 3e-7;

describe.each([1, 2, 3, 4, 5, 6, 8])('%i steps', (b) => {
  const { hubs, places } = namedNet({ solid: 'icosahedron', b, c: 0, division: 'equal chords' });
  const ours = Array.from({ length: hubs.length / 3 }, (_, h) => pointAt(hubs, h));
  const theirs = threePoints(b - 1);
  const turn = turnBetween(frameOf(...cornersOf(theirs)), frameOf(...cornersOf(ours)));

  test('as many different points and triangles', () => {
    expect(theirs).toHaveLength(ours.length);
    expect(new IcosahedronGeometry(1, b - 1).getAttribute('position').count / 3).toBe(
      places.length,
    );
  });
  test('every point on one of ours; ten times the tolerance is refused', () => {
    const gaps = theirs.map((point) => Math.min(...ours.map((hub) => distance(turn(point), hub))));
    expect(Math.max(...gaps)).toBeLessThan(FLOAT32);
    const off = theirs.map(([x, y, z]): Vec3 => [x + 10 * FLOAT32, y, z]);
    const far = off.filter(
      (point) => Math.min(...ours.map((hub) => distance(turn(point), hub))) > FLOAT32,
    );
    expect(far).toHaveLength(theirs.length);
  });
});

/** The different vertices of the geometry, back at radius 1. */
function threePoints(detail: number): Vec3[] {
  const position = new IcosahedronGeometry(1, detail).getAttribute('position');
  const points = new Map<string, Vec3>();
  for (let i = 0; i < position.count; i++) {
    const point: Vec3 = [position.getX(i), position.getY(i), position.getZ(i)];
    points.set(point.map((x) => Math.round(x * 1e5)).join(), normalize(point));
  }
  return [...points.values()];
}

/** Two neighbouring corners of the icosahedron: the first point with five nearest neighbours all
 * alike and the closest other such point. */
function cornersOf(points: readonly Vec3[]): [Vec3, Vec3] {
  const corners = points.filter((point) => isCorner(points, point));
  const [first] = corners as [Vec3];
  const neighbour = corners.slice(1).sort((p, q) => distance(p, first) - distance(q, first))[0];
  return [first, neighbour as Vec3];
}

function isCorner(points: readonly Vec3[], point: Vec3): boolean {
  const near = points.map((other) => distance(point, other)).sort((p, q) => p - q);
  const [fifth, sixth] = [near[5] as number, near[6] as number];
  return fifth - (near[1] as number) < 1e-5 && sixth - fifth > 0.1 * fifth;
}
