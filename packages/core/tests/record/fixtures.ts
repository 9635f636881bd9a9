// A small half ball to record, phones that write, and one-line entries.

import { type Entry, idOf } from '../../src/record/entry.ts';
import { RecordLog } from '../../src/record/log.ts';
import { type RecordPlan, recordPlan } from '../../src/record/names.ts';
import type { RecordPass, What } from '../../src/record/what.ts';
import { coursesOf } from '../../src/shell/courses.ts';
import { crownUp, cutNear, domeOf, icosahedral } from '../shell/fixtures.ts';

/** 09:00 of a day, milliseconds since 1970. */
export const NINE = Date.UTC(2026, 5, 12, 9);

/** A two-step half ball: 40 places in three courses. */
export function plan(steps = 2): RecordPlan {
  const whole = crownUp(icosahedral(steps, 0).shell);
  const shell = domeOf(whole, cutNear(whole, 0));
  return recordPlan(shell, coursesOf(shell));
}

/** A phone with its own copy of the record and its own clock. */
export interface Phone {
  readonly log: RecordLog;
  readonly say: (what: What) => Entry;
  readonly undo: (entry: Entry) => Entry;
  /** Moves its clock on, seconds. */
  readonly wait: (seconds: number) => void;
}

export function phone(by: string, { skew = 0, log = new RecordLog() } = {}): Phone {
  let at = NINE + skew;
  const writer = `${by.toLowerCase().replace(/[^a-z]/g, '')}00000000`.slice(0, 12);
  const say = (what: What): Entry => {
    const entry = log.write(what, { writer, by, at });
    log.add(entry);
    return entry;
  };
  return {
    log,
    say,
    undo: (entry) => say({ kind: 'undo', of: idOf(entry) }),
    wait: (seconds) => {
      at += seconds * 1000;
    },
  };
}

/** Every phone gets what any has. */
export function meet(...phones: readonly Phone[]): void {
  const all = phones.flatMap(({ log }) => [...log.entries()]);
  for (const { log } of phones) log.addAll(all);
}

export const seam = (name: string, pass: RecordPass, hands?: number): What => ({
  kind: 'seam pass',
  seam: name,
  pass,
  ...(hands !== undefined && { hands }),
});

export const placed = (place: string, tag: string | null = null, hands?: number): What => ({
  kind: 'panel placed',
  place,
  tag,
  turn: 0,
  ...(hands !== undefined && { hands }),
});
