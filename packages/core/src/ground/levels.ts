// Levels of the ground (or of the sleepers, or the ring beam) under each base hub, from what was
// read: a staff up to a laser's beam, the water mark of a tube above the point, or heights. A staff
// reads more where the ground is lower. Each time the laser or the tube's bucket is moved a new
// set-up begins; set-ups are tied by points read from both. Metres.

import type { Fault, Read } from '../measure/fault.ts';
import { type AdjustmentRow, adjust } from './adjustment.ts';
import { LEVEL_RANGE, LEVEL_SD, SUSPECT_TEST } from './tolerances.ts';

/** How the points of a set-up were read. */
export type LevelMethod = 'laser' | 'water level' | 'heights';

/** One set-up and what was read from it. */
export interface LevelSetUp {
  readonly method: LevelMethod;
  /** Readings in metres: of a base hub by number, or of a named benchmark. */
  readonly readings: readonly { readonly at: number | string; readonly reading: number }[];
}

/** A reading that does not go with the others. */
export interface LevelSuspect {
  readonly setUp: number;
  readonly at: number | string;
  /** Read less what the others say, metres. */
  readonly off: number;
}

/** Heights from levels. */
export interface GroundLevels {
  /** Base hub by number → height above the lowest point read, metres. */
  readonly heights: ReadonlyMap<number, number>;
  /** Named benchmarks → height above the lowest point read, metres. */
  readonly benchmarks: ReadonlyMap<string, number>;
  /** Readings off by over three of their deviations: read these again. The worst alone where
   * several may be, as one slip pulls its neighbours. */
  readonly suspects: readonly LevelSuspect[];
  /** Readings that no other checks. */
  readonly unchecked: number;
}

/** Heights of all points read, by least squares over the set-ups; faults where a reading is no
 * number within 20 m or a set-up shares no point with the others. A deviation of 1 mm for a laser
 * and 2 mm for a water level is common practice, without a source. */
export function groundLevels(setUps: readonly LevelSetUp[]): Read<GroundLevels> {
  const faults = setUps.flatMap(setUpFaults);
  if (setUps.length === 0)
    faults.push({ path: 'levels', found: 'no set-up', expected: 'one reading at each base hub' });
  if (faults.length === 0) faults.push(...untied(setUps));
  if (faults.length > 0) return { ok: false, faults };
  const points = [...new Set(setUps.flatMap(({ readings }) => readings.map(({ at }) => at)))];
  const index = new Map(points.map((point, i) => [point, i]));
  const rows: AdjustmentRow[] = [{ terms: [[0, 1]], value: 0, sd: 1e-3 }];
  const names: { setUp: number; at: number | string }[] = [];
  setUps.forEach(({ method, readings }, s) => {
    for (const { at, reading } of readings) {
      const down = method === 'heights' ? 1 : -1;
      rows.push({
        terms: [
          [index.get(at) as number, down],
          [points.length + s, 1],
        ],
        value: reading,
        sd: LEVEL_SD[method],
      });
      names.push({ setUp: s, at });
    }
  });
  const adjusted = adjust(rows, points.length + setUps.length);
  if (adjusted === null) throw new Error('tied set-ups left a height open');
  const heights = Array.from(adjusted.values.subarray(0, points.length));
  const lowest = Math.min(...heights);
  const of = <T extends number | string>(kind: string): Map<T, number> =>
    new Map(
      points.flatMap((point, i) =>
        typeof point === kind ? [[point as T, (heights[i] as number) - lowest] as const] : [],
      ),
    );
  const tests = adjusted.tests.subarray(1);
  const worst = Math.max(SUSPECT_TEST, ...tests.map(Math.abs));
  return {
    ok: true,
    value: {
      heights: of<number>('number'),
      benchmarks: of<string>('string'),
      suspects: names.flatMap((name, i) =>
        Math.abs(tests[i] as number) > worst * (1 - 1e-6)
          ? [{ ...name, off: adjusted.residuals[i + 1] as number }]
          : [],
      ),
      unchecked: tests.filter((test) => test === 0).length,
    },
  };
}

function setUpFaults({ readings }: LevelSetUp, s: number): Fault[] {
  const path = `levels[${s}].readings`;
  const odd = readings.flatMap(({ reading }, i) =>
    Math.abs(reading) <= LEVEL_RANGE
      ? []
      : [
          {
            path: `${path}[${i}].reading`,
            found: String(reading),
            expected: `metres, at most ${LEVEL_RANGE} either way`,
          },
        ],
  );
  return readings.length > 0 ? odd : [{ path, found: 'no reading', expected: 'at least one' }];
}

/** Set-ups that no chain of shared points ties to the first. */
function untied(setUps: readonly LevelSetUp[]): Fault[] {
  const reached = new Set<number | string>(setUps[0]?.readings.map(({ at }) => at));
  const left = new Set(setUps.keys());
  for (let grown = true; grown; ) {
    grown = false;
    for (const s of left) {
      const points = (setUps[s] as LevelSetUp).readings.map(({ at }) => at);
      if (!points.some((at) => reached.has(at))) continue;
      for (const at of points) reached.add(at);
      left.delete(s);
      grown = true;
    }
  }
  return [...left].map((s) => ({
    path: `levels[${s}]`,
    found: 'a set-up that shares no point with those before',
    expected: 'one point read from both: a benchmark or a hub',
  }));
}
