// Sound and light: Sabine's law (0.161 V/A) by worked examples: a class room of 10 × 8 × 6 m that lasts 3 s
// absorbs 25.76 m² (shaalaa.com, question 57435, read), a hall of 20 × 8 × 4 m with floor 0.02, ceiling and
// walls 0.05 lasts 4.6 s (scribd.com 784907111, read), one by hand; closed forms: a round mirror (1/s + 1/s′ = 2/R), the mean
// daylight factor (CIBSE, from memory), room of a sphere's cap, and rise of warm air (from memory).

import { expect, test } from 'vitest';
import { boxRoom, floorWithHeadroom, outlineArea, roomInside } from '../../src/fitout/room.ts';
import {
  absorbingWanted,
  coverForEcho,
  daylightFactor,
  sabine,
  soundFocus,
} from '../../src/fitout/sound-and-light.ts';
import {
  baseDrain,
  condensation,
  openingsInTurn,
  stackFlow,
  ventArea,
} from '../../src/fitout/vents.ts';
import { hubCount } from '../../src/shell/shell.ts';
import { cutBall } from '../stages/fixtures.ts';
import { checked } from './data/checked.ts';

const shell = cutBall(7, 700);

test('Sabine: how long sound lasts, and what brings it down', () => {
  checked({ got: sabine(240, 24), expected: 1.61, within: 1e-9, standing: 'from memory' });
  // The twin: ten times the tolerance is seen.
  expect(Math.abs(sabine(240, 24) - 1.61 - 1e-8)).toBeGreaterThan(1e-9);
  const more = absorbingWanted(240, 24, 0.8);
  checked({ got: sabine(240, 24 + more), expected: 0.8, within: 1e-12 });
  expect(absorbingWanted(240, 24, 3)).toBe(0);
});

test('Sabine’s law by two worked examples in print', () => {
  const room = 10 * 8 * 6;
  checked({ got: sabine(room, 25.76), expected: 3, within: 5e-4, standing: 'printed' });
  const wanted = absorbingWanted(room, 0, 3);
  checked({ got: wanted, expected: 25.76, within: 5e-3, standing: 'printed' });
  expect(Math.abs(wanted - 25.76 - 5e-2)).toBeGreaterThan(5e-3);
  const absorbs = 160 * 0.02 + 160 * 0.05 + 224 * 0.05;
  const hall = sabine(20 * 8 * 4, absorbs);
  checked({ got: absorbs, expected: 22.4, within: 1e-9, standing: 'printed' });
  checked({ got: hall, expected: 4.6, within: 0.05, standing: 'printed' });
  expect(Math.abs(hall - 4.6 - 0.5)).toBeGreaterThan(0.05);
});

test('a round wall sends sound from its centre back to the centre, and from beside it to the other side', () => {
  checked({ got: soundFocus(3, 0), expected: 0, within: 1e-12 });
  const [s, other] = [3 + 0.5, 3 - soundFocus(3, 0.5)];
  checked({ got: 1 / s + 1 / other, expected: 2 / 3, within: 1e-12 });
  expect(soundFocus(3, 0.5)).toBeGreaterThan(0.3);
});

test('rays from beside the centre of a circle, thrown back once, cross the axis at the focus', () => {
  const [R, off, angle] = [3, 0.3, 0.02];
  // Source at (−off, 0), wall at +x: hit at R(cos, sin), normal inward.
  const hit = [R * Math.cos(angle), R * Math.sin(angle)];
  const way = [hit[0] + off, hit[1]];
  const along = (way[0] * hit[0] + way[1] * hit[1]) / R ** 2;
  const back = [way[0] - 2 * along * hit[0], way[1] - 2 * along * hit[1]];
  const cross = hit[0] - (hit[1] / back[1]) * back[0];
  checked({ got: soundFocus(R, off), expected: cross, within: 2e-3 });
});

test('cover that brings an echo down by its decibels', () => {
  const cover = coverForEcho(6, 0.05, 0.85);
  checked({
    got: 10 * Math.log10((0.95 * (1 - cover) + 0.15 * cover) / 0.95),
    expected: -6,
    within: 1e-9,
  });
  expect(coverForEcho(20, 0.05, 0.5)).toBeGreaterThan(1);
});

test('daylight by the mean factor', () => {
  const factor = daylightFactor({ clear: 4, surface: 80, through: 0.7, skyDeg: 90, bright: 0.5 });
  checked({ got: factor, expected: (0.7 * 4 * 90) / (80 * 0.75) / 100, within: 1e-12 });
  expect(Math.abs(factor - 0.042 - 1e-11)).toBeGreaterThan(1e-12);
});

test('room of a ball’s part: below the cap of the sphere and near it', () => {
  const floor = Math.min(
    ...Array.from({ length: hubCount(shell) }, (_, h) => shell.hubs[3 * h + 2]),
  );
  const height = 1 - floor;
  const cap = (Math.PI * height ** 2 * (3 - height)) / 3;
  const { volume, panels } = roomInside(shell, floor);
  checked({ got: volume, expected: cap, ratio: 0.04 });
  checked({ got: panels, expected: 2 * Math.PI * height, ratio: 0.04 });
  expect(volume).toBeLessThan(cap);
  expect(Math.abs(volume / (1.4 * cap) - 1)).toBeGreaterThan(0.04);
  const across = (z: number): number => Math.PI * (1 - z ** 2);
  for (const head of [0.2, 0.6, 1]) {
    const least = Math.min(across(floor), across(floor + head));
    checked({
      got: outlineArea(floorWithHeadroom(shell, floor, head)),
      expected: least,
      ratio: 0.05,
    });
  }
  expect(floorWithHeadroom(shell, floor, height + 0.1)).toEqual([]);
});

test('a box stands as far out as a rectangle in a circle does', () => {
  // Upright from z = −0.3 to 0.3: the narrowest circle there has radius √(1 − 0.09).
  const got = boxRoom(shell, -0.3, { length: 0.8, depth: 0.3, height: 0.6 });
  const radius = Math.sqrt(1 - 0.09);
  checked({ got: got!.out, expected: Math.sqrt(radius ** 2 - 0.16) - 0.15, within: 0.04 });
  expect(boxRoom(shell, -0.3, { length: 2.2, depth: 0.3, height: 0.6 })).toBe(null);
});

test('air rises by the root of height and warmth', () => {
  const vents = { low: 0.2, high: 0.2, between: 3, warmer: 5, outsideC: 15 };
  const drive = Math.sqrt((2 * 9.80665 * 3 * 5) / 288.15);
  checked({ got: stackFlow(vents), expected: (0.65 * 0.2 * drive) / Math.SQRT2, within: 1e-9 });
  checked({ got: openingsInTurn(3, 4), expected: 2.4, within: 1e-12 });
  const area = ventArea({ volume: 50, changesPerHour: 6, between: 3, warmer: 5, outsideC: 15 });
  checked({
    got: stackFlow({ ...vents, low: area, high: area }) * 3600,
    expected: 300,
    within: 1e-9,
  });
});

test('a wall drips where it is colder than the dew point inside, and rain on the plan comes to the ring', () => {
  const cold = { outsideC: 2, insideC: 15, insideHumidity: 0.7, hours: 8 };
  const warm = { outsideC: 14, insideC: 16, insideHumidity: 0.5, hours: 16 };
  const got = condensation([cold, warm]);
  expect([got.hours, got.of]).toEqual([8, 24]);
  checked({ got: got.worst, expected: 2 - 2 + 0.24 * 13 - 9.569, within: 1e-3 });
  checked({ got: baseDrain(3, 6 * Math.PI, 36).all, expected: 0.09 * Math.PI, within: 1e-9 });
});
