import { expect, test } from 'vitest';
import { groundLevels, type LevelSetUp } from '../../src/ground/levels.ts';
import { seededRandom } from '../../src/math/random.ts';

const ground = [0.42, 0.4, 0.31, 0.35, 0.5, 0.47];
const staff = (beam: number, hubs: readonly number[], slip = 0): LevelSetUp => ({
  method: 'laser',
  readings: hubs.map((hub, i) => ({
    at: hub,
    reading: beam - (ground[hub - 1] as number) + (i === 0 ? slip : 0),
  })),
});
function heights(setUps: readonly LevelSetUp[]) {
  const read = groundLevels(setUps);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
}

test('a staff reads more where the ground is lower; heights count from the lowest point', () => {
  const { heights: found } = heights([staff(1.9, [1, 2, 3, 4, 5, 6])]);
  ground.forEach((g, i) => {
    expect(found.get(i + 1)).toBeCloseTo(g - 0.31, 12);
  });
});

test('a second set-up joins where it shares a hub or a benchmark, whatever its beam', () => {
  const shared = heights([staff(1.9, [1, 2, 3]), staff(1.2, [3, 4, 5, 6])]);
  ground.forEach((g, i) => {
    expect(shared.heights.get(i + 1)).toBeCloseTo(g - 0.31, 9);
  });
  const mark = (beam: number): LevelSetUp['readings'][number] => ({
    at: 'gatepost',
    reading: beam - 0.1,
  });
  const [a, b] = [staff(1.9, [1, 2, 3]), staff(1.2, [4, 5, 6])];
  const tied = heights([
    { ...a, readings: [...a.readings, mark(1.9)] },
    { ...b, readings: [mark(1.2), ...b.readings] },
  ]);
  expect(tied.heights.get(5)).toBeCloseTo(0.4, 9);
  expect(tied.benchmarks.get('gatepost')).toBeCloseTo(0, 9);
});

test('a water level reads as a staff does, heights the other way up', () => {
  const readings = ground.map((g, i) => ({ at: i + 1, reading: 1 - g }));
  const water = heights([{ method: 'water level', readings }]).heights;
  const direct = heights([
    { method: 'heights', readings: ground.map((g, i) => ({ at: i + 1, reading: g })) },
  ]).heights;
  ground.forEach((_, i) => {
    expect(water.get(i + 1)).toBeCloseTo(direct.get(i + 1) as number, 12);
  });
});

test('set-ups that share no point are a fault', () => {
  const read = groundLevels([staff(1.9, [1, 2, 3]), staff(1.2, [4, 5, 6])]);
  expect(read).toEqual({
    ok: false,
    faults: [
      {
        path: 'levels[1]',
        found: 'a set-up that shares no point with those before',
        expected: 'one point read from both: a benchmark or a hub',
      },
    ],
  });
});

test('no set-up, an empty one and a reading of 300 m are told at once', () => {
  expect(groundLevels([]).ok).toBe(false);
  const read = groundLevels([
    { method: 'laser', readings: [] },
    {
      method: 'laser',
      readings: [
        { at: 1, reading: 300 },
        { at: 2, reading: Number.NaN },
      ],
    },
  ]);
  expect(read.ok ? [] : read.faults.map((fault) => fault.path)).toEqual([
    'levels[0].readings',
    'levels[1].readings[0].reading',
    'levels[1].readings[1].reading',
  ]);
});

test('a slip of 20 mm where every hub was read twice is named; one of 1 mm is not', () => {
  const all = [1, 2, 3, 4, 5, 6];
  const slipped = heights([staff(1.9, [4, 1, 2, 3, 5, 6], 0.02), staff(1.5, all)]);
  expect(slipped.suspects.map(({ at }) => at)).toContain(4);
  expect(slipped.suspects.every(({ at }) => at === 4)).toBe(true);
  expect(heights([staff(1.9, [4, 1, 2, 3, 5, 6], 0.001), staff(1.5, all)]).suspects).toEqual([]);
});

test('read once, nothing is checked and nothing is suspect', () => {
  const once = heights([staff(1.9, [1, 2, 3, 4, 5, 6], 0.5)]);
  expect(once.suspects).toEqual([]);
  expect(once.unchecked).toBe(6);
});

test('the order of readings does not matter, seed 5', () => {
  const random = seededRandom(5);
  const noisy: LevelSetUp[] = [1.9, 1.4].map((beam) => ({
    method: 'laser',
    readings: ground.map((g, i) => ({ at: i + 1, reading: beam - g + 0.001 * random.normal() })),
  }));
  const turned = noisy.map((setUp) => ({ ...setUp, readings: random.shuffle(setUp.readings) }));
  const [a, b] = [heights(noisy).heights, heights([...turned].reverse()).heights];
  for (const [hub, height] of a) expect(b.get(hub)).toBeCloseTo(height, 9);
});
