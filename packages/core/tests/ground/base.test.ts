import { expect, test } from 'vitest';
import { baseOf } from '../../src/ground/base.ts';
import { partOf } from '../../src/shell/part.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { crownUp, icosahedral } from '../shell/fixtures.ts';
import { baseThere, dome } from './bases.ts';

test('base hubs are numbered from 1, clockwise seen from above, from the datum on', () => {
  const { hubs } = baseThere(dome(4, 0, 0, 3.6));
  expect(hubs.map((hub) => hub.number)).toEqual(hubs.map((_, k) => k + 1));
  hubs.slice(1).forEach((hub, k) => {
    expect(hub.bearing).toBeGreaterThan(hubs[k]?.bearing as number);
  });
  expect(hubs[0]?.bearing).toBeLessThan((2 * Math.PI) / hubs.length);
});

test('radii, chords and rises are those of the shell', () => {
  const shell = dome(3, 0, -0.2, 2.5);
  const { hubs, level, spread } = baseThere(shell);
  for (const [k, hub] of hubs.entries()) {
    const next = hubs[(k + 1) % hubs.length];
    const [x, y, z] = [0, 1, 2].map((i) => shell.hubs[3 * hub.hub + i] as number);
    const end = [0, 1, 2].map((i) => shell.hubs[3 * (next?.hub as number) + i] as number);
    expect(hub.radius).toBeCloseTo(Math.hypot(x as number, y as number), 12);
    expect(hub.rise + level).toBeCloseTo(z as number, 12);
    expect(hub.radius ** 2 + (hub.rise + level) ** 2).toBeCloseTo(2.5 ** 2, 9);
    expect(hub.chord).toBeCloseTo(
      Math.hypot(...[x, y, z].map((c, i) => (c as number) - (end[i] as number))),
      12,
    );
    expect(hub.levelChord).toBeLessThanOrEqual(hub.chord);
  }
  expect(spread).toBeGreaterThan(0.03);
});

test('a closed shell has no base, and is told so', () => {
  expect(baseOf(crownUp(icosahedral(2, 0).shell))).toEqual({
    ok: false,
    faults: [
      {
        path: 'shell',
        found: 'a closed shell',
        expected: 'a shell with a base ring: cut it at the ground',
      },
    ],
  });
});

test('the rim of a hole in the side is no base', () => {
  const whole = crownUp(icosahedral(3, 0).shell);
  const count = placeCount(whole);
  const side = Array.from({ length: count }, (_, p) => p).filter((p) => {
    const at = whole.sideHub[whole.placeStart[p] as number] as number;
    return !((whole.hubs[3 * at] as number) > 0.8);
  });
  const found = baseOf(partOf(whole, side).shell);
  expect(found.ok).toBe(false);
});
