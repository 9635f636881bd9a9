// The tags of single panels, each with the kind that its readings make it.

import type { AssignedReading, ReadingRow } from '@shellraise/core';

/** One tagged panel. */
export interface TaggedPanel {
  readonly tag: string;
  /** Null where it is not settled. */
  readonly kind: string | null;
  /** Worst condition that anybody noted. */
  readonly condition: 'good' | 'repair' | 'scrap';
}

/** Tagged panels in the order of their tags' first readings; a panel read twice is one. */
export function tagsOf(
  readings: readonly ReadingRow[],
  assigned: readonly AssignedReading[],
): TaggedPanel[] {
  const kinds = new Map(assigned.map((one) => [one.reading, one.kind]));
  const found = new Map<string, TaggedPanel>();
  readings.forEach(({ tag, condition = 'good' }, i) => {
    if (tag === undefined) return;
    const before = found.get(tag);
    const worse = before && rank[before.condition] > rank[condition] ? before.condition : condition;
    found.set(tag, { tag, kind: before?.kind ?? kinds.get(i) ?? null, condition: worse });
  });
  return [...found.values()];
}

const rank = { good: 0, repair: 1, scrap: 2 } as const;
