// What goes under the base hubs by the levels that were read: the shims, or which levels are missing yet.

import type { Base } from '../ground/base.ts';
import { groundLevels } from '../ground/levels.ts';
import type { GroundSettings } from '../ground/schema.ts';
import { type ShimPlan, shims } from '../ground/shims.ts';
import type { Fault, Read } from '../measure/fault.ts';

/** The shims of a base. */
export interface BaseShims {
  /** Null where no levels are entered, or not those of every base hub yet. */
  readonly shims: ShimPlan | null;
  /** Base hubs whose level is still to be read; all where none is. */
  readonly unread: readonly number[];
}

/** The shims by the levels that were entered; faults where a reading speaks of a hub that the base does
 * not have, or readings do not go together. */
export function baseShims(
  base: Base,
  { levels, shims: wanted }: Pick<GroundSettings, 'levels' | 'shims'>,
): Read<BaseShims> {
  const hubs = base.hubs.map(({ number }) => number);
  const strange = levels.flatMap(({ readings }, s) =>
    readings.flatMap(({ at }, r): Fault[] =>
      typeof at === 'number' && !hubs.includes(at)
        ? [
            {
              path: `ground.levels[${s}].readings[${r}].at`,
              found: `base hub ${at}`,
              expected: `1 to ${hubs.length}, or the name of a benchmark`,
            },
          ]
        : [],
    ),
  );
  if (strange.length > 0) return { ok: false, faults: strange };
  if (levels.length === 0) return { ok: true, value: { shims: null, unread: hubs } };
  const read = groundLevels(levels);
  if (!read.ok) return read;
  const { heights } = read.value;
  const unread = hubs.filter((hub) => !heights.has(hub));
  if (unread.length > 0) return { ok: true, value: { shims: null, unread } };
  const plan = shims(base, heights, wanted);
  return plan.ok ? { ok: true, value: { shims: plan.value, unread } } : plan;
}
