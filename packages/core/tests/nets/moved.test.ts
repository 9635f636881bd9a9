import { expect, test } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { cross, distance, dot, norm, pointAt, subtract, type Vec3 } from '../../src/math/vector.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { movedNet } from '../../src/nets/moved.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';
import type { SolidName } from '../../src/nets/solid.ts';
import { factsOf } from '../outside/data/net-facts.ts';

const named = (b: number, c: number, solid: SolidName = 'icosahedron'): Net =>
  namedNet({ solid, b, c, division: 'equal chords' });
const moved = (net: Net, fraction: number, seed = 1, solid: SolidName = 'icosahedron'): Net =>
  movedNet(net, { solid, fraction, random: seededRandom(seed) });
const moves = (before: Net, after: Net): number[] =>
  Array.from({ length: before.hubs.length / 3 }, (_, h) =>
    distance(pointAt(before.hubs, h), pointAt(after.hubs, h)),
  );

test('a moved net keeps its rotations: kinds come 60 times, or 20 on three-fold axes', () => {
  for (const [b, c] of [
    [4, 0],
    [5, 0],
    [2, 2],
    [3, 1],
  ] as const) {
    const { kinds } = shellOfNet(moved(named(b, c), 0.1), 1);
    for (const kind of kinds)
      expect(kind.count).toBe(kind.mirror !== null && isEquilateral(kind.sides) ? 20 : 60);
  }
});

test('a moved net has lost its mirror images', () => {
  const { kinds } = shellOfNet(moved(named(4, 0), 0.1), 1);
  expect(kinds).toHaveLength(6);
  for (const kind of kinds)
    if (!isEquilateral(kind.sides)) expect(new Set(kind.sides).size).toBeGreaterThan(1);
  expect(kinds.filter((kind) => kind.mirror === null).length).toBeGreaterThan(2);
});

test('hubs move by no more than the fraction of a side, on the sphere, and those on an axis stay', () => {
  const before = named(4, 0);
  const after = moved(before, 0.2);
  const far = moves(before, after);
  expect(Math.max(...far)).toBeLessThanOrEqual(0.2 * 0.3249196962);
  expect(far.filter((move) => move === 0)).toHaveLength(12 + 30);
  for (let h = 0; h < after.hubs.length / 3; h++)
    expect(norm(pointAt(after.hubs, h))).toBeCloseTo(1, 14);
});

test('law, seeds 1 to 30: moves fill the disc and never leave it', () => {
  const before = named(3, 0);
  const far = Array.from({ length: 30 }, (_, seed) =>
    Math.max(...moves(before, moved(before, 0.2, seed + 1))),
  );
  expect(Math.max(...far)).toBeLessThanOrEqual(0.2 * 0.3486154888);
  expect(Math.max(...far)).toBeGreaterThan(0.9 * 0.2 * 0.3486154888);
  expect(Math.min(...far)).toBeLessThan(0.5 * 0.2 * 0.3486154888);
});

test('law, seeds 1 to 20: no place turns over at the farthest move allowed', () => {
  for (let seed = 1; seed <= 20; seed++)
    for (const solid of ['icosahedron', 'octahedron', 'tetrahedron'] as const) {
      const net = moved(named(3, 2, solid), 0.3, seed, solid);
      for (const place of net.places) {
        const [a, b, c] = place.map((h) => pointAt(net.hubs, h)) as [Vec3, Vec3, Vec3];
        expect(dot(cross(subtract(b, a), subtract(c, a)), a)).toBeGreaterThan(0);
      }
    }
});

test('law, seeds 1 to 10: moved by a fifth of a side, every seam still folds outward', () => {
  for (let seed = 1; seed <= 10; seed++)
    for (const [b, c] of [
      [3, 0],
      [5, 0],
      [3, 2],
    ] as const) {
      const folds = [...factsOf(moved(named(b, c), 0.2, seed)).folds.values()].flat();
      expect(Math.max(...folds)).toBeLessThan(180);
    }
});

test('the same seed moves alike, another otherwise', () => {
  const net = named(3, 0);
  expect(moved(net, 0.1, 5).hubs).toEqual(moved(net, 0.1, 5).hubs);
  expect(moved(net, 0.1, 6).hubs).not.toEqual(moved(net, 0.1, 5).hubs);
});

test('a fraction of 0 moves nothing', () => {
  const net = named(3, 1);
  expect(Math.max(...moves(net, moved(net, 0)))).toBeLessThan(1e-14);
});

test('what can’t be moved is refused', () => {
  expect(() => moved(named(2, 0), 0.31)).toThrow('the fraction is 0.31, expected 0 to 0.3');
  expect(() => moved(named(2, 0), Number.NaN)).toThrow(RangeError);
  expect(() => moved(mixedNet('cuboctahedron'), 0.1, 1, 'octahedron')).toThrow('no triangle');
  expect(() => moved(named(2, 0), 0.1, 1, 'octahedron')).toThrow('rotations of the octahedron');
});

function isEquilateral(sides: readonly number[]): boolean {
  return Math.max(...sides) - Math.min(...sides) < 1e-9;
}
