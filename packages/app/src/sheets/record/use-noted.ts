// What every part of the Record sheet works with: the record of the standing shell, what it says now,
// who uses this device, and the one way to say something.

import {
  defaultTakeoff,
  type Entry,
  type Forgotten,
  forgotten,
  type RecordPlan,
  type RecordState,
  recordPlan,
  recordState,
  type SidePattern,
  seamBolts,
  type What,
} from '@shellraise/core';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { type Thing, withHands } from '../../record/next-state.ts';
import type { RecordSession } from '../../record/record-session.ts';
import { keepOwnName, ownName, recordOf } from '../../record/this-record.ts';
import { projectOf } from '../../state/app-state.ts';
import { useAppState, useDerived } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';
import type { Stood } from '../places/stood.ts';

/** The record as the sheet has it. */
export interface Noted {
  readonly session: RecordSession;
  readonly plan: RecordPlan;
  readonly state: RecordState;
  /** Seams with an open place aside. */
  readonly due: readonly Forgotten[];
  /** Seam → the bolts that go through it, null where nobody knows. */
  readonly patterns: readonly (SidePattern | null)[];
  readonly bolts: (seam: number) => number | null;
  readonly leftOut: readonly number[];
  /** Whether the record has been opened, and this device may add to it. */
  readonly open: boolean;
  readonly last: Entry | null;
  /** Another whenever the record is. */
  readonly version: number;
  readonly by: string;
  readonly setBy: (by: string) => void;
  /** People at the work that is noted; null: not said. */
  readonly hands: number | null;
  readonly setHands: (hands: number | null) => void;
  readonly told: string;
  readonly tell: (told: string) => void;
  readonly nameOf: (thing: Thing) => string;
  /** Says something; false where nobody said who they are, or the record is not open yet. */
  readonly say: (what: What) => boolean;
}

/** The record of a standing shell. */
export function useNoted({ standing, kinds }: Stood, project: string): Noted {
  const { record: words, sharing } = useWords();
  const session = recordOf(project);
  const now = useStore(session.store);
  const { shell, courses } = standing.standing;
  const { numbers, leftOut } = standing;
  const takeoff = useAppState((state) => projectOf(state).takeoff);
  const holes = useDerived((derived) => derived.work.value?.holes);
  const [by, setBy] = useState(ownName);
  const [hands, setHands] = useState<number | null>(null);
  const [told, tell] = useState('');
  useEffect(() => keepOwnName(by), [by]);
  const plan = useMemo(
    () => recordPlan(shell, { numbers, course: courses.course }),
    [shell, numbers, courses],
  );
  const patterns = useMemo(
    () =>
      seamBolts(shell, kinds, takeoff ?? defaultTakeoff, holes ?? []).map((one) =>
        one.status === 'known' ? one.pattern : null,
      ),
    [shell, kinds, takeoff, holes],
  );
  const bolts = useMemo(() => (seam: number) => patterns[seam]?.holes ?? null, [patterns]);
  // The log is one object that grows: its version says when to look again.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const state = useMemo(() => recordState(session.log, plan), [session, plan, now.version]);
  const due = useMemo(
    () =>
      forgotten(session.log, plan, state, bolts).filter(
        ({ what, index }) => what === 'missing plate' || !isOut(plan.seamPlaces[index]!, leftOut),
      ),
    [session, plan, state, leftOut, bolts],
  );
  return {
    ...{ session, plan, state, due, patterns, bolts, leftOut, by, setBy, hands, setHands },
    ...{ tell, open: now.open && now.mayNote, last: now.last, version: now.version },
    told: now.mayNote ? told : sharing.lookerOnly,
    nameOf: (one) => {
      if (one.sort === 'place') return words.place(plan.places[one.index]!);
      if (one.sort === 'seam') return words.seam(plan.seams[one.index]!);
      const around = plan.hubPlaces[one.index]!;
      return words.hubOf(plan.places[around[0]!] ?? '', around.length);
    },
    say: (what) => {
      const name = by.trim();
      if (!now.open || !now.mayNote) return false;
      if (name === '') {
        tell(words.nameFirst);
        return false;
      }
      session.say(withHands(what, hands), name);
      tell('');
      // What can be seen at once can be felt as well, where the device can.
      navigator.vibrate?.(30);
      return true;
    },
  };
}

const isOut = ([p, q]: readonly [number, number], leftOut: readonly number[]): boolean =>
  leftOut.includes(p) || leftOut.includes(q);
