import { expect, test } from 'vitest';
import { cross, distance, dot, type Vec3 } from '../../src/math/vector.ts';
import { rotationsOf } from '../../src/nets/rotations.ts';
import { type SolidName, solidOf } from '../../src/nets/solid.ts';

const orders: [SolidName, number][] = [
  ['icosahedron', 60],
  ['octahedron', 24],
  ['tetrahedron', 12],
];
const probe: Vec3 = [0.48, 0.6, 0.64];

test.each(orders)('the %s has %i different rotations, the identity first', (name, order) => {
  const images = rotationsOf(name).map((turn) => turn(probe));
  expect(images).toHaveLength(order);
  expect(distance(images[0] as Vec3, probe)).toBeLessThan(1e-15);
  images.forEach((p, i) => {
    for (const q of images.slice(0, i)) expect(distance(p, q)).toBeGreaterThan(0.01);
  });
});

test.each(orders)(
  'each rotation brings the corners of the %s onto corners and keeps hands',
  (name) => {
    const { corners } = solidOf(name);
    for (const turn of rotationsOf(name)) {
      for (const corner of corners)
        expect(Math.min(...corners.map((other) => distance(turn(corner), other)))).toBeLessThan(
          1e-14,
        );
      const [x, y, z] = [turn([1, 0, 0]), turn([0, 1, 0]), turn([0, 0, 1])];
      expect(dot(cross(x, y), z)).toBeCloseTo(1, 14);
    }
  },
);
