// Bases as they might stand, and what a crew would read of them.

import type { Base } from '../../../src/ground/base.ts';
import type { SurveyReading } from '../../../src/ground/survey/readings.ts';
import type { Random } from '../../../src/math/random.ts';

export type Place = readonly [number, number, number];

/** Hubs where the plan has them, then moved: by number, metres outwards, clockwise, up. */
export const moved = (base: Base, off: ReadonlyMap<number, Place> = new Map()): Place[] =>
  base.hubs.map(({ number, at, radius, rise }) => {
    const [out, along, up] = off.get(number) ?? [0, 0, 0];
    const [ux, uy] = [at[0] / radius, at[1] / radius];
    return [at[0] + out * ux + along * uy, at[1] + out * uy - along * ux, rise + up];
  });

/** All radii, the chords of neighbours and of opposite hubs, and all levels, with `share` of the noise that they usually have. */
export function readAll(places: readonly Place[], random?: Random, share = 1): SurveyReading[] {
  const noise = (sd: number): number => (random ? share * sd * random.normal() : 0);
  const n = places.length;
  const chord = (from: number, to: number): SurveyReading => {
    const [a, b] = [places[from] as Place, places[to] as Place];
    const length = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    return { what: 'chord', from: from + 1, to: to + 1, length: length + noise(0.002) };
  };
  return places.flatMap(([x, y, z], i): SurveyReading[] => [
    { what: 'radius', hub: i + 1, length: Math.hypot(x, y) + noise(0.002) },
    chord(i, (i + 1) % n),
    ...(i < n / 2 - 0.5 ? [chord(i, i + Math.floor(n / 2))] : []),
    { what: 'level', hub: i + 1, height: 1.3 + z + noise(0.001) },
  ]);
}
