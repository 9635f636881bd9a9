import { describe, expect, test } from 'vitest';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { endHubAt } from '../../src/shell/geometry.ts';
import type { SideId } from '../../src/shell/ids.ts';
import {
  hubAt,
  kindSide,
  makeShell,
  mateOf,
  nextSide,
  placeAt,
  placesByKind,
  previousSide,
  type ShellDraft,
  sideCount,
  sidesOf,
} from '../../src/shell/shell.ts';

/** Two triangles with a seam from hub 1 to hub 2. */
const pair: ShellDraft = {
  radius: 1,
  hubs: Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1, -1, 0, 0),
  places: [
    { hubs: [0, 1, 2], kind: 0, turn: 1 },
    { hubs: [2, 1, 3], kind: 0, turn: 0 },
  ],
};
const draft = (change: Partial<ShellDraft>) => (): unknown => makeShell({ ...pair, ...change });

describe('a shell', () => {
  test('has so many places of each kind; of kinds beyond those asked for nothing is told', () => {
    const { places } = pair;
    const three = { kind: Int32Array.of(0, 2, 0) } as unknown as Parameters<typeof placesByKind>[0];
    expect(placesByKind(makeShell(pair), 2)).toEqual([places.length, 0]);
    expect(placesByKind(three, 3)).toEqual([2, 0, 1]);
    expect(placesByKind(three, 2)).toEqual([2, 0]);
  });

  test('pairs the two sides of a seam, which run opposite ways, and leaves the others open', () => {
    const shell = makeShell(pair);
    expect([...shell.mate]).toEqual([-1, 3, -1, 1, -1, -1]);
    expect([...shell.seams]).toEqual([1, 3]);
    expect(mateOf(shell, 0 as SideId)).toBeNull();
  });

  test('walks round each of its places both ways, triangle, square or pentagon', () => {
    const { shell } = shellOfNet(mixedNet('rhombicosidodecahedron'), 2);
    for (let s = 0; s < sideCount(shell); s++) {
      const side = s as SideId;
      expect(previousSide(shell, nextSide(shell, side))).toBe(side);
      expect(placeAt(shell, nextSide(shell, side))).toBe(placeAt(shell, side));
      const mate = mateOf(shell, side) as SideId;
      expect(mateOf(shell, mate)).toBe(side);
      expect([hubAt(shell, mate), endHubAt(shell, mate)]).toEqual([
        endHubAt(shell, side),
        hubAt(shell, side),
      ]);
    }
  });

  test('says which side of its kind lies where, by the turn of the place', () => {
    const shell = makeShell(pair);
    const lies = [0, 1].map((p) => sidesOf(shell, p as never).map((s) => kindSide(shell, s)));
    expect(lies).toEqual([
      [1, 2, 0],
      [0, 1, 2],
    ]);
  });
});

describe('a draft is refused', () => {
  const place = (hubs: readonly number[]): Partial<ShellDraft> => ({
    places: [{ hubs, kind: 0, turn: 0 }],
  });
  test.each([
    ['whose radius is no length', { radius: Number.NaN }, /radius is NaN/],
    ['whose radius is endless', { radius: Number.POSITIVE_INFINITY }, /radius is Infinity/],
    ['with a radius below 0', { radius: -1 }, /radius is -1/],
    ['with a hub nowhere', { hubs: pair.hubs.with(4, Number.NaN) }, /hub 1 stands at NaN/],
    ['with half a point', { hubs: Float64Array.of(1, 0), places: [] }, /2 coordinates/],
    ['with a hub that there is not', place([0, 1, 4]), /place 0 has hub 4, there are 4/],
    ['with a place of two hubs', place([0, 1]), /place 0 has hubs 0,1/],
    ['with a place that meets a hub twice', place([0, 1, 0, 2]), /place 0 has hubs 0,1,0,2/],
    [
      'with two places on one face of a seam',
      { places: [...pair.places, { hubs: [1, 2, 3], kind: 0, turn: 0 }] },
      /sides 1 and 6 both run from hub 1 to hub 2/,
    ],
  ] as [string, Partial<ShellDraft>, RegExp][])('%s', (_, change, message) => {
    expect(draft(change)).toThrow(message);
  });
});
