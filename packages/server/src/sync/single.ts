// One server for one folder. A socket in the system's folder for passing things is held while the
// server runs; the system lets go of it when the process ends, however it ends, so nothing stale is in
// the way after a crash.

import { createHash } from 'node:crypto';
import { realpathSync, unlinkSync } from 'node:fs';
import { connect, createServer, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Another server keeps this folder. */
export class FolderTaken extends Error {
  constructor(readonly folder: string) {
    super(`another server keeps the record in ${folder}`);
  }
}

/** Takes the folder, which must exist, for this process; returns how to let go. Throws `FolderTaken`. */
export async function takeFolder(folder: string): Promise<() => Promise<void>> {
  const path = socketPath(realpathSync(folder));
  for (const isLast of [false, true]) {
    const server = await listening(path);
    if (server) return () => new Promise((resolve) => server.close(() => resolve()));
    if (isLast || (await answers(path))) break;
    // Left behind by a process that was killed.
    unlinkSync(path);
  }
  throw new FolderTaken(folder);
}

function socketPath(folder: string): string {
  const name = `shellraise-${createHash('sha256').update(folder).digest('hex').slice(0, 24)}`;
  return process.platform === 'win32' ? `\\\\.\\pipe\\${name}` : join(tmpdir(), `${name}.sock`);
}

function listening(path: string): Promise<Server | null> {
  return new Promise((resolve, reject) => {
    const server = createServer((socket) => socket.destroy());
    server.once('error', (error: NodeJS.ErrnoException) =>
      error.code === 'EADDRINUSE' ? resolve(null) : reject(error),
    );
    server.listen(path, () => {
      server.unref();
      resolve(server);
    });
  });
}

function answers(path: string): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect(path);
    socket.once('connect', () => {
      socket.destroy();
      resolve(true);
    });
    socket.once('error', () => resolve(false));
  });
}
