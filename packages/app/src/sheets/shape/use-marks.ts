// Asks the engine what the painted marks mean in a shape.

import type { Kind, MarkAccount, Pile, PileKinds, Shape } from '@shellraise/core';
import { useEffect, useState } from 'react';
import { longEngine } from '../../engine/bridge.ts';

/** The account; null until it is known, and where nothing is marked. */
export function useMarks(
  shape: Shape,
  kinds: readonly Kind[],
  pile: Pile,
  worked: PileKinds,
): MarkAccount | null {
  const [known, setKnown] = useState<{ of: Shape; pile: Pile; account: MarkAccount } | null>(null);
  const marked = isMarked(pile);
  useEffect(() => {
    if (!marked) return;
    let gone = false;
    // Without an answer the list is not there: nothing that anyone must be told.
    longEngine.ask('marks', { shape, kinds, pile, worked }).answer.then(
      (account) => gone || setKnown({ of: shape, pile, account }),
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [marked, shape, kinds, pile, worked]);
  return known && known.of === shape && known.pile === pile ? known.account : null;
}

/** Whether anything in the pile bears a mark. */
const isMarked = ({ readings, kinds }: Pick<Pile, 'readings' | 'kinds'>): boolean =>
  readings.some(({ mark }) => mark !== undefined) || kinds.some(({ marks }) => marks.length > 0);
