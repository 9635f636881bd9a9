// What is most worth doing at the pile next, as the Pile sheet tells it: what core reckons to tell
// most, without readings that the list of slips names already and kinds that somebody left out.

import { nextAtPile, type Pile, type PileKinds, type PileNext } from '@shellraise/core';

/** Things shown at once, at most. */
export const MOST_THINGS = 3;

/** The most useful things to do at a worked-up pile, the most telling first. */
export function measureNext(
  pile: Pick<Pile, 'kinds' | 'hubAllowance'>,
  worked: PileKinds,
  most = MOST_THINGS,
): readonly PileNext[] {
  const slipped = new Set(worked.slips.map(({ reading }) => reading));
  const out = new Set(pile.kinds.filter((row) => row.leaveOut).map(({ id }) => id));
  const suspects = worked.suspects.filter(
    ({ reading }) => reading === null || !slipped.has(reading),
  );
  const kinds = worked.kinds.filter(({ id }) => !out.has(id));
  return nextAtPile(
    { ...worked, kinds, suspects, slips: [] },
    { most, allowance: pile.hubAllowance ?? 0 },
  );
}
