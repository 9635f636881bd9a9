import { describe, expect, it } from 'vitest';
import { frameOf } from '../../src/frame/from-shell.ts';
import { beginGrowth, grow, grownMovements } from '../../src/frame/growth.ts';
import { meshOf } from '../../src/frame/mesh.ts';
import { frameParts } from '../../src/frame/parts.ts';
import { unknownParts } from '../../src/frame/schema.ts';
import type { Structure } from '../../src/frame/structure.ts';
import { seededRandom } from '../../src/math/random.ts';
import { factorize } from '../../src/math/sparse/factor.ts';
import { solve } from '../../src/math/sparse/solve.ts';
import { symbolicFactor } from '../../src/math/sparse/symbolic.ts';
import { combine, multiply, symmetricOf } from '../../src/math/sparse/symmetric.ts';
import { updateFactorInto } from '../../src/math/sparse/update.ts';
import { grid } from '../math/sparse/fixtures.ts';
import { ball, heldRow, tiers } from './fixtures.ts';
import { off } from './trusses.ts';

describe('an updated factor', () => {
  for (const [count, seed] of [
    [1, 1],
    [5, 2],
    [40, 3],
  ])
    it(`solves as one made at once, after ${count} outer products, seed ${seed}`, () => {
      const random = seededRandom(seed);
      const a = grid(random, 7, 3);
      const symbolic = symbolicFactor(a);
      const factor = factorize(symbolic, a);
      const [values, d] = [factor.values.slice(), factor.d.slice()];
      let changed = a;
      const unknown: number[] = [];
      const value: number[] = [];
      const start = [0];
      for (let v = 0; v < count; v++) {
        const node = random.below(48);
        const list = [...Array(3).keys()].map((k) => 3 * node + k);
        const w = list.map(() => random.normal());
        unknown.push(...list, -1);
        value.push(...w, 99);
        start.push(unknown.length);
        const outer = list.flatMap((i, p) =>
          list.slice(0, p + 1).map((j, q) => [i, j, w[p] * w[q]] as const),
        );
        changed = combine(1, changed, 1, symmetricOf(a.n, outer));
      }
      const vectors = {
        start: Int32Array.from(start),
        unknown: Int32Array.from(unknown),
        value: Float64Array.from(value),
      };
      updateFactorInto(values, d, symbolic, vectors, 1);
      const x = Float64Array.from({ length: a.n }, () => random.normal());
      const found = solve({ ...factor, values, d }, multiply(changed, x));
      expect(off(found, x)).toBeLessThan(1e-12);
      updateFactorInto(values, d, symbolic, vectors, -1);
      expect(off(solve({ ...factor, values, d }, multiply(a, x)), x)).toBeLessThan(1e-11);
      expect(off(solve({ ...factor, values, d }, multiply(changed, x)), x)).toBeGreaterThan(1e-4);
    });
});

describe('a structure that grows panel by panel', () => {
  const shell = ball(3);
  const parts = frameParts(unknownParts);
  const placed = tiers(shell, 0, 4);
  const mesh = meshOf(frameOf(shell, { placed, supports: heldRow(shell, 4) }), parts);
  const { structure } = mesh;
  // A panel's own facets, and beams as soon as both their ends stand.
  const elementsOf = (panels: readonly number[]): number[] => {
    const facets = panels.flatMap((p) => mesh.facets[p]);
    const nodes = new Set(facets.flatMap((e) => [...structure.elements[e].nodes]));
    const beams = [...structure.elements.keys()].filter(
      (e) =>
        structure.elements[e].kind === 'beam' &&
        structure.elements[e].nodes.every((node) => nodes.has(node as number)),
    );
    return [...facets, ...beams];
  };
  const order = [...mesh.facets.keys()].reverse();
  const load = Float64Array.from({ length: 2 * structure.nodes.length }, (_, i) =>
    i % 6 === 2 ? -100 - (i % 5) : 0,
  );

  const flags = (elements: readonly number[]): Uint8Array => {
    const all = new Uint8Array(structure.elements.length);
    for (const e of elements) all[e] = 1;
    return all;
  };

  it('moves as if worked out anew at every stage', () => {
    let growing = beginGrowth(structure, flags(elementsOf(order.slice(0, 30))));
    for (let count = 33; count <= order.length; count += 3) {
      const elements = elementsOf(order.slice(0, count));
      growing = grow(growing, elements);
      const anew = beginGrowth(structure, flags(elements));
      const [one, other] = [grownMovements(growing, load), grownMovements(anew, load)];
      expect(one === null).toBe(other === null);
      if (one && other) expect(off(one, other)).toBeLessThan(1e-7);
    }
  });

  it('leaves the stage before as it was', () => {
    const before = beginGrowth(structure, flags(elementsOf(order.slice(0, 40))));
    const moved = grownMovements(before, load);
    grow(before, elementsOf(order));
    expect(grownMovements(before, load)).toEqual(moved);
  });

  it('cannot grow from what moves without resistance, and says so', () => {
    const loose: Structure = {
      nodes: Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0),
      elements: [
        { kind: 'bar', nodes: [0, 1], area: 1, young: 1 },
        { kind: 'bar', nodes: [1, 2], area: 1, young: 1 },
      ],
      held: [
        { node: 0, directions: null },
        { node: 2, directions: null },
      ],
    };
    const growing = beginGrowth(loose, [1, 0]);
    expect(grownMovements(growing, new Float64Array(18))).toBeNull();
    expect(() => grow(growing, [1])).toThrow('moves without resistance: begin anew');
  });
});
