import { describe, expect, it } from 'vitest';
import { checkShell, componentsOf } from '../../src/shell/check.ts';
import { partOf } from '../../src/shell/part.ts';
import { rims } from '../../src/shell/rims.ts';
import { hubsOf, makeShell, placeCount, type Shell } from '../../src/shell/shell.ts';
import { crownUp, cube, cutNear, domeOf, dualOf, icosahedral, octahedral } from './fixtures.ts';

const redraft = (shell: Shell, change: (hubs: number[], p: number) => number[]): Shell =>
  makeShell({
    radius: shell.radius,
    hubs: shell.hubs,
    places: Array.from({ length: placeCount(shell) }, (_, p) => ({
      hubs: change(hubsOf(shell, p as never), p),
      kind: 0,
      turn: 0,
    })),
  });

describe('checkShell', () => {
  it.each([
    ['icosahedron', icosahedral(1, 0)],
    ['four-step ball', icosahedral(4, 0)],
    ['(2, 1) ball', icosahedral(2, 1)],
    ['octahedral (3, 3) ball', octahedral(3, 3)],
    ['cube', cube()],
    ['dodecahedron', dualOf(icosahedral(1, 0))],
  ])('finds the %s sound and closed with Euler characteristic 2', (_, { shell }) => {
    const verdict = checkShell(shell);
    expect(verdict).toMatchObject({ sound: true, closed: true, eulerCharacteristic: 2, rims: 0 });
    expect(verdict.coverage).toBeCloseTo(1, 12);
  });

  it('finds a dome sound and open with Euler characteristic 1 and one rim', () => {
    const whole = crownUp(icosahedral(4, 0).shell);
    const dome = domeOf(whole, cutNear(whole, 0));
    expect(checkShell(dome)).toMatchObject({
      sound: true,
      closed: false,
      eulerCharacteristic: 1,
      rims: 1,
      components: 1,
    });
    expect(checkShell(dome).coverage).toBeCloseTo(0.5, 12);
  });

  it('names hubs off the sphere and how far the worst is', () => {
    const { shell } = icosahedral(2, 0);
    const hubs = Float64Array.from(shell.hubs, (x, i) => (i < 3 ? 1.002 * x : x));
    const verdict = checkShell({ ...shell, hubs });
    expect(verdict).toMatchObject({ sound: false, offSphere: [0] });
    expect(verdict.worstOffSphere).toBeCloseTo(0.002, 9);
    const scatter = Float64Array.from(shell.hubs, (x, i) => (i < 3 ? 1.0002 * x : x));
    expect(checkShell({ ...shell, hubs: scatter }).sound).toBe(true);
  });

  it('names pinched hubs, loose hubs, and counts pieces', () => {
    const { shell } = cube();
    const facing = partOf(shell, [0, 1]).shell;
    expect(checkShell(facing)).toMatchObject({ sound: false, components: 2, rims: 2 });
    expect([...componentsOf(facing)]).toEqual([0, 1]);
    const oneOff = makeShell({
      radius: 1,
      hubs: shell.hubs,
      places: [{ hubs: hubsOf(shell, 0 as never), kind: 0, turn: 0 }],
    });
    expect(checkShell(oneOff)).toMatchObject({ sound: false, looseHubs: [4, 5, 6, 7] });
    const ball = icosahedral(1, 0).shell;
    const star = Array.from(ball.sideHub.keys()).filter((s) => ball.sideHub[s] === 0);
    const apart = star.map((s) => ball.sidePlace[s] as number);
    const touching = apart
      .slice(1)
      .map((p) => partOf(ball, [apart[0] as number, p]).shell)
      .filter((part) => checkShell(part).components === 2);
    expect(touching).toHaveLength(2);
    for (const part of touching) expect(checkShell(part).pinchedHubs).toHaveLength(1);
  });

  it('names places inside out', () => {
    const inward = redraft(icosahedral(1, 0).shell, (hubs) => hubs.reverse());
    expect(checkShell(inward).insideOut).toHaveLength(20);
    expect(checkShell(inward).sound).toBe(false);
  });

  it('refuses a closed surface that goes twice round the sphere', () => {
    // The sphere's double cover, branched at two poles: a ring of ten about five directions.
    const hubs: number[] = [0, 0, 1, 0, 0, -1];
    for (let i = 0; i < 10; i++) {
      const azimuth = (4 * Math.PI * i) / 10;
      hubs.push(Math.cos(azimuth), Math.sin(azimuth), 0);
    }
    const places = [...Array(10).keys()].flatMap((i) => {
      const [a, b] = [2 + i, 2 + ((i + 1) % 10)];
      return [
        { hubs: [0, a, b], kind: 0, turn: 0 },
        { hubs: [1, b, a], kind: 0, turn: 0 },
      ];
    });
    const twice = checkShell(makeShell({ radius: 1, hubs: Float64Array.from(hubs), places }));
    expect(twice).toMatchObject({ sound: false, closed: true, eulerCharacteristic: 2 });
    expect(twice.coverage).toBeCloseTo(2, 12);
  });
});

describe('rims', () => {
  it('list the base ring first, anticlockwise seen from above, and openings after it', () => {
    const whole = crownUp(icosahedral(4, 0).shell);
    const dome = domeOf(whole, cutNear(whole, 0));
    const opened = partOf(
      dome,
      [...Array(placeCount(dome)).keys()].filter(
        (p) => !hubsOf(dome, p as never).includes(0 as never),
      ),
    ).shell;
    const [base, opening] = rims(opened);
    expect(rims(opened)).toHaveLength(2);
    expect(base?.hubs).toHaveLength(20);
    expect(base?.z.max).toBeCloseTo(0, 12);
    expect(opening?.hubs).toHaveLength(5);
    const area = base?.hubs.reduce((sum, hub, i) => {
      const next = base.hubs[(i + 1) % base.hubs.length] as number;
      const at = (h: number, k: number): number => opened.hubs[3 * h + k] as number;
      return sum + at(hub, 0) * at(next, 1) - at(next, 0) * at(hub, 1);
    }, 0);
    expect(area).toBeGreaterThan(0);
  });

  it('are none on a ball', () => {
    expect(rims(cube().shell)).toEqual([]);
  });
});
