// Laws that hold whatever the frame: a dome that looks the same after a fifth of a turn answers a turned
// load with the turned answer (group representation of a linear structure: T. J. Healey, Comput. Struct.
// 28 (1988), from memory), a push on one hub moves another as a push there moves the one (J. C. Maxwell 1864, E. Betti 1872),
// and what holds a frame balances its load in force and moment. Expected values: by the law from the
// frame's own answer to the load that is not turned.

import { describe, expect, it } from 'vitest';
import { type FrameStands, frameAnswer, prepareFrame } from '../../src/frame/answer.ts';
import { frameOf } from '../../src/frame/from-shell.ts';
import type { FrameModel } from '../../src/frame/model.ts';
import { frameParts } from '../../src/frame/parts.ts';
import { unknownParts } from '../../src/frame/schema.ts';
import { cross, pointAt, rotateAbout, type Vec3 } from '../../src/math/vector.ts';
import { ball, heldRow, tiers } from '../frame/fixtures.ts';
import { checked } from './data/checked.ts';

const shell = ball(3);
const model: FrameModel = frameOf(shell, {
  placed: tiers(shell, 0, 4),
  supports: heldRow(shell, 4),
});
const prepared = prepareFrame(model, frameParts(unknownParts));
const FIFTH = (2 * Math.PI) / 5;

function under(forces: readonly (readonly [hub: number, force: Vec3])[]): FrameStands {
  const answer = frameAnswer(prepared, { weight: 0, hubForces: forces }, () => 8);
  if (answer.status !== 'stands') throw new Error(answer.status);
  return answer;
}

/** Hub → the hub a fifth of a turn on. */
function turned(hub: number): number {
  const q = rotateAbout(pointAt(model.hubs, hub), [0, 0, 1], FIFTH);
  for (let h = 0; 3 * h < model.hubs.length; h++)
    if (Math.hypot(...pointAt(model.hubs, h).map((x, k) => x - q[k])) < 1e-9) return h;
  throw new Error(`hub ${hub} has no other a fifth of a turn on`);
}

const free = [...new Set(model.panels.flatMap(({ hubs }) => hubs))].filter(
  (hub) => !model.supports.some((one) => one.hub === hub),
);
const PUSH: Vec3 = [120, -70, -310];
const [a, b] = [free[7] as number, free[19] as number];

describe('a dome of five equal fifths', () => {
  const one = under([[a, PUSH]]);

  it('answers a load that is turned by a fifth with movements turned by a fifth', () => {
    const other = under([[turned(a), rotateAbout(PUSH, [0, 0, 1], FIFTH)]]);
    const expected = free.flatMap((hub) => [
      ...rotateAbout(pointAt(one.moved, hub), [0, 0, 1], FIFTH),
    ]);
    const got = free.flatMap((hub) => [...pointAt(other.moved, turned(hub))]);
    checked({ got, expected, ofLargest: 1e-9 });
    const without = free.flatMap((hub) => [...pointAt(other.moved, hub)]);
    expect(
      Math.max(...without.map((x, i) => Math.abs(x - (expected[i] as number)))),
    ).toBeGreaterThan(1e-8 * Math.max(...expected.map(Math.abs)));
  });

  it('is held by forces that balance the load, and by moments that balance its moment', () => {
    const at = model.supports.map(({ hub }) => pointAt(model.hubs, hub));
    const sum = (list: readonly Vec3[]): number[] =>
      [0, 1, 2].map((k) => list.reduce((s, v) => s + v[k], 0));
    const forces = sum(one.reactions);
    checked({ what: 'N', got: forces, expected: PUSH.map((x) => -x), ofLargest: 1e-8 });
    const moments = sum(one.reactions.map((force, i) => cross(at[i] as Vec3, force)));
    const load = cross(pointAt(model.hubs, a), PUSH);
    checked({ what: 'N m', got: moments, expected: load.map((x) => -x), ofLargest: 1e-8 });
    expect(Math.abs(forces[2] * (1 + 1e-7) + PUSH[2])).toBeGreaterThan(1e-8 * Math.abs(PUSH[2]));
  });

  it('moves at one hub under a push on another as that does under a push on the one', () => {
    const up: Vec3 = [0, 0, 1000];
    const level: Vec3 = [1000, 0, 0];
    const got = under([[a, up]]).moved[3 * b];
    const expected = under([[b, level]]).moved[3 * a + 2];
    checked({ what: 'm', got, expected, ratio: 1e-8 });
    expect(Math.abs(got * (1 + 1e-7) - expected)).toBeGreaterThan(1e-8 * Math.abs(expected));
  });
});
