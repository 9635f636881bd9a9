// Trusses on whole and cut balls. Source: table "C6 shell checks" of the project's reference notes,
// their own computation, made without this code. The closed ones are just stiff, so the forces do
// not depend on the bars.

import { describe, expect, it } from 'vitest';
import { naturalFrequencies } from '../../src/frame/buckling.ts';
import { prepare } from '../../src/frame/statics.ts';
import { vectorArea } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { placeCount, type Shell } from '../../src/shell/shell.ts';
import { ballTruss, hanging } from '../frame/ball-truss.ts';
import { ball, heldRow, rowsOf, tiers } from '../frame/fixtures.ts';
import { loadOn, rest } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

const all = (shell: Shell): number[] => [...Array(placeCount(shell)).keys()];

/** Pressure 1 from outside, each flat panel's share equally on its hubs. */
function pressed(shell: Shell): Float64Array {
  const load = new Float64Array(2 * shell.hubs.length);
  for (const p of all(shell)) {
    const area = vectorArea(shell, p as PlaceId);
    for (let s = 3 * p; s < 3 * p + 3; s++)
      for (let k = 0; k < 3; k++) load[6 * shell.sideHub[s] + k] -= area[k] / 3;
  }
  return load;
}

/** Force by length of bar, each pair once, six digits. */
function forcesByLength(b: number): [length: number, force: number][] {
  const shell = ball(b);
  const structure = hanging(ballTruss(shell, all(shell), []), 1e-8);
  const found = rest(structure, pressed(shell));
  const pairs = new Map<string, [number, number]>();
  structure.elements.forEach((element, e) => {
    if (element.kind !== 'bar') return;
    const [i, j] = element.nodes;
    const length = Math.hypot(
      ...[0, 1, 2].map((k) => shell.hubs[3 * i + k] - shell.hubs[3 * j + k]),
    );
    const force = found.forces[e][0];
    pairs.set(`${length.toFixed(6)} ${force.toFixed(5)}`, [length, force]);
  });
  return [...pairs.values()].sort((x, y) => Math.round(1e6 * (x[0] - y[0])) || x[1] - y[1]);
}

describe('a closed ball of bars under pressure from outside', () => {
  for (const [b, wanted] of [
    [2, [-0.160323, -0.154221]],
    [3, [-0.10716, -0.116494, -0.104534, -0.113991]],
    [4, [-0.078978, -0.088284, -0.073373, -0.086534, -0.086892, -0.087644]],
  ] as const)
    it(`of ${b}V carries in its bars, from the shortest, ${wanted.join(', ')} p R²`, () => {
      const forces = forcesByLength(b).map(([, force]) => force);
      checked({ got: forces, expected: wanted, ofLargest: 2e-5 });
      expect(forces).toHaveLength(wanted.length);
    });

  it('carries about p R L / 2√3 in each', () => {
    for (const [length, force] of forcesByLength(4))
      expect(Math.abs(force / (-length / (2 * Math.sqrt(3))) - 1)).toBeLessThan(0.16);
  });
});

describe('a 3V dome of five rows of nine, its base of fifteen hubs pinned', () => {
  const shell = ball(3);
  const row = rowsOf(shell);
  const base = heldRow(shell, 5).map(({ hub }) => hub);
  const structure = ballTruss(shell, tiers(shell, 0, 5), base);
  const top = row.indexOf(0);
  const between = (a: number, b: number): number[] =>
    [...structure.elements.keys()].filter((e) => {
      const rows = structure.elements[e].nodes.map((node) => row[node]).sort();
      return rows[0] === a && rows[1] === b;
    });

  it('sinks and carries as computed under a load on the crown', () => {
    const found = rest(structure, loadOn(structure, { [top]: [0, 0, -1] }));
    expect(found.moved[6 * top + 2]).toBeCloseTo(-3.800518, 6);
    for (const e of between(0, 1)) expect(found.forces[e][0]).toBeCloseTo(-1.147396, 6);
    for (const e of between(1, 1)) expect(found.forces[e][0]).toBeCloseTo(0.716609, 6);
  });

  it('sinks and carries as computed under a load on each of its 46 free hubs', () => {
    const free = [...row.keys()].filter((hub) => row[hub] >= 0 && row[hub] < 5);
    expect(free).toHaveLength(46);
    const loads = Object.fromEntries(free.map((hub) => [hub, [0, 0, -1]]));
    const found = rest(structure, loadOn(structure, loads));
    expect(found.moved[6 * top + 2]).toBeCloseTo(-6.357768, 6);
    const forces = found.forces.map(([force]) => force);
    expect(Math.min(...forces)).toBeCloseTo(-1.781335, 6);
    expect(Math.max(...forces)).toBeCloseTo(2.587007, 6);
    expect(base.reduce((sum, hub) => sum + found.reactions[6 * hub + 2], 0)).toBeCloseTo(46, 9);
  });

  it('swings as computed with a unit mass on each free hub', () => {
    const added = row.map((r) => (r >= 0 && r < 5 ? 1 : 0));
    const found = naturalFrequencies(prepare(structure), 6, 'lumped', added)!;
    const omega = found.values.map((f) => 2 * Math.PI * f);
    const wanted = [0.296464, 0.296464, 0.44521, 0.501917, 0.501917, 0.519096];
    checked({ got: omega, expected: wanted, ofLargest: 2e-6 });
    expect(found.complete).toBe(true);
  });
});
