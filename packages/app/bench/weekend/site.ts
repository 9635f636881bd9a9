// The ground of the simulated weekend: the folder, the laptop that may be ended, killed and started again,
// and what lies on its disk when it is off.

import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type EntryId, entryIdOf, type RecordLog } from '@shellraise/core';
import { sharedRecord } from '@shellraise/sync';
import * as Y from 'yjs';
import type { LaptopCalls } from './laptop.ts';
import type { PhoneCalls } from './phone.ts';
import { type Remote, remote } from './remote.ts';

export type Laptop = Remote<LaptopCalls>;
export type PhoneProcess = Remote<PhoneCalls>;

/** Where all of it lies. */
export interface Ground {
  readonly folder: string;
  readonly laptop: () => Promise<Laptop>;
  /** A phone, started for the `life`th time; a fresh one has an empty disk. */
  readonly phone: (number: number, life: number) => PhoneProcess;
  /** Empties a phone's disk. */
  readonly reset: (number: number) => void;
  /** What is on the laptop's disk; the laptop must be off. */
  readonly kept: () => Promise<RecordLog>;
  readonly end: () => void;
}

/** Makes the folder and finds two ports. */
export async function makeGround(): Promise<Ground> {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-weekend-'));
  const [data, app] = [join(folder, 'laptop'), join(folder, 'app')];
  for (const one of [data, join(app, 'assets'), join(folder, 'stick')])
    mkdirSync(one, { recursive: true });
  writeFileSync(join(app, 'index.html'), '<!doctype html><title>app</title>');
  const ports = [await freePort(), await freePort()] as const;
  const phoneFolder = (number: number): string => join(folder, `phone-${number}`);
  const root = join(folder, 'root.crt');
  return {
    folder,
    laptop: async () => {
      const up = remote<LaptopCalls>(
        new URL('./laptop.js', import.meta.url),
        [data, app, `${ports[0]}`, `${ports[1]}`],
        process.env,
      );
      await up.calls.codes();
      const pem = readFileSync(join(data, 'https', 'root.pem'), 'utf8');
      writeFileSync(root, pem.slice(pem.indexOf('-----BEGIN CERTIFICATE-----')));
      return up;
    },
    // Phones trust the laptop's root, as after docs/https.md.
    phone: (number, life) =>
      remote<PhoneCalls>(
        new URL('./phone.js', import.meta.url),
        [phoneFolder(number), `${number}`, `${life}`, `${ports[1]}`],
        { ...process.env, NODE_EXTRA_CA_CERTS: root },
      ),
    reset: (number) => rmSync(phoneFolder(number), { recursive: true, force: true }),
    kept: () => keptIn(data),
    end: () => rmSync(folder, { recursive: true, force: true }),
  };
}

async function keptIn(data: string): Promise<RecordLog> {
  const { openStorage } = (await import(
    new URL('../../../../server/dist/sync/sqlite.js', import.meta.url).href
  )) as {
    openStorage: (folder: string) => Promise<{
      updates(doc: string): Promise<{ updates: readonly Uint8Array[] }>;
      close(): Promise<void>;
    }>;
  };
  const storage = await openStorage(data);
  const doc = new Y.Doc();
  for (const bytes of (await storage.updates('record')).updates) Y.applyUpdate(doc, bytes);
  await storage.close();
  const shared = sharedRecord(doc);
  shared.stop();
  return shared.log;
}

/** Ids of all entries. */
export const idsOf = (log: RecordLog): ReadonlySet<EntryId> =>
  new Set(log.entries().map(entryIdOf));

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });
