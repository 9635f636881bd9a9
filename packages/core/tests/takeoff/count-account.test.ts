import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rims as rimsOf } from '../../src/shell/rims.ts';
import { makeShell, placeCount, type Shell } from '../../src/shell/shell.ts';
import { countAccount } from '../../src/takeoff/count-account.ts';
import { above, ball, only } from './ball.ts';

const dome = above(ball(4), 0.2).shell;
const touching = (shell: Shell, hub: number) => (place: number) =>
  shell.sideHub.slice(shell.placeStart[place], shell.placeStart[place + 1]).includes(hub);

describe('the account of a shell', () => {
  it.each([1, 2, 3, 5])('of a whole ball of 20·%i² places is 3F/2 seams and 2 + F/2 hubs', (n) => {
    const account = countAccount(ball(n).shell);
    const places = 20 * n * n;
    expect(account).toMatchObject({ places, rims: 0, pieces: 1, agrees: true });
    expect(account.seams.counted).toBe((3 * places) / 2);
    expect(account.hubs.counted).toBe(2 + places / 2);
  });

  it('of a dome is (3F − B)/2 seams and 1 + (F + B)/2 hubs', () => {
    const { places, openSides, seams, hubs } = countAccount(dome);
    expect(seams.counted).toBe((3 * places - openSides) / 2);
    expect(hubs.counted).toBe(1 + (places + openSides) / 2);
  });

  it('has one hub less for each opening apart from the rim', () => {
    const top = dome.sideHub[0] as number;
    const holed = only(dome, (place) => !touching(dome, top)(place));
    const { places, openSides, rims, hubs } = countAccount(holed);
    expect(rims).toBe(2);
    expect(hubs.counted).toBe(1 + (places + openSides) / 2 - 1);
    expect(rimsOf(holed)[0]?.sides.length).toBe(20);
  });

  it('agrees after any places are taken out, pinched rims and loose pieces included (seed 3)', () => {
    const count = placeCount(dome);
    const property = fc.property(
      fc.uniqueArray(fc.nat(count - 1), { maxLength: count - 1 }),
      (out) => {
        const account = countAccount(only(dome, (place) => !out.includes(place)));
        expect(account.agrees).toBe(true);
      },
    );
    fc.assert(property, { seed: 3, numRuns: 60 });
  });

  it('holds for four-sided places by Euler', () => {
    const hubs = Float64Array.from(
      [-1, 1].flatMap((z) => [-1, 1, 1, -1].flatMap((x, i) => [x, i < 2 ? -1 : 1, z])),
    );
    const quads = [
      [3, 2, 1, 0],
      [4, 5, 6, 7],
      [0, 1, 5, 4],
      [1, 2, 6, 5],
      [2, 3, 7, 6],
      [3, 0, 4, 7],
    ];
    const places = quads.map((four) => ({ hubs: four, kind: 0, turn: 0 }));
    const cube = makeShell({ radius: Math.sqrt(3), hubs, places });
    expect(countAccount(cube)).toMatchObject({
      allTriangles: false,
      agrees: true,
      seams: { counted: 12 },
      hubs: { counted: 8 },
    });
  });

  it('disagrees where the places form no ball: a ring closed on itself', () => {
    const at = (i: number, j: number): number => (i % 3) * 3 + (j % 3);
    const places = [0, 1, 2].flatMap((i) =>
      [0, 1, 2].map((j) => ({
        hubs: [at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)],
        kind: 0,
        turn: 0,
      })),
    );
    const torus = makeShell({ radius: 1, hubs: new Float64Array(27), places });
    expect(countAccount(torus).agrees).toBe(false);
  });

  it('of no places at all is nothing', () => {
    expect(countAccount(only(dome, () => false))).toMatchObject({
      rims: 0,
      pieces: 0,
      agrees: true,
    });
  });
});
