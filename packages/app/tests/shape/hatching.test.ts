import { describe, expect, it } from 'vitest';
import { hatchOnPanels } from '../../src/drawing/shell-view/hatching.ts';
import type { Panels } from '../../src/drawing/shell-view/panels.ts';

/** One upright panel facing +x, its level side 15 m long as on paper 15 mm; left on paper is −y. */
const corners = Float64Array.from([0, 0, 0, 0, 15, 0, 0, 7.5, 12]);
const panel = {
  corners,
  start: Int32Array.from([0, 3]),
  kind: Int32Array.from([0]),
  normals: Float64Array.from([1, 0, 0]),
  edges: {
    ends: Float64Array.from([0, 0, 0, 0, 15, 0]),
    since: Int32Array.from([0]),
    joined: Int32Array.from([-1]),
  },
} as unknown as Panels;
const hatched = (name: 'level' | 'upright' | 'slant-left' | 'slant-right' | 'dots' | null) =>
  hatchOnPanels(panel, [name], Int32Array.from([0, 1, 2]), [0, 0, 0]);

describe('hatches on panels in space', () => {
  it('level lines are level, upright ones upright, seen from outside', () => {
    const across = (name: 'level' | 'upright', corner: number) =>
      hatched(name).spot[2 * corner + 1] as number;
    expect(across('level', 1)).toBeCloseTo(across('level', 0), 4);
    expect(Math.abs(across('level', 2) - across('level', 0))).toBeCloseTo(12 / 1.2, 3);
    expect(Math.abs(across('upright', 1) - across('upright', 0))).toBeCloseTo(15 / 1.2, 3);
  });

  it('a hatch that leans right is the mirror image of the one that leans left', () => {
    const right = hatched('slant-right').spot;
    const left = hatched('slant-left').spot;
    // A step to the right crosses as many lines of both; a step up crosses them the other way.
    const step = (spot: Float32Array, corner: number) =>
      (spot[2 * corner + 1] as number) - (spot[1] as number);
    const up = (spot: Float32Array) => step(spot, 2) - step(spot, 1) / 2;
    expect(Math.abs(step(left, 1))).toBeCloseTo(Math.abs(step(right, 1)), 3);
    expect(Math.sign(step(left, 1) * up(left))).toBe(-Math.sign(step(right, 1) * up(right)));
    // Leaning right (/): going right and going up undo each other.
    expect(Math.sign(step(right, 1) * up(right))).toBe(-1);
  });

  it('no hatch has no lines and no dots; dots have no lines', () => {
    expect([...hatched(null).ruling.slice(0, 2)]).toEqual([-1, -1]);
    expect([...hatched(null).dots]).toEqual(Array(9).fill(0));
    expect([...hatched('dots').ruling.slice(0, 2)]).toEqual([-1, -1]);
    expect(hatched('dots').dots[0]).toBeCloseTo(0.16 / 1.8, 6);
  });
});
