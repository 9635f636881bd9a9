// How far a frame is from buckling under a load, and how fast it swings.

import {
  atRest,
  type FrameUnsettled,
  type FrameUnstable,
  hubMovements,
  type PreparedFrame,
} from './answer.ts';
import { bucklingFactors, naturalFrequencies } from './buckling.ts';
import type { FrameLoad } from './frame-loads.ts';

/** Lowest eigenvalues of a frame with their modes. */
export interface FrameModes {
  readonly status: 'stands';
  /** Times the load at which it buckles, or hertz; ascending. */
  readonly values: readonly number[];
  /** Hub → movement, stride 3, the largest of any node 1; a direction. */
  readonly modes: readonly Float64Array[];
  /** Whether it was checked that no lower one was missed. */
  readonly complete: boolean;
}

/** The lowest factors by which the load may grow before a perfect frame buckles, small movements
 * before that; none where the load buckles nothing. Real shells buckle at a third to a fifth of it.
 * A frame that does not stand has that for an answer. */
export function frameBuckling(
  frame: PreparedFrame,
  load: FrameLoad,
  count = 1,
): FrameModes | FrameUnstable | FrameUnsettled {
  const { rest, not } = atRest(frame, load);
  if (not) return not;
  const found = bucklingFactors(frame.prepared, rest, count);
  return { ...found, status: 'stands', modes: found.modes.map((u) => hubMovements(frame, u)) };
}

/** The lowest natural frequencies of a frame by its parts' densities, hertz, guys and props at work
 * both ways. A frame that does not stand has that for an answer. */
export function frameFrequencies(
  frame: PreparedFrame,
  count = 1,
): FrameModes | FrameUnstable | FrameUnsettled {
  const { not } = atRest(frame, { weight: 0 });
  if (not) return not;
  const found = naturalFrequencies(frame.prepared, count);
  if (!found) throw new Error('the frame moves without resistance all at once');
  return { ...found, status: 'stands', modes: found.modes.map((u) => hubMovements(frame, u)) };
}
