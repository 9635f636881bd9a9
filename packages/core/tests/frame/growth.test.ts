import { describe, expect, it } from 'vitest';
import { frameOf } from '../../src/frame/from-shell.ts';
import { beginGrowth, grow, grownMovements } from '../../src/frame/growth.ts';
import { meshOf } from '../../src/frame/mesh.ts';
import { frameParts } from '../../src/frame/parts.ts';
import { unknownParts } from '../../src/frame/schema.ts';
import type { Structure } from '../../src/frame/structure.ts';
import { ball, heldRow, tiers } from './fixtures.ts';
import { off } from './trusses.ts';

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
      if (!one || !other) continue;
      expect(off(one, other)).toBeLessThan(1e-9);
      expect(
        off(
          one.map((x) => x * (1 + 1e-8)),
          other,
        ),
      ).toBeGreaterThan(1e-9);
    }
  });

  it('has an element once, however often it is added', () => {
    const before = beginGrowth(structure, flags(elementsOf(order.slice(0, 40))));
    const more = elementsOf(order.slice(0, 46));
    const [once, twice] = [more, [...more, ...more]].map((added) =>
      grownMovements(grow(before, added), load),
    );
    expect(once).not.toBeNull();
    expect(twice).toEqual(once);
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
