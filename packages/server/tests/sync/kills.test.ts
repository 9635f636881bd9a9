// Phones that record while the server is killed (`kill -9`) at random moments and started again. A few
// kills here; `npm run soak` has 200. What was told as kept must be on the disk that the killed server
// left, before any phone can bring it again; in the end all copies are equal and nothing that was said
// is missing, save what died with a phone before it could tell anybody.

import { type ChildProcess, spawn } from 'node:child_process';
import { appendFileSync, existsSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { type EntryId, entryIdOf, seededRandom } from '@shellraise/core';
import { expect, it, onTestFinished } from 'vitest';
import * as Y from 'yjs';
import { openStorage } from '../../src/sync/sqlite.ts';
import type { Storage } from '../../src/sync/storage.ts';
import { builtApp, emptyFolder } from '../built.ts';
import { ask, joinWith, logOf, type RecordPhone, recordPhone, until } from './phones.ts';

const KILLS = Number(process.env.SHELLRAISE_KILLS ?? 3);
const PHONES = KILLS > 3 ? 20 : 5;

const listening = new URL('../../dist/listening.js', import.meta.url).href;

/** Starts the built server on a folder and a port; ready when it answers. */
async function started(root: string, data: string, port: number): Promise<ChildProcess> {
  const options = JSON.stringify({ root, data, port, host: '127.0.0.1' });
  const script = `const { listen } = await import(${JSON.stringify(listening)}); await listen(${options});`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], {
    stdio: 'inherit',
  });
  onTestFinished(() => void child.kill('SIGKILL'));
  await until(
    () =>
      ask(port, 'GET', '/').then(
        () => true,
        () => false,
      ),
    'the server is up',
    60,
  );
  return child;
}

const killed = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    child.once('exit', () => resolve());
    child.kill('SIGKILL');
  });

const freePort = (): Promise<number> =>
  new Promise((resolve) => {
    const server = createServer().listen(0, '127.0.0.1', () => {
      const { port } = server.address() as { port: number };
      server.close(() => resolve(port));
    });
  });

async function docOf(storage: Storage): Promise<Y.Doc> {
  const doc = new Y.Doc();
  for (const bytes of (await storage.updates('record')).updates) Y.applyUpdate(doc, bytes);
  return doc;
}

/** A phone with what it keeps itself, as a browser's database would. */
interface Pocket {
  phone: RecordPhone;
  kept: Uint8Array[];
  /** Entries that it has and was not told to be kept. */
  untold: EntryId[];
}

it(
  `loses nothing that was told as kept over ${KILLS} kills and ${PHONES} phones`,
  async () => {
    const random = seededRandom(8);
    const [root, data, port] = [builtApp(), emptyFolder(), await freePort()];
    const code = 'CREWCREWCR';
    const setUp = await openStorage(data);
    await setUp.addCode('crew', code, Date.now());
    await setUp.close();
    let server = await started(root, data, port);
    // A session may open twelve lines at once.
    const cookies = [await joinWith(port, code), await joinWith(port, code)];
    let opened = 0;
    const told = new Set<EntryId>();
    const said = new Set<EntryId>();
    const count = {
      kills: 0,
      said: 0,
      undone: 0,
      reloads: 0,
      partitions: 0,
      files: 0,
      repeats: 0,
      torn: 0,
    };
    const toldBy = ({ phone, untold }: Pocket): void => {
      if (phone.unsaved() === 0) for (const id of untold.splice(0)) told.add(id);
    };

    const open = (kept: Uint8Array[]): Pocket => {
      const doc = new Y.Doc();
      doc.transact(() => {
        for (const bytes of kept) Y.applyUpdate(doc, bytes);
      });
      doc.on('update', (bytes: Uint8Array) => kept.push(bytes));
      const phone = recordPhone(port, cookies[opened++ % 2] as string, 'Ada', doc);
      phone.provider.on('connection-close', () => undefined);
      const untold = phone.record.log.entries().map(entryIdOf);
      phone.record.watch((came) => void untold.push(...came.map(entryIdOf)));
      return { phone, kept, untold };
    };
    const pockets = Array.from({ length: PHONES }, () => open([]));
    const any = (): Pocket => pockets[random.below(PHONES)] as Pocket;
    const at = ['1-01/1-02', '1-02/1-03', '2-01/2-02'] as const;

    const act = (): void => {
      const pocket = any();
      const { phone } = pocket;
      const dice = random.uniform();
      if (dice < 0.7) {
        const pass = (['finger', 'snug', 'final'] as const)[random.below(3)] as 'finger';
        const seam = at[random.below(3)] as string;
        said.add(entryIdOf(phone.say({ kind: 'seam pass', seam, pass })));
        count.said++;
      } else if (dice < 0.76 && phone.record.log.size > 0) {
        const all = phone.record.log.entries();
        const of = entryIdOf(all[random.below(all.length)] as (typeof all)[0]);
        said.add(entryIdOf(phone.say({ kind: 'undo', of })));
        count.undone++;
      } else if (dice < 0.82) {
        phone.stop();
        Object.assign(pocket, open(pocket.kept));
        count.reloads++;
      } else if (dice < 0.9) {
        if (phone.provider.wsconnected) phone.provider.disconnect();
        else phone.provider.connect();
        count.partitions++;
      } else if (dice < 0.95) {
        phone.record.bring(any().phone.record.log.entries().slice(-30));
        count.files++;
      } else if (pocket.kept.length > 0) {
        Y.applyUpdate(any().phone.doc, pocket.kept[random.below(pocket.kept.length)] as Uint8Array);
        count.repeats++;
      }
      for (const one of pockets) toldBy(one);
    };

    while (count.kills < KILLS) {
      const moments = 5 + random.below(40);
      for (let i = 0; i < moments; i++) {
        act();
        await new Promise((resolve) => setTimeout(resolve, random.below(8)));
        for (const one of pockets) toldBy(one);
      }
      await killed(server);
      count.kills++;
      if (count.kills % 10 === 0)
        console.log(`kills: ${JSON.stringify({ ...count, toldAsKept: told.size })}`);
      const log = join(data, 'site.sqlite-wal');
      if (random.uniform() < 0.3 && existsSync(log)) {
        appendFileSync(log, Buffer.from(Array.from({ length: 5000 }, () => random.below(256))));
        count.torn++;
      }
      const storage = await openStorage(data);
      const left = new Set(
        logOf(await docOf(storage))
          .entries()
          .map(entryIdOf),
      );
      await storage.close();
      const lost = [...told].filter((id) => !left.has(id));
      expect(lost, `after kill ${count.kills}`).toEqual([]);
      server = await started(root, data, port);
    }

    for (const { phone } of pockets) phone.provider.connect();
    await until(
      () =>
        pockets.every(({ phone }) => phone.record.log.size >= said.size && phone.unsaved() === 0),
      'all are healed',
      60,
    );
    await killed(server);
    const storage = await openStorage(data);
    const end = logOf(await docOf(storage));
    await storage.close();
    expect(new Set(end.entries().map(entryIdOf))).toEqual(said);
    for (const { phone } of pockets) {
      expect(phone.record.log.entries()).toEqual(end.entries());
      expect(phone.record.log.questions()).toEqual(end.questions());
      expect(phone.record.refused()).toBe(0);
    }
    expect(told.size).toBeGreaterThan(0);
    // In a few kills no log may have been torn.
    if (KILLS > 20) expect(count.torn).toBeGreaterThan(0);
    console.log(`kills: ${JSON.stringify({ ...count, entries: end.size, toldAsKept: told.size })}`);
  },
  KILLS > 3 ? 7_200_000 : 120_000,
);
