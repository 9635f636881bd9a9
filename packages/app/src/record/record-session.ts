// The record as this page has it: what was said, by whom, what of it is saved. Opened anew for each
// project; each opening is a writer of its own.

import { type Entry, entryIdOf, type RecordLog, readEntry, type What } from '@shellraise/core';
import { addToDoc, type SharedRecord, sharedRecord } from '@shellraise/sync';
import * as Y from 'yjs';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { type Channel, type KeptDoc, type KeptDocState, keptDoc } from './kept-doc.ts';
import type { UpdateStore } from './update-store.ts';

/** The record of one project. */
export interface RecordSession {
  readonly doc: Y.Doc;
  readonly store: StoreApi<RecordNow>;
  readonly log: RecordLog;
  /** Says something, as the one whose phone it is. Returns the entry. */
  readonly say: (what: What, by: string) => Entry;
  /** Takes an entry back. */
  readonly takeBack: (entry: Entry, by: string) => Entry;
  /** Adds entries that are not there yet, as from a file; how many were new. */
  readonly bring: (entries: readonly Entry[]) => number;
  /** Says whether this device may note; one that may not is told so, and nothing goes into the record. */
  readonly let: (mayNote: boolean) => void;
  /** Tries again to save what could not be saved. */
  readonly again: () => Promise<void>;
  readonly close: () => void;
}

/** What a screen must know to be drawn anew. */
export interface RecordNow extends KeptDocState {
  /** The log as it is now: another object whenever the record has grown. */
  readonly said: { readonly log: RecordLog };
  /** The last thing said on this page that was not taken back. */
  readonly last: Entry | null;
  /** Whether this device may add to it: a looker's may not. */
  readonly mayNote: boolean;
}

/** What the session needs from outside. */
export interface RecordOutside {
  readonly updates: Promise<UpdateStore>;
  /** To other pages of this browser that have the same record open. */
  readonly channel: Channel | null;
  /** Milliseconds since 1970, by the phone's clock. */
  readonly now: () => number;
  /** A name for a writer that nobody else has: 8 to 32 small letters and digits. */
  readonly newWriter: () => string;
}

/** Opens the record of a project. */
export function openRecord(project: string, outside: RecordOutside): RecordSession {
  const doc = new Y.Doc();
  const writer = outside.newWriter();
  const shared: SharedRecord = sharedRecord(doc);
  const store = createStore<RecordNow>(() => ({
    said: { log: shared.log },
    last: null,
    mayNote: true,
    open: false,
    unsaved: 0,
    fault: null,
  }));
  const kept: KeptDoc = keptDoc(
    doc,
    project,
    { store: outside.updates, channel: outside.channel },
    () => store.setState(kept.state()),
  );
  shared.watch(() => store.setState({ said: { log: shared.log } }));
  const write = (what: What, by: string): Entry => {
    if (!store.getState().mayNote) throw new Error('this device may only look at the record');
    const read = readEntry(shared.log.write(what, { writer, by, at: outside.now() }));
    if (!read.ok) throw new Error(read.faults.map(({ path, found }) => `${path} ${found}`).join());
    addToDoc(doc, [read.value]);
    return read.value;
  };
  return {
    doc,
    store,
    log: shared.log,
    say: (what, by) => {
      const entry = write(what, by);
      store.setState({ last: entry });
      return entry;
    },
    takeBack: (entry, by) => {
      const undo = write({ kind: 'undo', of: entryIdOf(entry) }, by);
      store.setState({ last: null });
      return undo;
    },
    bring: (entries) => (store.getState().mayNote ? shared.bring(entries) : 0),
    let: (mayNote) => store.setState({ mayNote }),
    again: kept.again,
    close: () => {
      kept.stop();
      shared.stop();
      doc.destroy();
    },
  };
}

/** Waits until all that was stored is in the session. */
export const opened = ({ store }: RecordSession): Promise<void> =>
  new Promise((done) => {
    if (store.getState().open) return done();
    const stop = store.subscribe(({ open }) => {
      if (!open) return;
      stop();
      done();
    });
  });
