// Buckling of columns (L. Euler 1744) and frequencies of cantilevers (β L = 1.875104, 4.694091,
// 7.854757: textbook roots of cos βL cosh βL = −1) in closed form; the plane frame of two storeys of
// AFNOR's guide of tests SDLX 01/89 (frequencies published, tolerance 1 % with eight elements a
// member; not recomputed by the reference notes); a simply supported square plate under even push
// (G. H. Bryan 1891: 4 π² D/b²).

import { describe, expect, it } from 'vitest';
import { bucklingFactors, naturalFrequencies } from '../../src/frame/buckling.ts';
import type { Beam } from '../../src/frame/elements/element.ts';
import { prepare, statics } from '../../src/frame/statics.ts';
import type { Held, Structure } from '../../src/frame/structure.ts';
import { covered, rectangle, rimOf } from '../frame/plates.ts';
import { beam, clamped, heldIn, loadOn } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

const SECTION = { area: 1e-3, iy: 4e-8, iz: 1e-8, torsion: 3e-8 };
const YOUNG = 2e11;

const column = (parts: number, length: number, held: readonly Held[]): Structure => ({
  nodes: Float64Array.from({ length: 3 * (parts + 1) }, (_, i) =>
    i % 3 === 2 ? (length * Math.floor(i / 3)) / parts : 0,
  ),
  elements: [...Array(parts).keys()].map(
    (k): Beam => ({ ...beam([k, k + 1], SECTION, YOUNG, 8e10, [0, 1, 0]), density: 7850 }),
  ),
  held,
});

function firstFactors(structure: Structure, top: number, count: number): readonly number[] {
  const prepared = prepare(structure);
  const found = statics(prepared, loadOn(structure, { [top]: [0, 0, -1] }));
  if (found.status !== 'stands') throw new Error(found.status);
  const { values, complete } = bucklingFactors(prepared, found, count);
  expect(complete).toBe(true);
  return values;
}

describe('a column', () => {
  const length = 3;
  const euler = (i: number, k: number): number => (Math.PI ** 2 * YOUNG * i) / (k * length) ** 2;

  for (const [name, held, k] of [
    ['free at the top', [clamped(0)], 2],
    ['pinned at both ends', [heldIn(0, 'xyzZ'), heldIn(8, 'xy')], 1],
    ['held at both ends', [clamped(0), heldIn(8, 'xyXY')], 0.5],
  ] as const)
    it(`${name} buckles at Euler’s load, first about its weak axis`, () => {
      const [weak, next] = firstFactors(column(8, length, held), 8, 2);
      checked({ got: weak, expected: euler(SECTION.iz, k), ratio: 1e-3 });
      const second = Math.min(euler(SECTION.iy, k), k === 2 ? 9 * euler(SECTION.iz, 2) : Infinity);
      if (k !== 0.5) checked({ got: next, expected: second, ratio: 5e-3 });
    });

  it('comes nearer with the fourth power of its parts', () => {
    const errors = [1, 2, 4].map(
      (parts) =>
        firstFactors(column(parts, length, [clamped(0)]), parts, 1)[0] / euler(SECTION.iz, 2) - 1,
    );
    expect(Math.log2(errors[0] / errors[1])).toBeGreaterThan(3.7);
    expect(Math.log2(errors[1] / errors[2])).toBeGreaterThan(3.7);
  });

  it('that is pulled does not buckle', () => {
    const structure = column(4, length, [clamped(0)]);
    const prepared = prepare(structure);
    const found = statics(prepared, loadOn(structure, { 4: [0, 0, 1] }));
    if (found.status !== 'stands') throw new Error(found.status);
    expect(bucklingFactors(prepared, found, 2).values).toEqual([]);
  });
});

describe('a cantilever', () => {
  it('swings at the textbook frequencies about both axes', () => {
    const length = 3;
    const found = naturalFrequencies(prepare(column(12, length, [clamped(0)])), 5)!;
    const f = (i: number, beta: number): number =>
      ((beta / length) ** 2 / (2 * Math.PI)) * Math.sqrt((YOUNG * i) / (7850 * SECTION.area));
    const wanted = [
      f(SECTION.iz, 1.875104),
      f(SECTION.iy, 1.875104),
      f(SECTION.iz, 4.694091),
      f(SECTION.iy, 4.694091),
      f(SECTION.iz, 7.854757),
    ].sort((a, b) => a - b);
    found.values.forEach((value, k) => {
      checked({ got: value, expected: wanted[k], ratio: 1e-3 });
    });
    expect(found.complete).toBe(true);
  });

  it('that is not held has no frequency to give', () => {
    expect(naturalFrequencies(prepare(column(3, 1, [])), 2)).toBeNull();
  });
});

describe('the plane frame of two storeys (SDLX 01/89)', () => {
  const joints = [
    [-0.3, 0],
    [-0.3, 0.81],
    [0.3, 0],
    [0.3, 0.81],
    [-0.3, 0.36],
    [0.3, 0.36],
  ];
  const members = [
    [5, 1],
    [2, 5],
    [2, 4],
    [6, 4],
    [6, 3],
    [6, 5],
  ];
  const nodes = joints.map(([x, y]) => [x, y, 0]);
  const inertia = (0.029 * 0.0048 ** 3) / 12;
  const section = { area: 0.029 * 0.0048, iy: 1e-8, iz: inertia, torsion: 1e-9 };
  const elements: Beam[] = [];
  for (const [from, to] of members) {
    const [a, b] = [nodes[from - 1], nodes[to - 1]];
    let last = from - 1;
    for (let k = 1; k <= 8; k++) {
      const next = k === 8 ? to - 1 : nodes.push(a.map((x, i) => x + ((b[i] - x) * k) / 8)) - 1;
      // Local z square to the plane: axis y in the plane, across the member.
      const axisY = [a[1] - b[1], b[0] - a[0], 0] as const;
      elements.push({ ...beam([last, next], section, 2.1e11, 8e10, axisY), density: 7850 });
      last = next;
    }
  }
  const structure: Structure = {
    nodes: Float64Array.from(nodes.flat()),
    elements,
    held: [clamped(0), clamped(2), ...nodes.map((_, node) => heldIn(node, 'zXY'))],
  };

  it('swings within one per cent of the nine published frequencies', () => {
    const found = naturalFrequencies(prepare(structure), 9)!;
    [8.75, 29.34, 43.71, 56.12, 95.86, 102.37, 146.64, 174.39, 178.36].forEach((f, k) => {
      checked({ got: found.values[k], expected: f, ratio: 0.01 });
    });
  });
});

describe('a square plate pushed along one way', () => {
  it('buckles ever nearer to 4 π² D/b²', () => {
    const errors = [4, 8, 16].map((cells) => {
      const mesh = rectangle(1, 1, cells, cells);
      const load = new Float64Array(2 * mesh.nodes.length);
      for (let j = 0; j <= cells; j++) {
        const share = (j === 0 || j === cells ? 0.5 : 1) / cells;
        load[6 * mesh.at(0, j)] += share;
        load[6 * mesh.at(cells, j)] -= share;
      }
      const held = rimOf(mesh).map((node) => heldIn(node, 'z'));
      held.push(
        heldIn(mesh.at(cells / 2, cells / 2), 'xy'),
        heldIn(mesh.at(cells, cells / 2), 'y'),
      );
      const structure = {
        nodes: mesh.nodes,
        elements: covered(mesh, 'facet', 0.01, YOUNG, 0.3),
        held,
      };
      const prepared = prepare(structure);
      const found = statics(prepared, load);
      if (found.status !== 'stands') throw new Error(found.status);
      const { values, complete } = bucklingFactors(prepared, found, 1);
      expect(complete).toBe(true);
      const exact = (4 * Math.PI ** 2 * YOUNG * 1e-6) / (12 * 0.91);
      return Math.abs(values[0] / exact - 1);
    });
    expect(errors[2]).toBeLessThan(0.01);
    expect(errors[1]).toBeLessThan(errors[0]);
    expect(errors[2]).toBeLessThan(0.4 * errors[1]);
  });
});
