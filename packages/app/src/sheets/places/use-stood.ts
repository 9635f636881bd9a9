// The shell that stands now, with its kinds and its shape; null while there is none.

import { stockOfShape } from '@shellraise/core';
import { useMemo } from 'react';
import { useDerived } from '../../ui/app-context.tsx';
import type { Stood } from './stood.ts';

/** The standing shell. */
export function useStood(): Stood | null {
  const stand = useDerived((derived) => derived.stand.value);
  const asked = useDerived((derived) => derived.work.value?.question.kinds);
  const standing = stand?.found ? stand.shell : null;
  const standsIn = useDerived(({ shapes }) =>
    standing ? shapes.value?.shapes[standing.shape] : undefined,
  );
  return useMemo(
    (): Stood | null =>
      standing && asked && standsIn
        ? { standing, kinds: stockOfShape(standsIn, asked), shape: standsIn }
        : null,
    [standing, asked, standsIn],
  );
}
