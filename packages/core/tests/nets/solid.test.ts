import { expect, test } from 'vitest';
import { cross, dot, norm, subtract, type Vec3 } from '../../src/math/vector.ts';
import { type SolidName, solidOf } from '../../src/nets/solid.ts';

const cases: [SolidName, number, number, number][] = [
  ['icosahedron', 12, 20, Math.sqrt(2 - 2 / Math.sqrt(5))],
  ['octahedron', 6, 8, Math.SQRT2],
  ['tetrahedron', 4, 4, Math.sqrt(8 / 3)],
];

test.each(cases)(
  'the %s has its corners on the unit sphere and equal edges, faces outward',
  (name, corners, faces, edge) => {
    const solid = solidOf(name);
    expect([solid.corners.length, solid.faces.length]).toEqual([corners, faces]);
    expect(solid.corners[0]).toEqual([0, 0, 1]);
    for (const corner of solid.corners) expect(norm(corner)).toBeCloseTo(1, 14);
    for (const face of solid.faces) {
      const [a, b, c] = face.map((i) => solid.corners[i]) as [Vec3, Vec3, Vec3];
      for (const side of [subtract(b, a), subtract(c, b), subtract(a, c)])
        expect(norm(side)).toBeCloseTo(edge, 14);
      expect(dot(cross(subtract(b, a), subtract(c, a)), a)).toBeGreaterThan(0);
    }
  },
);
