// Patch tests of each element that covers a surface (B. M. Irons, 1965; O. C. Zienkiewicz and R. L.
// Taylor, The Finite Element Method, from memory: an even strain must be found exactly on any mesh) and
// observed rates at which they near published values: S. P. Timoshenko and S. Woinowsky-Krieger, Theory
// of Plates and Shells, 2nd ed., tables 8 and 35 (further digits by the series of Navier and Hencky,
// from memory); L. F. Richardson, Phil. Trans. R. Soc. A 210 (1911) 307, for the rate from three meshes.

import { describe, expect, it } from 'vitest';
import { strainsOf } from '../../src/frame/elements/element.ts';
import { type FlatTriangle, flatTriangle } from '../../src/frame/elements/triangle.ts';
import { movementsAt } from '../../src/frame/numbering.ts';
import { naturalOf, type Structure } from '../../src/frame/structure.ts';
import { dot, pointAt, type Vec3 } from '../../src/math/vector.ts';
import { covered, rectangle, rimOf } from '../frame/plates.ts';
import { clamped, heldIn, loadOn, rest } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

/** Strain along a direction of the plane, from strains (εx, εy, γ) of a triangle. */
function strainAlong(
  { axes }: FlatTriangle,
  [ex, ey, shear]: readonly [number, number, number],
  direction: Vec3,
): number {
  const [c, s] = [dot(direction, axes[0]), dot(direction, axes[1])];
  return ex * c * c + ey * s * s + shear * c * s;
}

/** Largest difference of the free nodes from a field, when the rim follows it. */
function patch(
  kind: 'membrane' | 'facet',
  field: (x: number, y: number) => readonly number[],
): {
  readonly off: number;
  readonly found: ReturnType<typeof rest>;
  readonly structure: Structure;
} {
  const mesh = rectangle(2, 1.2, 4, 3, 0.25);
  const rim = rimOf(mesh);
  const stiff = 1e18;
  const all = mesh.nodes.length / 3;
  const prescribed = rim.map((node) => ({
    kind: 'spring' as const,
    nodes: [node] as const,
    stiffness: (kind === 'membrane'
      ? [stiff, stiff, stiff, 0, 0, 0]
      : [stiff, stiff, stiff, stiff, stiff, stiff]) as never,
  }));
  const inner = [...Array(all).keys()].filter((node) => !rim.includes(node));
  const structure: Structure = {
    nodes: mesh.nodes,
    elements: [...covered(mesh, kind, 0.01, 2e11, 0.3), ...prescribed],
    held: kind === 'membrane' ? inner.map((node) => heldIn(node, 'z')) : [],
  };
  const at = (node: number): readonly number[] =>
    field(mesh.nodes[3 * node], mesh.nodes[3 * node + 1]);
  const load = loadOn(structure, {});
  for (const node of rim)
    at(node).forEach((x, k) => {
      if (kind === 'facet' || k < 3) load[6 * node + k] = stiff * x;
    });
  const found = rest(structure, load);
  let most = 0;
  for (const node of inner)
    at(node).forEach((x, k) => {
      if (kind === 'facet' || k < 3) most = Math.max(most, Math.abs(found.moved[6 * node + k] - x));
    });
  return { off: most, found, structure };
}

describe('the patch test', () => {
  const stretch = (x: number, y: number): number[] => {
    const [ux, uy] = [1e-3 * x + 4e-4 * y, -2e-4 * x + 7e-4 * y];
    return [ux, uy, 0, 0, 0, (-2e-4 - 4e-4) / 2];
  };

  for (const kind of ['membrane', 'facet'] as const)
    it(`is passed by the ${kind}: an even strain in the plane is found exactly`, () => {
      const { off: most, found, structure } = patch(kind, stretch);
      checked({ what: 'movement', got: most, expected: 0, within: 1e-12 });
      structure.elements.forEach((element) => {
        if (element.kind !== kind) return;
        const flat = flatTriangle(
          element.nodes as never,
          [0, 1, 2].map((k) => pointAt(structure.nodes, element.nodes[k] as number)) as never,
        );
        const strains = strainsOf(
          naturalOf(element, structure.nodes),
          movementsAt(element, found.moved),
        ) as never as [number, number, number];
        const along = strainAlong(flat, [strains[0], strains[1], strains[2]], [1, 0, 0]);
        checked({ what: 'strain', got: along, expected: 1e-3, within: 5e-10 });
        expect(Math.abs(along - 1e-3 - 5e-9)).toBeGreaterThan(5e-10);
      });
    });

  it('is passed by the facet: an even curvature is found exactly', () => {
    // w = a x² + b y² + c x y; rotations θx = ∂w/∂y, θy = −∂w/∂x.
    const bent = (x: number, y: number): number[] => {
      const w = 0.01 * x * x - 0.02 * y * y + 0.015 * x * y;
      return [0, 0, w, -0.04 * y + 0.015 * x, -(0.02 * x + 0.015 * y), 0];
    };
    const { off: most } = patch('facet', bent);
    checked({ what: 'movement', got: most, expected: 0, within: 1e-11 });
  });

  it('is not passed by a field that is not in it', () => {
    const cubic = (x: number, y: number): number[] => [1e-3 * x ** 3, 1e-3 * y ** 3, 0, 0, 0, 0];
    expect(patch('membrane', cubic).off).toBeGreaterThan(1e-6);
  });
});

/** Sag of the middle of a square plate of side 1 under an even load, by D. */
function squarePlate(cells: number, rim: 'supported' | 'clamped'): number {
  const mesh = rectangle(1, 1, cells, cells);
  const young = 2e11;
  const thickness = 0.01;
  const load = new Float64Array(2 * mesh.nodes.length);
  for (const triangle of mesh.triangles)
    for (const node of triangle) load[6 * node + 2] += 1 / (2 * cells * cells) / 3;
  const structure: Structure = {
    nodes: mesh.nodes,
    elements: covered(mesh, 'facet', thickness, young, 0.3),
    held: rimOf(mesh).map((node) =>
      rim === 'clamped' ? clamped(node) : heldIn(node, supportedRim(mesh.nodes, node)),
    ),
  };
  const stiffness = (young * thickness ** 3) / (12 * (1 - 0.09));
  const middle = mesh.at(cells / 2, cells / 2);
  return rest(structure, load).moved[6 * middle + 2] * stiffness;
}

/** On a simply supported side the rotation along it is free, that across is held. */
function supportedRim(nodes: Float64Array, node: number): string {
  const onX = nodes[3 * node] === 0 || nodes[3 * node] === 1;
  const onY = nodes[3 * node + 1] === 0 || nodes[3 * node + 1] === 1;
  return `xyz${onX ? 'X' : ''}${onY ? 'Y' : ''}`;
}

describe('a square plate under an even load', () => {
  // S. P. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells, 2nd ed., tables 8 and
  // 35: 0.00406235 and 0.00126532 q a⁴/D (further digits: series of Navier and of Hencky, from
  // memory).
  for (const [rim, exact] of [
    ['supported', 0.00406235],
    ['clamped', 0.00126532],
  ] as const)
    it(`${rim} sags in the middle ever nearer to ${exact}, with the square of the mesh`, () => {
      const sags = [4, 8, 16].map((cells) => squarePlate(cells, rim));
      const errors = sags.map((sag) => Math.abs(sag / exact - 1));
      const rates = [Math.log2(errors[0] / errors[1]), Math.log2(errors[1] / errors[2])];
      const sag = sags[2] as number;
      checked({ what: 'q a⁴/D', got: sag, expected: exact, ratio: 0.01 });
      expect(Math.abs((1.1 * sag) / exact - 1)).toBeGreaterThan(0.01);
      checked({ what: 'rate, power of the mesh', got: rates, expected: [2, 2], within: 0.3 });
    });
});

describe('a membrane of constant strain', () => {
  it('converges with the square of the mesh: a deep cantilever under a load at its end', () => {
    // Against itself, by Richardson: (u4 − u8)/(u8 − u16) tends to 4.
    const tip = (cells: number): number => {
      const mesh = rectangle(2, 1, 2 * cells, cells);
      const load = new Float64Array(2 * mesh.nodes.length);
      for (let j = 0; j <= cells; j++)
        load[6 * mesh.at(2 * cells, j) + 1] = (1e5 * (j === 0 || j === cells ? 0.5 : 1)) / cells;
      const held = [...Array(cells + 1).keys()].map((j) => heldIn(mesh.at(0, j), 'xy'));
      const structure: Structure = {
        nodes: mesh.nodes,
        elements: covered(mesh, 'membrane', 0.01, 2e11, 0.3),
        held: [...held, ...[...Array(mesh.nodes.length / 3).keys()].map((n) => heldIn(n, 'z'))],
      };
      return rest(structure, load).moved[6 * mesh.at(2 * cells, cells / 2) + 1];
    };
    const [a, b, c, d] = [4, 8, 16, 32].map(tip);
    const rates = [Math.log2((b - a) / (c - b)), Math.log2((c - b) / (d - c))];
    // 2 for a smooth field; the stress that grows at the corners of the foot holds it back.
    checked({ what: 'rate, power of the mesh', got: rates, expected: [2, 2], within: 0.6 });
  });
});
