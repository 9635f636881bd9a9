import { describe, expect, it } from 'vitest';
import { netShell } from '../../src/nets/kinds.ts';
import { checkShell } from '../../src/shell/check.ts';
import { type Cut, naturalCuts } from '../../src/shell/cuts.ts';
import { meanSideLength } from '../../src/shell/geometry.ts';
import type { HubId, PlaceId, SeamId } from '../../src/shell/ids.ts';
import { nadirOf } from '../../src/shell/nadir.ts';
import {
  type Crown,
  crownAtHub,
  crownAtPlace,
  crownAtSeam,
  orientShell,
} from '../../src/shell/orient.ts';
import { partOf } from '../../src/shell/part.ts';
import { baseRing } from '../../src/shell/rims.ts';
import { placeCount, type Shell, seamCount } from '../../src/shell/shell.ts';
import { crownUp, cube, domeOf, dualOf, icosahedral, octahedral } from './fixtures.ts';

const NETS: [string, Shell][] = [
  ['two-step', icosahedral(2, 0).shell],
  ['three-step', icosahedral(3, 0).shell],
  ['five-step', icosahedral(5, 0).shell],
  ['(2, 2)', icosahedral(2, 2).shell],
  ['(2, 1)', icosahedral(2, 1).shell],
  ['(3, 1)', icosahedral(3, 1).shell],
  ['octahedral four-step', octahedral(4, 0).shell],
  ['dual of (3, 0)', dualOf(icosahedral(3, 0)).shell],
];
const crowns = (shell: Shell): [string, Crown][] => [
  ['hub', crownAtHub(shell, 0 as HubId)],
  ['seam', crownAtSeam(shell, 0 as SeamId)],
  ['place', crownAtPlace(shell, 0 as PlaceId)],
];
const CASES = NETS.flatMap(([net, shell]) =>
  crowns(shell).map(([at, crown]): [string, string, Shell] => [net, at, orientShell(shell, crown)]),
);

describe('naturalCuts', () => {
  it.each(CASES)(
    'of the %s ball with a %s as crown leave sound domes on one ring',
    (_, __, shell) => {
      const cuts = naturalCuts(shell);
      expect(cuts.length).toBeGreaterThan(0);
      for (const cut of cuts) {
        const dome = domeOf(shell, cut);
        expect(checkShell(dome)).toMatchObject({ sound: true, eulerCharacteristic: 1, rims: 1 });
        expect(cut.baseZ.max - cut.baseZ.min).toBeLessThanOrEqual(0.6 * meanSideLength(shell));
        expect(baseRing(dome)?.hubs).toHaveLength(cut.base.length);
        expect(baseRing(dome)?.z.min).toBeCloseTo(cut.baseZ.min, 12);
        expect(cut.floor.inside).toBeLessThanOrEqual(cut.floor.min);
        expect(cut.floor.max).toBeLessThanOrEqual(1 + 1e-12);
      }
    },
  );

  it.each(CASES)(
    'of the %s ball with a %s as crown are distinct, the tallest first',
    (_, __, shell) => {
      const cuts = naturalCuts(shell);
      expect(new Set(cuts.map((cut) => cut.places.join())).size).toBe(cuts.length);
      cuts.slice(1).forEach((cut, i) => {
        expect(cut.rise).toBeLessThanOrEqual((cuts[i] as Cut).rise);
      });
    },
  );

  it.each(CASES)(
    'of the %s ball with a %s as crown leave no place on fewer than two seams',
    (_, __, shell) => {
      for (const cut of naturalCuts(shell)) {
        const dome = domeOf(shell, cut);
        const seams = new Int32Array(placeCount(dome));
        for (const side of dome.seams) {
          const p = dome.sidePlace[side] as number;
          seams[p] = (seams[p] as number) + 1;
        }
        expect(Math.min(...seams)).toBeGreaterThanOrEqual(2);
      }
    },
  );

  it('of a ball of triangles hold to 2 seams + base = 3 places and hubs = 1 + (places + base) / 2', () => {
    for (const [, , shell] of CASES.slice(0, 21))
      for (const cut of naturalCuts(shell)) {
        const dome = domeOf(shell, cut);
        expect(2 * seamCount(dome)).toBe(3 * placeCount(dome) - cut.base.length);
        expect(dome.hubs.length / 3).toBe(1 + (placeCount(dome) + cut.base.length) / 2);
      }
  });

  it('find the flat equator of even class I nets and none on odd ones', () => {
    const flatEquator = (n: number): Cut[] =>
      naturalCuts(crownUp(icosahedral(n, 0).shell)).filter(
        (cut) => cut.flat && Math.abs(cut.baseZ.mean) < 0.01,
      );
    expect(flatEquator(2)).toHaveLength(1);
    expect(flatEquator(4)).toHaveLength(1);
    expect(flatEquator(4)[0]).toMatchObject({ places: { length: 160 }, base: { length: 20 } });
    expect(flatEquator(3)).toHaveLength(0);
    expect(flatEquator(5)).toHaveLength(0);
  });

  it('leave out a place that would lie flat on the ground', () => {
    const shell = orientShell(
      icosahedral(1, 0).shell,
      crownAtPlace(icosahedral(1, 0).shell, 0 as PlaceId),
    );
    expect(naturalCuts(shell)[0]?.places).toHaveLength(19);
    const box = cube().shell;
    const cuts = naturalCuts(orientShell(box, crownAtPlace(box, 0 as PlaceId)));
    expect(cuts.map((cut) => cut.places.length)).toEqual([5]);
  });

  it('larger than a tenth of the ball do not change when heights are off by a thousandth of a side', () => {
    for (const [, , shell] of CASES.slice(0, 9)) {
      const off = 1e-3 * meanSideLength(shell);
      const noisy = {
        ...shell,
        hubs: Float64Array.from(
          shell.hubs,
          (x, i) => x + (i % 3 === 2 ? off * Math.sin(7 * i) : 0),
        ),
      };
      const sets = (s: Shell): string[] =>
        naturalCuts(s)
          .filter((cut) => cut.places.length > placeCount(s) / 10)
          .map((cut) => cut.places.join())
          .sort();
      expect(sets(noisy)).toEqual(sets(shell));
    }
  });

  it('scale with the shell', () => {
    const shell = crownUp(icosahedral(3, 1).shell);
    const scaled = { ...shell, radius: 1e-6, hubs: shell.hubs.map((x) => 1e-6 * x) };
    naturalCuts(scaled).forEach((cut, i) => {
      expect(cut.places).toEqual(naturalCuts(shell)[i]?.places);
      expect(cut.height * 1e6).toBeCloseTo(naturalCuts(shell)[i]?.height as number, 9);
    });
  });
});

it('options that are no numbers from 0 are refused', () => {
  const shell = crownUp(icosahedral(1, 0).shell);
  expect(() => naturalCuts(shell, { ragged: Number.NaN })).toThrow('ragged is NaN');
  expect(() => naturalCuts(shell, { sameLevel: -1 })).toThrow('sameLevel is -1');
});

it('a hole in the side of a ball is no cut, though the ring around it is all but level', () => {
  const { shell } = netShell({ solid: 'tetrahedron', b: 5, c: 0, division: 'equal chords' }, 1);
  for (let m = 0; m < seamCount(shell); m++) {
    const up = orientShell(shell, crownAtSeam(shell, m as SeamId));
    for (const cut of naturalCuts(up, { ragged: 3 })) {
      const { shell: kept } = partOf(up, cut.places);
      expect(nadirOf(kept)).toBeNull();
    }
  }
});
