// What was measured of the base as it stands, and whether it can be. Readings come in any order and
// number; each is held against the plan and against the others before anything is reckoned.

import type { Fault } from '../../measure/fault.ts';
import { type Base, type BaseHub, planDistance } from '../base.ts';
import { FAR_FROM_PLAN, LEVEL_RANGE, OUT_OF_PLACE } from '../tolerances.ts';

/** One reading, metres. Hubs are base hubs by number. */
export type SurveyReading =
  /** Level distance from the centre peg to the middle of the hub. */
  | { readonly what: 'radius'; readonly hub: number; readonly length: number }
  /** Straight from hub to hub. */
  | {
      readonly what: 'chord';
      readonly from: number;
      readonly to: number;
      readonly length: number;
    }
  /** Height of the hub over any one level that all of these share. */
  | { readonly what: 'level'; readonly hub: number; readonly height: number }
  /** Height of an upper hub over the same level: hub `number` of ring `ring`, counted as in
   * hub-heights.ts. */
  | {
      readonly what: 'height';
      readonly ring: number;
      readonly number: number;
      readonly height: number;
    };

/** The base hubs a reading speaks of. */
const hubsOfReading = (reading: SurveyReading): readonly number[] =>
  reading.what === 'chord'
    ? [reading.from, reading.to]
    : reading.what === 'height'
      ? []
      : [reading.hub];

/** What the plan gives for a radius or a chord, metres. */
function planned(
  base: Base,
  reading: Exclude<SurveyReading, { what: 'level' | 'height' }>,
): number {
  const hub = (number: number): BaseHub => base.hubs[number - 1] as BaseHub;
  if (reading.what === 'radius') return hub(reading.hub).radius;
  const [a, b] = [hub(reading.from), hub(reading.to)];
  return Math.hypot(planDistance(a.at, b.at), a.rise - b.rise);
}

/** Every reading that can't be: of a hub that is none, longer than the sphere is wide by more than hubs can be off, far from what
 * the plan gives, levels further apart than any ground that is set out, or two radii and a chord
 * that make no triangle. */
export function readingFaults(base: Base, readings: readonly SurveyReading[]): Fault[] {
  const faults = readings.flatMap((reading, i) => ownFault(base, reading, `survey[${i}]`));
  return faults.length > 0 ? faults : triangleFaults(base, readings);
}

function ownFault(base: Base, reading: SurveyReading, path: string): Fault[] {
  const n = base.hubs.length;
  for (const hub of hubsOfReading(reading))
    if (!(Number.isInteger(hub) && hub >= 1 && hub <= n))
      return [{ path, found: `base hub ${hub}`, expected: `a base hub from 1 to ${n}` }];
  if (reading.what === 'level' || reading.what === 'height')
    return levelFault(reading.what, reading.height, path);
  if (reading.what === 'chord' && reading.from === reading.to)
    return [{ path, found: `a chord from hub ${reading.from} to itself`, expected: 'two hubs' }];
  const { what, length } = reading;
  const widest = (what === 'radius' ? 1 : 2) * (base.sphereRadius + OUT_OF_PLACE);
  const metres = (value: number): string => `${value.toFixed(3)} m`;
  if (!(length > 0 && length <= widest))
    return [
      {
        path,
        found: `a ${what} of ${length} m`,
        expected: `over 0, at most ${metres(widest)}: the sphere’s ${what === 'radius' ? 'radius' : 'diameter'} and what a hub may be off`,
      },
    ];
  const plan = planned(base, reading);
  const off = Math.abs(length - plan) > FAR_FROM_PLAN;
  return off
    ? [
        {
          path,
          found: `a ${what} of ${metres(length)} at hub ${hubsOfReading(reading).join(' to ')}`,
          expected: `within ${FAR_FROM_PLAN} m of the plan’s ${metres(plan)}: another hub, or another unit?`,
        },
      ]
    : [];
}

const levelFault = (what: string, height: number, path: string): Fault[] =>
  Math.abs(height) <= LEVEL_RANGE
    ? []
    : [
        {
          path,
          found: `a ${what} of ${height} m`,
          expected: `metres, at most ${LEVEL_RANGE} either way`,
        },
      ];

function triangleFaults(base: Base, readings: readonly SurveyReading[]): Fault[] {
  const radii = new Map<number, number>();
  for (const reading of readings)
    if (reading.what === 'radius') radii.set(reading.hub, reading.length);
  return readings.flatMap((reading, i) => {
    if (reading.what !== 'chord') return [];
    const [a, b] = [radii.get(reading.from), radii.get(reading.to)];
    if (a === undefined || b === undefined) return [];
    const rise = Math.abs(
      (base.hubs[reading.from - 1] as BaseHub).rise - (base.hubs[reading.to - 1] as BaseHub).rise,
    );
    // Three centimetres for three tapes.
    if (reading.length <= Math.hypot(a + b, rise) + 0.03) return [];
    return [
      {
        path: `survey[${i}]`,
        found: `a chord of ${reading.length.toFixed(3)} m from hub ${reading.from} to hub ${reading.to}`,
        expected: `at most the two radii together, ${(a + b).toFixed(3)} m`,
      },
    ];
  });
}
