// How many mechanisms, and how soft. Source: table "D1 rank of rigidity matrix" of the project's
// reference notes, their own computation in double precision (singular values of the full matrix),
// made without this code. Behind it: J. C. Maxwell, Phil. Mag. 27 (1864) 294 and C. R. Calladine,
// Int. J. Solids Struct. 14 (1978) 161 (counting); A. Cauchy (1813) and M. Dehn, Math. Ann. 77 (1916)
// 466 (a convex closed surface of triangles is stiff); T. Tarnai, Int. J. Solids Struct. 16 (1980)
// 347, from memory (rings of an even number move though the count says no).

import { describe, expect, it } from 'vitest';
import { mechanisms } from '../../src/frame/mechanisms.ts';
import { netShell, shellOfNet } from '../../src/nets/kinds.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { ball, heldRow, hinged, rowsOf, tiers } from '../frame/fixtures.ts';
import { checked } from './data/checked.ts';

const WHOLE = 6;

/** All places but those given. */
const without = (shell: Shell, left: readonly number[]): number[] =>
  [...Array(placeCount(shell)).keys()].filter((p) => !left.includes(p));

/** Places around a hub with so many of them. */
function around(shell: Shell, corners: number): number[] {
  for (let hub = 0; ; hub++) {
    const places = [...Array(placeCount(shell)).keys()].filter((p) =>
      hubsOf(shell, p as PlaceId).some((one) => one === hub),
    );
    if (places.length === corners) return places;
  }
}

const adjacent = (shell: Shell): number[] => [
  shell.sidePlace[shell.seams[0]],
  shell.sidePlace[shell.seams[1]],
];

describe('a closed ball of triangles that hangs free', () => {
  for (const [b, least] of [
    [1, 0.765367],
    [2, 0.416984],
    [3, 0.28196],
    [4, 0.211685],
  ])
    it(`of ${b}V has no mechanism but its six movements as a whole`, () => {
      const found = mechanisms(hinged(ball(b)));
      expect(found.count).toBe(WHOLE);
      checked({ got: found.softest as number, expected: least, within: 5e-7 });
    });

  it('of the octahedron likewise', () => {
    const { shell } = netShell({ solid: 'octahedron', b: 1, c: 0, division: 'equal chords' }, 1);
    expect(mechanisms(hinged(shell)).count).toBe(WHOLE);
    expect(mechanisms(hinged(shell)).softest).toBeCloseTo(1, 9);
  });
});

describe('a hole in it with a rim of h sides', () => {
  const cases: readonly [string, number, (shell: Shell) => number[], number | null][] = [
    ['one panel', 3, () => [0], null],
    ['two neighbours', 4, adjacent, null],
    ['five round a hub', 5, (shell) => around(shell, 5), null],
    ['six round a hub', 6, (shell) => around(shell, 6), null],
  ];
  for (const b of [2, 3, 4])
    for (const [name, h, left] of cases)
      it(`leaves h − 3 = ${h - 3} mechanisms: ${b}V without ${name}`, () => {
        const shell = ball(b);
        const model = hinged(shell, { placed: without(shell, left(shell)) });
        expect(mechanisms(model, { softest: false }).count).toBe(WHOLE + h - 3);
      });

  it('is as soft as the table says: 2V without five round a hub, 4V without two neighbours', () => {
    const two = ball(2);
    expect(mechanisms(hinged(two, { placed: without(two, around(two, 5)) })).softest).toBeCloseTo(
      0.419534,
      5,
    );
    const four = ball(4);
    expect(mechanisms(hinged(four, { placed: without(four, adjacent(four)) })).softest).toBeCloseTo(
      0.211685,
      5,
    );
  });
});

describe('a dome from the top to a pinned row', () => {
  for (const [b, to, least] of [
    [2, 3, 0.33412],
    [3, 4, 0.261571],
    [3, 5, 0.187679],
    [4, 6, 0.16772],
  ])
    it(`of ${b}V, rows 0 to ${to}, has none and is as soft as ${least}`, () => {
      const shell = ball(b);
      const model = hinged(shell, { placed: tiers(shell, 0, to), supports: heldRow(shell, to) });
      const found = mechanisms(model);
      expect(found.count).toBe(0);
      checked({ got: found.softest as number, expected: least, within: 1e-6 });
    });

  for (const [b, to, mechanismsOf] of [
    [2, 1, 2],
    [2, 3, 7],
    [3, 2, 7],
    [3, 4, 12],
    [4, 3, 12],
    [4, 6, 17],
  ])
    it(`hanging free, of ${b}V, rows 0 to ${to}, has ${mechanismsOf}: its rim less three`, () => {
      const shell = ball(b);
      const found = mechanisms(hinged(shell, { placed: tiers(shell, 0, to) }), { softest: false });
      expect(found.count).toBe(WHOLE + mechanismsOf);
    });
});

describe('a band with its lower row pinned and its upper rim free', () => {
  for (const [b, from, to, count, least] of [
    [2, 1, 3, 0, 0.109505],
    [2, 2, 3, 1, 0.069957],
    [3, 1, 4, 0, 0.060398],
    [3, 2, 4, 0, 0.012394],
    [3, 3, 4, 0, 0.014454],
    [3, 1, 5, 0, 0.033203],
    [3, 2, 5, 0, 0.001878],
    [3, 3, 5, 0, 0.000415],
    [3, 4, 5, 0, 0.014787],
    [4, 1, 6, 0, 0.024056],
    [4, 2, 6, 0, 0.000845],
    [4, 3, 6, 0, 0.000763],
    [4, 4, 6, 1, 0.000672],
    [4, 5, 6, 1, 0.016828],
  ])
    it(`of ${b}V, rows ${from} to ${to}: ${count} mechanisms, next softest ${least}`, () => {
      const shell = ball(b);
      const model = hinged(shell, { placed: tiers(shell, from, to), supports: heldRow(shell, to) });
      const found = mechanisms(model);
      expect(found.count).toBe(count);
      checked({ got: found.softest as number, expected: least, within: 1e-6 });
      for (const mode of found.modes) expect(rowsOf(shell)[mode.hub]).toBeLessThan(to);
    });
});

describe('a ring of triangles between two n-gons, the lower pinned', () => {
  for (const [n, count, least] of [
    [3, 0, 0.4417],
    [4, 1, 0.63031],
    [5, 0, 0.217246],
    [6, 1, 0.284445],
    [7, 0, 0.094019],
    [8, 1, 0.135325],
    [9, 0, 0.048458],
    [10, 1, 0.074118],
    [11, 0, 0.028099],
    [12, 1, 0.044765],
  ])
    it(`has ${count} mechanism${count === 1 ? '' : 's'} with n = ${n}`, () => {
      const found = mechanisms(antiprism(n));
      expect(found.count).toBe(count);
      checked({ got: found.softest as number, expected: least, within: 1e-6 });
    });

  it('tells even from odd: the softest odd ring is no mechanism at a hundred times the limit', () => {
    expect((mechanisms(antiprism(11)).softest as number) ** 2).toBeGreaterThan(100 * 1e-10);
  });
});

/** Lower n-gon of radius 1, upper of 0.8 at height 0.4 turned by half a step. */
function antiprism(n: number) {
  const hubs: number[] = [];
  for (const [radius, z, turn] of [
    [1, 0, 0],
    [0.8, 0.4, 0.5],
  ])
    for (let i = 0; i < n; i++) {
      const angle = (2 * Math.PI * (i + turn)) / n;
      hubs.push(radius * Math.cos(angle), radius * Math.sin(angle), z);
    }
  const places: number[][] = [];
  for (let i = 0; i < n; i++) {
    const next = (i + 1) % n;
    places.push([i, next, n + i], [next, n + next, n + i]);
  }
  const { shell } = shellOfNet({ hubs: Float64Array.from(hubs), places }, 1);
  const supports = [...Array(n).keys()].map((hub) => ({ hub, stiffness: null }));
  return hinged(shell, { supports });
}
