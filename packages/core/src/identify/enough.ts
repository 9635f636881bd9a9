// Whether enough is measured: one answer, or several that make no difference, nothing that does not
// fit, and everything known to within what the shell forgives.

import { sum } from './information.ts';
import type { NetBelief } from './net-belief.ts';
import { ALLOWANCE_PLAY, RADIUS_SHARE, SEAM_PLAY } from './play.ts';
import type { Freedom, Identification, Shape } from './shape.ts';

/** How probable the answer must be. */
const SURE = 0.99;

/** Whether more readings would change nothing that matters. `net`: of the best shape. */
export function isEnough(
  { shapes, complete, conflicts }: Pick<Identification, 'shapes' | 'complete' | 'conflicts'>,
  net: NetBelief | null,
  freedom: Freedom | null,
): boolean {
  const [best] = shapes;
  if (!best || !net || !freedom || freedom.matters || !complete) return false;
  const same = freedom.free.flatMap((one) => (one.what === 'net' ? one.shapes : []));
  const sure =
    same.length > 0 ? sum(same.map((i) => shapes[i]?.probability ?? 0)) : best.probability;
  return sure >= SURE && conflicts.length === 0 && isSettled(best) && isKnownWell(net);
}

/** Whether nothing in the shape wants another look. */
const isSettled = (shape: Shape): boolean =>
  shape.closed &&
  shape.hands === 'known' &&
  shape.suspects.length === 0 &&
  shape.mends.length === 0 &&
  shape.misfitGroups.length === 0 &&
  shape.added.every(({ why }) => why !== 'wanted') &&
  shape.explained.every(({ as }) => as !== 'nothing') &&
  (shape.allowance === null || shape.allowance.sd <= ALLOWANCE_PLAY);

function isKnownWell({ shape, belief, first, kinds }: NetBelief): boolean {
  const sides = kinds.flatMap(({ sides: own }, k) =>
    (first[k] as number) < 0 ? [] : own.map((_, i) => (first[k] as number) + i),
  );
  const most = Math.max(...sides.map((s) => belief.covariance[s * (belief.size + 1)] as number));
  return most <= SEAM_PLAY ** 2 && shape.radiusSd <= RADIUS_SHARE * shape.radius;
}
