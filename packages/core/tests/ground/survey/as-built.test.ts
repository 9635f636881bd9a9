import { expect, test } from 'vitest';
import { type AsBuilt, asBuilt } from '../../../src/ground/survey/as-built.ts';
import { outOfTrue } from '../../../src/ground/survey/out-of-true.ts';
import type { SurveyReading } from '../../../src/ground/survey/readings.ts';
import { seededRandom } from '../../../src/math/random.ts';
import { baseThere, dome, ring } from '../bases.ts';
import { moved, type Place, readAll } from './standing.ts';

const base = baseThere(dome(4, 0, 0, 3.6));
function built(readings: readonly SurveyReading[], of = base): AsBuilt {
  const read = asBuilt(of, readings);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}
const faults = (readings: readonly SurveyReading[]): string[] => {
  const read = asBuilt(base, readings);
  return read.ok ? [] : read.faults.map(({ found }) => found);
};

test('with nothing measured the base stands as planned, and nothing of it is known', () => {
  const { hubs } = built([]);
  hubs.forEach((hub, k) => {
    expect(
      Math.hypot(hub.at[0] - (base.hubs[k]?.at[0] ?? 9), hub.at[1] - (base.hubs[k]?.at[1] ?? 9)),
    ).toBeLessThan(1e-12);
    expect(hub.known).toEqual({ radial: false, height: false });
  });
});

test('exact readings of hubs moved by millimetres bring them back to a tenth of a millimetre', () => {
  const off = new Map<number, Place>([
    [3, [0.012, 0, 0.004]],
    [9, [-0.008, 0.003, 0]],
    [14, [0.002, -0.004, -0.007]],
  ]);
  const { hubs } = outOfTrue(base, built(readAll(moved(base, off))));
  const plan = outOfTrue(base, {
    suspects: [],
    zero: 0,
    hubs: moved(base, off).map(([x, y, z], k) => ({
      hub: k + 1,
      at: [x, y],
      height: z,
      sd: { radial: 0, height: 0 },
      known: { radial: true, height: true },
    })),
  });
  hubs.forEach((hub, k) => {
    for (const key of ['radial', 'along', 'up'] as const)
      expect(Math.abs(hub[key] - (plan.hubs[k]?.[key] ?? 9))).toBeLessThan(1e-4);
  });
});

test('radii of noisy readings scatter as told: 300 surveys with seed 4', () => {
  const random = seededRandom(4);
  const small = ring(8, 2.5);
  let [sum, count] = [0, 0];
  for (let t = 0; t < 300; t++)
    for (const { at, sd } of built(readAll(moved(small), random), small).hubs) {
      sum += ((Math.hypot(...at) - 2.5) / sd.radial) ** 2;
      count += 1;
    }
  expect(Math.abs(Math.sqrt(sum / count) - 1)).toBeLessThan(0.06);
});

test('what was measured is known, what was not is not', () => {
  const readings = readAll(moved(base)).filter(
    (reading) => reading.what !== 'radius' || reading.hub > 4,
  );
  const radial = built(readings.filter(({ what }) => what !== 'chord')).hubs.map(
    ({ known }) => known.radial,
  );
  expect(radial).toEqual(base.hubs.map(({ number }) => number > 4));
});

test('a base set off its centre, turned and tilted as a whole is not out of true', () => {
  const turn = 0.01;
  const places = moved(base).map(
    ([x, y, z]): Place => [
      x * Math.cos(turn) - y * Math.sin(turn) + 0.03,
      x * Math.sin(turn) + y * Math.cos(turn) - 0.02,
      z + 0.002 * x - 0.001 * y,
    ],
  );
  const { outOfRound, outOfLevel, slope } = outOfTrue(base, built(readAll(places)));
  expect(Math.abs(outOfRound.off)).toBeLessThan(2e-4);
  expect(Math.abs(outOfLevel.off)).toBeLessThan(2e-4);
  expect(slope[0]).toBeCloseTo(0.002, 4);
});

test('one radius misread by 30 mm is named, and it alone', () => {
  const random = seededRandom(11);
  const readings = readAll(moved(base), random).map(
    (reading): SurveyReading =>
      reading.what === 'radius' && reading.hub === 6
        ? { ...reading, length: reading.length + 0.03 }
        : reading,
  );
  const { suspects } = built(readings);
  expect(suspects).toHaveLength(1);
  const named = readings[suspects[0]?.reading ?? -1];
  expect(named).toMatchObject({ what: 'radius', hub: 6 });
  expect(built(readAll(moved(base), seededRandom(12))).suspects).toEqual([]);
});

test('readings that can’t be are told with what was allowed, and nothing is reckoned from them', () => {
  expect(faults([{ what: 'chord', from: 1, to: 11, length: 7.5 }])).toEqual(['a chord of 7.5 m']);
  expect(faults([{ what: 'radius', hub: 1, length: 3.7 }])).toEqual(['a radius of 3.7 m']);
  expect(faults([{ what: 'radius', hub: 1, length: -2 }])).toEqual(['a radius of -2 m']);
  expect(faults([{ what: 'radius', hub: 99, length: 3.6 }])).toEqual(['base hub 99']);
  expect(faults([{ what: 'chord', from: 2, to: 2, length: 1 }])).toEqual([
    'a chord from hub 2 to itself',
  ]);
  expect(faults([{ what: 'level', hub: 2, height: 1300 }])).toEqual(['a level of 1300 m']);
  expect(faults([{ what: 'radius', hub: 3, length: Number.NaN }])).toEqual(['a radius of NaN m']);
  expect(faults([{ what: 'chord', from: 1, to: 2, length: 2.1 }])[0]).toMatch(/at hub 1 to 2/);
});

test('a chord longer than its two radii together is told', () => {
  const read = faults([
    { what: 'radius', hub: 1, length: 3.4 },
    { what: 'radius', hub: 11, length: 3.4 },
    { what: 'chord', from: 1, to: 11, length: 7.1 },
  ]);
  expect(read).toEqual(['a chord of 7.100 m from hub 1 to hub 11']);
});

test('the order of readings does not matter', () => {
  const readings = readAll(moved(base), seededRandom(2));
  const [a, b] = [built(readings), built(seededRandom(9).shuffle(readings))];
  a.hubs.forEach((hub, k) => {
    expect(b.hubs[k]?.at[0]).toBeCloseTo(hub.at[0], 9);
    expect(b.hubs[k]?.height).toBeCloseTo(hub.height, 9);
  });
});
