// What a simulated phone keeps, in a folder: the record's updates as the browser's database has them, the
// browser's small texts, photos. All of it is there before a call returns, and outlives the process.

import {
  appendFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import type { UpdateStore } from '../../src/record/update-store.ts';

/** A phone's disk. */
export interface Disk {
  readonly updates: UpdateStore;
  readonly texts: Pick<Storage, 'getItem' | 'setItem'>;
  /** A photo by its hash; null where it is not here. */
  readonly photo: (hash: string) => Uint8Array<ArrayBuffer> | null;
  readonly keepPhoto: (hash: string, bytes: Uint8Array) => void;
}

/** Opens the disk in a folder. */
export function diskIn(folder: string): Disk {
  mkdirSync(join(folder, 'photos'), { recursive: true });
  const texts = join(folder, 'texts.json');
  const kept: Record<string, string> = existsSync(texts)
    ? JSON.parse(readFileSync(texts, 'utf8'))
    : {};
  const photo = (hash: string): string => join(folder, 'photos', hash);
  return {
    updates: updatesIn(folder),
    texts: {
      getItem: (key) => kept[key] ?? null,
      setItem: (key, text) => {
        kept[key] = text;
        whole(texts, JSON.stringify(kept));
      },
    },
    photo: (hash) => (existsSync(photo(hash)) ? new Uint8Array(readFileSync(photo(hash))) : null),
    keepPhoto: (hash, bytes) => whole(photo(hash), bytes),
  };
}

/** Rows of key, length and bytes, one after the other; a row that was cut off is left out. */
function updatesIn(folder: string): UpdateStore {
  const fileOf = (record: string): string => join(folder, `${record.replaceAll(' ', '-')}.updates`);
  const rowsOf = (record: string) => {
    const file = fileOf(record);
    const bytes = existsSync(file) ? readFileSync(file) : Buffer.alloc(0);
    const rows: { key: number; update: Uint8Array }[] = [];
    for (let from = 0; from + 8 <= bytes.length; ) {
      const [key, length] = [bytes.readUInt32LE(from), bytes.readUInt32LE(from + 4)];
      if (from + 8 + length > bytes.length) break;
      rows.push({ key, update: new Uint8Array(bytes.subarray(from + 8, from + 8 + length)) });
      from += 8 + length;
    }
    return rows;
  };
  const rowOf = (key: number, update: Uint8Array): Buffer => {
    const head = Buffer.alloc(8);
    head.writeUInt32LE(key, 0);
    head.writeUInt32LE(update.length, 4);
    return Buffer.concat([head, update]);
  };
  const next = new Map<string, number>();
  const keyFor = (record: string): number => {
    const key = next.get(record) ?? Math.max(0, ...rowsOf(record).map((row) => row.key)) + 1;
    next.set(record, key + 1);
    return key;
  };
  return {
    load: async (record) => rowsOf(record),
    add: async (record, update) => appendFileSync(fileOf(record), rowOf(keyFor(record), update)),
    replace: async (record, keys, update) => {
      const gone = new Set(keys);
      const left = rowsOf(record).filter(({ key }) => !gone.has(key));
      const rows = [...left, { key: keyFor(record), update }];
      whole(fileOf(record), Buffer.concat(rows.map((row) => rowOf(row.key, row.update))));
    },
    drop: async (record) => rmSync(fileOf(record), { force: true }),
  };
}

/** Writes a file so that it is there whole or as before. */
function whole(file: string, content: string | Uint8Array): void {
  writeFileSync(`${file}.part`, content);
  renameSync(`${file}.part`, file);
}
