import { describe, expect, it } from 'vitest';
import { frameAnswer, prepareFrame } from '../../../src/frame/answer.ts';
import { baseSupports } from '../../../src/frame/from-shell.ts';
import { frameParts } from '../../../src/frame/parts.ts';
import { unknownParts } from '../../../src/frame/schema.ts';
import { defaultLoads } from '../../../src/loads/schema.ts';
import {
  add,
  cross,
  distance,
  dot,
  norm,
  normalize,
  pointAt,
  scale,
  subtract,
  type Vec3,
} from '../../../src/math/vector.ts';
import type { PlaceId } from '../../../src/shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../../../src/shell/shell.ts';
import { onJoints, weightOf } from '../../../src/stages/bearing.ts';
import { nothingKnown, type StageModel, stageModel } from '../../../src/stages/model.ts';
import { frameOfStage } from '../../../src/stages/stage.ts';
import type { Line, Mast } from '../../../src/stages/supports/gear.ts';
import { linedFrame } from '../../../src/stages/supports/lined.ts';
import { type LinedForces, OneWayStage } from '../../../src/stages/supports/one-way.ts';
import { cutBall, numbersOf } from '../fixtures.ts';
import { leaves } from './leaves.ts';

const MASS = 12;

function modelOf(shell: Shell): StageModel {
  const made = stageModel(shell, numbersOf(shell), {
    loads: defaultLoads,
    massOf: () => ({ value: MASS, sources: [] }),
    bears: nothingKnown,
    directions: 4,
  });
  if (!made.ok) throw new Error(made.faults[0]?.found);
  return made.value;
}

const low = cutBall(3, 105);
const high = cutBall(3, 75);

/** Pull that a line at the top of one leaf must have: W/3 at the top, turned about the base. */
function pullByHand(shell: Shell, leaf: { place: number; top: number }, to: Vec3): number {
  const [a, b, c] = hubsOf(shell, leaf.place as PlaceId).map((hub) => pointAt(shell.hubs, hub));
  const out = normalize(cross(subtract(b as Vec3, a as Vec3), subtract(c as Vec3, a as Vec3)));
  const way = normalize(subtract(to, pointAt(shell.hubs, leaf.top)));
  return ((MASS * 9.80665) / 3) * (out[2] / dot(way, out));
}

function forcesOf(
  model: StageModel,
  placed: readonly number[],
  lines: readonly Line[],
  mast: Mast | null = null,
): LinedForces | null {
  const lined = linedFrame(frameOfStage(model.shell, { placed }), lines, mast);
  const stage = new OneWayStage(lined);
  return stage.under(onJoints(model, lined.tied, weightOf(model, placed)));
}

const mastOf = (shell: Shell, height: number, guyed: boolean): Mast => {
  const level = Math.min(
    ...baseSupports(shell).map(({ hub }) => shell.hubs[3 * hub + 2] as number),
  );
  return {
    head: [0, 0, level + height],
    foot: [0, 0, level],
    chains: 24,
    guyed,
    chainBears: null,
    bears: null,
  };
};

const guy = (hub: number, to: Vec3): Line => ({ kind: 'guy', hub, anchor: 1, to });

const chainsTo = (mast: Mast, at: readonly { readonly top: number }[]): Line[] =>
  at.map(({ top }) => ({ kind: 'chain', hub: top, anchor: 0, to: mast.head }));

describe('one panel that leans on its base, held by one guy', () => {
  for (const [name, shell, far, wrong] of [
    ['inwards, above the equator', high, 2, 0.2],
    ['outwards, below it', low, 0.1, 2.5],
  ] as const) {
    const model = modelOf(shell);
    const leaf = leaves(shell)[0] as { place: number; top: number };
    const top = pointAt(shell.hubs, leaf.top);
    const ground = (part: number): Vec3 => [part * top[0], part * top[1], top[2] - 0.5];

    it(`${name}: the guy pulls W/3 · n_z / (u · n)`, () => {
      const found = forcesOf(model, [leaf.place], [guy(leaf.top, ground(far))]);
      const byHand = pullByHand(shell, leaf, ground(far));
      expect(byHand).toBeGreaterThan(1);
      expect(Math.abs((found?.pulls[0] as number) / byHand - 1)).toBeLessThan(1e-10);
      expect(Math.abs((found?.pulls[0] as number) / (byHand * (1 + 1e-9)) - 1)).toBeGreaterThan(
        1e-10,
      );
    });

    it(`${name}: it falls with the guy on the side to which it leans`, () => {
      expect(forcesOf(model, [leaf.place], [guy(leaf.top, ground(wrong))])).toBeNull();
      expect(forcesOf(model, [leaf.place], [])).toBeNull();
    });

    it(`${name}: of two guys against each other one hangs slack`, () => {
      const both = [guy(leaf.top, ground(wrong)), guy(leaf.top, ground(far))];
      const found = forcesOf(model, [leaf.place], both);
      expect(found?.pulls[0]).toBe(0);
      expect(found?.pulls[1]).toBeCloseTo(pullByHand(shell, leaf, ground(far)), 8);
    });

    it(`${name}: the frame with its stiffness finds the same pull`, () => {
      const frame = {
        ...frameOfStage(shell, { placed: [leaf.place] }),
        guys: [{ hub: leaf.top, anchor: ground(far), axialStiffness: 1e6, pretension: 0 }],
      };
      const prepared = prepareFrame(frame, frameParts(unknownParts));
      const answer = frameAnswer(prepared, { masses: [MASS] });
      if (answer.status !== 'stands') throw new Error(answer.status);
      const byHand = pullByHand(shell, leaf, ground(far));
      expect(Math.abs((answer.guys[0] as number) / byHand - 1)).toBeLessThan(2e-3);
    });
  }
});

describe('a ring of leaning panels held by chains from a mast', () => {
  const model = modelOf(low);
  const ring = leaves(low);
  const placed = ring.map(({ place }) => place);

  it('has in each chain what one leaf asks, the head guyed', () => {
    const mast = mastOf(low, 1.2, true);
    const found = forcesOf(model, placed, chainsTo(mast, ring), mast) as LinedForces;
    ring.forEach((leaf, k) => {
      const byHand = pullByHand(low, leaf, mast.head);
      expect(Math.abs((found.pulls[k] as number) / byHand - 1)).toBeLessThan(1e-9);
      expect(Math.abs((found.pulls[k] as number) / (byHand * (1 + 1e-8)) - 1)).toBeGreaterThan(
        1e-9,
      );
    });
  });

  it('falls over with the head of a mast that only those chains hold: the panels follow it', () => {
    const mast = mastOf(low, 1.2, false);
    expect(forcesOf(model, placed, chainsTo(mast, ring), mast)).toBeNull();
  });

  it('holds that head once the course is closed, pulling alike on its five sides', () => {
    const base = new Set(baseSupports(low).map(({ hub }) => hub));
    const closed = [...Array(placeCount(low)).keys()].filter((place) =>
      hubsOf(low, place as PlaceId).some((hub) => base.has(hub)),
    );
    const mast = mastOf(low, 1.2, false);
    const found = forcesOf(model, closed, chainsTo(mast, ring), mast) as LinedForces;
    const sorted = [...found.pulls].sort((a, b) => a - b);
    for (let k = 0; k < sorted.length; k += 5)
      expect((sorted[k + 4] as number) - (sorted[k] as number)).toBeLessThan(1e-8);
    // What presses on the mast is what hangs on it: the chains' downward parts.
    const down = ring.reduce((sum, { top }, k) => {
      const at = pointAt(low.hubs, top);
      return sum + ((found.pulls[k] as number) * (mast.head[2] - at[2])) / distance(mast.head, at);
    }, 0);
    expect(down).toBeGreaterThan(1);
    expect(Math.abs(found.mast / down - 1)).toBeLessThan(1e-9);
    expect(Math.abs(found.mast / (down * (1 + 1e-8)) - 1)).toBeGreaterThan(1e-9);
  });

  it('pulls the head of a mast without guys over where chains are missing on one side', () => {
    const half = ring.filter(({ top }) => (low.hubs[3 * top] as number) > 0);
    const mast = mastOf(low, 1.2, false);
    const chains = chainsTo(mast, half);
    const stand = half.map(({ place }) => place);
    expect(forcesOf(model, stand, chains, mast)).toBeNull();
    expect(forcesOf(model, stand, chains, { ...mast, guyed: true })).not.toBeNull();
  });

  it('balances forces and moments of everything that holds it, to rounding', () => {
    const mast = mastOf(low, 1.2, true);
    const chains = chainsTo(mast, ring);
    const lined = linedFrame(frameOfStage(low, { placed }), chains, mast);
    const load = onJoints(model, lined.tied, weightOf(model, placed));
    const found = new OneWayStage(lined).under(load) as LinedForces;
    let [force, moment]: [Vec3, Vec3] = [
      [0, 0, 0],
      [0, 0, 0],
    ];
    lined.tied.joints.hub.forEach((hub, joint) => {
      const at = pointAt(low.hubs, hub);
      const one = add(pointAt(load, joint), pointAt(found.held, joint));
      force = add(force, one);
      moment = add(moment, cross(at, one));
    });
    chains.forEach(({ hub, to }, k) => {
      const at = pointAt(low.hubs, hub);
      const one = scale(normalize(subtract(to, at)), found.pulls[k] as number);
      force = add(force, one);
      moment = add(moment, cross(at, one));
    });
    const size = MASS * 9.80665 * placed.length;
    expect(norm(force) / size).toBeLessThan(1e-10);
    expect(norm(moment) / size).toBeLessThan(1e-10);
    expect(norm(scale(add(force, [0, 0, 1e-9 * size]), 1 / size))).toBeGreaterThan(1e-10);
  });
});
