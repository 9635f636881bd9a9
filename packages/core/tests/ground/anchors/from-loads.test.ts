import { expect, test } from 'vitest';
import { sharedForces } from '../../../src/ground/anchors/demand.ts';
import { baseForces } from '../../../src/ground/anchors/from-loads.ts';
import { facesOf } from '../../../src/loads/panels.ts';
import { pressureForces, totalsOf, windTotals } from '../../../src/loads/totals.ts';
import { seededRandom } from '../../../src/math/random.ts';
import { placeCount } from '../../../src/shell/shell.ts';
import { baseThere, dome } from '../bases.ts';

const shell = dome(4, 0, -0.3, 3);
const base = baseThere(shell);
const faces = facesOf(shell);
const places = Array.from({ length: placeCount(shell) }, (_, p) => p);
const q = 400;
/** Pressure at a panel from its unit outward normal: any law will do. */
const wind = (law: (n: readonly number[]) => number) =>
  pressureForces(
    faces,
    places,
    Float64Array.from(places, (p) =>
      law([0, 1, 2].map((i) => (faces.area[3 * p + i] as number) / (faces.size[p] as number))),
    ),
    q,
  );
const none = wind(() => 0);
const down = {
  ...none,
  force: none.force.map((_, i) => (i % 3 === 2 ? -80 : 0)),
};

test('lifts sum to the load’s upward force and their moments to its moment, for any pressures, seed 6', () => {
  const random = seededRandom(6);
  for (let t = 0; t < 10; t++) {
    const load = wind(() => random.normal());
    const { hubs } = baseForces(base, faces, { name: '', wind: load, weight: none, sources: [] });
    const centre = [0, 0, base.level + base.hubs.reduce((s, h) => s + h.rise, 0) / hubs.length];
    const { force, moment } = totalsOf(faces, load, centre as never);
    const sum = (f: (k: number) => number): number =>
      hubs.reduce((s, { lift }, k) => s + lift * f(k), 0);
    expect(sum(() => 1)).toBeCloseTo(force[2], 6);
    expect(sum((k) => base.hubs[k]?.at[1] ?? 0)).toBeCloseTo(moment[0], 6);
    expect(-sum((k) => base.hubs[k]?.at[0] ?? 0)).toBeCloseTo(moment[1], 6);
    expect(hubs.reduce((s, { shear }) => s + shear, 0)).toBeCloseTo(
      Math.hypot(force[0], force[1]),
      6,
    );
  }
});

test('on flat panels the moment about the centre is under 0.5 % of drag times radius', () => {
  const load = wind(([x, , z]) => 0.5 * (x as number) - (z as number) ** 2);
  const about = windTotals(totalsOf(faces, load, [0, 0, 0]), 0);
  expect(Math.abs(about.overturning)).toBeLessThan(0.005 * Math.abs(about.drag) * 3);
  expect(Math.abs(about.drag)).toBeGreaterThan(100);
});

test('the most pulled hub bears what the whole’s drag at the centre gives, to the 4 % that the moment left by flat panels is of it', () => {
  const load = wind(([x, , z]) => 0.5 * (x as number) - (z as number) ** 2);
  const { drag, lift } = windTotals(totalsOf(faces, load, [0, 0, 0]), 0);
  const whole = sharedForces(
    base,
    { drag, lift, weight: 80 * places.length, armHeight: -base.level },
    '',
  );
  const own = baseForces(base, faces, { name: '', wind: load, weight: down, sources: [] });
  const most = (forces: typeof own): number =>
    Math.max(...forces.hubs.map((hub) => hub.lift - hub.weight));
  expect(most(own) / most(whole)).toBeGreaterThan(0.97);
  expect(most(own) / most(whole)).toBeLessThan(1.04);
});

test('weight in balance lifts no hub, and the whole of it reaches the ground', () => {
  const { hubs } = baseForces(base, faces, { name: '', wind: none, weight: down, sources: [] });
  expect(hubs.reduce((s, { weight }) => s + weight, 0)).toBeCloseTo(80 * places.length, 6);
  for (const hub of hubs) expect(hub.lift).toBe(0);
});

test('weight on one side rests on that side', () => {
  const half = {
    ...down,
    force: down.force.map((f, i) => ((faces.centre[i - (i % 3)] as number) > 0 ? 4 * f : 0)),
  };
  const { hubs } = baseForces(base, faces, { name: '', wind: none, weight: half, sources: [] });
  const away = hubs.reduce((a, b) =>
    (base.hubs[a.hub - 1]?.at[0] ?? 0) < (base.hubs[b.hub - 1]?.at[0] ?? 0) ? a : b,
  );
  const near = hubs.reduce((a, b) =>
    (base.hubs[a.hub - 1]?.at[0] ?? 0) > (base.hubs[b.hub - 1]?.at[0] ?? 0) ? a : b,
  );
  expect(near.weight).toBeGreaterThan(away.weight);
});
