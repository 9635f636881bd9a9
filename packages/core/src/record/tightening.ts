// In which order seams are tightened: a walk once round the ring, clockwise seen from above, from
// where somebody stands, so that nobody crosses the ring and no seam is passed over.

import { TAU } from '../math/angle.ts';
import { type RecordPlan, whereIs } from './names.ts';
import type { RecordState } from './state.ts';
import { RECORD_PASSES, type RecordPass } from './what.ts';

/** One round. */
export interface RingWalk {
  /** Course whose seams are meant: those whose upper place is in it. */
  readonly course: number;
  /** The pass that they are brought to. */
  readonly to: Exclude<RecordPass, 'none'>;
  /** Place to begin at; null: the datum. */
  readonly from: number | null;
}

/** Seams of a course, both panels in place, that are not yet at a pass: clockwise seen from above from
 * where the walk begins; of one direction the lower first, then by index. */
export function tighteningWalk(
  plan: RecordPlan,
  state: RecordState,
  { course, to, from }: RingWalk,
): number[] {
  const wanted = RECORD_PASSES.indexOf(to);
  const start = from === null ? 0 : clockwise(whereIs(plan, 'place', from));
  return plan.seams
    .map((_, seam) => seam)
    .filter((seam) => {
      const [a, b] = plan.seamPlaces[seam]!;
      const isDue = RECORD_PASSES.indexOf(state.passes[seam]!) < wanted;
      const upper = Math.max(plan.course[a]!, plan.course[b]!);
      return isDue && upper === course && state.placed[a] !== null && state.placed[b] !== null;
    })
    .map((seam) => {
      const at = whereIs(plan, 'seam', seam);
      return { seam, turn: (((clockwise(at) - start) % STEPS) + STEPS) % STEPS, z: at[2] };
    })
    .sort((a, b) => a.turn - b.turn || a.z - b.z || a.seam - b.seam)
    .map(({ seam }) => seam);
}

/** A turn in steps of a ten-thousandth of a radian: rounding orders nothing. */
const STEPS = Math.round(TAU * 1e4);

const clockwise = ([x, y]: readonly [number, number, number]): number =>
  Math.round(-Math.atan2(y, x) * 1e4);
