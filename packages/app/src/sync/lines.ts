// The two lines of a site: its record, and its project, whose document is kept in this browser too, so
// that a lead's changes wait there while the laptop is away. Loaded when a device first joins.

import type { Project } from '@shellraise/core';
import { projectIn, writeProject } from '@shellraise/sync';
import * as Y from 'yjs';
import { type Channel, keptDoc } from '../record/kept-doc.ts';
import type { RecordSession } from '../record/record-session.ts';
import type { UpdateStore } from '../record/update-store.ts';
import { type DocLine, docLine } from './doc-line.ts';
import type { LineState } from './line-state.ts';

/** What the document of a site's project holds. `faulty`: what several changed at once breaks a rule. */
export type SharedNow =
  | { readonly is: 'opening' | 'none' | 'faulty' }
  | { readonly is: 'there'; readonly project: Project };

/** The lines of a site. */
export interface SiteLines {
  readonly record: () => LineState | null;
  readonly project: () => LineState;
  readonly shared: () => SharedNow;
  /** Puts a project over what all have, changing what differs. */
  readonly write: (project: Project) => void;
  readonly connect: () => void;
  readonly disconnect: () => void;
  readonly stop: () => void;
}

/** What the lines need. */
export interface LinesOutside {
  /** The address of the sockets, without the document's name. */
  readonly server: string;
  readonly updates: () => Promise<UpdateStore>;
  readonly channel: (name: string) => Channel | null;
  readonly storage: () => Pick<Storage, 'getItem' | 'setItem'>;
  readonly Socket?: typeof WebSocket;
  readonly longestPause?: number;
}

/** Whom the lines tell. */
export interface LinesTold {
  /** Something is otherwise than before. */
  readonly changed: () => void;
  /** The project's document was changed by others, or has been opened. */
  readonly others: () => void;
}

/** Opens the lines of a site, not connected yet. `record` is null where the site's project is not the one
 * on show. */
export function openLines(
  site: string,
  record: RecordSession | null,
  outside: LinesOutside,
  told: LinesTold,
): SiteLines {
  const doc = new Y.Doc();
  const name = `site ${site}`;
  let shared: SharedNow | null = null;
  let stopped = false;
  let wanted = false;
  const kept = keptDoc(
    doc,
    name,
    { store: outside.updates(), channel: outside.channel(`shellraise-${name}`) },
    () => {
      shared = null;
      if (wanted && isOpen()) connect();
      told.changed();
      if (kept.state().open) told.others();
    },
  );
  const lineOf = (of: Y.Doc, what: 'record' | 'project'): DocLine =>
    docLine(of, {
      ...outside,
      site,
      name: what,
      ...knownThere(`shellraise-there ${what} ${site}`, outside.storage),
      changed: told.changed,
    });
  const project = lineOf(doc, 'project');
  const recordLine = record && lineOf(record.doc, 'record');
  const isOpen = (): boolean => kept.state().open && (record?.store.getState().open ?? true);
  const unwatch = record?.store.subscribe(() => {
    if (wanted && isOpen()) connect();
  });
  const changed = (_update: Uint8Array, origin: unknown): void => {
    shared = null;
    if (origin !== OWN) told.others();
  };
  doc.on('update', changed);
  /** Not before all that is kept here has been read: or it would go out piece by piece. */
  const connect = (): void => {
    if (stopped || !isOpen()) return;
    wanted = false;
    project.connect();
    recordLine?.connect();
  };
  return {
    record: () => recordLine?.state() ?? null,
    project: project.state,
    shared: () => {
      shared ??= kept.state().open ? sharedIn(doc) : { is: 'opening' };
      return shared;
    },
    write: (next) => doc.transact(() => writeProject(doc, next), OWN),
    connect: () => {
      wanted = true;
      connect();
    },
    disconnect: () => {
      wanted = false;
      project.disconnect();
      recordLine?.disconnect();
    },
    stop: () => {
      stopped = true;
      unwatch?.();
      project.stop();
      recordLine?.stop();
      kept.stop();
      doc.destroy();
    },
  };
}

const OWN = Symbol('own');

function sharedIn(doc: Y.Doc): SharedNow {
  if (Y.encodeStateVector(doc).length <= 1) return { is: 'none' };
  const read = projectIn(doc);
  return read.ok ? { is: 'there', project: read.value } : { is: 'faulty' };
}

/** What is known to be on the laptop outlives the page: so a phone that is opened far from it does not
 * say that all is waiting. Written once a second at most. */
function knownThere(key: string, storage: LinesOutside['storage']) {
  let due = false;
  let last: Uint8Array;
  const keep = (): void => {
    due = false;
    try {
      storage().setItem(key, btoa(String.fromCharCode(...last)));
    } catch {
      // Then more is said to wait than does.
    }
  };
  const read = (): Uint8Array | null => {
    try {
      const text = storage().getItem(key);
      return text ? Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0)) : null;
    } catch {
      return null;
    }
  };
  return {
    known: read(),
    keepKnown: (known: Uint8Array): void => {
      last = known;
      if (!due) setTimeout(keep, 1000);
      due = true;
    },
  };
}
