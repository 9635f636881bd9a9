import { describe, expect, it } from 'vitest';
import type {
  Bar,
  Beam,
  Element,
  Facet,
  Joint,
  Membrane,
} from '../../src/frame/elements/element.ts';
import { stiffnessOf, strainsOf, unknownsPerNode } from '../../src/frame/elements/element.ts';
import { movementsAt, numberUnknowns } from '../../src/frame/numbering.ts';
import { prepare, statics } from '../../src/frame/statics.ts';
import { naturalOf, type Structure } from '../../src/frame/structure.ts';
import { symmetricEigen } from '../../src/math/eigen/dense.ts';
import { seededRandom } from '../../src/math/random.ts';
import { cross, pointAt, type Vec3 } from '../../src/math/vector.ts';
import { beam, clamped, heldIn, loadOn, off, rest, six, truss } from './trusses.ts';

const SECTION = { area: 2e-3, iy: 3e-6, iz: 1e-6, torsion: 5e-7 };
const YOUNG = 7e10;

const bar: Bar = { kind: 'bar', nodes: [0, 1], area: 1e-3, young: YOUNG };
const rod: Beam = beam([0, 1], SECTION, YOUNG, 2.6e10, [0.2, 0.9, -0.4]);
const skin: Membrane = {
  kind: 'membrane',
  nodes: [0, 1, 2],
  thickness: 0.004,
  young: YOUNG,
  poisson: 0.3,
};
const facet: Facet = { ...skin, kind: 'facet' };
const joint: Joint = { kind: 'joint', nodes: [0, 1], stiffness: 70 };
const elements: readonly Element[] = [bar, rod, skin, facet, joint];

const NODES = Float64Array.of(0.3, -0.2, 1.1, 1.2, 0.4, 0.7, 0.5, 0.9, 1.6);

/** Movements of all nodes, stride 6, when the body moves by `by` and turns by `about`. */
function asBody(nodes: Float64Array, by: Vec3, about: Vec3): Float64Array {
  const full = new Float64Array(2 * nodes.length);
  for (let node = 0; 3 * node < nodes.length; node++) {
    const turned = cross(about, pointAt(nodes, node));
    full.set([...by.map((x, k) => x + turned[k]), ...about], 6 * node);
  }
  return full;
}

describe('every element', () => {
  for (const element of elements) {
    const natural = naturalOf(element, NODES);

    it(`of kind ${element.kind} is not strained when it moves as a body`, () => {
      const moved = asBody(NODES, [0.3, -1, 2], [0.4, 0.2, -0.7]);
      const strains = strainsOf(natural, movementsAt(element, moved));
      expect(Math.max(...strains.map(Math.abs))).toBeLessThan(1e-14);
      const bent = strainsOf(
        natural,
        movementsAt(
          element,
          moved.map((x, k) => x + (k % 7) * 1e-3),
        ),
      );
      expect(Math.max(...bent.map(Math.abs))).toBeGreaterThan(1e-6);
    });

    it(`of kind ${element.kind} has as many strains as its stiffness has positive eigenvalues`, () => {
      const { values } = symmetricEigen(stiffnessOf(natural), natural.width);
      const most = values[natural.width - 1];
      const wanted = {
        bar: 1,
        beam: 6,
        membrane: 3,
        facet: 3 + 6 + 3,
        joint: 3,
        spring: 0,
        prop: 0,
      };
      expect(values.filter((x) => x > 1e-12 * most)).toHaveLength(wanted[element.kind]);
      expect(values[0]).toBeGreaterThan(-1e-12 * most);
    });

    it(`of kind ${element.kind} has the columns that it says`, () => {
      expect(natural.width).toBe(unknownsPerNode(element) * element.nodes.length);
    });
  }

  it('refuses nodes at one point, on one line, and an axis along the beam', () => {
    const same = Float64Array.of(1, 1, 1, 1, 1, 1, 1, 1, 1);
    expect(() => naturalOf(bar, same)).toThrow('nodes 0 and 1 of a bar stand at one point');
    expect(() => naturalOf(rod, same)).toThrow('nodes 0 and 1 of a beam stand at one point');
    const line = Float64Array.of(0, 0, 0, 1, 1, 1, 2, 2, 2);
    expect(() => naturalOf(skin, line)).toThrow('nodes 0, 1, 2 of a triangle lie on one line');
    expect(() => naturalOf({ ...rod, axisY: [1, 1, 1] }, line)).toThrow('axis y of the beam');
  });
});

describe('a cantilever', () => {
  const length = 2.5;
  const tip = (element: Partial<Beam>, load: readonly number[]): number[] => {
    const structure: Structure = {
      nodes: Float64Array.of(0, 0, 0, length, 0, 0),
      elements: [{ ...rod, axisY: [0, 1, 0], ...element }],
      held: [clamped(0)],
    };
    return six(rest(structure, loadOn(structure, { 1: load })).moved, 1);
  };

  it('bends as P L³/3EI about either axis, stretches as P L/EA, twists as T L/GJ', () => {
    const moved = tip({}, [1000, 50, -30, 20, 0, 0]);
    expect(moved[0]).toBeCloseTo((1000 * length) / (YOUNG * SECTION.area), 12);
    expect(moved[1] / ((50 * length ** 3) / (3 * YOUNG * SECTION.iz))).toBeCloseTo(1, 12);
    expect(moved[2] / ((-30 * length ** 3) / (3 * YOUNG * SECTION.iy))).toBeCloseTo(1, 12);
    expect(moved[3] / ((20 * length) / (2.6e10 * SECTION.torsion))).toBeCloseTo(1, 12);
    expect(moved[5] / ((50 * length ** 2) / (2 * YOUNG * SECTION.iz))).toBeCloseTo(1, 12);
    expect(moved[4] / ((30 * length ** 2) / (2 * YOUNG * SECTION.iy))).toBeCloseTo(1, 12);
  });

  it('gives by P L/GA more where it has a shear area', () => {
    const section = { ...SECTION, shearY: 1.5e-3, shearZ: 1e-3 };
    const more = tip({ section }, [0, 50, 0])[1] - tip({}, [0, 50, 0])[1];
    expect(more / ((50 * length) / (2.6e10 * 1.5e-3))).toBeCloseTo(1, 9);
  });

  it('turns at its foot where that is a spring', () => {
    const held = { y: Infinity, z: Infinity };
    const ends = [{ y: Infinity, z: 4000 }, held] as const;
    const more = tip({ ends }, [0, 50, 0])[1] - tip({}, [0, 50, 0])[1];
    expect(more / ((50 * length * length) / 4000)).toBeCloseTo(1, 9);
  });
});

describe('a beam with a hinge', () => {
  it('at one end sags as P L³ 7/768 EI under a load in the middle, held at the other', () => {
    const half = 1.2;
    const hinged = { y: 0, z: 0 };
    const held = { y: Infinity, z: Infinity };
    const structure: Structure = {
      nodes: Float64Array.of(0, 0, 0, half, 0, 0, 2 * half, 0, 0),
      elements: [
        { ...rod, nodes: [0, 1], axisY: [0, 1, 0], ends: [hinged, held] },
        { ...rod, nodes: [1, 2], axisY: [0, 1, 0] },
      ],
      held: [clamped(0), clamped(2)],
    };
    const found = rest(structure, loadOn(structure, { 1: [0, -900, 0] }));
    const wanted = (-900 * (2 * half) ** 3 * 7) / (768 * YOUNG * SECTION.iz);
    expect(found.moved[7] / wanted).toBeCloseTo(1, 11);
    expect(found.forces[0][2]).toBe(0);
  });

  it('at both ends carries no bending', () => {
    const hinged = { y: 0, z: 0 };
    const natural = naturalOf({ ...rod, ends: [hinged, hinged] }, NODES);
    expect([...natural.moduli.slice(14)].every((x) => x === 0)).toBe(true);
  });

  it('may also be made of two nodes that move together', () => {
    const structure: Structure = {
      nodes: Float64Array.of(0, 0, 0, 1.2, 0, 0, 1.2, 0, 0, 2.4, 0, 0),
      elements: [
        { ...rod, nodes: [0, 1], axisY: [0, 1, 0] },
        { ...rod, nodes: [2, 3], axisY: [0, 1, 0] },
      ],
      held: [clamped(0), clamped(3)],
      movesWith: Int32Array.of(0, 1, 1, 3),
    };
    expect(numberUnknowns(structure).count).toBe(9);
    const found = rest(structure, loadOn(structure, { 1: [0, -900, 0] }));
    const wanted = (-450 * 1.2 ** 3) / (3 * YOUNG * SECTION.iz);
    expect(found.moved[7] / wanted).toBeCloseTo(1, 11);
    expect(found.moved[13]).toBe(found.moved[7]);
    expect(found.moved[11]).toBeCloseTo(-found.moved[17], 12);
  });
});

describe('statics', () => {
  it('tells an unstable truss by the node and the movement, with no number beside it', () => {
    const square = truss(
      [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ],
      [
        [0, 3],
        [3, 2],
        [2, 1],
      ],
      1e-3,
      YOUNG,
      [0, 1, heldIn(2, 'z'), heldIn(3, 'z')],
    );
    const found = statics(prepare(square), loadOn(square, { 3: [100, 0, 0] }));
    expect(found.status).toBe('unstable');
    if (found.status !== 'unstable') return;
    expect([2, 3]).toContain(found.node);
    expect(Math.abs(found.mode[12])).toBeCloseTo(1, 9);
    expect(found.mode[18] / found.mode[12]).toBeCloseTo(1, 9);
    expect(found.mode[13]).toBeCloseTo(0, 9);
    expect('moved' in found).toBe(false);
  });

  it('lets a guy go slack and finds the other taut', () => {
    const mast = (pretension: number): Structure => ({
      nodes: Float64Array.of(0, 0, 0, 0, 0, 3, -2, 0, 0, 2, 0, 0),
      elements: [
        { ...rod, nodes: [0, 1], axisY: [0, 1, 0] },
        { ...bar, nodes: [2, 1], only: 'pull', area: 1e-5, pretension },
        { ...bar, nodes: [3, 1], only: 'pull', area: 1e-5, pretension },
      ],
      held: [clamped(0), clamped(2), clamped(3)],
    });
    const slackened = rest(mast(0), loadOn(mast(0), { 1: [500, 0, 0] }));
    expect([...slackened.slack]).toEqual([0, 0, 1]);
    expect(slackened.forces[1][0]).toBeGreaterThan(0);
    expect(slackened.forces[2][0]).toBe(0);
    const taut = rest(mast(5000), loadOn(mast(0), { 1: [500, 0, 0] }));
    expect([...taut.slack]).toEqual([0, 0, 0]);
    expect(taut.moved[6]).toBeLessThan(slackened.moved[6]);
    expect(taut.forces[1][0] - taut.forces[2][0]).toBeCloseTo(
      500 / (2 / Math.hypot(2, 3)) -
        (3 * YOUNG * SECTION.iy * taut.moved[6]) / 27 / (2 / Math.hypot(2, 3)),
      3,
    );
    for (const found of [slackened, taut]) expect(found.leftOver).toBeLessThan(1e-10);
  });

  it('lets a prop push and not pull', () => {
    const propped = (load: number) => {
      const structure: Structure = {
        nodes: Float64Array.of(0, 0, 0, 2, 0, 0),
        elements: [
          { ...rod, axisY: [0, 1, 0] },
          { kind: 'prop', nodes: [1], along: [0, 0, 2], stiffness: 1e6 },
        ],
        held: [clamped(0)],
      };
      return rest(structure, loadOn(structure, { 1: [0, 0, load] }));
    };
    expect(propped(-100).forces[1][0]).toBeLessThan(-90);
    expect(propped(100).forces[1][0]).toBe(0);
    expect([...propped(100).slack]).toEqual([0, 1]);
  });

  it('lets go no more props than it must: a plank on three, loaded off its end', () => {
    // With all three at work the outer one would pull; without it the plank rests on two.
    const plank: Structure = {
      nodes: Float64Array.of(0, 0, 0, 1, 0, 0, 2, 0, 0, 3, 0, 0),
      elements: [
        ...(
          [
            [0, 1],
            [1, 2],
            [2, 3],
          ] as const
        ).map((nodes) => ({
          ...rod,
          nodes,
          axisY: [0, 1, 0] as const,
        })),
        ...[0, 1, 2].map((node) => ({
          kind: 'prop' as const,
          nodes: [node] as const,
          along: [0, 0, 1] as const,
          stiffness: 1e6,
        })),
        {
          kind: 'spring' as const,
          nodes: [2] as const,
          stiffness: [1e6, 1e6, 0, 1, 1, 1] as const,
        },
      ],
      held: [],
    };
    const found = rest(plank, loadOn(plank, { 3: [0, 0, -90], 1: [0, 0, -200] }));
    const pushes = found.forces.slice(3, 6).map(([force]) => -force);
    expect(pushes.every((push) => push >= 0)).toBe(true);
    expect(pushes[0] + pushes[1] + pushes[2]).toBeCloseTo(290, 3);
    expect(found.leftOver).toBeLessThan(1e-9);
  });

  it('is unstable where what would hold it hangs slack', () => {
    const structure: Structure = {
      nodes: Float64Array.of(0, 0, 0, 0, 0, 3),
      elements: [
        { kind: 'prop', nodes: [0], along: [0, 0, 1], stiffness: 1e6 },
        { ...bar, nodes: [0, 1] },
      ],
      held: [heldIn(0, 'xy'), heldIn(1, 'xy')],
    };
    const lifted = statics(prepare(structure), loadOn(structure, { 1: [0, 0, 10] }));
    expect(lifted.status).toBe('unstable');
    expect(rest(structure, loadOn(structure, { 1: [0, 0, -10] })).forces[0][0]).toBeCloseTo(-10, 9);
  });

  it('answers in proportion to the load, and by the sum of two loads', () => {
    const random = seededRandom(3);
    const structure: Structure = {
      nodes: Float64Array.of(0, 0, 0, 1, 0.2, 0, 0.4, 1, 0.3, 0.5, 0.4, 1.2),
      elements: [
        { ...facet, nodes: [0, 1, 2] },
        { ...facet, nodes: [0, 1, 3] },
        { ...rod, nodes: [2, 3] },
      ],
      held: [clamped(0)],
    };
    const a = Float64Array.from({ length: 24 }, () => random.normal());
    const b = Float64Array.from({ length: 24 }, () => random.normal());
    const both = a.map((x, k) => 2 * x - 3 * b[k]);
    const [ua, ub, uc] = [a, b, both].map((load) => rest(structure, load).moved);
    expect(
      off(
        uc,
        ua.map((x, k) => 2 * x - 3 * ub[k]),
      ),
    ).toBeLessThan(1e-11);
  });

  it('refuses a load of another length or that is no number, and a node that is none', () => {
    const structure = truss(
      [
        [0, 0],
        [1, 0],
      ],
      [[0, 1]],
      1,
      1,
      [0, heldIn(1, 'yz')],
    );
    expect(() => statics(prepare(structure), new Float64Array(3))).toThrow('3 loads for 12');
    const odd = loadOn(structure, { 1: [Number.NaN] });
    expect(() => statics(prepare(structure), odd)).toThrow('the load on node 1 is NaN');
    expect(() => prepare({ ...structure, elements: [{ ...bar, nodes: [0, 2] }] })).toThrow(
      'a bar ends at node 2 of 2',
    );
    expect(() => prepare({ ...structure, held: [clamped(7)] })).toThrow('node 7 of 2 is held');
  });
});
