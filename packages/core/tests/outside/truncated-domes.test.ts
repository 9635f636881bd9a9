// Domes cut from class I icosahedral nets (equal chords) with a corner of the solid at the zenith.
// Source: table "A2 truncated domes" of the project's reference notes, their own computation in
// double precision from coordinates made without this code. The subdivision is Method 1 of
// J. D. Clinton, Advanced Structural Geometry Studies, Part I, NASA CR-1734 (1971). A dome f/3n
// keeps the triangles whose rows of hubs, counted from the zenith, are all at most f. Side classes
// are lettered from the shortest; a panel is its three classes in order of length.

import { describe, expect, it } from 'vitest';
import { arrangements, standingShell } from '../../src/arrange/arrangements.ts';
import type { WayUp } from '../../src/arrange/ways-up.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { hubCount, placeCount, type Shell, seamCount, sideCount } from '../../src/shell/shell.ts';
import { icosahedral, lengthLabels, pileKinds } from '../shell/fixtures.ts';

const DOMES = [
  {
    name: '2V 2/6',
    n: 2,
    hubs: 16,
    edges: 35,
    places: 20,
    base: 10,
    classes: { A: 20, B: 15 },
    panels: { AAB: 15, BBB: 5 },
    rim: { A: 10 },
    z: [0.447213595, 0.525731112],
    height: [0.474268888, 0.552786405],
  },
  {
    name: '2V 3/6',
    n: 2,
    hubs: 26,
    edges: 65,
    places: 40,
    base: 10,
    classes: { A: 30, B: 35 },
    panels: { AAB: 30, BBB: 10 },
    rim: { B: 10 },
    z: [-0.0, 0.0],
    height: [1.0, 1.0],
  },
  {
    name: '2V 4/6',
    n: 2,
    hubs: 36,
    edges: 95,
    places: 60,
    base: 10,
    classes: { A: 50, B: 45 },
    panels: { AAB: 45, BBB: 15 },
    rim: { A: 10 },
    z: [-0.525731112, -0.447213595],
    height: [1.447213595, 1.525731112],
  },
  {
    name: '3V 4/9',
    n: 3,
    hubs: 46,
    edges: 120,
    places: 75,
    base: 15,
    classes: { A: 30, B: 40, C: 50 },
    panels: { AAB: 30, BCC: 45 },
    rim: { C: 10, B: 5 },
    z: [0.171639307, 0.187592474],
    height: [0.812407526, 0.828360693],
  },
  {
    name: '3V 5/9',
    n: 3,
    hubs: 61,
    edges: 165,
    places: 105,
    base: 15,
    classes: { A: 30, B: 55, C: 80 },
    panels: { AAB: 30, BCC: 75 },
    rim: { B: 5, C: 10 },
    z: [-0.187592474, -0.171639307],
    height: [1.171639307, 1.187592474],
  },
  {
    name: '4V 6/12',
    n: 4,
    hubs: 91,
    edges: 250,
    places: 160,
    base: 20,
    classes: { A: 30, B: 60, C: 30, D: 30, E: 70, F: 30 },
    panels: { AAC: 30, BBC: 30, BDE: 60, EEF: 30, FFF: 10 },
    rim: { E: 20 },
    z: [-0.0, 0.0],
    height: [1.0, 1.0],
  },
  {
    name: '5V 7/15',
    n: 5,
    hubs: 126,
    edges: 350,
    places: 225,
    base: 25,
    classes: { A: 30, B: 60, C: 30, D: 30, E: 50, F: 10, G: 60, H: 50, I: 30 },
    panels: { AAD: 30, BBD: 30, BCG: 60, EEF: 20, EGH: 50, HHI: 25, III: 10 },
    rim: { E: 10, G: 10, I: 5 },
    z: [0.104352065, 0.111264317],
    height: [0.888735683, 0.895647935],
  },
  {
    name: '5V 8/15',
    n: 5,
    hubs: 151,
    edges: 425,
    places: 275,
    base: 25,
    classes: { A: 30, B: 60, C: 30, D: 30, E: 80, F: 20, G: 70, H: 70, I: 35 },
    panels: { AAD: 30, BBD: 30, BCG: 60, EEF: 40, EGH: 70, HHI: 35, III: 10 },
    rim: { G: 10, E: 10, I: 5 },
    z: [-0.111264317, -0.104352065],
    height: [1.104352065, 1.111264317],
  },
  {
    name: '6V 9/18',
    n: 6,
    hubs: 196,
    edges: 555,
    places: 360,
    base: 30,
    classes: { A: 30, B: 60, C: 30, D: 30, E: 60, F: 90, G: 130, H: 65, I: 60 },
    panels: { AAD: 30, BBD: 30, BCF: 60, EFG: 120, GGH: 60, HII: 60 },
    rim: { G: 20, H: 10 },
    z: [-0.0, 0.0],
    height: [1.0, 1.0],
  },
];

/** The table gives nine decimals. */
const TOLERANCE = 1e-9;

const letter = (c: number): string => String.fromCharCode(65 + c);
const tally = (items: readonly string[]): Record<string, number> => {
  const count: Record<string, number> = {};
  for (const item of items) count[item] = (count[item] ?? 0) + 1;
  return count;
};

/** The dome with so many places among all arrangements with a five-fold hub as crown. */
function dome(net: NetShell, places: number) {
  const kinds = pileKinds(net);
  const list = arrangements(net.shell, kinds, {
    leastFloor: 0,
    only: (way) => way.at === 'hub' && way.alike === 12,
  });
  const found = list.arrangements.filter((a) => a.cut.places.length === places);
  expect(found).toHaveLength(1);
  const { cut, wayUp } = found[0] as (typeof found)[number];
  return { cut, standing: standingShell(net.shell, list.waysUp[wayUp] as WayUp, cut) };
}

const sides = (shell: Shell, open: boolean): SideId[] =>
  [...Array(sideCount(shell)).keys()].filter(
    (s) => (shell.mate[s] as number) < 0 === open,
  ) as SideId[];

describe('truncated class I domes', () => {
  it.each(DOMES)('$name has the hubs, sides, panels and base of the table', (row) => {
    const net = icosahedral(row.n, 0);
    const { shell } = dome(net, row.places).standing;
    const labels = lengthLabels({ shell, kinds: net.kinds });
    const open = sides(shell, true);
    expect(hubCount(shell)).toBe(row.hubs);
    expect(placeCount(shell)).toBe(row.places);
    expect(seamCount(shell) + open.length).toBe(row.edges);
    expect(open).toHaveLength(row.base);
    const once = [...open, ...sides(shell, false).filter((s) => s < (shell.mate[s] as number))];
    expect(tally(once.map((s) => letter(labels[s] as number)))).toEqual(row.classes);
    expect(tally(open.map((s) => letter(labels[s] as number)))).toEqual(row.rim);
    const panels = [...Array(placeCount(shell)).keys()].map((p) =>
      [0, 1, 2]
        .map((i) => letter(labels[3 * p + i] as number))
        .sort()
        .join(''),
    );
    expect(tally(panels)).toEqual(row.panels);
  });

  it.each(DOMES)('$name stands at the heights of the table', (row) => {
    const { cut } = dome(icosahedral(row.n, 0), row.places);
    const off = [
      cut.baseZ.min - (row.z[0] as number),
      cut.baseZ.max - (row.z[1] as number),
      cut.height - (row.height[1] as number),
    ].map(Math.abs);
    expect(Math.max(...off)).toBeLessThan(TOLERANCE);
    // Ten times the tolerance off is refused.
    const wrong = (cut.baseZ.min + 10 * TOLERANCE - (row.z[0] as number)) as number;
    expect(Math.abs(wrong)).toBeGreaterThan(TOLERANCE);
  });

  it.each(DOMES)('$name holds to seams = (3F − B) / 2 and hubs = 1 + (F + B) / 2', (row) => {
    const { shell } = dome(icosahedral(row.n, 0), row.places).standing;
    expect(seamCount(shell)).toBe((3 * row.places - row.base) / 2);
    expect(hubCount(shell)).toBe(1 + (row.places + row.base) / 2);
  });
});
