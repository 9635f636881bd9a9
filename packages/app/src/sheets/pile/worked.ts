// The worked-up pile as the sheet shows it. While a newer one is on its way the last one stays in
// sight; its findings are tied to the rows themselves, so that they stay with them when rows move.

import type {
  AssignedReading,
  Pile,
  PileKinds,
  PileNext,
  ReadingRow,
  SuspectReading,
} from '@shellraise/core';
import { useRef } from 'react';
import type { PileWork } from '../../engine/api.ts';
import type { Ask } from '../../engine/ask.ts';
import { useDerived } from '../../ui/app-context.tsx';

/** A pile worked up, with its findings by row. */
export interface Worked {
  readonly pile: Pile;
  readonly kinds: PileKinds;
  readonly assigned: ReadonlyMap<ReadingRow, AssignedReading>;
  readonly suspects: ReadonlyMap<ReadingRow, readonly SuspectReading[]>;
  /** What to do next, the most telling first. */
  readonly next: readonly PileNext[];
}

/** The last pile that was worked up; null before the first. */
export function useWorked(): Worked | null {
  const ask = useDerived((derived) => derived.work);
  const last = useRef<{ value: PileWork; worked: Worked } | null>(null);
  if (ask.value === null) last.current = null;
  else if (ask.fresh && last.current?.value !== ask.value)
    last.current = { value: ask.value, worked: workedOf(ask, ask.value) };
  return last.current?.worked ?? null;
}

function workedOf(ask: Ask<PileWork>, { worked, next }: PileWork): Worked {
  const pile = ask.input as Pile;
  const assigned = new Map<ReadingRow, AssignedReading>();
  const suspects = new Map<ReadingRow, SuspectReading[]>();
  for (const one of worked.assigned) {
    const row = pile.readings[one.reading];
    if (row) assigned.set(row, one);
  }
  for (const one of worked.suspects) {
    const row = one.reading === null ? undefined : pile.readings[one.reading];
    if (row) suspects.set(row, [...(suspects.get(row) ?? []), one]);
  }
  return { pile, kinds: worked, assigned, suspects, next };
}
