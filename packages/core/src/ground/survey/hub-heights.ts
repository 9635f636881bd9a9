// Heights of hubs above the base, course by course, held against the plan. Rings of hubs are counted
// from the base ring, which is 0: ring 1 is every hub that shares a panel with it, and so on; in each
// the hubs are numbered from 1, clockwise seen from above from the datum. Metres.

import type { Vec3 } from '../../math/vector.ts';
import type { Fault, Read } from '../../measure/fault.ts';
import { layersFrom } from '../../shell/courses.ts';
import { hubPoint } from '../../shell/geometry.ts';
import type { HubId } from '../../shell/ids.ts';
import { hubCount, type Shell } from '../../shell/shell.ts';
import { type Base, bearingOf } from '../base.ts';
import type { AsBuilt } from './as-built.ts';
import { type FittedSphere, fitSphere } from './best-fit.ts';
import type { SurveyReading } from './readings.ts';

/** Rings of hubs from the base upwards: `rings[r][k]` is hub k + 1 of ring r. */
export function hubRings(shell: Shell, base: Base): HubId[][] {
  const { hubs } = layersFrom(
    shell,
    base.hubs.map(({ hub }) => hub),
  );
  const rings: HubId[][] = [base.hubs.map(({ hub }) => hub)];
  const turn = (hub: HubId): number => {
    const [x, y] = hubPoint(shell, hub);
    return bearingOf([x, y]);
  };
  for (let h = 0; h < hubCount(shell); h++) {
    const ring = hubs[h] as number;
    if (ring < 1) continue;
    while (rings.length <= ring) rings.push([]);
    (rings[ring] as HubId[]).push(h as HubId);
  }
  for (const ring of rings.slice(1)) ring.sort((a, b) => turn(a) - turn(b) || a - b);
  return rings;
}

/** How one upper hub stands. */
export interface HubHeight {
  readonly ring: number;
  readonly number: number;
  /** Above where the plan has it, metres, from the mean of the base hubs. */
  readonly off: number;
}

/** The upper hubs measured, against the plan. */
export interface HubHeights {
  readonly hubs: readonly HubHeight[];
  /** The sphere of any radius that fits the base as it stands and the heights measured; null with
   * fewer than three heights, or where they leave it open. */
  readonly sphere: FittedSphere | null;
}

/** The heights among the readings against the plan, or each that names a hub that is none. Heights are
 * over the level that the base's levels are over. */
export function hubHeights(
  shell: Shell,
  base: Base,
  built: AsBuilt,
  readings: readonly SurveyReading[],
): Read<HubHeights> {
  const rings = hubRings(shell, base);
  const faults: Fault[] = [];
  const points: Vec3[] = [];
  const hubs = readings.flatMap((reading, i): HubHeight[] => {
    if (reading.what !== 'height') return [];
    const hub = reading.ring >= 1 ? rings[reading.ring]?.[reading.number - 1] : undefined;
    if (hub === undefined) {
      const most = rings[reading.ring]?.length ?? 0;
      faults.push({
        path: `survey[${i}]`,
        found: `hub ${reading.number} of ring ${reading.ring}`,
        expected:
          most > 0 && reading.ring >= 1
            ? `a hub from 1 to ${most}`
            : `a ring from 1 to ${rings.length - 1} above the base`,
      });
      return [];
    }
    const [x, y, z] = hubPoint(shell, hub);
    const height = reading.height - built.zero;
    points.push([x, y, height + base.level]);
    return [{ ring: reading.ring, number: reading.number, off: height + base.level - z }];
  });
  if (faults.length > 0) return { ok: false, faults };
  const ground = built.hubs.map(({ at: [x, y], height }): Vec3 => [x, y, height + base.level]);
  const sphere = points.length < 3 ? null : fitSphere([...ground, ...points], [0, 0, 0]);
  return { ok: true, value: { hubs, sphere } };
}
