import { describe, expect, it } from 'vitest';
import { frameAnswer, prepareFrame } from '../../src/frame/answer.ts';
import type { Element } from '../../src/frame/elements/element.ts';
import { cornerStiffness, HUB_PLATES } from '../../src/frame/hub-plate.ts';
import type { FrameModel } from '../../src/frame/model.ts';
import { frameParts } from '../../src/frame/parts.ts';
import { partsSection } from '../../src/frame/schema.ts';
import { prepare, statics } from '../../src/frame/statics.ts';
import type { Structure } from '../../src/frame/structure.ts';

const all = [true, true, true, true, true, true];

function movedBy(structure: Structure, load: Float64Array): Float64Array {
  const rest = statics(prepare(structure), load);
  if (rest.status !== 'stands') throw new Error(rest.status);
  return rest.moved;
}

describe('a joint', () => {
  it('lets the tip of a cantilever down by F l³ / 3 E I + F l² / k', () => {
    const [force, length, stiffness, young, iz] = [50, 0.8, 900, 7e10, 4e-9];
    const structure: Structure = {
      nodes: Float64Array.of(0, 0, 0, 0, 0, 0, length, 0, 0),
      elements: [
        { kind: 'joint', nodes: [0, 1], stiffness },
        {
          kind: 'beam',
          nodes: [1, 2],
          section: { area: 1e-4, iy: 2e-9, iz, torsion: 1e-9 },
          young,
          shear: 2.6e10,
          axisY: [0, 0, 1],
        },
      ],
      held: [{ node: 0, directions: all }],
      movesWith: Int32Array.of(0, 0, 2),
    };
    const load = new Float64Array(18);
    load[14] = -force;
    const byHand = (force * length ** 3) / (3 * young * iz) + (force * length ** 2) / stiffness;
    const found = -(movedBy(structure, load)[14] as number);
    expect(Math.abs(found / byHand - 1)).toBeLessThan(1e-9);
    expect(Math.abs((found * (1 + 1e-8)) / byHand - 1)).toBeGreaterThan(1e-9);
  });
});

describe('the stiffness with which a hub plate holds a corner', () => {
  const plate = { thickness: 0.004, young: 7e10, poisson: 0.33 };

  it('is E t³ θ / 12 (1 − ν): 583.5 N·m a radian for a sixth of 4 mm of aluminium', () => {
    // 7e10 × 6.4e-8 / 8.04 = 557.2; times π/3 = 583.5.
    expect(cornerStiffness(plate, Math.PI / 3)).toBeCloseTo(583.5, 1);
    expect(cornerStiffness({ ...plate, thickness: 0.008 }, 1)).toBeCloseTo(
      8 * cornerStiffness(plate, 1),
      8,
    );
  });

  it('is that of a disc of bent facets under an even moment along its edge', () => {
    const [count, radius, moment] = [24, 0.1, 3];
    const rim = (k: number): [number, number] => {
      const angle = (2 * Math.PI * k) / count;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    };
    const elements = [...Array(count).keys()].map(
      (k): Element => ({ kind: 'facet', nodes: [0, 1 + k, 1 + ((k + 1) % count)], ...plate }),
    );
    const nodes = [0, 0, 0, ...[...Array(count).keys()].flatMap((k) => [...rim(k), 0])];
    const load = new Float64Array(2 * nodes.length);
    for (let k = 0; k < count; k++) {
      // Half of the moment of each side goes to each of its ends, about the side.
      const [a, b] = [rim(k), rim(k + 1)];
      for (const end of [1 + k, 1 + ((k + 1) % count)])
        for (const x of [0, 1]) load[6 * end + 3 + x] += (moment / 2) * (b[x] - a[x]);
    }
    const moved = movedBy(
      { nodes: Float64Array.from(nodes), elements, held: [{ node: 0, directions: all }] },
      load,
    );
    const turn = Math.hypot(moved[6 * 1 + 3] as number, moved[6 * 1 + 4] as number);
    const found = (moment * radius * 2 * Math.PI) / turn;
    const wanted = cornerStiffness(plate, 2 * Math.PI);
    expect(Math.abs(found / wanted - 1)).toBeLessThan(1e-9);
    expect(Math.abs((found * (1 + 1e-8)) / wanted - 1)).toBeGreaterThan(1e-9);
  });
});

describe('a frame with hub plates', () => {
  // A book: one panel held at all corners, the other hinged to it along a finger-tight seam.
  const book: FrameModel = {
    hubs: Float64Array.of(0, 0, 0, 1, 0, 0, 0.5, 0.8, 0, 0.5, -0.8, 0),
    panels: [
      { place: 0, hubs: [0, 1, 2] },
      { place: 1, hubs: [1, 0, 3] },
    ],
    seams: [{ panels: [0, 1], hubs: [0, 1], pass: 'finger' }],
    plates: Uint8Array.of(1, 1, 0, 0),
    supports: [0, 1, 2].map((hub) => ({ hub, stiffness: null })),
    props: [],
    guys: [],
  };
  const known = (hubPlate: object) =>
    frameParts(
      partsSection.parse({
        panel: { material: 'steel', thickness: 0.05 },
        flange: { depth: 0.1 },
        hubPlate,
      }),
    );
  const stiff = { thickness: 0.002, boltCircle: 0.12, material: 'aluminium' };

  it('folds by M / k θ about a seam with a plate at each end', () => {
    const pressure = 20;
    const answer = frameAnswer(prepareFrame(book, known(stiff)), {
      pressure: [0, pressure],
      masses: [0, 0],
    });
    if (answer.status !== 'stands') throw new Error(answer.status);
    // 20 Pa on 0.4 m², at a third of 0.8 m; two corners in a row at each end, two ends: k θ in all.
    const moment = (pressure * 0.4 * 0.8) / 3;
    const k = cornerStiffness({ thickness: 0.002, young: 7e10, poisson: 0.33 }, Math.atan(1.6));
    const byHand = (moment / k) * 0.8;
    const found = Math.abs(answer.moved[11] as number);
    expect(Math.abs(found / byHand - 1)).toBeLessThan(2e-3);
    expect(Math.abs((found * 1.02) / byHand - 1)).toBeGreaterThan(2e-3);
    expect(answer.sources).toContain(HUB_PLATES);
  });

  it('folds without resistance unless thickness, bolt circle and stiffness are entered', () => {
    for (const one of [
      {},
      { ...stiff, thickness: null },
      { ...stiff, boltCircle: null },
      { ...stiff, material: null },
    ]) {
      const answer = frameAnswer(prepareFrame(book, known(one)), { pressure: [0, 20] });
      expect(answer.status).toBe('unstable');
    }
    const bare = { ...book, plates: new Uint8Array(4) };
    expect(frameAnswer(prepareFrame(bare, known(stiff)), {}).status).toBe('unstable');
  });

  it('refuses a plate that is not small beside the panels, by its hub', () => {
    expect(() => prepareFrame(book, known({ ...stiff, boltCircle: 0.6 }))).toThrow(
      'a hub plate with a bolt circle of 0.6 m at hub 0, where a side is 0.943 m: expected up to 0.5 of it',
    );
  });
});
