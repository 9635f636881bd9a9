// Paper nets of polyhedra whose fold angles are published (textbook values from memory: tetrahedron
// 70.528779°, octahedron 109.471221°, cube 90°, icosahedron 138.189685°, dodecahedron 116.565051°, truncated
// icosahedron 138.189685° and 142.622632°); and Euler's formula, hubs − edges + faces = 2, once the pieces
// are stuck together again by what their sides say.

import { expect, test } from 'vitest';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';
import type { SolidName } from '../../src/nets/solid.ts';
import type { GridPoint } from '../../src/patterns/grid.ts';
import { type PaperNet, paperNet } from '../../src/patterns/paper-net.ts';
import { dihedralAngles } from '../../src/shell/angles.ts';
import type { Shell } from '../../src/shell/shell.ts';
import { checked } from './data/checked.ts';

const regular = (solid: SolidName): Net =>
  namedNet({ solid, b: 1, c: 0, division: 'equal chords' });
const cases: [string, Net, number[]][] = [
  ['tetrahedron', regular('tetrahedron'), [70.528779]],
  ['octahedron', regular('octahedron'), [109.471221]],
  ['icosahedron', regular('icosahedron'), [138.189685]],
  ['cube', mixedNet('cube'), [90]],
  ['dodecahedron', mixedNet('dodecahedron'), [116.565051]],
  ['truncated icosahedron', mixedNet('truncated icosahedron'), [138.189685, 142.622632]],
];

const netOf = (shell: Shell, scale: number): PaperNet => {
  const net = paperNet(shell, { scale, room: [176, 230], tab: 5, tries: 2 });
  if (!net.ok) throw new Error(net.reason);
  return net;
};

test.each(cases)(
  'every fold of the net of a %s is the published one, a ridge',
  (_, made, expected) => {
    const { shell } = shellOfNet(made, 2);
    const folds = netOf(shell, 40).pieces.flatMap((piece) => piece.folds);
    expect(folds.length).toBeGreaterThanOrEqual(shell.kind.length - 1);
    expect(new Set(folds.map(({ way }) => way))).toEqual(new Set(['mountain']));
    const degrees = folds.map(({ dihedral }) => (dihedral * 180) / Math.PI);
    const nearest = degrees.map((angle) =>
      expected.reduce((best, one) => (Math.abs(one - angle) < Math.abs(best - angle) ? one : best)),
    );
    checked({ got: degrees, expected: nearest, within: 1e-6 });
    expect(new Set(nearest).size).toBe(expected.length);
    expect(
      degrees.every((angle, i) => Math.abs(angle + 1e-5 - (nearest[i] as number)) > 1e-6),
    ).toBe(true);
  },
);

test.each(cases)(
  'the pieces of a %s stuck together again have hubs − edges + faces = 2',
  (_, made) => {
    const { shell } = shellOfNet(made, 2);
    checked({ got: eulerOf(shell, netOf(shell, 18)), expected: 2, within: 0 });
  },
);

test('a lost face is found out', () => {
  const { shell } = shellOfNet(regular('icosahedron'), 2);
  const net = netOf(shell, 18);
  const [first, ...rest] = net.pieces as [PaperNet['pieces'][0], ...PaperNet['pieces'][0][]];
  const less = { ...net, pieces: [{ ...first, faces: first.faces.slice(1) }, ...rest] };
  expect(eulerOf(shell, less)).not.toBe(2);
});

test('folded by its angle each pair of faces has the distance of its far corners in the solid', () => {
  const { shell } = shellOfNet(mixedNet('truncated icosahedron'), 2);
  const net = netOf(shell, 40);
  const dihedrals = dihedralAngles(shell);
  let [seen, worst] = [0, 0];
  for (const { faces, folds } of net.pieces) {
    const at = new Map(faces.map((face) => [face.place as number, face.corners]));
    for (const { side, dihedral, atTab, ends } of folds) {
      if (atTab) continue;
      const mate = shell.mate[side] as number;
      const [a, b] = [side, mate].map((s) => ({
        corners: at.get(shell.sidePlace[s] as number) as readonly GridPoint[],
        from: s - (shell.placeStart[shell.sidePlace[s] as number] as number),
      }));
      if (!a || !b) throw new Error('both faces lie in the piece');
      const p = fromFold(a.corners[(a.from + 2) % a.corners.length] as GridPoint, ends);
      const q = fromFold(b.corners[(b.from + 2) % b.corners.length] as GridPoint, ends);
      const folded = Math.hypot(
        p.along - q.along,
        p.off - q.off * Math.cos(dihedral),
        q.off * Math.sin(dihedral),
      );
      const hub = (s: number, i: number, n: number): number[] => {
        const start = shell.placeStart[shell.sidePlace[s] as number] as number;
        const h = shell.sideHub[start + ((i + 2) % n)] as number;
        return Array.from(shell.hubs.subarray(3 * h, 3 * h + 3));
      };
      const [u, v] = [hub(side, a.from, a.corners.length), hub(mate, b.from, b.corners.length)];
      const true_ = Math.hypot(...u.map((x, i) => x - (v[i] as number))) * 25_000;
      worst = Math.max(worst, Math.abs(folded - true_));
      seen++;
    }
  }
  expect(seen).toBe(shell.kind.length - net.pieces.length);
  expect(dihedrals.length).toBe(90);
  // Within 0.01 mm, being on a grid of micrometres.
  expect(worst).toBeLessThan(10);
  expect(worst).toBeGreaterThan(0.01);
});

/** How far along a fold a point lies, and how far off it, micrometres. */
function fromFold([x, y]: GridPoint, [[ax, ay], [bx, by]]: readonly [GridPoint, GridPoint]) {
  const length = Math.hypot(bx - ax, by - ay);
  const [ux, uy] = [(bx - ax) / length, (by - ay) / length];
  return {
    along: (x - ax) * ux + (y - ay) * uy,
    off: Math.abs((y - ay) * ux - (x - ax) * uy),
  };
}

/** Corners joined wherever two sides meet, edges where faces meet in a fold or are stuck by tab or tape. */
function eulerOf(shell: Shell, net: PaperNet): number {
  const faces = net.pieces.flatMap((piece) => piece.faces.map(({ place }) => place as number));
  const own = new Set(faces);
  const parent = Array.from(shell.sideHub.keys());
  const root = (s: number): number => {
    let at = s;
    while (parent[at] !== at) at = parent[at] as number;
    return at;
  };
  const next = (s: number): number => {
    const p = shell.sidePlace[s] as number;
    return s + 1 < (shell.placeStart[p + 1] as number) ? s + 1 : (shell.placeStart[p] as number);
  };
  const joined = new Set<number>();
  const cut = net.pieces.flatMap(({ folds, edges }) => [
    ...folds.map(({ side }) => side as number),
    ...edges.filter(({ meets }) => meets !== 'nothing').map(({ side }) => side as number),
  ]);
  for (const side of cut) {
    const mate = shell.mate[side] as number;
    if (!own.has(shell.sidePlace[side] as number) || !own.has(shell.sidePlace[mate] as number))
      continue;
    joined.add(Math.min(side, mate));
    parent[root(side)] = root(next(mate));
    parent[root(next(side))] = root(mate);
  }
  const sides = Array.from(shell.sidePlace.keys()).filter((s) =>
    own.has(shell.sidePlace[s] as number),
  );
  const hubs = new Set(sides.map(root)).size;
  const edges = sides.length - joined.size;
  return hubs - edges + faces.length;
}
