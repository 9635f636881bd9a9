// What the worked-up pile says of each reading, as its row shows it.

import { kindFills, type ReadingRow } from '@shellraise/core';
import { useMemo } from 'react';
import type { RowFinding } from './tally-row.tsx';
import type { Worked } from './worked.ts';

/** What the pile says of a reading; null where nothing yet. The same object for the same reading
 * as long as the pile is. */
export type FindingOf = (reading: ReadingRow) => RowFinding | null;

/** What the pile says of its readings. A reading that was just changed says nothing until the pile
 * is worked up again. */
export function useFindings(worked: Worked | null): FindingOf {
  return useMemo(() => {
    const found = new Map<ReadingRow, RowFinding>();
    const fills = worked ? kindFills(worked.kinds.kinds) : [];
    return (reading) => {
      const known = found.get(reading);
      const one = worked?.assigned.get(reading);
      if (known || !worked || !one) return known ?? null;
      const kinds = one.kind === null ? one.candidates : [one.kind];
      const at = worked.kinds.kinds.findIndex(({ id }) => id === one.kind);
      const expected = new Map(
        (worked.suspects.get(reading) ?? []).map(({ side, expected: metres }) => [side, metres]),
      );
      const finding: RowFinding = { kinds, fill: fills[at] ?? null, expected };
      found.set(reading, finding);
      return finding;
    };
  }, [worked]);
}
