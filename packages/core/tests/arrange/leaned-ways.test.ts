import { describe, expect, it } from 'vitest';
import { arrangements, standingShell } from '../../src/arrange/arrangements.ts';
import { decisionFor, findDecided } from '../../src/arrange/decision.ts';
import { familiesOf } from '../../src/arrange/families.ts';
import { leanedWay, leanedWays } from '../../src/arrange/leaned-ways.ts';
import { waysUpOf } from '../../src/arrange/ways-up.ts';
import { dot, norm, subtract, type Vec3 } from '../../src/math/vector.ts';
import { hubPoint } from '../../src/shell/geometry.ts';
import type { HubId } from '../../src/shell/ids.ts';
import { type Crown, crownAxes } from '../../src/shell/orient.ts';
import { icosahedral, octahedral, pileKinds } from '../shell/fixtures.ts';

const net = icosahedral(3, 0);
const kinds = pileKinds(net);
const families = familiesOf(kinds);
const { waysUp, turns } = waysUpOf(net.shell, kinds, families);

describe('a lean', () => {
  it('turns up by its angle, towards its azimuth, and keeps the axes square', () => {
    const way = waysUp[0];
    if (!way) throw new Error('no way up');
    const { up, datum } = crownAxes(net.shell, way.crown);
    for (const by of [0.1, 0.4])
      for (const towards of [0, 1, 4]) {
        const own = crownAxes(net.shell, { ...way.crown, lean: { by, towards } });
        expect(dot(own.up, up)).toBeCloseTo(Math.cos(by), 12);
        expect(dot(own.up, datum)).toBeCloseTo(Math.sin(by) * Math.cos(towards), 12);
        expect(dot(own.up, own.datum)).toBeCloseTo(0, 12);
        expect(norm(own.datum)).toBeCloseTo(1, 12);
      }
  });
});

describe('leaned ways up', () => {
  const leaned = leanedWays(net.shell, waysUp, turns);

  it('are each another one under all rotations, and none is a crown', () => {
    expect(leaned.length).toBeGreaterThan(10);
    const images = [...waysUp, ...leaned].map(({ crown }) => imagesOf(crown));
    images.forEach((own, i) => {
      for (const other of images.slice(i + 1))
        for (const a of own) expect(norm(subtract(a, other[0] as Vec3))).toBeGreaterThan(0.004);
    });
  });

  it('leave no direction far from one that is looked at: 0.2 radians on this net', () => {
    const images = [...waysUp, ...leaned].flatMap(({ crown }) => imagesOf(crown));
    for (let i = 0; i < 500; i++) {
      const z = 1 - (2 * i + 1) / 500;
      const a = i * 2.399963;
      const r = Math.sqrt(1 - z * z);
      const direction: Vec3 = [r * Math.cos(a), r * Math.sin(a), z];
      const off = Math.min(...images.map((one) => norm(subtract(one, direction))));
      expect(off).toBeLessThan(0.2);
    }
    const crowns = waysUp.flatMap(({ crown }) => imagesOf(crown));
    expect(crowns.length).toBeLessThan(images.length);
  });

  it('are found again from the decision that names them, standing alike', () => {
    const list = arrangements(net.shell, kinds, { leaned: true });
    const at = list.arrangements.find(({ wayUp }) => list.waysUp[wayUp]?.lean);
    if (!at) throw new Error('no leaned arrangement');
    const decision = decisionFor(list, at, false);
    expect(decision.wayUp.lean?.by).toBeGreaterThan(0);
    const again = findDecided(net.shell, kinds, decision);
    if (!again.found) throw new Error(again.reason);
    const way = list.waysUp[at.wayUp];
    if (!way) throw new Error('no way up');
    expect(again.arrangement.cut.height).toBeCloseTo(at.cut.height, 9);
    const [a, b] = [
      standingShell(net.shell, way, at.cut),
      standingShell(net.shell, again.way, again.arrangement.cut),
    ];
    expect([...a.places]).toEqual([...b.places]);
    const { lean: _, ...crown } = decision.wayUp;
    const plain = findDecided(net.shell, kinds, { ...decision, wayUp: crown });
    expect(plain.found && plain.way.lean).toBeFalsy();
  });

  it('give more outlines than the crowns alone, on a net of another solid as well', () => {
    const other = octahedral(2, 0);
    const count = (leaned: boolean): number =>
      arrangements(other.shell, pileKinds(other), { leaned, most: 5000 }).arrangements.length;
    expect(count(true)).toBeGreaterThan(count(false));
  });

  it('keep the name of the crown that they lean from', () => {
    const [way] = waysUp;
    if (!way) throw new Error('no way up');
    const own = leanedWay(way, { by: 0.1, towards: 2 });
    expect(own).toMatchObject({ at: way.at, kinds: way.kinds, orbit: way.orbit });
  });
});

/** Where the rotations take a way up. */
function imagesOf(crown: Crown): Vec3[] {
  const { up } = crownAxes(net.shell, crown);
  const [a, b, c] = [0, 1, 2].map((s) => hubPoint(net.shell, net.shell.sideHub[s] as HubId)) as [
    Vec3,
    Vec3,
    Vec3,
  ];
  const weights = solve(a, b, c, up);
  return turns.map(({ hubs }) => {
    const image = [0, 1, 2].map((s) =>
      hubPoint(net.shell, hubs[net.shell.sideHub[s] as number] as HubId),
    );
    return [0, 1, 2].map((i) =>
      image.reduce((sum, own, j) => sum + (own[i] as number) * (weights[j] as number), 0),
    ) as unknown as Vec3;
  });
}

/** Weights with which three directions add up to a fourth: Cramer's rule. */
function solve(a: Vec3, b: Vec3, c: Vec3, d: Vec3): number[] {
  const det = (x: Vec3, y: Vec3, z: Vec3): number =>
    x[0] * (y[1] * z[2] - y[2] * z[1]) -
    x[1] * (y[0] * z[2] - y[2] * z[0]) +
    x[2] * (y[0] * z[1] - y[1] * z[0]);
  const all = det(a, b, c);
  return [det(d, b, c) / all, det(a, d, c) / all, det(a, b, d) / all];
}
