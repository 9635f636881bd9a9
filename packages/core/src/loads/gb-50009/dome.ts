// Rotational shell roof by GB 50009-2012, Table 8.3.1 item 36. With phi from the vertical and psi
// from the crosswise diameter, sin φ sin ψ is u of law.ts and cos φ is z.

import { assertForm, type PressureLaw, riseRatio, type ShellForm } from '../law.ts';
import { commonPractice, confirmed, type Provenance } from '../provenance.ts';

/** Item 36, read in its figure. */
const GB_DOME: Provenance = confirmed('GB 50009-2012, Table 8.3.1 item 36');

const BEYOND = 'beyond a half sphere: no clause';

/** Shape coefficient of a dome with rise over span above 1/4: ½ sin²φ sin ψ − cos²φ.
 * Source: GB 50009-2012, Table 8.3.1 item 36(b). */
export const steepDome = (u: number, z: number): number =>
  0.5 * Math.sqrt(Math.max(0, 1 - z * z)) * u - z * z;

/** Shape coefficient of a dome with rise over span up to 1/4: −cos²φ.
 * Source: GB 50009-2012, Table 8.3.1 item 36(a). */
export const flatDome = (z: number): number => -z * z;

/** The law of item 36 for a shell up to a half sphere. Of more than that, what lies below the
 * equator takes the value of the equator above it: own extension, flagged.
 * Source: GB 50009-2012, Table 8.3.1 item 36. */
export function gbDome(form: ShellForm): PressureLaw {
  assertForm(form);
  const flat = form.baseZ > 0 && riseRatio(form) <= 0.25;
  const beyond = form.baseZ < 0;
  return {
    name: 'GB 50009 shell roof',
    coefficient: flat
      ? (_u, _s, z) => flatDome(z)
      : (u, s, z) => (z >= 0 ? steepDome(u, z) : upright(u, s)),
    factor: 1,
    sources: beyond
      ? [
          GB_DOME,
          commonPractice(`GB 50009 shell roof ${BEYOND}; the equator’s values carried down`),
        ]
      : [GB_DOME],
  };
}

/** The law of item 36 with what lies below the equator taken as the mirror of what lies above it.
 * The same as {@link gbDome} for a half sphere and less.
 * Source: GB 50009-2012, Table 8.3.1 item 36, mirrored: own extension, flagged. */
export function gbDomeMirrored(form: ShellForm): PressureLaw {
  const law = gbDome(form);
  if (form.baseZ >= 0) return law;
  return {
    name: 'GB 50009 shell roof, mirrored below the equator',
    coefficient: (u, _s, z) => steepDome(u, z),
    factor: 1,
    sources: [GB_DOME, commonPractice(`GB 50009 shell roof ${BEYOND}; mirrored about the equator`)],
  };
}

/** The value at the equator in the same direction seen from above; 0 straight below the centre. */
function upright(u: number, s: number): number {
  const across = Math.hypot(u, s);
  return across > 0 ? (0.5 * u) / across : 0;
}
