// The line of one shared document to the laptop: y-websocket's provider, which comes back by itself; what
// is known to be kept there; and why it does not hold, where it does not.

import { followKept } from '@shellraise/sync';
import { WebsocketProvider } from 'y-websocket';
import type * as Y from 'yjs';
import type { LineState, LineTrouble } from './line-state.ts';

/** What a line needs. */
export interface LineOutside {
  /** The address of the sockets, without the document's name. */
  readonly server: string;
  readonly site: string;
  readonly name: 'record' | 'project';
  /** What was known to be kept there before, as a state vector; kept over a reload. */
  readonly known: Uint8Array | null;
  readonly keepKnown: (known: Uint8Array) => void;
  readonly changed: () => void;
  /** The browser's own unless given. */
  readonly Socket?: typeof WebSocket;
  /** Longest pause before the next try, milliseconds. */
  readonly longestPause?: number;
}

/** A line. */
export interface DocLine {
  readonly state: () => LineState;
  readonly connect: () => void;
  readonly disconnect: () => void;
  readonly stop: () => void;
}

/** Number of the message by which the laptop says that something may not be. */
const AUTH = 2;

/** The line of a document, not connected yet. */
export function docLine(doc: Y.Doc, outside: LineOutside): DocLine {
  const { server, name, site, known, keepKnown, changed, Socket, longestPause = 10_000 } = outside;
  let trouble: LineTrouble | null = null;
  const provider = new WebsocketProvider(server, name, doc, {
    connect: false,
    disableBc: true,
    params: { site },
    maxBackoffTime: longestPause,
    ...(Socket ? { WebSocketPolyfill: Socket } : {}),
  });
  // Nobody is told who has which thing under their finger.
  provider.awareness.setLocalState(null);
  const kept = followKept(
    provider as never,
    () => {
      keepKnown(kept.known());
      changed();
    },
    known ?? undefined,
  );
  provider.messageHandlers[AUTH] = (() => {
    trouble = { what: 'denied', why: '' };
    changed();
  }) as never;
  provider.on('connection-close', (event) => {
    const what = TROUBLES[event?.code ?? 0];
    if (what) trouble = { what, why: event?.reason ?? '' };
    // The provider says after this that it is no longer connected.
    queueMicrotask(changed);
  });
  provider.on('sync', (on) => {
    if (on) trouble = null;
    changed();
  });
  doc.on('update', changed);
  return {
    state: () => ({ on: provider.synced, waiting: kept.waiting(), trouble }),
    connect: () => provider.connect(),
    disconnect: () => {
      provider.disconnect();
      changed();
    },
    stop: () => {
      doc.off('update', changed);
      provider.destroy();
    },
  };
}

/** By the code with which the laptop closes a line. */
const TROUBLES: Readonly<Record<number, LineTrouble['what']>> = {
  4400: 'malformed',
  4403: 'ended',
  4507: 'not kept',
  4529: 'later',
};
