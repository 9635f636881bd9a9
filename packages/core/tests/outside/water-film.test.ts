// Water on a wall: permittivity by the double Debye form of ITU-R P.840 (from memory) and film by the
// laminar law of Gibble (1964) and Blevis (1965) (from memory), reckoned apart from this code; a film of
// 0.15 mm at 12 GHz costs over 5 dB (waterrepellent.eu, read); Kurri and Huuskonen, J. Atmos. Oceanic
// Technol. 25 (2008) 1590: 3 dB both ways at 15.1 mm/h on a dirty wall, which a whole film overstates.

import { expect, test } from 'vitest';
import { radioWall, wallTable } from '../../src/fitout/wall.ts';
import { rainFilm, waterLayer, waterPermittivity } from '../../src/fitout/water.ts';
import { lossDb, throughLayers } from '../../src/fitout/wave.ts';
import { checked } from './data/checked.ts';

const MM_PER_HOUR = 1e-3 / 3600;

test('film of rain on a sphere of 3.35 m', () => {
  const rain = [1, 5, 10, 15.1, 25, 50, 100];
  const film = [0.0571, 0.0976, 0.123, 0.1411, 0.1669, 0.2103, 0.265];
  checked({
    got: rain.map((r) => 1000 * rainFilm(r * MM_PER_HOUR, 3.35)),
    expected: film,
    within: 6e-5,
  });
  expect(Math.abs(1000 * rainFilm(10 * MM_PER_HOUR, 3.35) - 0.1236)).toBeGreaterThan(6e-5);
});

const films: [number, number, number, number, number, number][] = [
  [12, 20, 0.15, 55.154, 35.254, 5.733],
  [12, 10, 0.15, 46.715, 39.091, 5.685],
  [5.65, 10, 0.141, 70.771, 29.166, 2.741],
  [1.42, 10, 0.141, 82.831, 8.686, 0.279],
  [4, 10, 0.1, 76.681, 22.52, 1.132],
  [10.7, 10, 0.1, 51.141, 38.605, 3.725],
];
test.each(films)('a film alone at %d GHz and %d °C, %d mm', (ghz, t, mm, re, im, db) => {
  checked({ got: waterPermittivity(ghz * 1e9, t), expected: [re, im], within: 2e-3 });
  const film = waterLayer(mm / 1000, ghz * 1e9, t);
  const { transmitted } = throughLayers([film], ghz * 1e9, 1, 'TE');
  checked({ got: lossDb(transmitted), expected: db, within: 1e-3 });
  expect(Math.abs(lossDb(transmitted) - db - 1e-2)).toBeGreaterThan(1e-3);
});

const onLaminate: [number, number, number, number, number][] = [
  [12, 20, 0.15, 4.413, 2.21],
  [1.42, 10, 0.141, 0.575, 0.116],
  [4, 10, 0.1, 2.167, 0.691],
];
test.each(onLaminate)('a film on 3 mm of laminate at %d GHz', (ghz, t, mm, wet, dry) => {
  const laminate = { thickness: 0.003, permittivity: 4.3, lossTangent: 0.015 };
  const loss = (layers: readonly (typeof laminate)[]): number =>
    lossDb(throughLayers(layers, ghz * 1e9, 1, 'TE').transmitted);
  checked({
    got: loss([waterLayer(mm / 1000, ghz * 1e9, t), laminate]),
    expected: wet,
    within: 1e-3,
  });
  checked({ got: loss([laminate]), expected: dry, within: 1e-3 });
});

test('a loss that was measured is kept square on: 0.34 and 0.35 dB, one way, on that wall when dry', () => {
  const wall = radioWall([{ material: 'glass polyester', thickness: 0.003 }]);
  if (!wall.ok) throw new Error('no wall');
  for (const measured of [0.34, 0.35]) {
    const { field, steps } = wallTable(wall.value, 5.65e9, measured);
    const kept = field[4 * steps] ** 2 + field[4 * steps + 1] ** 2;
    checked({ got: lossDb(kept), expected: measured, within: 1e-6, standing: 'printed' });
    expect(Math.abs(lossDb(kept) - measured - 1e-5)).toBeGreaterThan(1e-6);
  }
});

test('a whole film is above what was measured on a dirty wall, and of its order', () => {
  const film = waterLayer(rainFilm(15.1 * MM_PER_HOUR, 3.35), 5.65e9, 10);
  const bothWays = 2 * lossDb(throughLayers([film], 5.65e9, 1, 'TE').transmitted);
  expect(bothWays).toBeGreaterThan(3);
  expect(bothWays).toBeLessThan(3 * 3);
});
