import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { turnOnto } from '../../src/math/turn-onto.ts';
import { distance, normalize, rotateAbout, type Vec3 } from '../../src/math/vector.ts';

const points = (seed: number, count: number): Vec3[] => {
  const random = seededRandom(seed);
  return Array.from(
    { length: count },
    (): Vec3 => [random.normal(), random.normal(), random.normal()],
  );
};

describe('the rotation of points onto others', () => {
  it('is the one that they were turned by (seeds 1 to 20)', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const own = points(seed, 7);
      const axis = normalize(points(seed + 100, 1)[0] as Vec3);
      const turn = turnOnto(
        own,
        own.map((p) => rotateAbout(p, axis, 0.3 * seed)),
      );
      for (const p of own)
        expect(distance(turn?.(p) as Vec3, rotateAbout(p, axis, 0.3 * seed))).toBeLessThan(1e-9);
    }
  });

  it('leaves less than any turn by a little more about the axes', () => {
    const own = points(1, 9);
    const onto = own.map((p, i): Vec3 => [p[0] + 0.1 * Math.sin(i), p[1], p[2] - 0.05 * i]);
    const turn = turnOnto(own, onto) as (point: Vec3) => Vec3;
    const left = (by: (point: Vec3) => Vec3): number =>
      own.reduce((sum, p, i) => sum + distance(by(p), onto[i] as Vec3) ** 2, 0);
    for (const axis of [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ] as const)
      for (const angle of [0.01, -0.01])
        expect(left((p) => rotateAbout(turn(p), axis, angle))).toBeGreaterThan(left(turn));
  });

  it('is not told by points in a plane through the origin, nor by a mirror image', () => {
    const flat = points(2, 5).map((p): Vec3 => [p[0], p[1], 0]);
    expect(turnOnto(flat, flat)).toBeNull();
    const own = points(3, 8);
    expect(
      turnOnto(
        own,
        own.map((p): Vec3 => [-p[0], p[1], p[2]]),
      ),
    ).toBeNull();
  });
});
