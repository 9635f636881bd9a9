import { describe, expect, it } from 'vitest';
import { doorOutline, placesInTheWay } from '../../src/arrange/openings/passing.ts';
import { seededRandom } from '../../src/math/random.ts';
import { add, cross, dot, scale, subtract, type Vec3 } from '../../src/math/vector.ts';
import { type BodyShape, bodyOf } from '../../src/passage/body.ts';
import { clearance, isClearMotion } from '../../src/passage/clear.ts';
import { HAND_HEIGHT, passing } from '../../src/passage/passing.ts';
import {
  anyTurn,
  between,
  type Pose,
  turned,
  turnedBack,
  UPRIGHT,
} from '../../src/passage/pose.ts';
import { separation } from '../../src/passage/separation.ts';
import { barrierOf } from '../../src/passage/wall.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { hubPoint, placeNormal } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { cutBall } from '../stages/fixtures.ts';

const box = (x: number, y: number, z: number): BodyShape => ({ form: 'box', size: [x, y, z] });
const carried = { by: 'hands', rise: HAND_HEIGHT } as const;
describe('distance of two hulls', () => {
  const cube = (x: number): Float64Array =>
    Float64Array.from(
      [-1, 1].flatMap((i) => [-1, 1].flatMap((j) => [-1, 1].flatMap((k) => [x + i, j, k]))),
    );
  it('is that of faces, edges and corners, and 0 where they overlap', () => {
    expect(separation(cube(0), cube(2.5)).low).toBeCloseTo(0.5, 9);
    expect(separation(cube(0), Float64Array.of(2, 2, 2)).low).toBeCloseTo(Math.sqrt(3), 9);
    expect(separation(cube(0), Float64Array.of(2, 2, 0)).high).toBeCloseTo(Math.SQRT2, 9);
    expect(separation(cube(0), cube(1.5))).toEqual({ low: 0, high: 0 });
  });
  it('is never more than that of any two of their points (seed 5)', () => {
    const random = seededRandom(5);
    const cloud = (off: number): Float64Array =>
      Float64Array.from({ length: 30 }, (_, i) => random.normal() + (i % 3 === 0 ? off : 0));
    const inHull = (points: Float64Array): Vec3 => {
      const weights = Array.from({ length: 10 }, () => -Math.log(1 - random.uniform()));
      const sum = weights.reduce((a, b) => a + b, 0);
      return weights.reduce<Vec3>(
        (p, w, i) =>
          add(p, scale([points[3 * i], points[3 * i + 1], points[3 * i + 2]] as Vec3, w / sum)),
        [0, 0, 0],
      );
    };
    for (let n = 0; n < 50; n++) {
      const [a, b] = [cloud(0), cloud(6 * random.uniform())];
      const { low, high } = separation(a, b);
      expect(high - low).toBeLessThan(1e-6);
      for (let k = 0; k < 50; k++) {
        const off = subtract(inHull(a), inHull(b));
        expect(Math.hypot(...off)).toBeGreaterThan(low - 1e-9);
      }
    }
  });
});

describe('a half-built shell', () => {
  const small = cutBall(3, 105);
  const shell: Shell = { ...small, radius: 3, hubs: small.hubs.map((x) => 3 * x) };
  const { course, position } = coursesOf(shell);
  const side = [...course.keys()].filter((p) => course[p] <= 2 && position[p] <= 2);
  const DEPTH = 0.06;
  const without = (open: readonly number[]): number[] =>
    [...Array(placeCount(shell)).keys()].filter((p) => !open.includes(p));

  /** Whether a point is in the prism of a placed panel, by its planes: not by distances of hulls. */
  const isInWall = (placed: readonly number[], p: Vec3): boolean =>
    placed.some((place) => {
      const skin = hubsOf(shell, place as PlaceId).map((hub) => hubPoint(shell, hub));
      const normal = placeNormal(shell, place as PlaceId);
      const off = dot(normal, skin[0] as Vec3);
      const height = dot(normal, p);
      if (height > off || height < off - DEPTH) return false;
      return skin.every((a, i) => dot(cross(a, skin[(i + 1) % skin.length] as Vec3), p) > 0);
    });

  const grid = [-1, -0.5, 0, 0.5, 1];
  /** Points of a box body that are in the wall or in the ground along a motion, by sampling. */
  const hits = (size: Vec3, placed: readonly number[], motion: readonly Pose[]): number => {
    let found = 0;
    motion.slice(1).forEach((end, m) => {
      for (let t = 0; t <= 1; t += 0.02) {
        const { turn, at } = between(motion[m] as Pose, end, t);
        for (const i of grid)
          for (const j of grid)
            for (const k of grid) {
              const own: Vec3 = [(i * size[0]) / 2, (j * size[1]) / 2, (k * size[2]) / 2];
              const p = add(turned(turn, own), at);
              if (Math.hypot(...p) > 2.6 && Math.hypot(...p) < 3.01 && isInWall(placed, p)) found++;
            }
      }
    });
    return found;
  };

  it.each<[size: [number, number, number], open: number]>([
    [[0.5, 0.5, 1], 2],
    [[1.3, 0.06, 2], 4],
    [[0.3, 0.1, 2.5], 2],
    [[0.45, 0.1, 3.2], 1],
  ])('lets a box of %s m out through %i open places by a way that is clear', (size, open) => {
    const placed = without(side.slice(0, open));
    const found = passing(box(...size), barrierOf(shell, placed, DEPTH));
    if (found.status !== 'passes') throw new Error(found.why);
    expect(found.clearance).toBeGreaterThan(0);
    expect(hits(size, placed, found.motion)).toBe(0);
    const [first, last] = [found.motion[0] as Pose, found.motion.at(-1) as Pose];
    expect(Math.hypot(...first.at)).toBeLessThan(3);
    expect(Math.hypot(...last.at)).toBeGreaterThan(3 + Math.hypot(...size) / 2);
    // The twin: the same way beside the opening goes through the wall, by sampling and by the exact test.
    const aside = found.motion.map(({ turn, at }) => ({ turn, at: add(at, [0, 0.8, 0]) }));
    expect(hits(size, placed, aside)).toBeGreaterThan(0);
    const scene = {
      body: bodyOf(box(...size)),
      barrier: barrierOf(shell, placed, DEPTH),
      carried,
    };
    expect(isClearMotion(scene, found.motion)).toBe(true);
    expect(isClearMotion(scene, aside)).toBe(false);
  });

  it('lets through what is seen to fit a doorway, once the panels that it meets are left out', () => {
    const barrier = barrierOf(shell, without([]), DEPTH);
    const at = { azimuth: 0.4, aside: 0, floor: barrier.floor, outline: doorOutline(0.8, 1.5) };
    const inTheWay = placesInTheWay(shell, at);
    const statusWith = (open: readonly number[]): string =>
      passing(box(0.7, 0.7, 1.35), barrierOf(shell, without(open), DEPTH), {
        cells: 0,
        movements: 200,
        allMovements: 400,
      }).status;
    expect(inTheWay.length).toBeGreaterThan(1);
    expect(statusWith(inTheWay)).toBe('passes');
    expect(statusWith(inTheWay.slice(1, 2))).not.toBe('passes');
  });

  it('says at once that nothing passes where no place is open', () => {
    expect(passing(box(0.1, 0.1, 0.1), barrierOf(shell, without([]), DEPTH))).toMatchObject({
      by: 'closed',
    });
  });

  it('shows that a thing is too large, and ten thousand poses in the opening agree (seed 9)', () => {
    const placed = without(side.slice(0, 1));
    const barrier = barrierOf(shell, placed, DEPTH);
    const size = [0.5, 1.2, 1.2] as const;
    expect(passing(box(...size), barrier)).toMatchObject({ status: 'cannot pass' });
    const random = seededRandom(9);
    const free = (dims: Vec3): number => {
      let clear = 0;
      for (let n = 0; n < 10_000; n++) {
        const [a, b, c] = barrier.closing[
          random.below(barrier.closing.length)
        ] as (typeof barrier.closing)[number];
        const [u, v] = [random.uniform(), random.uniform()];
        const [p, q] = u + v > 1 ? [1 - u, 1 - v] : [u, v];
        const at = add(a, add(scale(subtract(b, a), p), scale(subtract(c, a), q)));
        const back = turnedBack(anyTurn(random));
        const isCut = barrier.loops.some((loop) =>
          loop.some((from, i) => {
            const way = subtract(loop[(i + 1) % loop.length] as Vec3, from);
            return [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9].some((t) => {
              const own = turned(back, subtract(add(from, scale(way, t)), at));
              return own.every((x, axis) => Math.abs(x) < (dims[axis] as number) / 2);
            });
          }),
        );
        if (!isCut) clear++;
      }
      return clear;
    };
    expect(free(size)).toBe(0);
    expect(free([0.1, 0.1, 0.6])).toBeGreaterThan(100);
  });

  it('lets nothing slip under the wall', () => {
    const scene = {
      body: bodyOf(box(1, 1, 0.012)),
      barrier: barrierOf(shell, without(side.slice(0, 1)), DEPTH),
      carried,
    };
    const low = scene.barrier.floor - 0.012;
    expect(clearance(scene, { turn: UPRIGHT, at: [0, 0, low] })).toBeGreaterThan(0);
    const angle = 2;
    const rim = Math.sqrt(9 - scene.barrier.floor ** 2);
    const under: Vec3 = [rim * Math.cos(angle), rim * Math.sin(angle), low];
    expect(clearance(scene, { turn: UPRIGHT, at: under })).toBe(0);
  });

  it('gives up when told to, and tells how far it is', () => {
    const barrier = barrierOf(shell, without(side.slice(0, 1)), DEPTH);
    const told: number[] = [];
    const found = passing(box(1.3, 0.06, 2), barrier, {
      onProgress: (part) => told.push(part),
      shouldStop: () => told.length > 3,
    });
    expect(found).toMatchObject({ status: 'not found' });
    expect(told.every((part, i) => part >= (told[i - 1] ?? 0) && part <= 1)).toBe(true);
  });

  it('refuses a thing without size and a flange without depth', () => {
    expect(() => bodyOf(box(1, 0, 1))).toThrow('size is 0 m');
    expect(() => bodyOf({ form: 'hull', points: [[0, 0, 0]] })).toThrow('1 points');
    expect(() => barrierOf(shell, [], 0)).toThrow('depth is 0 m');
  });
});

describe('bodies', () => {
  it('of a dish hold its paraboloid, front and back, and their plates lie in it', () => {
    const dish = { form: 'dish', diameter: 1.2, depth: 0.2, thickness: 0.03 } as const;
    const body = bodyOf(dish);
    const low = Math.min(...body.held.points.filter((_, i) => i % 3 === 2));
    const bottom = low + dish.thickness;
    const front = (r: number): number => bottom + dish.depth * (r / 0.6) ** 2;
    for (let n = 0; n < 200; n++) {
      const [r, angle] = [0.6 * Math.sqrt(n / 199), 2.4 * n];
      for (const z of [front(r), front(r) - dish.thickness]) {
        const p = Float64Array.of(r * Math.cos(angle), r * Math.sin(angle), z);
        expect(Math.min(...body.pieces.map((piece) => separation(piece, p).high))).toBeLessThan(
          1e-6,
        );
      }
    }
    for (const { middle, u, v, corners } of body.held.plates)
      for (const [x, y] of corners) {
        const [px, py, pz] = add(middle, add(scale(u, x), scale(v, y)));
        const r = Math.hypot(px, py);
        expect(pz).toBeLessThanOrEqual(front(r) + 1e-9);
        expect(pz).toBeGreaterThanOrEqual(front(r) - dish.thickness - 1e-9);
        expect(r).toBeLessThan(0.6 + 1e-9);
      }
  });
});
