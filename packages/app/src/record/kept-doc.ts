// A shared document that outlives its page: what is in the store comes first, whatever is said is
// stored at once, and pages of one browser tell each other.

import * as Y from 'yjs';
import type { UpdateStore } from './update-store.ts';

/** Where the document is. */
export interface KeptDocState {
  /** Whether all that was stored is in it. */
  readonly open: boolean;
  /** Updates that are not on the disk yet, or could not be put there. */
  readonly unsaved: number;
  /** Why the last of them could not; null while all is well. */
  readonly fault: string | null;
}

/** A document followed by its store. */
export interface KeptDoc {
  readonly state: () => KeptDocState;
  /** Tries again to store what could not be. */
  readonly again: () => Promise<void>;
  readonly stop: () => void;
}

/** Other pages of this browser. */
export type Channel = Pick<BroadcastChannel, 'postMessage' | 'close' | 'addEventListener'>;

/** Updates in the store from which on they are put together when the record is opened. */
const MANY = 200;

/** Fills the document from the store, then keeps it there. `changed`: the state is another. */
export function keptDoc(
  doc: Y.Doc,
  record: string,
  { store, channel }: { readonly store: Promise<UpdateStore>; readonly channel: Channel | null },
  changed: () => void,
): KeptDoc {
  let state: KeptDocState = { open: false, unsaved: 0, fault: null };
  let refused: Uint8Array[] = [];
  const set = (more: Partial<KeptDocState>): void => {
    state = { ...state, ...more };
    changed();
  };
  const keep = async (update: Uint8Array): Promise<void> => {
    try {
      await (await store).add(record, update);
      set({ unsaved: state.unsaved - 1, fault: refused.length > 0 ? state.fault : null });
    } catch (error) {
      refused.push(update);
      set({ fault: messageOf(error) });
    }
  };
  const follow = (update: Uint8Array, origin: unknown): void => {
    // What came out of the store is in it; what another page said, that page stores.
    if (origin === fromStore || origin === fromPage) return;
    set({ unsaved: state.unsaved + 1 });
    channel?.postMessage(update);
    void keep(update);
  };
  const hear = (event: MessageEvent<unknown>): void => {
    if (event.data instanceof Uint8Array) Y.applyUpdate(doc, event.data, fromPage);
  };
  doc.on('update', follow);
  channel?.addEventListener('message', hear as EventListener);
  void opened(doc, record, store).then(
    () => set({ open: true }),
    (error: unknown) => set({ open: true, fault: messageOf(error) }),
  );
  return {
    state: () => state,
    again: async () => {
      const again = refused;
      refused = [];
      await Promise.all(again.map(keep));
    },
    stop: () => {
      doc.off('update', follow);
      channel?.close();
    },
  };
}

const fromStore = Symbol('store');
const fromPage = Symbol('page');

async function opened(doc: Y.Doc, record: string, store: Promise<UpdateStore>): Promise<void> {
  const open = await store;
  const kept = await open.load(record);
  doc.transact(() => {
    for (const { update } of kept) Y.applyUpdate(doc, update, fromStore);
  }, fromStore);
  if (kept.length < MANY) return;
  // Of these alone: what was said meanwhile is stored on its own.
  const whole = Y.mergeUpdates(kept.map(({ update }) => update));
  const keys = kept.map(({ key }) => key);
  // Not put together is as good as before.
  await open.replace(record, keys, whole).catch(() => undefined);
}

const messageOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
