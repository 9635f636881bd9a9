// Waters, Putz-Anderson, Garg, Applications Manual for the Revised NIOSH Lifting Equation, DHHS (NIOSH)
// 94-110, 1994, revised 9/2021, doi 10.26616/NIOSHPUB94110revised092021: the package inspection job
// (example 4) as printed and at full precision; punch press stock and bags into a hopper (examples 1 and
// 3: inputs and printed results from memory, full precision reckoned); supply rolls (example 2, from
// memory, reckoned); its tables of frequency and coupling. HSE L23: two lift two thirds, three half.

import { expect, test } from 'vitest';
import {
  INCH_LIFT,
  type LiftTask,
  liftIndex,
  liftMultipliers,
  METRIC_LIFT,
  recommendedWeight,
} from '../../src/raise/lifts/niosh.ts';
import { teamLifts } from '../../src/raise/lifts/team.ts';
import { misfits, type Pair } from './data/pairs.ts';

const task = (
  reach: number,
  height: number,
  travel: number,
  perMinute: number,
  coupling: LiftTask['coupling'],
  twistDeg = 0,
): LiftTask => ({
  reach,
  height,
  travel,
  perMinute,
  coupling,
  twist: (twistDeg * Math.PI) / 180,
  hours: 1,
});
const inspection = [task(10, 22, 37, 3, 'fair'), task(20, 59, 37, 3, 'fair')] as const;
const press = [task(23, 15, 49, 0.2, 'fair'), task(23, 64, 49, 0.2, 'fair')] as const;
const hopper = task(18, 15, 21, 0.2, 'fair', 45);
const rolls = task(20, 27, 17, 0.2, 'poor');

test('multipliers of the inspection job are the printed ones, to a hundredth; ten times that is refused', () => {
  const m = liftMultipliers(inspection[0], INCH_LIFT);
  const got = [m.horizontal, m.vertical, m.distance, m.asymmetric, m.frequency, m.coupling];
  const pairs = [1, 0.94, 0.87, 1, 0.88, 0.95].map(
    (expected, i): Pair => ({ what: `multiplier ${i + 1}`, actual: got[i], expected }),
  );
  expect(misfits(pairs, 0.01)).toEqual([]);
  expect(misfits(pairs, 0.01, 0.1)).toHaveLength(6);
});

test('recommended weights of four jobs to 0.001 lb of full precision; ten times that is refused', () => {
  const pairs: Pair[] = [
    {
      what: 'inspection, origin',
      actual: recommendedWeight(inspection[0], INCH_LIFT),
      expected: 34.814,
    },
    {
      what: 'inspection, end',
      actual: recommendedWeight(inspection[1], INCH_LIFT),
      expected: 15.253,
    },
    { what: 'press, origin', actual: recommendedWeight(press[0], INCH_LIFT), expected: 16.017 },
    { what: 'press, end', actual: recommendedWeight(press[1], INCH_LIFT), expected: 14.153 },
    { what: 'hopper', actual: recommendedWeight(hopper, INCH_LIFT), expected: 18.521 },
    { what: 'rolls', actual: recommendedWeight(rolls, INCH_LIFT), expected: 20.771 },
  ];
  expect(misfits(pairs, 0.001)).toEqual([]);
  expect(misfits(pairs, 0.001, 0.01)).toHaveLength(6);
});

test('printed weights, worked with rounded multipliers, are met to 0.4 lb; ten times that is refused', () => {
  const pairs: Pair[] = [
    {
      what: 'inspection, origin',
      actual: recommendedWeight(inspection[0], INCH_LIFT),
      expected: 34.9,
    },
    {
      what: 'inspection, end',
      actual: recommendedWeight(inspection[1], INCH_LIFT),
      expected: 15.2,
    },
    { what: 'press, origin', actual: recommendedWeight(press[0], INCH_LIFT), expected: 16.3 },
    { what: 'press, end', actual: recommendedWeight(press[1], INCH_LIFT), expected: 14.5 },
    { what: 'hopper', actual: recommendedWeight(hopper, INCH_LIFT), expected: 18.9 },
  ];
  expect(misfits(pairs, 0.4)).toEqual([]);
  expect(misfits(pairs, 0.4, 4)).toHaveLength(5);
});

test('lifting indices to 0.001 of full precision, ten times that is refused', () => {
  const pairs: Pair[] = [
    {
      what: 'press, origin',
      actual: liftIndex(44, recommendedWeight(press[0], INCH_LIFT)),
      expected: 2.747,
    },
    {
      what: 'press, end',
      actual: liftIndex(44, recommendedWeight(press[1], INCH_LIFT)),
      expected: 3.109,
    },
    { what: 'hopper', actual: liftIndex(40, recommendedWeight(hopper, INCH_LIFT)), expected: 2.16 },
    { what: 'rolls', actual: liftIndex(35, recommendedWeight(rolls, INCH_LIFT)), expected: 1.685 },
  ];
  expect(misfits(pairs, 0.001)).toEqual([]);
  expect(misfits(pairs, 0.001, 0.01)).toHaveLength(4);
});

test('kilograms and metres say the same as pounds and inches, to 4 %, as its metric constants are rounded; 40 % is refused', () => {
  const POUND = 0.45359237;
  const metric = ({ reach, height, travel, ...rest }: LiftTask): LiftTask => ({
    ...rest,
    reach: reach * 0.0254,
    height: height * 0.0254,
    travel: travel * 0.0254,
  });
  for (const one of [...inspection, ...press, hopper, rolls]) {
    const ratio = recommendedWeight(metric(one)) / POUND / recommendedWeight(one, INCH_LIFT);
    expect(misfits([{ what: 'kg over lb', actual: ratio, expected: 1 }], 0.04)).toEqual([]);
    expect(misfits([{ what: 'kg over lb', actual: ratio, expected: 1 }], 0.04, 0.4)).toHaveLength(
      1,
    );
  }
});

test('the table of frequency comes back, and beyond it nothing may be lifted', () => {
  const at = (perMinute: number, hours: 1 | 2 | 8, height: number): number =>
    liftMultipliers({ ...task(10, height, 10, perMinute, 'good'), hours }, INCH_LIFT).frequency;
  const rows: readonly (readonly [number, 1 | 2 | 8, number, number])[] = [
    [0.2, 1, 20, 1],
    [1, 1, 20, 0.94],
    [12, 1, 20, 0.37],
    [13, 1, 20, 0],
    [13, 1, 30, 0.34],
    [15, 1, 30, 0.28],
    [16, 1, 30, 0],
    [4, 2, 20, 0.72],
    [10, 2, 29, 0.26],
    [11, 2, 30, 0.23],
    [13, 2, 30, 0],
    [0.1, 8, 40, 0.85],
    [8, 8, 20, 0.18],
    [9, 8, 30, 0.15],
    [10, 8, 30, 0.13],
    [9, 8, 29, 0],
  ];
  const pairs = rows.map(
    ([f, hours, height, expected]): Pair => ({
      what: `${f} a minute, ${hours} h, ${height} in`,
      actual: at(f, hours, height),
      expected,
    }),
  );
  expect(misfits(pairs, 1e-9)).toEqual([]);
  expect(misfits(pairs, 1e-9, 1e-2)).toHaveLength(rows.length);
});

test('beyond its limits the equation allows no lift: 25 in away, 70 in up or far, 135° of twist', () => {
  const of = (change: Partial<LiftTask>): number =>
    recommendedWeight({ ...task(10, 30, 10, 0.2, 'good'), ...change }, INCH_LIFT);
  expect(of({})).toBeCloseTo(INCH_LIFT.load, 9);
  expect(of({ reach: 25 })).toBeGreaterThan(0);
  expect(of({ twist: (3 * Math.PI) / 4 })).toBeGreaterThan(0);
  for (const beyond of [{ reach: 25.1 }, { height: 70.1 }, { travel: 70.1 }, { twist: 2.37 }])
    expect(of(beyond)).toBe(0);
  expect(METRIC_LIFT.load).toBe(23);
});

test('teams: two of 20 kg lift 26.667 kg, three 30 kg, to a gram; ten times that is refused', () => {
  const pairs: Pair[] = [
    { what: 'two', actual: teamLifts(2, 20).value, expected: 26.667 },
    { what: 'three', actual: teamLifts(3, 20).value, expected: 30 },
  ];
  expect(misfits(pairs, 0.001)).toEqual([]);
  expect(misfits(pairs, 0.001, 0.01)).toHaveLength(2);
});
