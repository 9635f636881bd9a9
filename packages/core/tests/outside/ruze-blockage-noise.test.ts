// Rough dishes, blockage, gain and noise: Ruze, Proc. IEEE 54 (1966) 633; loss 20 log(1 − b) of a
// blocked, evenly lit aperture, gain and noise of an attenuator: laws from memory, values reckoned apart
// from this code.

import { expect, test } from 'vitest';
import {
  attenuatorNoise,
  beamWidthDeg,
  dishGain,
  leastSeen,
  leftBehindBlockage,
  ruze,
  wallPenalty,
} from '../../src/fitout/receiver.ts';
import { LIGHT_SPEED, lossDb } from '../../src/fitout/wave.ts';
import { checked } from './data/checked.ts';

test('Ruze: share of the gain kept by wave length over error', () => {
  const over = [50, 40, 32, 30, 25, 20, 16];
  const kept = over.map((n) => ruze(LIGHT_SPEED / 1e10 / n, 1e10));
  checked({
    got: kept,
    expected: [0.938788, 0.906018, 0.85709, 0.839071, 0.77673, 0.673825, 0.539641],
    within: 1e-6,
  });
  expect(Math.abs((kept[0] as number) - 0.938788 - 1e-5)).toBeGreaterThan(1e-6);
  checked({
    got: kept.map(lossDb),
    expected: [0.2743, 0.4286, 0.6697, 0.762, 1.0973, 1.7145, 2.6789],
    within: 6e-5,
  });
  checked({ got: lossDb(ruze(LIGHT_SPEED / 1e10 / 20, 1e10)), expected: 685.8 / 400, ratio: 1e-4 });
});

test('blockage: 20 log, twice what the missing power would say', () => {
  const blocked = [0.01, 0.02, 0.03, 0.05, 0.08, 0.1, 0.15, 0.2];
  checked({
    got: blocked.map((b) => lossDb(leftBehindBlockage(b))),
    expected: [0.0873, 0.1755, 0.2646, 0.4455, 0.7242, 0.9151, 1.4116, 1.9382],
    within: 6e-5,
  });
  expect(Math.abs(lossDb(leftBehindBlockage(0.1)) - 0.4576)).toBeGreaterThan(0.4);
});

test.each([
  [3, 0.6, 1420405750, 30.779, 4.925, 4.2412],
  [2.3, 0.55, 1420405750, 28.093, 6.424, 2.2851],
  [4.5, 0.6, 10.7e9, 51.84, 0.436, 9.5426],
])('gain, beam and area of a dish of %d m', (diameter, eta, f, dbi, beam, area) => {
  const gain = dishGain(diameter, f, eta);
  checked({ got: -lossDb(gain), expected: dbi, within: 6e-4 });
  checked({ got: beamWidthDeg(diameter, f), expected: beam, within: 6e-4 });
  expect(Math.abs(-lossDb(gain) - dbi - 6e-3)).toBeGreaterThan(6e-4);
  expect(Math.abs(beamWidthDeg(diameter, f) - beam - 6e-3)).toBeGreaterThan(6e-4);
  checked({ got: (gain * (LIGHT_SPEED / f) ** 2) / (4 * Math.PI), expected: area, within: 6e-5 });
});

test('noise of an attenuator at its output and input', () => {
  const db = [0.05, 0.1, 0.2, 0.3, 0.5, 1, 3];
  const kept = db.map((x) => 10 ** (-x / 10));
  checked({
    got: kept.map((k) => attenuatorNoise(k)),
    expected: [3.32, 6.601, 13.052, 19.356, 31.537, 59.645, 144.656],
    within: 6e-4,
  });
  checked({
    got: kept.map((k) => attenuatorNoise(k) / k),
    expected: [3.358, 6.755, 13.667, 20.741, 35.385, 75.088, 288.626],
    within: 6e-4,
  });
});

test('only what is absorbed is warm: signal to noise behind 6 mm of laminate at 1.42 GHz', () => {
  const added = attenuatorNoise(1 - 0.010171);
  checked({ got: added, expected: 2.9496, within: 6e-5 });
  const { ratio, db } = wallPenalty(0.913978, added, 60);
  checked({ got: ratio, expected: 0.871152, within: 1e-6 });
  checked({ got: db, expected: -0.59906, within: 1e-5 });
  expect(attenuatorNoise(0.852977)).toBeGreaterThan(10 * attenuatorNoise(1 - 0.012927));
});

test('least change that a radiometer sees', () => {
  checked({ got: leastSeen(100, 1e6, 1), expected: 0.1, within: 1e-12 });
  checked({ got: leastSeen(120, 2.4e6, 10), expected: 0.0244949, within: 1e-7 });
});
