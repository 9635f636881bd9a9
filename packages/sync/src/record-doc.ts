// The record as a Yjs document: one list that is only ever added to. Its order in the list means
// nothing; what an entry says of its own order does. Reading leaves out what is no entry.

import { type Entry, entryIdOf, RecordLog, readEntry } from '@shellraise/core';
import type * as Y from 'yjs';

/** Name of the list of entries in the document. */
export const ENTRIES = 'entries';

/** The list of entries as it lies in the document, unread. */
export const rawEntries = (doc: Y.Doc): Y.Array<unknown> => doc.getArray(ENTRIES);

/** Adds entries to the document in one change. */
export const addToDoc = (doc: Y.Doc, entries: readonly Entry[]): void => {
  if (entries.length > 0) rawEntries(doc).push([...entries]);
};

/** A record that follows a document: what is said here goes into it, what comes into it is read. */
export interface SharedRecord {
  readonly log: RecordLog;
  /** Items of the list that are no entries: never shown, never lost. */
  readonly refused: () => number;
  /** Adds entries that are not there yet, as from a file; how many were new. */
  readonly bring: (entries: readonly Entry[]) => number;
  /** Told what came, whoever brought it. Returns the way to stop. */
  readonly watch: (came: (entries: readonly Entry[]) => void) => () => void;
  readonly stop: () => void;
}

/** Reads the document's entries, then follows it. */
export function sharedRecord(doc: Y.Doc): SharedRecord {
  const log = new RecordLog();
  const list = rawEntries(doc);
  const watchers = new Set<(entries: readonly Entry[]) => void>();
  let refused = 0;
  const take = (items: readonly unknown[]): void => {
    const fresh: Entry[] = [];
    for (const item of items) {
      const read = readEntry(item);
      if (!read.ok) refused++;
      else if (log.add(read.value) === 'new') fresh.push(read.value);
    }
    if (fresh.length > 0) for (const came of watchers) came(fresh);
  };
  const follow = (event: Y.YArrayEvent<unknown>): void => {
    for (const { insert } of event.delta) if (Array.isArray(insert)) take(insert);
  };
  take(list.toArray());
  list.observe(follow);
  return {
    log,
    refused: () => refused,
    bring: (entries) => {
      const fresh = new Map(
        entries.filter((entry) => !log.entry(entryIdOf(entry))).map((one) => [entryIdOf(one), one]),
      );
      addToDoc(doc, [...fresh.values()]);
      return fresh.size;
    },
    watch: (came) => {
      watchers.add(came);
      return () => watchers.delete(came);
    },
    stop: () => list.unobserve(follow),
  };
}
