// Textbook facts of closed surfaces: Euler's V − E + F = 2, Descartes' total angular defect of 720°,
// and for a part with one rim the defects inside plus (180° − corners) along the rim make 360°
// (Gauss–Bonnet). Hubs, seams and panels by H. S. M. Coxeter (1972): icosahedral 10 T + 2, 30 T,
// 20 T; octahedral 4 T + 2, 12 T, 8 T; tetrahedral 2 T + 2, 6 T, 4 T, with T = b² + bc + c².

import { describe, expect, test } from 'vitest';
import { toDegrees } from '../../src/math/angle.ts';
import type { Division } from '../../src/nets/division.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet, mixedNetNames } from '../../src/nets/mixed.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';
import type { SolidName } from '../../src/nets/solid.ts';
import { hubCount, placeCount, seamCount } from '../../src/shell/shell.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';
import { checked } from './data/checked.ts';

const icosahedral: [number, number, number, number, number][] = [
  [1, 0, 12, 30, 20],
  [2, 0, 42, 120, 80],
  [3, 0, 92, 270, 180],
  [4, 0, 162, 480, 320],
  [5, 0, 252, 750, 500],
  [6, 0, 362, 1080, 720],
  [1, 1, 32, 90, 60],
  [2, 2, 122, 360, 240],
  [3, 3, 272, 810, 540],
  [2, 1, 72, 210, 140],
  [3, 1, 132, 390, 260],
  [3, 2, 192, 570, 380],
];
const named = (solid: SolidName, b: number, c: number, division: Division = 'equal chords'): Net =>
  namedNet({ solid, b, c, division });

const all: [string, Net][] = [
  ...icosahedral.map(([b, c]): [string, Net] => [`(${b}, ${c})`, named('icosahedron', b, c)]),
  ['(4, 0) by equal arcs', named('icosahedron', 4, 0, 'equal arcs')],
  ['(4, 0) by great circles', named('icosahedron', 4, 0, 'equal arcs by great circles')],
  ['octahedral (3, 1)', named('octahedron', 3, 1)],
  ['tetrahedral (2, 2)', named('tetrahedron', 2, 2)],
  ...mixedNetNames.map((name): [string, Net] => [name, mixedNet(name)]),
];
const DEFECT = 1e-7;

test.each(icosahedral)(
  '(%i, %i) has %i hubs, %i seams and %i panels',
  (b, c, hubs, seams, panels) => {
    const { shell } = shellOfNet(named('icosahedron', b, c), 1);
    expect([hubCount(shell), seamCount(shell), placeCount(shell)]).toEqual([hubs, seams, panels]);
  },
);

test.each([
  ['octahedron', 4, 12, 8],
  ['tetrahedron', 2, 6, 4],
] as const)('a net of the %s has %i T + 2 hubs, %i T seams and %i T panels', (solid, v, e, f) => {
  for (const [b, c] of icosahedral) {
    const { shell } = shellOfNet(named(solid, b, c), 1);
    const t = b * b + b * c + c * c;
    expect([hubCount(shell), seamCount(shell), placeCount(shell)]).toEqual([
      v * t + 2,
      e * t,
      f * t,
    ]);
  }
});

describe.each(all)('%s', (_, net) => {
  const { shell, kinds } = shellOfNet(net, 1);
  const corners = kinds.map(({ sides }) => {
    const polygon = polygonOnSphere(sides, 1);
    if (!polygon.ok) throw new Error(polygon.why.reason);
    return polygon;
  });

  test('hubs − seams + panels = 2', () => {
    expect(hubCount(shell) - seamCount(shell) + placeCount(shell)).toBe(2);
  });
  test('the plane corners fall short of 360° by 720° in all; ten times the tolerance is refused', () => {
    const plane = kinds.map(({ count }, k) => count * sum(corners[k]?.planeCorners ?? []));
    const defect = 360 * hubCount(shell) - toDegrees(sum(plane));
    checked({ got: defect, expected: 720, within: DEFECT });
    expect(Math.abs(defect - 720 - 10 * DEFECT)).toBeGreaterThan(DEFECT);
  });
  test('the corners on the sphere make 360° at every hub', () => {
    const total = new Float64Array(hubCount(shell));
    shell.sideHub.forEach((hub, side) => {
      const place = shell.sidePlace[side] as number;
      const first = shell.placeStart[place] as number;
      const polygon = corners[shell.kind[place] as number];
      const n = polygon?.corners.length ?? 0;
      const at = ((shell.turn[place] as number) + side - first) % n;
      total[hub] = (total[hub] as number) + (polygon?.corners[at] ?? Number.NaN);
    });
    for (const angle of total) expect(angle).toBeCloseTo(2 * Math.PI, 10);
  });
});

test('a dome cut from a shell has defects of 360° with its rim; ten times the tolerance is refused', () => {
  const net = named('icosahedron', 4, 0);
  const above = net.places.filter((place) =>
    place.every((hub) => (net.hubs[3 * hub + 2] as number) > -1e-9),
  );
  const turn = defectWithRim(net, above);
  checked({ got: turn, expected: 360, within: DEFECT });
  expect(Math.abs(turn - 360 - 10 * DEFECT)).toBeGreaterThan(DEFECT);
});

/** Defects inside plus turns along the rim, degrees. */
function defectWithRim(net: Net, places: readonly (readonly number[])[]): number {
  const { shell, kinds } = shellOfNet({ hubs: net.hubs, places }, 1);
  const full = new Map<number, number>();
  shell.sideHub.forEach((hub) => {
    full.set(hub, 360);
  });
  shell.mate.forEach((mate, side) => {
    if (mate < 0) full.set(shell.sideHub[side] as number, 180);
  });
  const corners = places.map((_, p) => {
    const polygon = polygonOnSphere(kinds[shell.kind[p] as number]?.sides ?? [], 1);
    return polygon.ok ? toDegrees(sum(polygon.planeCorners)) : Number.NaN;
  });
  return sum([...full.values()]) - sum(corners);
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
