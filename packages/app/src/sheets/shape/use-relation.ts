// Asks the engine how several shapes are related, once they are found.

import type { Identification, Kind, PlacesDecision } from '@shellraise/core';
import { useEffect, useState } from 'react';
import { longEngine } from '../../engine/bridge.ts';
import type { Relation } from '../../engine/relate.ts';

/** The relation of the shapes; null until it is known, or where one stands alone. */
export function useRelation(
  found: Identification | null,
  prefer: number,
  kinds: readonly Kind[] | null,
  decision: PlacesDecision | null,
): Relation | null {
  const [known, setKnown] = useState<{ of: unknown; relation: Relation } | null>(null);
  useEffect(() => {
    if (!found || !kinds || found.shapes.length < 2) return;
    let gone = false;
    const question = { shapes: found.shapes, prefer, kinds, decision };
    // Without an answer the sentence is shorter: nothing that anyone must be told.
    longEngine.ask('relate', question).answer.then(
      (relation) => gone || setKnown({ of: found, relation }),
      () => undefined,
    );
    return () => {
      gone = true;
    };
  }, [found, prefer, kinds, decision]);
  return known && known.of === found ? known.relation : null;
}
