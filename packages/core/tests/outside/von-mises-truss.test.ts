// Snap-through of shallow caps of bars in closed form, bars keeping to engineering strain:
// n E A (1 − c^⅔)^(3/2), c the cosine of the bars' slope at rest (R. von Mises, Z. Angew. Math. Mech.
// 3 (1923) 406, for two bars; M. A. Crisfield, Non-linear Finite Element Analysis of Solids and
// Structures, vol. 1, 1991, for the shallow bar: 0.19245009 E A (z/L)³, of which 9.622504 N for the
// book's figures, from memory). Numbers: the reference notes', derived and computed there.

import { describe, expect, it } from 'vitest';
import { type BarPath, barPath } from '../../src/frame/path.ts';
import type { Structure } from '../../src/frame/structure.ts';
import { heldIn, loadOn, truss } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

const young = 1;

/** n bars from the crown down to a ring of radius b that does not move. */
function cap(n: number, b: number, h: number, area = 1): Structure {
  const ring = [...Array(n).keys()].map((k) => {
    const angle = (2 * Math.PI * k) / n;
    return [b * Math.cos(angle), b * Math.sin(angle), 0];
  });
  return truss(
    [[0, 0, h], ...ring],
    ring.map((_, k) => [0, k + 1] as const),
    area,
    young,
    [...ring.map((_, k) => k + 1), ...(n === 2 ? [heldIn(0, 'y')] : [])],
  );
}

const snap = (structure: Structure, size: number, step: number): BarPath =>
  barPath(structure, loadOn(structure, { 0: [0, 0, -size] }), { step, steps: 400 });

describe('the von Mises truss', () => {
  for (const [n, b, h, limit, sunk] of [
    [2, 10, 1, 0.00038108719, 0.42360747],
    [6, 25, 2, 0.00058744569, 0.84652743],
  ]) {
    const path = snap(cap(n, b, h), 1e-4, h / 40);
    const critical = path.critical!;

    it(`of ${n} bars snaps through at P/EA = ${limit}, sunk by ${sunk}`, () => {
      expect(path.status).toBe('limit');
      checked({ got: critical.factor * 1e-4, expected: limit, ratio: 2e-8 });
      expect(Math.abs((critical.factor * 1e-4 * (1 + 1e-6)) / limit - 1)).toBeGreaterThan(2e-8);
      checked({ got: -critical.moved[2], expected: sunk, ratio: 1e-5 });
    });

    it(`of ${n} bars agrees with the closed form`, () => {
      const c = b / Math.hypot(b, h);
      const closed = n * (1 - c ** (2 / 3)) ** 1.5;
      checked({ got: critical.factor * 1e-4, expected: closed, ratio: 1e-9 });
    });
  }

  it('comes, where shallow, to Crisfield’s 0.19245009 E A (z/L)³ a bar', () => {
    const [z, l] = [0.01, 1];
    const path = snap(cap(2, l, z), 1e-7, z / 40);
    const each = (path.critical!.factor * 1e-7) / 2;
    expect(Math.abs(each / (0.19245009 * (z / Math.hypot(l, z)) ** 3) - 1)).toBeLessThan(2e-4);
  });

  it('carries on past the limit to the other side', () => {
    const structure = cap(2, 10, 1);
    const path = barPath(structure, loadOn(structure, { 0: [0, 0, -1e-4] }), {
      step: 0.05,
      steps: 50,
      beyond: true,
    });
    const last = path.points.at(-1)!;
    expect(last.moved[2]).toBeLessThan(-2.1);
    expect(last.factor).toBeGreaterThan(0);
    expect(last.negative).toBe(0);
    const lowest = Math.min(...path.points.map(({ factor }) => factor));
    expect(lowest / path.critical!.factor).toBeCloseTo(-1, 1);
  });

  it('goes out of its plane before it snaps where it is steep and free to', () => {
    const steep = truss(
      [
        [0, 0, 2],
        [-1, 0, 0],
        [1, 0, 0],
        [0, 50, 2],
      ],
      [
        [0, 1],
        [0, 2],
        [0, 3],
      ],
      [1, 1, 1e-4],
      1,
      [1, 2, 3],
    );
    const path = barPath(steep, loadOn(steep, { 0: [0, 0, -0.1] }), { step: 0.01, steps: 300 });
    expect(path.status).toBe('branch');
    expect(path.critical!.negative).toBe(0);
  });

  it('refuses beams, one-way bars, a step of no length and a load on nothing', () => {
    const structure = cap(6, 25, 2);
    const load = loadOn(structure, { 0: [0, 0, -1] });
    expect(() => barPath(structure, load, { step: 0 })).toThrow('the step is 0');
    expect(() => barPath(structure, loadOn(structure, {}), { step: 1 })).toThrow('acts on nothing');
    const oneWay: Structure = {
      ...structure,
      elements: structure.elements.map((e) => ({ ...e, only: 'pull' }) as never),
    };
    expect(() => barPath(oneWay, load, { step: 1 })).toThrow('no two-way bar');
    const loose = truss(
      [
        [0, 0, 1],
        [1, 0, 0],
      ],
      [[0, 1]],
      1,
      1,
      [1],
    );
    const free = barPath(loose, loadOn(loose, { 0: [0, 0, -1] }), { step: 1 });
    expect(free.status).toBe('unstable');
  });
});
