import { describe, expect, it } from 'vitest';
import { frameOf } from '../../src/frame/from-shell.ts';
import { jointsOf } from '../../src/frame/joints.ts';
import { mechanisms } from '../../src/frame/mechanisms.ts';
import type { FrameModel } from '../../src/frame/model.ts';
import { rigidityRows } from '../../src/frame/rigidity.ts';
import { cross, pointAt, type Vec3 } from '../../src/math/vector.ts';
import { hubCount, placeCount } from '../../src/shell/shell.ts';
import { cube, dualOf, icosahedral } from '../shell/fixtures.ts';
import { ball, heldRow, hinged, movedFrame, tiers } from './fixtures.ts';

const counted = (model: FrameModel): number => mechanisms(model, { softest: false }).count;

/** Largest strain of any tie when joints move by `field`. */
function strained(model: FrameModel, field: (point: Vec3) => Vec3): number {
  const joints = jointsOf(model);
  const rows = rigidityRows(model, joints);
  let most = 0;
  for (let r = 0; r + 1 < rows.start.length; r++) {
    let sum = 0;
    for (let k = rows.start[r]; k < rows.start[r + 1]; k++) {
      if (rows.joint[k] >= joints.hub.length) return Number.NaN;
      const u = field(pointAt(model.hubs, joints.hub[rows.joint[k]]));
      for (let i = 0; i < 3; i++) sum += rows.value[3 * k + i] * u[i];
    }
    most = Math.max(most, Math.abs(sum));
  }
  return most;
}

describe('the ties of a frame', () => {
  const model = frameOf(ball(2), { supports: [] });

  it('are not strained when it moves as a whole, snug seams among them', () => {
    expect(strained(model, () => [1, -2, 0.5])).toBeLessThan(1e-14);
    expect(strained(model, (p) => cross([0.3, 1, -2], p))).toBeLessThan(1e-13);
  });

  it('are strained when it swells', () => {
    expect(strained(model, (p) => p)).toBeGreaterThan(0.1);
  });
});

describe('panels that are not bolted', () => {
  const shell = ball(2);

  it('move each by itself: six movements a panel', () => {
    const model = frameOf(shell, { pass: () => null, supports: [] });
    expect(jointsOf(model).hub).toHaveLength(3 * placeCount(shell));
    const few = frameOf(shell, { placed: [0, 1, 2], pass: () => null, supports: [] });
    expect(counted(few)).toBe(18);
  });

  it('hang together at a hub with a plate, turning about it', () => {
    const [one, , third] = tiers(shell, 0, 1);
    const hubs = (p: number): number[] => [...shell.sideHub.slice(3 * p, 3 * p + 3)];
    const shared = hubs(one).filter((hub) => hubs(third).includes(hub));
    expect(shared).toHaveLength(1);
    const stage = { placed: [one, third], pass: () => null, supports: [] };
    expect(counted(frameOf(shell, stage))).toBe(12);
    expect(counted(frameOf(shell, { ...stage, plates: shared }))).toBe(9);
  });
});

describe('seams', () => {
  const shell = ball(2);
  const pair = [shell.sidePlace[shell.seams[0]], shell.sidePlace[shell.seams[1]]];

  it('turn while finger-tight and hold when snug', () => {
    const stage = { placed: pair, supports: [] };
    expect(counted(hinged(shell, stage))).toBe(7);
    expect(counted(frameOf(shell, { ...stage, pass: () => 'snug' }))).toBe(6);
    expect(counted(frameOf(shell, { ...stage, pass: () => 'final' }))).toBe(6);
    const asHinges = mechanisms(frameOf(shell, stage), { allHinged: true, softest: false });
    expect(asHinges.count).toBe(7);
  });

  it('held by four snug ones keep a band that would move with hinges', () => {
    const four = ball(4);
    const stage = { placed: tiers(four, 5, 6), supports: heldRow(four, 6) };
    expect(counted(hinged(four, stage))).toBe(1);
    expect(counted(frameOf(four, { ...stage, pass: () => 'snug' }))).toBe(0);
  });
});

describe('panels with more than three corners', () => {
  it('are stiff: one cube side hanging free has six movements', () => {
    expect(counted(hinged(cube().shell, { placed: [0] }))).toBe(6);
  });

  it('make a cube and a dodecahedron that are stiff as plates', () => {
    expect(counted(hinged(cube().shell))).toBe(6);
    expect(counted(hinged(dualOf(icosahedral(1, 0)).shell))).toBe(6);
    expect(counted(hinged(dualOf(icosahedral(2, 0)).shell))).toBe(6);
  });

  it('hinge: two cube sides have seven, an open box is stiff', () => {
    const { shell } = cube();
    const two = [shell.sidePlace[shell.seams[0]], shell.sidePlace[shell.seams[1]]];
    expect(counted(hinged(shell, { placed: two }))).toBe(7);
    expect(counted(hinged(shell, { placed: [0, 1, 2, 3, 4] }))).toBe(6);
  });
});

describe('a mode', () => {
  const shell = ball(2);
  const model = hinged(shell, { placed: tiers(shell, 2, 3), supports: heldRow(shell, 3) });
  const found = mechanisms(model);
  const [mode] = found.modes;

  it('moves its hub most, by 1, and no held hub', () => {
    const sizes = new Float64Array(hubCount(shell));
    model.panels.forEach((panel, p) => {
      panel.hubs.forEach((hub, i) => {
        sizes[hub] = Math.hypot(...mode.corners.slice(9 * p + 3 * i, 9 * p + 3 * i + 3));
      });
    });
    expect(sizes[mode.hub]).toBeCloseTo(1, 9);
    expect(Math.max(...sizes)).toBeCloseTo(1, 9);
    for (const { hub } of model.supports) expect(sizes[hub]).toBe(0);
  });

  it('stretches no side', () => {
    const { corners } = mode;
    model.panels.forEach((panel, p) => {
      for (let i = 0; i < 3; i++) {
        const j = (i + 1) % 3;
        const a = pointAt(model.hubs, panel.hubs[i]);
        const b = pointAt(model.hubs, panel.hubs[j]);
        let stretch = 0;
        for (let k = 0; k < 3; k++)
          stretch += (b[k] - a[k]) * (corners[9 * p + 3 * j + k] - corners[9 * p + 3 * i + k]);
        expect(Math.abs(stretch)).toBeLessThan(1e-9);
      }
    });
  });

  it('names the panels that move: all of the band', () => {
    expect(mode.panels).toEqual([...model.panels.keys()]);
  });

  it('is about the loose panel alone where only that is loose', () => {
    const dome = tiers(shell, 0, 3);
    const [loose] = tiers(shell, 0, 1);
    const apart = frameOf(shell, {
      placed: dome,
      pass: (seam) =>
        [0, 1].some((k) => shell.sidePlace[shell.seams[2 * seam + k]] === loose) ? null : 'finger',
      supports: heldRow(shell, 3),
    });
    const six = mechanisms(apart, { softest: false });
    expect(six.count).toBe(6);
    for (const { panels } of six.modes) expect(panels).toEqual([dome.indexOf(loose)]);
  });
});

describe('mechanisms', () => {
  const shell = ball(2);
  const model = hinged(shell, { placed: tiers(shell, 2, 3), supports: heldRow(shell, 3) });

  it('stay as many and as soft when the frame is turned, moved and grown', () => {
    const found = mechanisms(model);
    const moved = mechanisms(movedFrame(model, [0, 0.6, 0.8], 1.1, [5, -3, 2]));
    expect(moved.count).toBe(found.count);
    expect(moved.softest).toBeCloseTo(found.softest as number, 9);
    for (const size of [1e-3, 1e3]) {
      const grown = { ...model, hubs: model.hubs.map((x) => x * size) };
      expect(mechanisms(grown).count).toBe(found.count);
      expect(mechanisms(grown).softest).toBeCloseTo(found.softest as number, 9);
    }
  });

  it('go with a prop under the hub that moves, if the prop stands along the movement', () => {
    const [mode] = mechanisms(model).modes;
    const prop = (along: Vec3) => ({
      ...model,
      props: [{ hub: mode.hub, along, stiffness: null }],
    });
    const p = model.panels.findIndex((panel) => panel.hubs.includes(mode.hub));
    const at = 9 * p + 3 * model.panels[p].hubs.indexOf(mode.hub);
    const u: Vec3 = [mode.corners[at], mode.corners[at + 1], mode.corners[at + 2]];
    expect(counted(prop(u))).toBe(0);
    const across = cross(u, [0.36, 0.48, 0.8]);
    expect(counted(prop(across))).toBe(1);
    expect(mechanisms(prop(u), { withoutProps: true }).count).toBe(1);
  });

  it('go with a guy only if it is said to be taut', () => {
    const [mode] = mechanisms(model).modes;
    const p = model.panels.findIndex((panel) => panel.hubs.includes(mode.hub));
    const at = 9 * p + 3 * model.panels[p].hubs.indexOf(mode.hub);
    const hub = pointAt(model.hubs, mode.hub);
    const anchor = hub.map((x, k) => x + 3 * mode.corners[at + k]) as unknown as Vec3;
    const guyed = {
      ...model,
      guys: [{ hub: mode.hub, anchor, axialStiffness: 1e5, pretension: 100 }],
    };
    expect(counted(guyed)).toBe(1);
    expect(mechanisms(guyed, { guysTaut: true }).count).toBe(0);
  });

  it('are none where nothing stands or all is held', () => {
    expect(mechanisms(frameOf(shell, { placed: [] }))).toEqual({
      count: 0,
      modes: [],
      softest: null,
      softestMode: null,
    });
    const held = [...Array(hubCount(shell)).keys()].map((hub) => ({ hub, stiffness: null }));
    expect(mechanisms(hinged(shell, { supports: held })).count).toBe(0);
  });
});

describe('the frame of a shell', () => {
  const shell = ball(2);

  it('refuses a place or hub that is none, and numbers that are none', () => {
    expect(() => frameOf(shell, { placed: [80] })).toThrow('place 80 of 80');
    expect(() => frameOf(shell, { plates: [42] })).toThrow('hub 42 of 42');
    expect(() => frameOf(shell, { supports: [{ hub: -1, stiffness: null }] })).toThrow(
      'a support stands at hub -1 of 42',
    );
    expect(() => frameOf(shell, { supports: [{ hub: 0, stiffness: [1, Number.NaN, 0] }] })).toThrow(
      'the stiffness of a support is NaN',
    );
    expect(() =>
      frameOf(shell, { props: [{ hub: 0, along: [0, 0, 0], stiffness: null }] }),
    ).toThrow('a prop pushes along 0,0,0');
    const guy = { hub: 0, anchor: [0, 0, 0] as Vec3, axialStiffness: 1, pretension: -1 };
    expect(() => frameOf(shell, { guys: [guy] })).toThrow('the pretension of a guy is -1');
  });

  it('holds the base ring unless told otherwise; a whole ball has none', () => {
    expect(frameOf(shell).supports).toEqual([]);
  });
});
