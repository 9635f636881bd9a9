// The record as a Yjs document: for each Yjs client one list that it alone adds to, at its end. So all
// that a client ever said is one run, however many there are, and adding costs the same at any length;
// the nth entry of a list is the client's nth change. The order of lists means nothing; what an entry
// says of its own order does. Reading leaves out what is no entry. An entry stands in its list as JSON text,
// which Yjs takes in several times faster than an object of as many fields; objects are read as well.

import { type Entry, entryIdOf, RecordLog, readEntry } from '@shellraise/core';
import * as Y from 'yjs';

/** Name of the list that a client adds to. */
export const listName = (client: number): string => `entries ${client}`;

/** What a client added from its change `from` up to `to`, unread. */
const rawOf = (doc: Y.Doc, client: number, from: number, to: number): unknown[] =>
  doc.getArray(listName(client)).slice(from, to).map(itemOf);

/** What an item of a list holds; undefined where it is a text that is no JSON. */
export function itemOf(item: unknown): unknown {
  if (typeof item !== 'string') return item;
  try {
    return JSON.parse(item);
  } catch {
    return undefined;
  }
}

/** Everything in the document, unread. */
export const rawEntries = (doc: Y.Doc): unknown[] =>
  [...doc.store.clients.keys()].flatMap((client) =>
    rawOf(doc, client, 0, Y.getState(doc.store, client)),
  );

/** Number of entries in the document, read or not. */
export function entryCount(doc: Y.Doc): number {
  let count = 0;
  for (const client of doc.store.clients.keys()) count += Y.getState(doc.store, client);
  return count;
}

/** Adds entries to the document in one change. */
export const addToDoc = (doc: Y.Doc, entries: readonly Entry[]): void => {
  if (entries.length > 0)
    doc.getArray(listName(doc.clientID)).push(entries.map((entry) => JSON.stringify(entry)));
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
  const follow = ({ beforeState, afterState }: Y.Transaction): void => {
    for (const [client, to] of afterState) {
      const from = beforeState.get(client) ?? 0;
      if (to > from) take(rawOf(doc, client, from, to));
    }
  };
  take(rawEntries(doc));
  doc.on('afterTransaction', follow);
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
    stop: () => doc.off('afterTransaction', follow),
  };
}
