// A lesser shell as it stands: its own places numbered, its rims, and what it may serve as.

import { coursesOf } from '../../shell/courses.ts';
import { hubPoint, meanSideLength } from '../../shell/geometry.ts';
import { orientShell } from '../../shell/orient.ts';
import { partOf } from '../../shell/part.ts';
import { type Rim, rims } from '../../shell/rims.ts';
import type { Shell } from '../../shell/shell.ts';
import { FLAT_BASE } from '../../shell/tolerances.ts';
import type { Standing } from '../arrangements.ts';
import type { SecondShell } from './second-shell.ts';

/** The lesser shell, crown up, datum towards +x. */
export function standSecond(
  shell: Shell,
  { way, places }: Pick<SecondShell, 'way' | 'places'>,
): Standing {
  const part = partOf(orientShell(shell, way.crown), places);
  return { ...part, courses: coursesOf(part.shell) };
}

/** One rim against a level plane. */
export interface RimLevel {
  /** True where its hubs are level within the tolerance of base rings. */
  readonly inPlane: boolean;
  /** From its lowest to its highest hub, metres. */
  readonly uneven: number;
  /** For each hub in turn, anticlockwise seen from above, its height above the lowest, metres: what goes
   * under it where the rim stands on level ground. */
  readonly shims: readonly number[];
}

/** The rims of a standing shell, the lowest first. */
export const rimLevels = (shell: Shell): RimLevel[] =>
  rims(shell).map((rim) => levelOf(shell, rim));

function levelOf(shell: Shell, { hubs, z }: Rim): RimLevel {
  return {
    inPlane: z.max - z.min <= FLAT_BASE * meanSideLength(shell),
    uneven: z.max - z.min,
    shims: hubs.map((hub) => hubPoint(shell, hub)[2] - z.min),
  };
}

/** What something of this height may serve as, in one word. */
export type SecondUse = 'hut' | 'shelter' | 'cover' | 'wall' | 'kerb';

/** One can stand up in a hut (1.9 m), sit in a shelter (1.2 m), and put things under a cover; a wall keeps
 * wind off who sits (1 m), a kerb does not. Our own judgement, no source. */
export function useOf({ what, height }: Pick<SecondShell, 'what' | 'height'>): SecondUse {
  if (what === 'ring') return height >= 1 ? 'wall' : 'kerb';
  return height >= 1.9 ? 'hut' : height >= 1.2 ? 'shelter' : 'cover';
}
