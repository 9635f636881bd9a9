import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { readPile } from '../../src/pile/check.ts';
import { readPileCsv, writePileCsv } from '../../src/pile/csv.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import type { Pile } from '../../src/pile/schema.ts';

const pileOf = (raw: unknown): Pile => {
  const read = readPile(raw);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};

const SIDES = [0.9, 1.0, 1.1];

/** Readings of panels with these sides and laps, each from a corner of its own, half from inside. */
const readings = (count: number, laps: readonly (string | null)[], seed: number) => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    const from = random.below(3);
    const order = [0, 1, 2].map((j) => (j + from) % 3);
    const seen = i % 2 === 0 ? order : [...order].reverse();
    return {
      tag: `t${seed}-${i}`,
      sides: seen.map((s) => (SIDES[s] as number) + 0.0005 * random.normal()),
      laps: seen.map((s) => laps[s]),
      seenFrom: i % 2 === 0 ? 'outside' : 'inside',
    };
  });
};

describe('panels of equal sides', () => {
  test('with different laps are different kinds, seeds 1 and 2', () => {
    const worked = kindsOfPile(
      pileOf({
        readings: [
          ...readings(8, ['over', 'under', 'flush'], 1),
          ...readings(5, ['under', 'over', 'flush'], 2),
        ],
      }),
    );
    expect(worked.kinds.map(({ id, good, laps }) => [id, good, laps])).toEqual([
      ['1Ra', 8, ['over', 'under', 'flush']],
      ['1Rb', 5, ['under', 'over', 'flush']],
    ]);
    expect(worked.assigned.filter(({ kind }) => kind === '1Rb')).toHaveLength(5);
    expect(worked.suspects).toEqual([]);
  });

  test('with the same laps are one, whoever looked at which side', () => {
    const worked = kindsOfPile(
      pileOf({
        readings: [
          ...readings(4, ['over', null, null], 3),
          ...readings(4, [null, 'under', 'flush'], 4),
          ...readings(4, [null, null, null], 5),
        ],
      }),
    );
    expect(worked.kinds.map(({ id, good, laps }) => [id, good, laps])).toEqual([
      ['1R', 12, ['over', 'under', 'flush']],
    ]);
  });

  test('of which one of twenty has one side unlike are one: somebody looked wrongly', () => {
    const worked = kindsOfPile(
      pileOf({
        readings: [
          ...readings(20, ['over', 'under', 'flush'], 6),
          ...readings(1, ['over', 'over', 'flush'], 7),
        ],
      }),
    );
    expect(worked.kinds.map(({ id, good }) => [id, good])).toEqual([['1R', 21]]);
  });
});

test('panels of three equal sides are turned until their laps lie on each other', () => {
  const turns = [0, 1, 2, 0, 1, 2, 1];
  const laps = ['over', 'under', 'under'];
  const worked = kindsOfPile(
    pileOf({
      readings: turns.map((by) => ({
        sides: [1, 1, 1],
        laps: [0, 1, 2].map((i) => laps[(i + by) % 3]),
        seenFrom: 'outside',
      })),
    }),
  );
  expect(worked.kinds).toHaveLength(1);
  const [kind] = worked.kinds;
  worked.assigned.forEach(({ liesOn }, r) => {
    const own = [0, 1, 2].map((i) => laps[(i + (turns[r] as number)) % 3]);
    expect(liesOn.map((side) => kind?.laps?.[side])).toEqual(own);
  });
});

test('angles of a kind are the mean of its readings, as sure as they are many', () => {
  const sides = [0.9, 1, 1.1];
  const worked = kindsOfPile(
    pileOf({
      angleSd: 0.01,
      readings: [
        { sides, dihedrals: [2.9, null, null], seenFrom: 'outside' },
        { sides: [1.1, 1, 0.9], dihedrals: [null, null, 2.94], seenFrom: 'inside' },
      ],
    }),
  );
  const [angle, ...others] = worked.kinds[0]?.dihedrals ?? [];
  expect(angle?.value).toBeCloseTo(2.92, 12);
  expect(angle?.sd).toBeCloseTo(0.01 / Math.SQRT2, 12);
  expect(others).toEqual([null, null]);
});

test('laps and angles of a kind are those of its row, whatever face it was read from', () => {
  const row = { id: 'x', sides: [0.9, 1, 1.1], laps: ['over', 'under', null] };
  const worked = kindsOfPile(
    pileOf({ kinds: [row, { ...row, id: 'y', seenFrom: 'inside', dihedrals: [3, null, null] }] }),
  );
  expect(worked.kinds[0]?.laps).toEqual(['over', 'under', null]);
  expect(worked.kinds[1]?.laps).toEqual([null, 'under', 'over']);
  expect(worked.kinds[1]?.dihedrals?.[2]?.value).toBe(3);
});

test('a spreadsheet keeps laps and angles', () => {
  const text =
    'side1 mm,side2 mm,side3 mm,laps1,lap 2,angle1 deg,angle3\n900,1000,1100,Over,,165.5,"2.9 rad"\n';
  const read = readPileCsv(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  const [row] = read.value.readings;
  expect(row?.laps).toEqual(['over', null, null]);
  expect(row?.dihedrals?.[0]).toBeCloseTo((165.5 * Math.PI) / 180, 12);
  expect(row?.dihedrals?.[2]).toBe(2.9);
  const again = readPileCsv(writePileCsv(read.value));
  if (!again.ok) throw new Error(JSON.stringify(again.faults));
  expect(again.value.readings[0]?.laps).toEqual(row?.laps);
  expect(again.value.readings[0]?.dihedrals?.[2]).toBeCloseTo(2.9, 5);
});

test.each([
  ['laps1', 'above', 'row 2, column laps1: found "above", expected one of over, under, flush'],
  [
    'angle1 deg',
    '20',
    'row 2, column angle1: found "20", expected an angle between two panels, 57 to 303 deg',
  ],
  ['angle1 mm', '1', 'column 4: found "angle1 mm", expected a unit that is one of deg, rad'],
  ['laps1 mm', '1', 'column 4: found "laps1 mm", expected no unit for laps'],
])('a spreadsheet with %s %s is refused with its place', (header, cell, expected) => {
  const read = readPileCsv(`side1 mm,side2 mm,side3 mm,${header}\n900,1000,1100,${cell}\n`);
  const told = read.ok
    ? []
    : read.faults.map((f) => `${f.path}: found ${f.found}, expected ${f.expected}`);
  expect(told).toContain(expected);
});
