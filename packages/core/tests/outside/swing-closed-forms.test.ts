// A dish in a sphere: closed forms of a cap in a sphere (what fits a rim of radius r whose plane is d off
// the centre: r² + d² = R²), and brute force: points sown over the dish against every panel's plane.

import { expect, test } from 'vitest';
import { crossedShell } from '../../src/fitout/crossing.ts';
import type { Dish, Mount } from '../../src/fitout/dish.ts';
import { dishDepth, mustReach, pivotOf, pointingAt, pointingsOf } from '../../src/fitout/dish.ts';
import { horizonMask } from '../../src/fitout/horizon.ts';
import { swing } from '../../src/fitout/swing.ts';
import { add, cross, dot, normalize, scale, type Vec3 } from '../../src/math/vector.ts';
import { hubCount, type Shell } from '../../src/shell/shell.ts';
import { cutBall } from '../stages/fixtures.ts';
import { checked } from './data/checked.ts';

const scaled = (shell: Shell, by: number): Shell => ({
  ...shell,
  radius: by * shell.radius,
  hubs: shell.hubs.map((x) => by * x),
});
const lowest = (shell: Shell): number =>
  Math.min(...Array.from({ length: hubCount(shell) }, (_, h) => shell.hubs[3 * h + 2]));
const shell = scaled(cutBall(4, 230), 3);
const round = scaled(cutBall(10, 1500), 3);
const dish: Dish = {
  diameter: 2.4,
  focalRatio: 0.4,
  vertexAhead: 0.2,
  feed: { beyond: 0.1, diameter: 0.3 },
  back: { behind: 0.6, diameter: 0.8 },
};
const mount: Mount = {
  kind: 'azimuth and elevation',
  height: 1.8,
  aside: [0.1, -0.15],
  lowest: 0.1,
  highest: Math.PI / 2,
  azimuth: 0,
  latitude: 0.9,
  hourAngle: 2,
};

test('a flat rim about the centre of a ball clears the ball as a circle in a sphere does', () => {
  // The floor far below, so that only the ball bounds the dish.
  const floor = -6;
  const flat = { ...dish, vertexAhead: 0, feed: { beyond: 0, diameter: 0 } };
  const bare = { ...flat, focalRatio: 0.35, back: { behind: 0, diameter: 0 } };
  const central: Mount = { ...mount, aside: [0, 0], height: -floor, lowest: 0.8 };
  const { nearest, largest } = swing({
    shell: round,
    dish: bare,
    mount: central,
    floor,
    flange: 0,
    margin: 0,
    stepDeg: 3,
  });
  const depth = dishDepth(bare);
  // The panels lie inside the sphere by at most their sagitta, under 20 mm here.
  const sphere = 3 - Math.hypot(depth, bare.diameter / 2);
  expect(nearest.clearance).toBeLessThan(sphere);
  checked({ got: nearest.clearance, expected: sphere, within: 0.035 });
  expect(Math.abs(nearest.clearance - sphere - 0.35)).toBeGreaterThan(0.035);
  // Largest: D √(1/4 + 1/(16 F)²) = R.
  const most = 3 / Math.hypot(0.5, 1 / (16 * 0.35));
  expect(largest).toBeLessThan(most);
  checked({ got: largest, expected: most, ratio: 0.012 });
});

test('the clearance is what points sown over the hull find, and never more', () => {
  const floor = lowest(shell);
  const question = { shell, dish, mount, floor, flange: 0.04, margin: 0.05, stepDeg: 10 };
  const { nearest } = swing(question);
  const { normal, reach } = crossedShell(shell);
  let least = Number.POSITIVE_INFINITY;
  for (const { azimuth, elevation } of pointingsOf(mount, Math.PI / 18)) {
    const u = pointingAt(azimuth, elevation);
    const across = normalize(cross(u, [0.3, 0.5, 0.81]));
    const up = cross(u, across);
    const discs: [number, number][] = [
      [dish.vertexAhead + dishDepth(dish), 1.2],
      [dish.vertexAhead + 0.96 + 0.1, 0.15],
      [-0.6, 0.4],
    ];
    for (const [ahead, r] of discs)
      for (let k = 0; k < 24; k++) {
        const t = (2 * Math.PI * k) / 24;
        const rim = add(scale(across, r * Math.cos(t)), scale(up, r * Math.sin(t)));
        const point = add(pivotOf(mount, floor), add(scale(u, ahead), rim));
        for (let p = 0; p < reach.length; p++) {
          const n: Vec3 = [normal[3 * p], normal[3 * p + 1], normal[3 * p + 2]];
          least = Math.min(least, reach[p] - 0.04 - dot(n, point));
        }
        least = Math.min(least, point[2] - floor);
      }
  }
  expect(nearest.clearance).toBeLessThanOrEqual(least + 1e-12);
  checked({ got: nearest.clearance, expected: least, within: 0.012 });
  expect(Math.abs(nearest.clearance - least - 0.12)).toBeGreaterThan(0.012);
});

test('the largest dish just swings, and a hair larger does not', () => {
  const floor = lowest(shell);
  const question = { shell, dish, mount, floor, flange: 0.04, margin: 0.05, stepDeg: 6 };
  const { largest } = swing(question);
  const at = (diameter: number) => swing({ ...question, dish: { ...dish, diameter } });
  checked({ got: at(largest).nearest.clearance, expected: 0.05, within: 1e-9 });
  expect(at(largest + 0.01).swings).toBe(false);
  expect(at(largest - 0.01).swings).toBe(true);
});

test('no height of a fine comb swings a larger dish than the best', () => {
  const floor = lowest(shell);
  const question = { shell, dish, mount, floor, flange: 0.04, margin: 0.05, stepDeg: 6 };
  const { best } = swing(question);
  const comb = Array.from({ length: 25 }, (_, i) => 0.6 + 0.1 * i).map((height) => {
    return swing({ ...question, mount: { ...mount, height } }).largest;
  });
  expect(Math.max(...comb)).toBeLessThan(best.largest + 0.03);
  expect(Math.max(...comb)).toBeGreaterThan(best.largest - 0.1);
});

test('an equatorial mount reaches the pole and the meridian, not below the pole beyond its hours', () => {
  const polar: Mount = { ...mount, kind: 'equatorial', lowest: 0, hourAngle: 1.5 };
  expect(mustReach(polar, 0, 0.9)).toBe(true);
  expect(mustReach(polar, Math.PI, 0.5)).toBe(true);
  expect(mustReach(polar, 0, 0.2)).toBe(false);
  // Due west at the horizon: hour angle a quarter turn.
  expect(mustReach({ ...polar, hourAngle: 1.58 }, Math.PI / 2, 0)).toBe(true);
  expect(mustReach({ ...polar, hourAngle: 1.56 }, Math.PI / 2, 0)).toBe(false);
});

test('the ring rises to the angle that its height over its distance says', () => {
  const pencil = { ...dish, diameter: 0.05, vertexAhead: -0.05 / (16 * 0.4) };
  const floor = lowest(shell);
  const question = {
    shell,
    dish: pencil,
    mount: { ...mount, aside: [0, 0] as const, height: 0.5 },
    floor,
    ringHeight: 0.9,
    door: null,
    skyline: [],
  };
  const mask = horizonMask(question);
  const ring = Math.sqrt(9 - floor ** 2);
  const z = mask.map(({ elevation }) => elevation);
  checked({ got: Math.max(...z), expected: Math.atan(0.425 / ring), within: 0.08 });
  expect(Math.min(...z)).toBeGreaterThan(Math.atan(0.35 / ring));
  const hill = horizonMask({ ...question, skyline: [0.5, 0.02] });
  expect(hill[0]).toEqual({ azimuth: 0, elevation: 0.5, by: 'skyline' });
  const door = horizonMask({ ...question, door: { azimuth: 1, width: 0.9, height: 2 } });
  const through = door.filter(({ by }) => by === 'door');
  expect(through.length).toBeGreaterThan(1);
  checked({
    got: through[1].elevation,
    expected: Math.atan(1.5 / ring),
    within: 0.05,
  });
});

test('a dish larger than the shell is refused', () => {
  const question = {
    shell,
    dish: { ...dish, diameter: 6.5 },
    mount,
    floor: 0,
    flange: 0,
    margin: 0,
  };
  expect(() => swing(question)).toThrow(/expected less than the shell’s 6.000 m/);
});
