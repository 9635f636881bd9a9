// A store of updates in memory, as a browser's.

import type { UpdateStore } from '../../src/record/update-store.ts';

/** The store, and what stands in it; `full` makes it refuse. */
export function updateMemory() {
  const rows: { key: number; record: string; update: Uint8Array }[] = [];
  let next = 1;
  const state = { full: false, rows };
  const store: UpdateStore = {
    load: async (record) => rows.filter((row) => row.record === record),
    add: async (record, update) => {
      if (state.full) throw new Error('no room');
      rows.push({ key: next++, record, update });
    },
    drop: async (record) => {
      const left = rows.filter((row) => row.record !== record);
      rows.splice(0, rows.length, ...left);
    },
    replace: async (record, keys, update) => {
      const left = rows.filter(({ key }) => !keys.includes(key));
      rows.splice(0, rows.length, ...left, { key: next++, record, update });
    },
  };
  return { state, store };
}
