// A whole shell of the demo's size against CalculiX CrunchiX 2.20 (G. Dhondt and K. Wittig, a
// general-purpose finite-element program, Debian package calculix-ccx): 4V, radius 2.743 m, seven rows
// of hubs down to a pinned base, aluminium panels 3 mm thick as membranes (its M3D3) and flanges as
// bars on every side (its T3D2), under a load down and a wind that presses one side. Its input
// and what it printed are committed and compared; where it is installed it is run again.

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Structure } from '../../src/frame/structure.ts';
import { vectorArea } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { ballTruss } from '../frame/ball-truss.ts';
import { ball, rowsOf, tiers } from '../frame/fixtures.ts';
import { off, rest } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

const data = (name: string): string => fileURLToPath(new URL(`data/${name}`, import.meta.url));

const RADIUS = 2.743;
const YOUNG = 7e10;
const POISSON = 0.33;
const THICKNESS = 0.003;
const AREA = 3e-4;

const shell = ball(4);
const places = tiers(shell, 0, 7);
const row = rowsOf(shell);
const standing = [...row.keys()].filter((hub) => row[hub] >= 0 && row[hub] <= 7);
const base = standing.filter((hub) => row[hub] === 7);
const hubs = shell.hubs.map((x) => Number((x * RADIUS).toFixed(9)));
const bars = ballTruss(shell, places, base).elements.map(
  ({ nodes }) => [nodes[0], nodes[1]] as [number, number],
);

const structure: Structure = {
  nodes: hubs,
  elements: [
    ...places.map((p) => ({
      kind: 'membrane' as const,
      nodes: [...shell.sideHub.slice(3 * p, 3 * p + 3)] as never,
      thickness: THICKNESS,
      young: YOUNG,
      poisson: POISSON,
    })),
    ...bars.map((nodes) => ({ kind: 'bar' as const, nodes, area: AREA, young: YOUNG })),
  ],
  held: base.map((node) => ({ node, directions: null })),
};

/** Each panel 90 N down, and pressed by 400 Pa where it faces x, sucked by 250 Pa elsewhere. */
const load = new Float64Array(2 * hubs.length);
for (const p of places) {
  const area = vectorArea(shell, p as PlaceId).map((x) => x * RADIUS * RADIUS);
  const pressure = area[0] > 0.1 * Math.hypot(...area) ? 400 : -250;
  for (let s = 3 * p; s < 3 * p + 3; s++)
    for (let k = 0; k < 3; k++)
      load[6 * shell.sideHub[s] + k] += (-pressure * area[k] - (k === 2 ? 90 : 0)) / 3;
}
for (let i = 0; i < load.length; i++) load[i] = Number(load[i].toFixed(6));

/** Lines of at most 16 numbers a line. */
const inLines = (numbers: readonly number[]): string[] => {
  const lines: string[] = [];
  for (let i = 0; i < numbers.length; i += 16) lines.push(numbers.slice(i, i + 16).join(', '));
  return lines;
};

/** The model as the program reads it; hubs count from 1. */
function input(): string {
  const lines = ['*HEADING', 'A shell of membranes and bars', '*NODE, NSET=HUBS'];
  for (const hub of standing) lines.push([hub + 1, ...hubs.slice(3 * hub, 3 * hub + 3)].join(', '));
  lines.push('*ELEMENT, TYPE=M3D3, ELSET=PANELS');
  places.forEach((p, e) => {
    const own = [...shell.sideHub.slice(3 * p, 3 * p + 3)].map((hub) => hub + 1);
    lines.push([e + 1, ...own].join(', '));
  });
  lines.push('*ELEMENT, TYPE=T3D2, ELSET=FLANGES');
  bars.forEach(([a, b], e) => {
    lines.push([places.length + e + 1, a + 1, b + 1].join(', '));
  });
  lines.push('*MATERIAL, NAME=ALUMINIUM', '*ELASTIC', `${YOUNG}., ${POISSON}`);
  lines.push('*MEMBRANE SECTION, ELSET=PANELS, MATERIAL=ALUMINIUM', `${THICKNESS}`);
  lines.push('*SOLID SECTION, ELSET=FLANGES, MATERIAL=ALUMINIUM', `${AREA}`);
  lines.push('*NSET, NSET=BASE', ...inLines(base.map((hub) => hub + 1)));
  lines.push('*BOUNDARY', 'BASE, 1, 3', '*STEP', '*STATIC', '*CLOAD');
  for (const hub of standing)
    for (let k = 0; k < 3; k++)
      if (row[hub] < 7 && load[6 * hub + k] !== 0)
        lines.push(`${hub + 1}, ${k + 1}, ${load[6 * hub + k]}`);
  lines.push('*NODE PRINT, NSET=HUBS', 'U', '*END STEP', '');
  return lines.join('\n');
}

/** Movements printed, hub → (x, y, z). */
function printed(text: string): Map<number, number[]> {
  const moved = new Map<number, number[]>();
  for (const line of text.split('\n')) {
    const numbers = line.trim().split(/\s+/).map(Number);
    if (numbers.length === 4 && numbers.every(Number.isFinite))
      moved.set(numbers[0] - 1, numbers.slice(1));
  }
  return moved;
}

describe('a whole shell of membranes and bars', () => {
  const text = readFileSync(data('whole-shell.inp'), 'utf8');
  const theirs = printed(readFileSync(data('whole-shell.dat'), 'utf8'));
  const ours = rest(structure, load);

  it('is the one whose input is committed: every hub, panel, bar and load', () => {
    expect(input()).toBe(text);
    expect(theirs.size).toBe(standing.length);
    expect(places).toHaveLength(200);
  });

  it('moves everywhere within 0.5 % of what the program printed, in fact within 1e-5', () => {
    const list = standing.flatMap((hub) => [...ours.moved.slice(6 * hub, 6 * hub + 3)]);
    const wanted = standing.flatMap((hub) => theirs.get(hub) as number[]);
    checked({ got: list, expected: wanted, ofLargest: 1e-5 });
    expect(
      off(
        list.map((x) => x * 1.05),
        wanted,
      ),
    ).toBeGreaterThan(0.005);
    expect(ours.leftOver).toBeLessThan(1e-9);
  });

  it('is printed again by the program itself, where it is installed', (context) => {
    const folder = mkdtempSync(join(tmpdir(), 'shellraise-elements-'));
    try {
      writeFileSync(join(folder, 'shell.inp'), input());
      const run = spawnSync('ccx', ['shell'], { cwd: folder, encoding: 'utf8' });
      if (run.error) context.skip('ccx is not installed (Debian: calculix-ccx)');
      const again = printed(readFileSync(join(folder, 'shell.dat'), 'utf8'));
      for (const hub of standing)
        expect(off(again.get(hub) as number[], theirs.get(hub) as number[]) || 0).toBeLessThan(
          row[hub] === 7 ? Infinity : 1e-4,
        );
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
