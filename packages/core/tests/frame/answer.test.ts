import { describe, expect, it } from 'vitest';
import { type FrameStands, frameAnswer, prepareFrame } from '../../src/frame/answer.ts';
import { type FrameLoad, GRAVITY } from '../../src/frame/frame-loads.ts';
import { frameOf } from '../../src/frame/from-shell.ts';
import { meshOf } from '../../src/frame/mesh.ts';
import type { FrameModel } from '../../src/frame/model.ts';
import { frameParts } from '../../src/frame/parts.ts';
import { partsSection, unknownParts } from '../../src/frame/schema.ts';
import { nodeCount } from '../../src/frame/structure.ts';
import { pointAt, rotateAbout, type Vec3 } from '../../src/math/vector.ts';
import { vectorArea } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { cube } from '../shell/fixtures.ts';
import { ball, heldRow, hinged, tiers } from './fixtures.ts';
import { off } from './trusses.ts';

const parts = frameParts(
  partsSection.parse({
    panel: { material: 'aluminium', thickness: 0.003, strength: 1e8 },
    flange: { depth: 0.05 },
    bolt: { thread: 'M8', grade: '8.8' },
  }),
);

const grown = (model: FrameModel, size: number): FrameModel => ({
  ...model,
  hubs: model.hubs.map((x) => x * size),
});

const dome = (b: number, to: number): FrameModel => {
  const shell = ball(b);
  return grown(frameOf(shell, { placed: tiers(shell, 0, to), supports: heldRow(shell, to) }), 2.7);
};

function standing(model: FrameModel, load: FrameLoad, pieces = 1): FrameStands {
  const answer = frameAnswer(prepareFrame(model, parts, pieces), load, () => 8);
  if (answer.status !== 'stands') throw new Error(`the frame is ${answer.status}`);
  return answer;
}

const total = (list: readonly Vec3[], k: number): number => list.reduce((s, v) => s + v[k], 0);

describe('a dome under its weight', () => {
  const model = dome(2, 3);
  const found = standing(model, {});

  it('rests on its base hubs with all of it', () => {
    const mesh = meshOf(model, parts);
    let weight = 0;
    for (const element of mesh.structure.elements) {
      const points = element.nodes.map((node) => pointAt(mesh.structure.nodes, node as number));
      if (element.kind === 'beam') {
        const [a, b] = points;
        weight += Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) * element.section.area * 2700;
      }
    }
    const shell = ball(2);
    for (const { place } of model.panels)
      weight += Math.hypot(...vectorArea(shell, place as PlaceId)) * 2.7 ** 2 * 0.003 * 2700;
    expect(total(found.reactions, 2) / (weight * GRAVITY)).toBeCloseTo(1, 9);
    expect(Math.abs(total(found.reactions, 0))).toBeLessThan(1e-8 * weight);
    expect(found.leftOver).toBeLessThan(1e-9);
  });

  it('weighs what its panels weigh where their masses are known, twice that at twice g', () => {
    const masses = model.panels.map(() => 9.6);
    const one = standing(model, { masses });
    expect(total(one.reactions, 2)).toBeCloseTo(9.6 * GRAVITY * model.panels.length, 6);
    const two = standing(model, { masses, weight: 2 });
    expect(
      off(
        two.moved,
        one.moved.map((x) => 2 * x),
      ),
    ).toBeLessThan(1e-10);
    expect(total(standing(model, { masses, weight: 0 }).reactions, 2)).toBe(0);
  });

  it('moves the same at every fifth of a turn', () => {
    const fifth = (2 * Math.PI) / 5;
    for (let hub = 0; 3 * hub < model.hubs.length; hub++) {
      const p = pointAt(model.hubs, hub);
      const q = rotateAbout(p, [0, 0, 1], fifth);
      let other = -1;
      for (let h = 0; 3 * h < model.hubs.length; h++)
        if (Math.hypot(...pointAt(model.hubs, h).map((x, k) => x - q[k])) < 1e-9) other = h;
      const turned = rotateAbout(pointAt(found.moved, hub), [0, 0, 1], fifth);
      turned.forEach((x, k) => {
        expect(Math.abs(x - found.moved[3 * other + k])).toBeLessThan(1e-15 + 1e-9 * Math.abs(x));
      });
    }
  });

  it('sinks at the crown', () => {
    const crown = model.hubs.findIndex((z, i) => i % 3 === 2 && z > 2.7 * 0.999999);
    expect(found.moved[crown]).toBeLessThan(0);
  });
});

describe('a whole ball under pressure from outside', () => {
  // A closed sphere carries p R / 2 by length in every direction; a flat-panelled one the same on
  // average over its seams.
  const shell = ball(4);
  const model = grown(frameOf(shell, { supports: [{ hub: 0, stiffness: null }] }), 2.7);
  const held = {
    ...model,
    supports: [0, 20, 60].map((hub) => ({ hub, stiffness: null })),
  };
  const pressure = model.panels.map(() => 500);

  it('has no reactions to speak of', () => {
    const found = standing(held, { pressure, weight: 0 });
    for (const reaction of found.reactions)
      expect(Math.hypot(...reaction)).toBeLessThan(0.05 * 500 * 2.7 ** 2);
  });

  it('is pulled across its seams by p R / 2 when pressed from inside', () => {
    // Stiff flanges take part of it: with thin ones nearly all is in the panels.
    const thin = frameParts(
      partsSection.parse({
        panel: { material: 'aluminium', thickness: 0.003 },
        flange: { depth: 0.002, thickness: 0.0005 },
      }),
    );
    const answer = frameAnswer(prepareFrame(held, thin), {
      pressure: pressure.map((p) => -p),
      weight: 0,
    });
    if (answer.status !== 'stands') throw new Error(answer.status);
    const pulls = answer.seams.map(({ pull }) => pull).sort((a, b) => a - b);
    expect(pulls[pulls.length >> 1] / ((500 * 2.7) / 2)).toBeGreaterThan(0.9);
    expect(pulls[pulls.length >> 1] / ((500 * 2.7) / 2)).toBeLessThan(1.15);
    expect(answer.seams[0].bolt).toBeNull();
    expect(answer.sources).toEqual(thin.sources);
    expect(answer.seams[0].utilisation).toBe('unknown');
    expect(answer.panels[0].utilisation).toBe('unknown');
  });
});

describe('seams and parts', () => {
  const model = dome(2, 3);

  it('give bolts their share and say how much of what is known they bear', () => {
    const found = standing(model, { pressure: model.panels.map(() => 300) });
    for (const seam of found.seams) {
      expect(seam.bolt).not.toBeNull();
      const proof = parts.boltProof as number;
      expect(seam.utilisation).toBeCloseTo(
        Math.hypot(seam.bolt!.pull / proof, seam.bolt!.shear / (0.6 * proof)),
        12,
      );
    }
    for (const { stress, utilisation } of found.panels) expect(utilisation).toBe(stress / 1e8);
    expect(found.sources.map(({ text }) => text).join()).toContain('prised open');
  });

  it('give more while finger-tight than snug: work of a push on the free rim of a band', () => {
    const shell = ball(3);
    const stage = { placed: tiers(shell, 3, 4), supports: heldRow(shell, 4) };
    const hub = heldRow(shell, 3)[0].hub;
    const load: FrameLoad = { weight: 0, hubForces: [[hub, pointAt(shell.hubs, hub)]] };
    const work = (model: FrameModel): number => {
      const found = standing(grown(model, 2.7), load);
      for (const { moment } of found.seams)
        expect(moment > 0).toBe(model.seams[0].pass !== 'finger');
      return pointAt(found.moved, hub).reduce((sum, u, k) => sum + u * shell.hubs[3 * hub + k], 0);
    };
    const [snug, loose] = [frameOf(shell, stage), hinged(shell, stage)].map(work);
    expect(loose).toBeGreaterThan(2 * snug);
  });

  it('say what was supposed where nothing is known', () => {
    const all = frameParts(unknownParts);
    expect(all.supposed).toEqual([
      'material of the panels',
      'thickness of the panels',
      'depth of the flanges',
    ]);
    expect(all.sources.map(({ confirmation }) => confirmation)).toContain('common practice');
    expect(parts.supposed).toEqual([]);
    const answer = frameAnswer(prepareFrame(model, all), {});
    expect(answer.status === 'stands' && answer.supposed).toHaveLength(3);
  });
});

describe('a half-built stage', () => {
  const shell = ball(2);
  const band = { placed: tiers(shell, 2, 3), supports: heldRow(shell, 3) };

  it('that moves without resistance has its hub and movement for an answer', () => {
    const answer = frameAnswer(prepareFrame(hinged(shell, band), parts), {});
    expect(answer.status).toBe('unstable');
    if (answer.status !== 'unstable') return;
    expect(band.supports.map(({ hub }) => hub)).not.toContain(answer.hub);
    expect(Math.max(...answer.mode.corners.map(Math.abs))).toBeGreaterThan(0.5);
    expect(Object.keys(answer).sort()).toEqual(['hub', 'mode', 'status']);
  });

  it('stands when its seams are snug', () => {
    expect(frameAnswer(prepareFrame(frameOf(shell, band), parts), {}).status).toBe('stands');
  });

  it('that leans on one guy only is unstable when the wind comes from the other side', () => {
    const [mode] = [frameAnswer(prepareFrame(hinged(shell, band), parts), {})];
    if (mode.status !== 'unstable') throw new Error(mode.status);
    const { hub } = mode;
    const p = [...pointAt(shell.hubs, hub)];
    const out: Vec3 = [p[0] * 3, p[1] * 3, -0.3];
    const guyed = hinged(shell, {
      ...band,
      guys: [{ hub, anchor: out, axialStiffness: 1e5, pretension: 0 }],
    });
    const push = (sign: number): string =>
      frameAnswer(prepareFrame(guyed, parts), {
        weight: 0,
        hubForces: [[hub, [sign * p[0], sign * p[1], 0]]],
      }).status;
    const one = push(1);
    const other = push(-1);
    expect([one, other].sort()).toEqual(['stands', 'unstable']);
  });

  it('with a floating panel names that panel', () => {
    const lone = tiers(shell, 0, 1)[0];
    const model = frameOf(shell, {
      placed: [...tiers(shell, 2, 3), lone],
      supports: heldRow(shell, 3),
      pass: () => 'snug',
    });
    const answer = frameAnswer(prepareFrame(model, parts), {});
    expect(answer.status).toBe('unstable');
    if (answer.status === 'unstable')
      expect(answer.mode.panels.map((index) => model.panels[index].place)).toContain(lone);
  });

  it('propped pushes on its props, and a loose prop bears nothing', () => {
    const cap = tiers(shell, 0, 2);
    const rim = heldRow(shell, 2).map(({ hub }) => hub);
    const model = frameOf(shell, {
      placed: cap,
      supports: [
        { hub: rim[0], stiffness: [1e6, 1e6, 1e6] },
        { hub: rim[3], stiffness: [1e6, 1e6, 0] },
      ],
      props: rim.map((hub) => ({ hub, along: [0, 0, 1] as Vec3, stiffness: 1e6 })),
    });
    const found = standing(model, {});
    const borne = found.props.reduce((sum, push) => sum + push, 0) + total(found.reactions, 2);
    expect(found.props.every((push) => push >= 0)).toBe(true);
    const mesh = meshOf(model, parts);
    expect(nodeCount(mesh.structure)).toBe(16);
    expect(borne).toBeGreaterThan(0);
    expect(Math.abs(total(found.reactions, 0))).toBeLessThan(1e-6 * borne);
  });
});

describe('finer meshes', () => {
  it('come nearer to each other, and polygons are laid about their middle', () => {
    const model = dome(1, 1);
    const load = { pressure: model.panels.map(() => 400), weight: 0 };
    const moved = [4, 8, 16].map((pieces) => Math.hypot(...standing(model, load, pieces).moved));
    // Slowly: hubs are points, and under a point a plane gives without end, as the logarithm.
    expect(Math.abs(moved[2] - moved[1])).toBeLessThan(0.9 * Math.abs(moved[1] - moved[0]));
    const box = frameOf(cube().shell, { placed: [0] });
    expect(meshOf(box, parts, 1).facets[0]).toHaveLength(4);
    expect(meshOf(box, parts, 3).facets[0]).toHaveLength(36);
  });

  it('refuse 0 or 33 pieces', () => {
    expect(() => meshOf(dome(2, 3), parts, 0)).toThrow('sides in 0 pieces');
    expect(() => meshOf(dome(2, 3), parts, 33)).toThrow('expected 1 to 32');
  });
});

describe('loads', () => {
  const frame = prepareFrame(dome(2, 3), parts);

  it('must be one for each panel, numbers, and on hubs that stand', () => {
    expect(() => frameAnswer(frame, { pressure: [1] })).toThrow('1 pressures for 40 panels');
    const odd = frame.model.panels.map((_, p) => (p === 3 ? Number.NaN : 0));
    expect(() => frameAnswer(frame, { pressure: odd })).toThrow('panel 3 has a pressure of NaN');
    expect(() => frameAnswer(frame, { hubForces: [[99, [0, 0, 1]]] })).toThrow('hub 99');
  });
});
