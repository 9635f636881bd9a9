import { describe, expect, it } from 'vitest';
import { groupsWithin, runsFor } from '../../../src/arrange/fit/group-runs.ts';
import { secondShells } from '../../../src/arrange/second/second-shell.ts';
import { smallBalls } from '../../../src/arrange/second/small-balls.ts';
import { rimLevels, standSecond, useOf } from '../../../src/arrange/second/stand-second.ts';
import { norm, subtract, type Vec3 } from '../../../src/math/vector.ts';
import { hubPoint } from '../../../src/shell/geometry.ts';
import { rims } from '../../../src/shell/rims.ts';
import { dihedral } from '../../../src/sphere/dihedral.ts';
import { icosahedral, pileKinds } from '../../shell/fixtures.ts';
import { kindOf } from '../../takeoff/ball.ts';

const net = icosahedral(4, 0);
const kinds = pileKinds(net);
const found = secondShells(
  net.shell,
  kinds,
  kinds.map(({ good }) => Math.floor(good / 3)),
);

describe('a second shell that stands', () => {
  it('has one rim, or two where it is a ring, with shims that bring its hubs to one level', () => {
    expect(found.length).toBeGreaterThan(3);
    for (const second of found) {
      const { shell, courses } = standSecond(net.shell, second);
      const levels = rimLevels(shell);
      expect(levels.length).toBe(second.what === 'ring' ? 2 : 1);
      expect(courses.numbers.length).toBe(second.places.length);
      expect(new Set(courses.numbers).size).toBe(second.places.length);
      const [low] = rims(shell);
      levels[0]?.shims.forEach((shim, i) => {
        const z = hubPoint(shell, low?.hubs[i] ?? (0 as never))[2];
        expect(z - shim).toBeCloseTo(low?.z.min ?? 0, 12);
      });
      expect(Math.max(...(levels[0]?.shims ?? []))).toBeCloseTo(levels[0]?.uneven ?? 0, 12);
    }
  });

  it('is named by what it is high enough for', () => {
    const cap = (height: number) => useOf({ what: 'cap', height });
    expect([cap(2), cap(1.5), cap(0.5)]).toEqual(['hut', 'shelter', 'cover']);
    const ring = (height: number) => useOf({ what: 'ring', height });
    expect([ring(1.1), ring(0.4)]).toEqual(['wall', 'kerb']);
  });

  it('holds no more groups than there are, nor than it has room for', () => {
    const group = { around: [0, 0, 0, 0, 0], closed: true, count: 3 };
    const runs = runsFor(net.shell, net.shell.kind, group);
    expect(runs.length).toBe(12);
    const all = [...net.shell.kind.keys()];
    expect(groupsWithin(net.shell, net.shell.kind, [group], all)).toBe(3);
    expect(groupsWithin(net.shell, net.shell.kind, [group], runs[0] ?? [])).toBe(1);
    expect(groupsWithin(net.shell, net.shell.kind, [group], (runs[0] ?? []).slice(1))).toBe(0);
  });
});

/** Corners of two pyramids base to base, tip to tip along z. */
function pyramids(n: number, base: number, leg: number): Vec3[] {
  const ring = base / (2 * Math.sin(Math.PI / n));
  const tip = Math.sqrt(leg ** 2 - ring ** 2);
  const round = Array.from({ length: n }, (_, i): Vec3 => {
    const a = (2 * Math.PI * i) / n;
    return [ring * Math.cos(a), ring * Math.sin(a), 0];
  });
  return [...round, [0, 0, tip], [0, 0, -tip]];
}

/** However far the flanges are off. */
const any = { mostOff: Math.PI };

describe('small whole shells', () => {
  it('whose seams bend far otherwise than the flanges are made for are none', () => {
    expect(smallBalls([kindOf('1', [1, 1, 1])], [20], 3).map(({ panels }) => panels)).toEqual([20]);
  });

  it('of an equilateral kind are as many as its panels allow, with the solids’ sizes', () => {
    const one = kindOf('1', [1, 1, 1]);
    const balls = smallBalls([one], [19], 3, any);
    expect(balls.map(({ panels, lacks }) => [panels, lacks])).toEqual([
      [4, 0],
      [8, 0],
      [20, 1],
    ]);
    expect(smallBalls([one], [17], 3, any).length).toBe(2);
    // The regular icosahedron's faces are 2 · 0.755761 sides apart, its hubs 2 · 0.951057.
    const [ball] = smallBalls([one], [20], 3);
    expect(ball?.height).toBeCloseTo(2 * 0.755761, 5);
    expect(ball?.across).toBeCloseTo(2 * 0.951057, 5);
  });

  it('have no flange off where the panels are those of that very ball', () => {
    const radius = Math.sin((2 * Math.PI) / 5);
    const [ball] = smallBalls([kindOf('1', [1, 1, 1])], [20], radius);
    expect(ball?.flangesOff).toBeLessThan(1e-9);
    const [off] = smallBalls([kindOf('1', [1, 1, 1])], [20], radius * 1.1);
    expect(off?.flangesOff).toBeGreaterThan(0.01);
  });

  it('of a kind with two like sides are pyramids whose corners lie where their sizes say', () => {
    const [base, leg] = [0.8, 1];
    const balls = smallBalls([kindOf('2', [leg, base, leg])], [12], 3, any).filter(
      ({ lacks }) => lacks === 0,
    );
    expect(balls.map(({ panels }) => panels).sort((a, b) => a - b)).toEqual([6, 8, 10, 12]);
    for (const { panels, height, across } of balls) {
      const n = panels / 2;
      const corners = pyramids(n, base, leg);
      const far = Math.max(...corners.flatMap((a) => corners.map((b) => norm(subtract(a, b)))));
      expect(across).toBeCloseTo(far, 9);
      expect(height).toBeCloseTo(2 * (corners[n]?.[2] ?? 0), 9);
    }
  });

  it('bend at their seams as the corners in space do', () => {
    // Panels of a very large sphere are flat: their flanges stand square, so what is off is the bend.
    const [base, leg] = [0.8, 1];
    for (const n of [3, 4, 5]) {
      const [ball] = smallBalls([kindOf('2', [base, leg, leg])], [2 * n], 1e4, any).filter(
        ({ panels }) => panels === 2 * n,
      );
      const corners = pyramids(n, base, leg);
      const [a, b, c] = [corners[0], corners[1], corners[2]] as [Vec3, Vec3, Vec3];
      const [up, down] = [corners[n], corners[n + 1]] as [Vec3, Vec3];
      const atBase = dihedral(a, b, up, down);
      const atLeg = dihedral(up, b, c, a);
      const off = Math.max(Math.PI - atBase, Math.PI - atLeg);
      expect(ball?.flangesOff).toBeCloseTo(off, 3);
    }
  });
});
