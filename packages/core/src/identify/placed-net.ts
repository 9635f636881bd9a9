// A net that is laid, with what speaks for it.

import type { Shell } from '../shell/shell.ts';
import type { Alikeness } from './alike.ts';
import type { Candidate } from './candidates.ts';
import type { Shape } from './shape.ts';
import type { SideBelief } from './side-belief.ts';

/** A net of a pile, laid and weighed. */
export interface Placed {
  readonly shell: Shell;
  /** See {@link Shape.hands}. */
  readonly hands?: Shape['hands'];
  readonly candidate: Candidate;
  /** Natural logarithm. */
  readonly evidence: number;
}

/** The families of kinds, those of a kind and its other hand put together: a joined group whose
 * panels' faces were not noted holds either. */
export const familiesTogether = (
  { group }: Alikeness,
  { bothWays }: SideBelief,
): readonly number[] =>
  group.map((own, k) => {
    const base = bothWays?.added[k] ? (bothWays.other[k] ?? null) : null;
    return base === null ? own : (group[base] as number);
  });
