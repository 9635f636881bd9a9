// Photos in a folder, each a file named by the hash of its bytes. A file is written beside its place,
// brought to the disk, and only then given its name: what has a name is whole.

import { randomBytes } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import type { Photos } from './storage.ts';

const PART = '.part';
const isHash = (name: string): boolean => /^[\da-f]{64}$/.test(name);

/** The folder's photos; it is made when the first comes. What a killed server left half written goes. */
export function openPhotos(folder: string): Photos {
  let size = 0;
  for (const name of namesIn(folder)) {
    if (name.endsWith(PART)) rmSync(join(folder, name));
    else if (isHash(name)) size += statSync(join(folder, name)).size;
  }
  const place = (hash: string): string => {
    if (!isHash(hash)) throw new Error(`no hash: ${hash}`);
    return join(folder, hash);
  };
  return {
    size: async () => size,
    get: async (hash) => read(place(hash)),
    put: async (hash, bytes) => {
      const to = place(hash);
      if (read(to) !== null) return 'known';
      mkdirSync(folder, { recursive: true, mode: 0o700 });
      const part = join(folder, `${randomBytes(8).toString('hex')}${PART}`);
      try {
        writeWhole(part, bytes);
        renameSync(part, to);
      } catch (error) {
        rmSync(part, { force: true });
        throw error;
      }
      syncFolder(folder);
      size += bytes.length;
      return 'new';
    },
  };
}

function namesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
}

function read(file: string): Uint8Array | null {
  try {
    return readFileSync(file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}

function writeWhole(file: string, bytes: Uint8Array): void {
  const to = openSync(file, 'wx', 0o600);
  try {
    for (let done = 0; done < bytes.length; ) done += writeSync(to, bytes, done);
    fsyncSync(to);
  } finally {
    closeSync(to);
  }
}

/** Brings names to the disk; Windows has no such call and needs none. */
function syncFolder(folder: string): void {
  if (process.platform === 'win32') return;
  const at = openSync(folder, 'r');
  try {
    fsyncSync(at);
  } finally {
    closeSync(at);
  }
}
