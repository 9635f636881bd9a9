import { describe, expect, it } from 'vitest';
import { type Element, type Natural, stiffnessOf } from '../../src/frame/elements/element.ts';
import { outerVectors } from '../../src/frame/outer-vectors.ts';
import { naturalOf } from '../../src/frame/structure.ts';

const nodes = Float64Array.of(0.1, 0, 0.3, 1.2, 0.2, 0, 0.4, 0.9, 0.1);
const steel = { young: 2e11, poisson: 0.3, thickness: 0.004 };
const facet: Element = { kind: 'facet', nodes: [0, 1, 2], ...steel };
const beam: Element = {
  kind: 'beam',
  nodes: [0, 1],
  section: { area: 1e-3, iy: 2e-7, iz: 5e-8, torsion: 1e-8 },
  young: 2e11,
  shear: 8e10,
  axisY: [0, 0, 1],
};
const all = (natural: Natural): number[] => [...Array(natural.width).keys()];

/** The largest difference between two stiffnesses, part of the largest entry. */
function apart(natural: Natural, vectors: readonly Float64Array[], held = -1): number {
  const stiffness = stiffnessOf(natural);
  const { width } = natural;
  let most = 0;
  for (let i = 0; i < width; i++)
    for (let j = 0; j < width; j++) {
      const wanted = i === held || j === held ? 0 : stiffness[i * width + j];
      const sum = vectors.reduce((total, w) => total + w[i] * w[j], 0);
      most = Math.max(most, Math.abs(sum - wanted));
    }
  return most / Math.max(...stiffness.map(Math.abs));
}

describe('the stiffness of an element as outer products', () => {
  for (const [element, rank] of [
    [facet, 12],
    [beam, 6],
    [{ kind: 'membrane', nodes: [0, 1, 2], ...steel }, 3],
    [{ kind: 'bar', nodes: [0, 2], area: 1e-3, young: 2e11 }, 1],
  ] as const satisfies readonly (readonly [Element, number])[])
    it(`adds up to it for a ${element.kind} with ${rank} vectors`, () => {
      const natural = naturalOf(element, nodes);
      const vectors = outerVectors(natural, all(natural));
      expect(vectors.length).toBe(rank);
      expect(apart(natural, vectors)).toBeLessThan(1e-14);
      const other = vectors.map((w, v) => (v === 0 ? w.map((x) => x * (1 + 1e-13)) : w));
      expect(apart(natural, other)).toBeGreaterThan(1e-14);
    });

  it('leaves out what is held, with as many vectors as are still needed', () => {
    const natural = naturalOf(beam, nodes);
    const free = all(natural).map((k) => (k === 2 ? -1 : k));
    expect(apart(natural, outerVectors(natural, free), 2)).toBeLessThan(1e-14);
    expect(outerVectors(natural, all(natural).fill(-1))).toEqual([]);
    const oneFree = all(natural).map((k) => (k === 7 ? 0 : -1));
    expect(outerVectors(natural, oneFree).length).toBe(1);
  });

  it('has none for a bar without stiffness', () => {
    const natural = naturalOf({ kind: 'bar', nodes: [0, 2], area: 0, young: 1 }, nodes);
    expect(outerVectors(natural, all(natural))).toEqual([]);
  });
});
