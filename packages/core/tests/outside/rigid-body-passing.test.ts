// Rigid bodies through plane openings, by elementary geometry: what passes a hole has a section that fits
// it. Rectangle in rectangle along its sides; a circle in a triangle's incircle, radius s / (2 √3); a disc
// on edge is as long as its diameter. A ladder round a right-angled corner of two corridors a and b wide
// is at most (a^⅔ + b^⅔)^{3/2} long, under a ceiling at h as much as √(that² + h²) (textbook calculus).

import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/math/vector.ts';
import { type BodyShape, bodyOf } from '../../src/passage/body.ts';
import { isClearMotion, type Scene } from '../../src/passage/clear.ts';
import { discImpossible } from '../../src/passage/crossing.ts';
import { HAND_HEIGHT, type PassAnswer, passing } from '../../src/passage/passing.ts';
import { turnOf } from '../../src/passage/pose.ts';
import { searchWayOut } from '../../src/passage/search.ts';
import { type Barrier, type Triangle, type WallSolid, wallSolid } from '../../src/passage/wall.ts';
import { rectangle, roomWith, triangle } from '../passage/room.ts';

const box = (x: number, y: number, z: number): BodyShape => ({ form: 'box', size: [x, y, z] });
const cylinder = (diameter: number, length: number): BodyShape => ({
  form: 'cylinder',
  diameter,
  length,
});
const carried = { by: 'hands', rise: HAND_HEIGHT } as const;
const sceneOf = (shape: BodyShape, barrier: Barrier): Scene => ({
  body: bodyOf(shape),
  barrier,
  carried,
});
const few = { cells: 200_000 };
const statusOf = (shape: BodyShape, barrier: Barrier, cells = 20_000): PassAnswer['status'] =>
  passing(shape, barrier, { cells, movements: 300, allMovements: 600 }).status;

describe('a rigid body and a plane opening', () => {
  const hole = roomWith(rectangle(0.6, 0.4, 0.5));
  it('a long box passes a rectangle that is larger than its section, and none that is smaller', () => {
    expect(statusOf(box(0.57, 0.37, 1.2), hole)).toBe('passes');
    expect(statusOf(box(1.2, 0.37, 0.57), hole)).toBe('passes');
    expect(statusOf(box(0.63, 0.37, 1.2), hole, 0)).not.toBe('passes');
    expect(statusOf(box(0.57, 0.43, 1.2), hole)).toBe('cannot pass');
  });
  it('a box that holds a disc wider than the diagonal cannot pass a rectangle', () => {
    const thick = roomWith(rectangle(0.6, 0.4, 0.5), 0.1);
    expect(discImpossible(sceneOf(box(0.3, 1.1, 1.4), thick), few)?.by).toBe('disc');
  });
  it('a drum as long as it is wide passes a triangle where its circle is in the incircle', () => {
    const incircle = 1 / Math.sqrt(3);
    const opening = roomWith(triangle(1, 0.4));
    expect(statusOf(cylinder(0.94 * incircle, 0.6), opening)).toBe('passes');
    expect(passing(cylinder(1.01 * incircle, 0.6), opening)).toMatchObject({ by: 'ball' });
  });
  it('a thin disc passes a triangle on edge where it is no wider than the longest side', () => {
    const opening = roomWith(triangle(1, 0.4));
    expect(statusOf(cylinder(0.85, 0.02), opening)).toBe('passes');
    const thick = roomWith(triangle(1, 0.4), 0.1);
    expect(discImpossible(sceneOf(cylinder(1.4, 0.1), thick), few)?.by).toBe('disc');
    expect(discImpossible(sceneOf(cylinder(0.85, 0.1), thick), few)).toBeNull();
  });
  it('what no one can raise to the opening stays inside', () => {
    const high = roomWith(rectangle(0.6, 0.4, 2.4));
    expect(passing(box(0.2, 0.2, 0.2), high)).toMatchObject({ by: 'height' });
    const hoisted = passing(box(0.2, 0.2, 0.2), high, { carried: { by: 'hook', top: 3 } });
    expect(hoisted.status).toBe('passes');
  });
});

describe('a ladder round the corner of two corridors', () => {
  const [width, ceiling] = [1, 1];
  const slab = (low: Vec3, high: Vec3): WallSolid =>
    wallSolid(
      [low[0], high[0]].flatMap((x) =>
        [low[1], high[1]].flatMap((y) => [low[2], high[2]].map((z): Vec3 => [x, y, z])),
      ),
    );
  const mouth = (corners: Triangle) => ({ place: null, corners, normal: [1, 0, 0] as const });
  /** One along y with its middle at x 0, which ends in one along x from y 0 to 1. */
  const corridors: Barrier = {
    solids: [
      slab([-0.6, -6, -1], [-0.5, 1.1, 3]),
      slab([-0.6, width, -1], [4, 1.1, 3]),
      slab([0.5, -6, -1], [4, 0, 3]),
      slab([-1, -6.1, -1], [1, -6, 3]),
      slab([-6, -6, ceiling], [4, 6, 3]),
    ],
    floor: 0,
    radius: 4,
    gaps: [
      mouth([
        [4, 0, 0],
        [4, 1, 0],
        [4, 1, ceiling],
      ]),
      mouth([
        [4, 0, 0],
        [4, 1, ceiling],
        [4, 0, ceiling],
      ]),
    ],
    closing: [],
    loops: [],
  };
  const longest = Math.hypot((2 * width ** (2 / 3)) ** 1.5, ceiling);
  const start = { turn: turnOf([0, 1, 0], [-1, 0, 0], [0, 0, 1]), at: [0, -2.5, 0.1] } as const;
  const wayFor = (length: number, movements: number) => {
    const scene: Scene = {
      body: bodyOf(box(length, 0.03, 0.03)),
      barrier: corridors,
      carried: { by: 'hands', rise: ceiling },
    };
    const { motion } = searchWayOut(scene, { start, movements, allMovements: 2 * movements });
    if (motion !== null) expect(isClearMotion(scene, motion)).toBe(true);
    return motion;
  };

  it('gets through up to nine tenths of the longest, and never when it is longer', () => {
    expect(longest).toBeCloseTo(3, 12);
    expect(wayFor(0.8 * longest, 4000)).not.toBeNull();
    expect(wayFor(0.9 * longest, 4000)).not.toBeNull();
    expect(wayFor(1.05 * longest, 150)).toBeNull();
  });
});
