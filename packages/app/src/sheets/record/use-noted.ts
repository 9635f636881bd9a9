// What every part of the Record sheet works with: the record of the standing shell, what it says now,
// who uses this device, and the one way to say something.

import {
  type Entry,
  type Forgotten,
  forgotten,
  type RecordState,
  recordState,
  type What,
} from '@shellraise/core';
import { useEffect, useMemo, useState } from 'react';
import { useStore } from 'zustand';
import { type Thing, withHands } from '../../record/next-state.ts';
import type { RecordSession } from '../../record/record-session.ts';
import { keepOwnName, ownName, recordOf } from '../../record/this-record.ts';
import { useWords } from '../../words/words.ts';
import type { Stood } from '../places/stood.ts';
import { type Recordable, useRecordPlan } from './use-record-plan.ts';

/** The record as the sheet has it. */
export interface Noted extends Recordable {
  readonly session: RecordSession;
  readonly state: RecordState;
  /** Seams with an open place aside. */
  readonly due: readonly Forgotten[];
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
export function useNoted(stood: Stood, project: string): Noted {
  const { record: words, sharing } = useWords();
  const session = recordOf(project);
  const now = useStore(session.store);
  const { leftOut } = stood.standing;
  const { plan, patterns, bolts } = useRecordPlan(stood);
  const [by, setBy] = useState(ownName);
  const [hands, setHands] = useState<number | null>(null);
  const [told, tell] = useState('');
  useEffect(() => keepOwnName(by), [by]);
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
