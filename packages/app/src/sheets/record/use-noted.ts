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
import type { RecordNow, RecordSession } from '../../record/record-session.ts';
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
  /** The log as it is now: another object whenever the record has grown. */
  readonly said: RecordNow['said'];
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
  const { said } = now;
  const state = useMemo(() => recordState(said.log, plan), [said, plan]);
  const due = useMemo(
    () =>
      forgotten(said.log, plan, state, bolts).filter(
        ({ what, index }) => what === 'missing plate' || !isOut(plan.seamPlaces[index]!, leftOut),
      ),
    [said, plan, state, leftOut, bolts],
  );
  return {
    ...{ session, plan, state, due, patterns, bolts, leftOut, by, hands, setHands },
    setBy: (next) => {
      setBy(next);
      // What asks for the name has been heard.
      if (told === words.nameFirst) tell('');
    },
    ...{ tell, open: now.open && now.mayNote, last: now.last, said },
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
