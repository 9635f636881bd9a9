import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import { nameNet } from '../../src/identify/name-net.ts';
import { seededRandom } from '../../src/math/random.ts';
import { divisions } from '../../src/nets/division.ts';
import { netShell, shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { movedNet } from '../../src/nets/moved.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { SolidName } from '../../src/nets/solid.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { partOf } from '../../src/shell/part.ts';
import { rims } from '../../src/shell/rims.ts';
import { readKinds, truthOf } from './piles.ts';

const nets: readonly (readonly [SolidName, number, number])[] = (
  ['icosahedron', 'octahedron', 'tetrahedron'] as const
).flatMap((solid) =>
  (
    [
      [1, 0],
      [2, 0],
      [3, 0],
      [4, 0],
      [7, 0],
      [1, 1],
      [2, 2],
      [3, 3],
      [2, 1],
      [1, 2],
      [4, 1],
      [1, 4],
      [5, 3],
      [3, 5],
    ] as const
  ).map(([b, c]) => [solid, b, c] as const),
);

test.each(nets)('the %s divided (%i, %i) has its own name', (solid, b, c) => {
  expect(nameNet(truthOf(b, c, solid).shell, 1e-6)?.subdivision).toMatchObject({ solid, b, c });
});

test('49 places a face are (7, 0) or (5, 3): told apart by the way from hub to hub', () => {
  expect(nameNet(truthOf(7, 0).shell, 1e-6)?.subdivision).toMatchObject({ b: 7, c: 0 });
  expect(nameNet(truthOf(5, 3).shell, 1e-6)?.subdivision).toMatchObject({ b: 5, c: 3 });
});

test('each division of a net is named by itself where sides are known to a micrometre', () => {
  for (const b of [4, 6])
    for (const division of divisions) {
      const { shell } = netShell({ solid: 'icosahedron', b, c: 0, division }, 2.7);
      expect(nameNet(shell, 1e-6)?.subdivision.division).toBe(division);
    }
});

test('divisions that the readings can’t tell apart are all named, in the order of the list', () => {
  const { shell } = netShell({ solid: 'icosahedron', b: 4, c: 0, division: 'equal arcs' }, 2.7);
  expect(nameNet(shell, 3e-4)?.subdivision.division).toBe(
    'equal arcs or equal arcs by great circles',
  );
  expect(nameNet(shell, 0.1)?.subdivision.division).toBe(divisions.join(' or '));
  expect(nameNet(truthOf(2, 0).shell, 1e-6)?.subdivision.division).toBe(divisions.join(' or '));
});

test('a name does not depend on the size', () => {
  for (const radius of [1e-6, 1, 1e6]) {
    const { shell } = netShell(
      { solid: 'icosahedron', b: 3, c: 1, division: 'equal chords' },
      radius,
    );
    expect(nameNet(shell, 1e-6 * radius)?.subdivision).toMatchObject({ b: 3, c: 1 });
  }
});

test('a net moved off its rule by two per cent of a side has no name at 0.3 mm, but at 30 mm', () => {
  for (const [b, c] of [
    [4, 0],
    [3, 1],
  ] as const) {
    const net = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
    const moved = movedNet(net, { solid: 'icosahedron', fraction: 0.02, random: seededRandom(4) });
    const { shell } = shellOfNet(moved, 2.7);
    expect(nameNet(shell, 3e-4)).toBeNull();
    expect(nameNet(shell, 3e-2)?.subdivision).toMatchObject({ b, c });
  }
});

test('of the four twins of (4, 0) one has the name, the others have none', () => {
  const { shapes } = identify({ kinds: readKinds(truthOf(4, 0), 2e-4, 3), groups: [] });
  const names = shapes.map(({ subdivision }) => subdivision?.b ?? null);
  expect(names.filter((b) => b === 4)).toHaveLength(1);
  expect(names.filter((b) => b === null)).toHaveLength(3);
});

test('what is not closed, or not of triangles alone, has no name', () => {
  const { shell } = truthOf(3, 0);
  const places = Array.from({ length: 100 }, (_, p) => p as PlaceId);
  const part = partOf(shell, places).shell;
  expect(rims(part).length).toBeGreaterThan(0);
  expect(nameNet(part, 1e-6)).toBeNull();
  for (const name of ['cube', 'truncated icosahedron', 'icosidodecahedron'] as const)
    expect(nameNet(shellOfNet(mixedNet(name), 2.7).shell, 1e-6)).toBeNull();
});
