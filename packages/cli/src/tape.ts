// Where the tape was held, in words: what the lengths of a pile are, and how the lengths on paper
// differ from what a tape reads on the panel.

import type { Pile } from '@shellraise/core';
import type { Lengths } from './lengths.ts';

type Held = Pick<Pile, 'measuredAlong' | 'hubAllowance'>;

const along = { holes: 'along the holes', skin: 'along the skin', hubs: 'hub to hub' } as const;

/** What the sides of the pile's kinds are: the tape's readings where nobody knows how far the hubs
 * lie beyond them. */
export const sidesWords = ({ measuredAlong, hubAllowance }: Held): string =>
  hubAllowance === null ? along[measuredAlong] : 'hub to hub';

/** What the sides on the papers are, and what the tape shows instead. */
export function fittedWords({ measuredAlong, hubAllowance }: Held, lengths: Lengths): string {
  const fitted = 'Sides are hub to hub, as the whole net fits them';
  if (measuredAlong === 'hubs' && !hubAllowance) return `${fitted}.`;
  const tape = measuredAlong === 'hubs' ? 'the tape' : `a tape ${along[measuredAlong]}`;
  if (hubAllowance === null) return `${fitted}; how much less ${tape} shows is not known.`;
  if (hubAllowance === 0) return `${fitted}; ${tape} shows the same.`;
  const less = hubAllowance > 0 ? 'less' : 'more';
  return `${fitted}: ${tape} shows ${lengths.small(Math.abs(hubAllowance))} ${less}.`;
}
