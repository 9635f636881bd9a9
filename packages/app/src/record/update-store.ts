// The record's updates in the browser's own database, each on the disk before it counts as saved.
// Updates are only added; many are put together into one that says the same.

import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** Where a record's updates are kept. All calls fail where the browser keeps nothing. */
export interface UpdateStore {
  /** The updates of a record, in the order of coming, each with its key. */
  load(record: string): Promise<readonly { readonly key: number; readonly update: Uint8Array }[]>;
  /** Keeps an update; done when it is on the disk. */
  add(record: string, update: Uint8Array): Promise<void>;
  /** Puts one update in the place of those with these keys. */
  replace(record: string, keys: readonly number[], update: Uint8Array): Promise<void>;
  /** Empties a record: for one that has gone into another whole. */
  drop(record: string): Promise<void>;
}

interface Schema extends DBSchema {
  updates: {
    key: number;
    value: { readonly record: string; readonly update: Uint8Array };
    indexes: { record: string };
  };
}

/** Opens the browser's store. Fails where the browser refuses a database. */
export async function updateStore(): Promise<UpdateStore> {
  const db = await openDB<Schema>('shellraise-record', 1, {
    upgrade: (fresh) => {
      fresh.createObjectStore('updates', { autoIncrement: true }).createIndex('record', 'record');
    },
  });
  return {
    load: (record) => loaded(db, record),
    add: async (record, update) => {
      const tx = writing(db);
      await Promise.all([tx.store.add({ record, update }), tx.done]);
    },
    replace: async (record, keys, update) => {
      const tx = writing(db);
      await Promise.all([
        tx.store.add({ record, update }),
        ...keys.map((key) => tx.store.delete(key)),
        tx.done,
      ]);
    },
    drop: async (record) => {
      const tx = writing(db);
      const keys = await tx.store.index('record').getAllKeys(record);
      await Promise.all([...keys.map((key) => tx.store.delete(key)), tx.done]);
    },
  };
}

/** A phone may go dark at once: what counts as saved is on the disk, not on its way there. */
const writing = (db: IDBPDatabase<Schema>) =>
  db.transaction('updates', 'readwrite', { durability: 'strict' });

async function loaded(db: IDBPDatabase<Schema>, record: string) {
  const found: { key: number; update: Uint8Array }[] = [];
  let cursor = await db.transaction('updates').store.index('record').openCursor(record);
  while (cursor) {
    found.push({ key: cursor.primaryKey, update: cursor.value.update });
    cursor = await cursor.continue();
  }
  return found;
}
