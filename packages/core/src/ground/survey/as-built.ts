// Where the base hubs stand, from whatever was measured so far: all readings and the plan together
// by least squares, iterated (Gauss and Newton). The plan counts as a very loose reading, so that
// hubs nobody measured stay where they were staked, with a large deviation that says so, and the
// turn of the whole about the centre, which no radius or chord tells, stays as planned.

import type { Read } from '../../measure/fault.ts';
import { type AdjustmentRow, adjust } from '../adjustment.ts';
import type { Base, BaseHub } from '../base.ts';
import { KNOWN_SD, PRIOR_SD, SURVEY_SD, SUSPECT_TEST } from '../tolerances.ts';
import { readingFaults, type SurveyReading } from './readings.ts';

/** One base hub as it stands. */
export interface StandingHub {
  readonly hub: number;
  /** Plan position, metres. */
  readonly at: readonly [number, number];
  /** Height above the level of the lowest hub as planned, metres; the mean of all is as planned. */
  readonly height: number;
  /** Standard deviations along the radius and upwards, metres. */
  readonly sd: { readonly radial: number; readonly height: number };
  /** True where the readings tell its radius, and its height, to half of what is allowed. */
  readonly known: { readonly radial: boolean; readonly height: boolean };
}

/** A reading that does not go with the others. */
export interface DoubtfulReading {
  /** Its place in the list. */
  readonly reading: number;
  /** Read less what the others say, metres. */
  readonly off: number;
}

/** The base as it stands. */
export interface AsBuilt {
  readonly hubs: readonly StandingHub[];
  /** A level reading less this is a height as in `hubs`, metres; 0 without levels. */
  readonly zero: number;
  /** The reading that goes least with the others, where it is off by over three deviations. */
  readonly suspects: readonly DoubtfulReading[];
}

/** Most rounds of the iteration: a hub 10 cm off is within a micrometre after four. */
const ROUNDS = 8;

/** The base hubs as surveyed; faults where a reading can't be. Without readings every hub stands as
 * planned and none is known. */
export function asBuilt(base: Base, readings: readonly SurveyReading[]): Read<AsBuilt> {
  const faults = readingFaults(base, readings);
  if (faults.length > 0) return { ok: false, faults };
  const n = base.hubs.length;
  let at = base.hubs.flatMap(({ at: [x, y], rise }) => [x, y, rise]);
  for (let round = 0; ; round++) {
    const adjusted = adjust(rowsOf(base, readings, at), 3 * n + 1);
    if (adjusted === null) throw new Error('the plan left a hub open');
    const values = adjusted.values;
    at = at.map((x, i) => x + (values[i] as number));
    const moved = Math.max(...values.subarray(0, 3 * n).map(Math.abs));
    if (moved > 1e-7 && round < ROUNDS) continue;
    return { ok: true, value: standing(base, at, adjusted, readings.length) };
  }
}

/** The rows of one round about the positions `at`; the last unknown is the zero of the levels. */
function rowsOf(
  base: Base,
  readings: readonly SurveyReading[],
  at: readonly number[],
): AdjustmentRow[] {
  const zero = at.length;
  const measured = readings.map((reading): AdjustmentRow => {
    const first = (number: number): number => 3 * (number - 1);
    // Of an upper hub: it tells the base nothing, and keeps its place in the list.
    if (reading.what === 'height') return { terms: [], value: 0, sd: SURVEY_SD.height };
    if (reading.what === 'level') {
      const i = first(reading.hub) + 2;
      return {
        terms: [
          [i, 1],
          [zero, 1],
        ],
        value: reading.height - (at[i] as number),
        sd: SURVEY_SD.level,
      };
    }
    if (reading.what === 'radius') {
      const i = first(reading.hub);
      const [x, y] = [at[i] as number, at[i + 1] as number];
      const r = Math.hypot(x, y);
      return {
        terms: [
          [i, x / r],
          [i + 1, y / r],
        ],
        value: reading.length - r,
        sd: SURVEY_SD.radius,
      };
    }
    const [i, j] = [first(reading.from), first(reading.to)];
    const along = [0, 1, 2].map((k) => (at[j + k] as number) - (at[i + k] as number));
    const length = Math.hypot(...along);
    return {
      terms: along.flatMap((d, k) => [[j + k, d / length] as const, [i + k, -d / length] as const]),
      value: reading.length - length,
      sd: SURVEY_SD.chord,
    };
  });
  const loose = base.hubs.flatMap(({ at: [x, y], rise }, h) =>
    [x, y, rise].map(
      (plan, k): AdjustmentRow => ({
        terms: [[3 * h + k, 1]],
        value: plan - (at[3 * h + k] as number),
        sd: PRIOR_SD,
      }),
    ),
  );
  return [...measured, ...loose, { terms: [[zero, 1]], value: 0, sd: 100 }];
}

function standing(
  base: Base,
  at: readonly number[],
  { covariance, tests, residuals, values }: NonNullable<ReturnType<typeof adjust>>,
  readings: number,
): AsBuilt {
  const n = base.hubs.length;
  const size = 3 * n + 1;
  const cov = (i: number, j: number): number => covariance[i * size + j] as number;
  const lift =
    base.hubs.reduce((sum, { rise }, h) => sum + rise - (at[3 * h + 2] as number), 0) / n;
  const heightSd = (h: number): number => relativeSd(cov, n, h);
  const hubs = base.hubs.map(({ number, at: [px, py], radius }: BaseHub, h): StandingHub => {
    const [x, y] = [at[3 * h] as number, at[3 * h + 1] as number];
    const [ux, uy] = [px / radius, py / radius];
    const i = 3 * h;
    const radial = Math.sqrt(
      ux * ux * cov(i, i) + 2 * ux * uy * cov(i, i + 1) + uy * uy * cov(i + 1, i + 1),
    );
    const height = heightSd(h);
    return {
      hub: number,
      at: [x, y],
      height: (at[3 * h + 2] as number) + lift,
      sd: { radial, height },
      known: { radial: radial <= KNOWN_SD, height: height <= KNOWN_SD },
    };
  });
  const worst = Math.max(SUSPECT_TEST, ...tests.subarray(0, readings).map(Math.abs));
  const suspects = Array.from(tests.subarray(0, readings)).flatMap((test, reading) =>
    Math.abs(test) > worst * (1 - 1e-6) ? [{ reading, off: residuals[reading] as number }] : [],
  );
  return { hubs, zero: (values[3 * n] as number) - lift, suspects };
}

/** Deviation of a hub's height against the hub that it is best known against: levels are relative. */
function relativeSd(cov: (i: number, j: number) => number, n: number, h: number): number {
  const own = 3 * h + 2;
  let least = Number.POSITIVE_INFINITY;
  for (let k = 0; k < n; k++) {
    const other = 3 * k + 2;
    if (k !== h) least = Math.min(least, cov(own, own) + cov(other, other) - 2 * cov(own, other));
  }
  return Math.sqrt(Math.max(0, least));
}
