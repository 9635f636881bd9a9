// The map of the sky held to brute force: rays against every panel, shadows against some thousand points
// sown over the opening, and the whole map against a wall without weight and a ball whose rays
// all meet it square on.

import { expect, test } from 'vitest';
import { circlesShare, shadowShare, shadowsOf } from '../../src/fitout/blockage.ts';
import { anyCrossed, crossedShell, placeCrossed } from '../../src/fitout/crossing.ts';
import { type Dish, type Mount, pointingAt } from '../../src/fitout/dish.ts';
import { evenlySpread, skyMap, worseDb } from '../../src/fitout/sky.ts';
import { type RadioWall, wallTable } from '../../src/fitout/wall.ts';
import { lossDb, throughLayers } from '../../src/fitout/wave.ts';
import { seededRandom } from '../../src/math/random.ts';
import { add, dot, scale, type Vec3 } from '../../src/math/vector.ts';
import { placeNormal } from '../../src/shell/geometry.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubCount, placeCount, type Shell } from '../../src/shell/shell.ts';
import { cutBall } from '../stages/fixtures.ts';
import { checked } from './data/checked.ts';

const scaled = (shell: Shell, by: number): Shell => ({
  ...shell,
  radius: by * shell.radius,
  hubs: shell.hubs.map((x) => by * x),
});
const shell = scaled(cutBall(4, 230), 3);
const dish: Dish = {
  diameter: 2.4,
  focalRatio: 0.4,
  vertexAhead: 0.1,
  feed: { beyond: 0.1, diameter: 0.3 },
  back: { behind: 0.2, diameter: 0.5 },
};
const mount: Mount = {
  kind: 'azimuth and elevation',
  height: 1.8,
  aside: [0, 0],
  lowest: 0,
  highest: Math.PI / 2,
  azimuth: 0,
  latitude: 0.9,
  hourAngle: 2,
};
const floor = Math.min(...Array.from({ length: hubCount(shell) }, (_, h) => shell.hubs[3 * h + 2]));
const wall: RadioWall = {
  layers: [{ thickness: 0.003, permittivity: 4.3, lossTangent: 0.015 }],
  sources: [],
};
const noSeams = { seamWidth: 0, seamDepth: 0, plateDiameter: 0, opacity: 1 };

test('the place that a ray leaves by is the one that trying all of them finds, seed 7', () => {
  const crossed = crossedShell(shell);
  const { uniform: random } = seededRandom(7);
  let [near, none] = [0, 0];
  for (let i = 0; i < 3000; i++) {
    const [x, y, z] = [random() - 0.5, random() - 0.5, random() - 0.5].map((r) => 2 * r);
    const [u, v, w] = pointingAt(2 * Math.PI * random(), Math.asin(2 * random() - 1));
    const got = placeCrossed(crossed, x, y, z, u, v, w, near);
    const all = anyCrossed(crossed, x, y, z, u, v, w);
    expect(got).toBe(all);
    if (got >= 0) near = got;
    else none++;
  }
  expect(none).toBeGreaterThan(100);
  expect(none).toBeLessThan(2000);
});

test('two circles share what sown points say', () => {
  const { uniform: random } = seededRandom(3);
  for (const [r, s, d] of [
    [1, 0.6, 0.9],
    [1, 0.3, 0.2],
    [1, 1, 0.5],
  ]) {
    let hits = 0;
    for (let i = 0; i < 40_000; i++) {
      const [x, y] = [2 * random() - 1, 2 * random() - 1];
      if (x * x + y * y < r * r && (x - d) ** 2 + y * y < s * s) hits++;
    }
    checked({ got: circlesShare(r, s, d), expected: hits / 1e4, within: 0.03 });
  }
  checked({ got: circlesShare(1, 0.2, 1.3), expected: 0, within: 1e-12 });
});

/** Share of an opening's points whose ray meets a seam's prism or a plate, overlaps counted once. */
function sown(middle: Vec3, radius: number, az: number, el: number, body: typeof noSeams): number {
  const shadows = shadowsOf(shell, body);
  const u = pointingAt(az, el);
  const h: Vec3 = [-Math.sin(az), Math.cos(az), 0];
  const v: Vec3 = [-Math.sin(el) * Math.cos(az), -Math.sin(el) * Math.sin(az), Math.cos(el)];
  const points = evenlySpread(1500);
  let hits = 0;
  for (let k = 0; k < points.length / 2; k++) {
    const o = add(
      middle,
      add(scale(h, radius * points[2 * k]), scale(v, radius * points[2 * k + 1])),
    );
    if (meets(shadows, o, u, body)) hits++;
  }
  return hits / (points.length / 2);
}

/** Whether a ray comes through the box of a seam (slab by slab) or a plate. */
function meets(shadows: ReturnType<typeof shadowsOf>, o: Vec3, u: Vec3, body: typeof noSeams) {
  const { hubs, ends, length, frame } = shadows;
  for (let i = 0; i < length.length; i++) {
    const [a, b] = [0, 1].map((k): Vec3 => {
      const at = 3 * ends[2 * i + k];
      return [hubs[at], hubs[at + 1], hubs[at + 2]];
    });
    const out: Vec3 = [frame[6 * i], frame[6 * i + 1], frame[6 * i + 2]];
    const beside: Vec3 = [frame[6 * i + 3], frame[6 * i + 4], frame[6 * i + 5]];
    const on = scale(add(b, scale(a, -1)), 1 / length[i]);
    const from = add(o, scale(a, -1));
    let [enter, leave] = [0, Number.POSITIVE_INFINITY];
    const slabs: [Vec3, number, number][] = [
      [on, body.plateDiameter / 2, length[i] - body.plateDiameter / 2],
      [beside, -body.seamWidth / 2, body.seamWidth / 2],
      [out, -body.seamDepth, 0],
    ];
    for (const [axis, low, high] of slabs) {
      const [at, by] = [dot(from, axis), dot(u, axis)];
      const [p, q] = [(low - at) / by, (high - at) / by];
      enter = Math.max(enter, Math.min(p, q));
      leave = Math.min(leave, Math.max(p, q));
    }
    if (leave > enter) return true;
  }
  for (let h = 0; h < hubs.length; h += 3) {
    const c: Vec3 = [hubs[h], hubs[h + 1], hubs[h + 2]];
    const out = scale(c, 1 / Math.hypot(...c));
    const t = dot(add(c, scale(o, -1)), out) / dot(u, out);
    if (t <= 0) continue;
    const at = add(o, scale(u, t));
    if (Math.hypot(at[0] - c[0], at[1] - c[1], at[2] - c[2]) < body.plateDiameter / 2) return true;
  }
  return false;
}

test('seams and plates shadow what rays against their bodies say, but for overlaps', () => {
  const body = { seamWidth: 0.03, seamDepth: 0.05, plateDiameter: 0.2, opacity: 1 };
  const middle: Vec3 = [0.1, -0.2, 0.3];
  for (const [az, el] of [
    [0.3, 0.9],
    [2, 0.4],
  ]) {
    const axes = Float64Array.from([
      ...pointingAt(az, el),
      ...[-Math.sin(az), Math.cos(az), 0],
      ...[-Math.sin(el) * Math.cos(az), -Math.sin(el) * Math.sin(az), Math.cos(el)],
    ]);
    const look = { middle: Float64Array.from(middle), radius: 1.2, axes };
    const got = shadowShare(shadowsOf(shell, body), look, new Float64Array(shell.hubs.length));
    const rays = sown(middle, 1.2, az, el, body);
    expect(rays).toBeGreaterThan(0.05);
    // Overlaps near hubs, counted twice by us.
    checked({ got, expected: rays, ratio: 0.1 });
    expect(got).toBeGreaterThan(rays * 0.95);
  }
});

test('a wall that is air, without seams, costs nothing anywhere', () => {
  const air = wallTable(
    { layers: [{ thickness: 0.01, permittivity: 1, lossTangent: 0 }], sources: [] },
    4e9,
  );
  const map = skyMap({ shell, dish, mount, floor, wall: air, seams: noSeams, stepDeg: 15 });
  checked({ got: worseDb(map.worst), expected: 0, within: 1e-9 });
  checked({ got: map.worst.noiseMost, expected: 0, within: 1e-6 });
});

test('a pencil of rays from the centre along a panel’s normal meets a slab square on', () => {
  const table = wallTable(wall, 4e9);
  const p = [...Array(placeCount(shell)).keys()].find(
    (place) => placeNormal(shell, place as PlaceId)[2] > 0.9,
  ) as number;
  const [x, y, z] = placeNormal(shell, p as PlaceId);
  const turned = Math.atan2(y, x);
  // The nearest pointing of the map is within half a degree; only its row is asked for.
  const row = (Math.round((Math.asin(z) * 180) / Math.PI) * Math.PI) / 180;
  const pencil = { ...dish, diameter: 0.05, vertexAhead: 0 };
  const map = skyMap({
    shell,
    dish: pencil,
    mount: { ...mount, height: -floor, lowest: row - 0.001, highest: row + 0.001 },
    floor,
    wall: table,
    seams: noSeams,
  });
  const [azDeg, elDeg] = [turned, Math.asin(z)].map((a) => Math.round((a * 180) / Math.PI));
  const point = map.points.find(
    (one) => one.elevationDeg === elDeg && one.azimuthDeg === (azDeg + 360) % 360,
  );
  const { transmitted, absorbed } = throughLayers(wall.layers, 4e9, 1, 'TE');
  checked({ got: worseDb(point!), expected: lossDb(transmitted), within: 2e-3 });
  checked({ got: point!.noiseLeast, expected: 290 * absorbed, within: 0.02 });
  expect(map.points.length).toBe(360);
});

test('four times the rays move the loss by under a twentieth of a decibel', () => {
  const table = wallTable(wall, 10e9);
  const ask = (rays: number) =>
    skyMap({ shell, dish, mount, floor, wall: table, seams: noSeams, stepDeg: 15, rays });
  const [few, many] = [ask(37), ask(148)];
  const off = few.points.map((point, i) => Math.abs(worseDb(point) - worseDb(many.points[i])));
  expect(Math.max(...off)).toBeLessThan(0.05);
  expect(worseDb(few.worst)).toBeGreaterThan(worseDb(few.best) + 0.005);
});

test('a dish larger than the shell is refused', () => {
  const table = wallTable(wall, 4e9);
  expect(() =>
    skyMap({ shell, dish: { ...dish, diameter: 7 }, mount, floor, wall: table, seams: noSeams }),
  ).toThrow(/larger than a shell of 3.000 m radius/);
});
