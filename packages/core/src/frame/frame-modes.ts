// How far a frame is from buckling under a load, and how fast it swings.

import { fromMemory, type Provenance } from '../loads/provenance.ts';
import {
  atRest,
  type FrameUnsettled,
  type FrameUnstable,
  hubMovements,
  type PreparedFrame,
} from './answer.ts';
import { bucklingFactors, type Modes, naturalFrequencies } from './buckling.ts';
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
  /** What was supposed because it is unknown, and what the numbers rest on. */
  readonly supposed: readonly string[];
  readonly sources: readonly Provenance[];
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
  return modesOf(frame, found, [PERFECT]);
}

/** What goes with every buckling factor. */
const PERFECT = fromMemory(
  'a perfect frame: real shells buckle at a third to a fifth of it (NASA SP-8032; D. T. Wright, 1965)',
);

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
  return modesOf(frame, found, []);
}

function modesOf(frame: PreparedFrame, found: Modes, besides: readonly Provenance[]): FrameModes {
  const { supposed, sources } = frame.parts;
  return {
    ...found,
    status: 'stands',
    modes: found.modes.map((u) => hubMovements(frame, u)),
    supposed,
    sources: [...sources, ...besides],
  };
}
