import { describe, expect, it } from 'vitest';
import { type Facet, forcesOf, strainsOf } from '../../src/frame/elements/element.ts';
import { facetForces, largestStress, sideForces } from '../../src/frame/panel-stress.ts';
import type { AtRest } from '../../src/frame/statics.ts';
import { naturalOf, type Structure } from '../../src/frame/structure.ts';
import { rotateAbout, type Vec3 } from '../../src/math/vector.ts';

const YOUNG = 2e11;
const POISSON = 0.3;
const THICKNESS = 0.01;
const facet: Facet = {
  kind: 'facet',
  nodes: [0, 1, 2],
  thickness: THICKNESS,
  young: YOUNG,
  poisson: POISSON,
};

/** A facet in the plane x, y whose corners follow a field, turned about an axis as a whole. */
function strained(
  field: (x: number, y: number) => readonly number[],
  turn = 0,
): { readonly structure: Structure; readonly rest: AtRest } {
  const axis: Vec3 = [0.6, 0, 0.8];
  const turned = (v: Vec3): Vec3 => rotateAbout(v, axis, turn);
  const points: Vec3[] = [
    [0, 0, 0],
    [1.2, 0, 0],
    [0.3, 0.9, 0],
  ];
  const u = points.flatMap(([x, y]) => {
    const [a, b, c, p, q, r] = field(x, y);
    return [...turned([a, b, c]), ...turned([p, q, r])];
  });
  const structure = {
    nodes: Float64Array.from(points.flatMap((p) => turned(p))),
    elements: [facet],
    held: [],
  };
  const natural = naturalOf(facet, structure.nodes);
  const forces = [forcesOf(natural, strainsOf(natural, u))];
  return { structure, rest: { forces } as unknown as AtRest };
}

const stretch = (x: number): number[] => [1e-4 * x, 0, 0, 0, 0, 0];
/** w = 0.005 x²: the sides away from x = 0 turn up, the outer (upper) face is pressed. */
const bend = (x: number): number[] => [0, 0, 0.005 * x * x, 0, -0.01 * x, 0];

describe('stress in a facet', () => {
  for (const turn of [0, 1.3]) {
    it(`stretched along x is E ε/(1 − ν²), and ν times that across, turned by ${turn}`, () => {
      const { structure, rest } = strained(stretch, turn);
      const { membrane } = facetForces(structure, rest, 0);
      const along = (YOUNG * 1e-4) / (1 - POISSON ** 2);
      expect(membrane[0] / (along * THICKNESS)).toBeCloseTo(1, 9);
      expect(membrane[1] / (POISSON * along * THICKNESS)).toBeCloseTo(1, 9);
      const mises = along * Math.sqrt(1 - POISSON + POISSON ** 2);
      expect(largestStress(facet, facetForces(structure, rest, 0)) / mises).toBeCloseTo(1, 9);
    });

    it(`bent is E t κ/2(1 − ν²) at its faces, turned by ${turn}`, () => {
      const { structure, rest } = strained(bend, turn);
      const forces = facetForces(structure, rest, 0);
      const edge = (YOUNG * THICKNESS * 0.01) / (2 * (1 - POISSON ** 2));
      const mises = edge * Math.sqrt(1 - POISSON + POISSON ** 2);
      expect(largestStress(facet, forces) / mises).toBeCloseTo(1, 8);
    });
  }

  it('of a sandwich bends by its other thickness', () => {
    const { structure, rest } = strained(bend);
    const forces = facetForces(structure, rest, 0);
    const thick = { ...facet, bendingThickness: 2 * THICKNESS };
    expect(largestStress(thick, forces) / largestStress(facet, forces)).toBeCloseTo(0.25, 9);
  });
});

describe('forces across a side', () => {
  it('are the pull square to it and the force along it', () => {
    const { structure, rest } = strained(stretch);
    const forces = facetForces(structure, rest, 0);
    const along = (YOUNG * 1e-4 * THICKNESS) / (1 - POISSON ** 2);
    // Side 0 runs along x: across it acts ν times the pull along x.
    const first = sideForces(structure, facet, forces, 0);
    expect(first.pull / (POISSON * along)).toBeCloseTo(1, 9);
    expect(Math.abs(first.along)).toBeLessThan(1e-9 * along);
    // Side 1 leans: both, by Mohr's circle.
    const angle = Math.atan2(0.9, -0.9);
    const [s, c] = [Math.sin(angle), Math.cos(angle)];
    const second = sideForces(structure, facet, forces, 1);
    expect(second.pull / (along * (s * s + POISSON * c * c))).toBeCloseTo(1, 9);
    expect(Math.abs(second.along) / Math.abs(along * (1 - POISSON) * s * c)).toBeCloseTo(1, 9);
  });

  it('have a positive moment where it presses the outer face', () => {
    const { structure, rest } = strained(bend);
    const forces = facetForces(structure, rest, 0);
    const stiffness = (YOUNG * THICKNESS ** 3) / (12 * (1 - POISSON ** 2));
    const { moment } = sideForces(structure, facet, forces, 0);
    expect(moment / (POISSON * stiffness * 0.01)).toBeCloseTo(1, 8);
  });
});
