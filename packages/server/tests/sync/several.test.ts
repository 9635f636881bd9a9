// Two servers of one site, on the real PostgreSQL and Redis, with phones on either: what is kept is on the
// database's disk before it is told, others see it at once, and nothing that was told is lost when a
// server is killed, or Redis or PostgreSQL ended and started again.

import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { type EntryId, entryIdOf } from '@shellraise/core';
import { afterAll, beforeAll, beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import * as Y from 'yjs';
import { png } from '../../../sync/tests/photos.ts';
import { listen } from '../../src/listening.ts';
import { openPostgres, type SharedStorage } from '../../src/sync/postgres.ts';
import { openRoom } from '../../src/sync/room.ts';
import type { Where } from '../../src/sync/site.ts';
import { builtApp } from '../built.ts';
import { ask, joinWith, logOf, type RecordPhone, recordPhone, until } from './phones.ts';
import { freePort, type Services, startServices } from './services.ts';

let services: Services = { missing: 'they were not started' };
beforeAll(async () => {
  services = await startServices();
}, 120_000);
afterAll(async () => {
  if ('end' in services) await services.end();
});
beforeEach(({ skip }) => {
  if ('missing' in services) skip(`PostgreSQL and Redis: ${services.missing}`);
});

const running = () => services as Exclude<Services, { missing: string }>;

const where = (): Where => ({
  postgres: running().postgres.address,
  redis: running().redis.address,
});

const ignore = (): void => undefined;

async function storage(): Promise<SharedStorage> {
  const opened = await openPostgres(running().postgres.address, ignore);
  onTestFinished(() => opened.close().catch(ignore));
  return opened;
}

/** A server of the site within this process. */
async function serverHere(data: Where = where(), faults: unknown[] = []) {
  const listening = await listen({
    root: builtApp(),
    host: '127.0.0.1',
    port: 0,
    data,
    onFault: (fault) => void faults.push(fault),
  });
  onTestFinished(() => listening.server.close());
  const codes = (await listening.server.joinCodes?.()) ?? [];
  const code = (role: string): string => codes.find((one) => one.role === role)?.code ?? '';
  return { ...listening, code };
}

const built = new URL('../../dist/listening.js', import.meta.url).href;

/** A server of the site in a process of its own, that can be killed. */
async function serverApart(port: number): Promise<ChildProcess> {
  const options = JSON.stringify({ root: builtApp(), data: where(), port, host: '127.0.0.1' });
  const script = `const { listen } = await import(${JSON.stringify(built)}); await listen(${options});`;
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

const idsOf = (phone: RecordPhone): EntryId[] => phone.record.log.entries().map(entryIdOf);

describe('two servers of one site', () => {
  it('share codes and sessions, and a code that is revoked at one ends its lines at the other', async () => {
    const [a, b] = [await serverHere(), await serverHere()];
    expect(a.code('crew')).toBe(b.code('crew'));
    const [lead, crew] = [
      await joinWith(a.port, a.code('lead')),
      await joinWith(a.port, a.code('crew')),
    ];
    const who = async (port: number, cookie: string) =>
      (await ask(port, 'GET', '/sync/who', { headers: { cookie } })).text;
    expect(await who(b.port, crew)).toBe(await who(a.port, crew));
    const phone = recordPhone(b.port, crew, 'Eve');
    await until(() => phone.provider.synced, 'the phone is in at the other');
    const rows = JSON.parse(
      (await ask(a.port, 'GET', '/sync/codes', { headers: { cookie: lead } })).text,
    ) as { id: number; role: string }[];
    const cut = new Promise((resolve) => phone.provider.once('closed' as never, resolve as never));
    const id = rows.find(({ role }) => role === 'crew')?.id;
    await ask(a.port, 'DELETE', `/sync/codes/${id}`, { headers: { cookie: lead } });
    await cut;
    for (const { port } of [a, b])
      expect((await ask(port, 'GET', '/sync/who', { headers: { cookie: crew } })).status).toBe(401);
  });

  it('hand on each other’s entries at once with Redis, and within seconds without', async () => {
    const [a, b] = [await serverHere(), await serverHere()];
    const faults: unknown[] = [];
    const alone = await serverHere({ postgres: running().postgres.address, redis: null }, faults);
    const code = a.code('crew');
    const [ada, bob, cleo] = [
      recordPhone(a.port, await joinWith(a.port, code), 'Ada'),
      recordPhone(b.port, await joinWith(b.port, code), 'Bob'),
      recordPhone(alone.port, await joinWith(alone.port, code), 'Cleo'),
    ];
    await until(() => [ada, bob, cleo].every(({ provider }) => provider.synced), 'all are in');
    const times: number[] = [];
    for (let i = 0; i < 20; i++) {
      const from = performance.now();
      const entry = (i % 2 ? ada : bob).say();
      const other = i % 2 ? bob : ada;
      await until(() => other.record.log.entry(entryIdOf(entry)) !== null, 'the other has it');
      times.push(performance.now() - from);
    }
    times.sort((x, y) => x - y);
    console.log(
      `from a tap at one server to a phone at the other: median ${times[10]?.toFixed(0)} ms, worst ${times[19]?.toFixed(0)} ms`,
    );
    // Looking alone takes up to a second.
    expect(times[10]).toBeLessThan(500);
    await until(() => idsOf(cleo).length === idsOf(ada).length, 'one without Redis has all');
    await until(() => [ada, bob, cleo].every((one) => one.unsaved() === 0), 'all is told as kept');
    expect(faults).toEqual([]);
  });

  it('check what comes against all that is kept, so that no two take different things for one', async () => {
    const kept = await storage();
    const rooms = [
      await openRoom(kept, 'record', ignore),
      await openRoom(await storage(), 'record', ignore),
    ];
    const before = (await kept.updates('record')).updates.length;
    const shout = async (text: string, at: number): Promise<void> => {
      const doc = new Y.Doc();
      doc.clientID = 4711;
      const phone = logOf(doc);
      doc
        .getArray('entries 4711')
        .push([
          phone.write({ kind: 'note', text }, { writer: `${text}00000000`, by: 'Eve', at: 1.7e12 }),
        ]);
      const line = { role: 'crew' as const, send: ignore, close: ignore };
      rooms[at]?.join(line).hear(Uint8Array.of(0, 2, ...lengthOf(Y.encodeStateAsUpdate(doc))));
      await rooms[at]?.flush();
    };
    await Promise.all([shout('one', 0), shout('two', 1)]);
    for (const room of rooms) {
      room.look();
      await room.flush();
    }
    expect((await kept.updates('record')).updates.length).toBe(before + 1);
    const [first, second] = rooms.map((room) => logOf(room.doc).entries());
    expect(second).toEqual(first);
  });

  it('have one photo in common, brought at either', async () => {
    const [a, b] = [await storage(), await storage()];
    const hash = createHash('sha256').update(png()).digest('hex');
    expect(await a.photos.put(hash, png())).toBe('new');
    expect(await b.photos.put(hash, png())).toBe('known');
    expect(Buffer.from((await b.photos.get(hash)) ?? []).equals(png())).toBe(true);
    expect(await b.photos.size()).toBe(png().length);
  });

  it('lose nothing that was told as kept when a server, Redis and PostgreSQL are killed', async () => {
    const ports = [await freePort(), await freePort()] as const;
    const servers = [await serverApart(ports[0]), await serverApart(ports[1])];
    const kept = await storage();
    const code = (await kept.codes()).find(
      ({ role, revoked }) => role === 'lead' && !revoked,
    )?.code;
    const cookie = await joinWith(ports[0], code ?? '');
    const phones = Array.from({ length: 6 }, (_, i) =>
      recordPhone(ports[i % 2 ? 1 : 0], cookie, `P${i}`),
    );
    await until(() => phones.every(({ provider }) => provider.synced), 'all are in');
    const [said, told] = [new Set<EntryId>(), new Set<EntryId>()];
    const note = (): void => {
      for (const phone of phones)
        if (phone.unsaved() === 0) for (const id of idsOf(phone)) told.add(id);
    };
    const work = async (taps: number): Promise<void> => {
      for (let i = 0; i < taps; i++) {
        said.add(entryIdOf((phones[i % phones.length] as RecordPhone).say()));
        await new Promise((resolve) => setTimeout(resolve, 5));
        note();
      }
    };
    const left = async (): Promise<Set<EntryId>> => {
      const doc = new Y.Doc();
      for (const bytes of (await kept.updates('record')).updates) Y.applyUpdate(doc, bytes);
      return new Set(logOf(doc).entries().map(entryIdOf));
    };
    const lost = async (): Promise<readonly EntryId[]> => {
      const there = await left();
      return [...told].filter((id) => !there.has(id));
    };

    await work(30);
    await killed(servers[0] as ChildProcess);
    await work(20);
    expect(await lost(), 'after a server was killed').toEqual([]);
    servers[0] = await serverApart(ports[0]);
    await work(20);

    await running().redis.kill();
    await work(20);
    await until(() => phones.every((one) => one.unsaved() === 0), 'all is kept without Redis');
    note();
    await running().redis.start();
    await work(20);

    await running().postgres.kill();
    const before = told.size;
    await work(20);
    await running().postgres.start();
    expect(await lost(), 'after PostgreSQL was ended').toEqual([]);
    await work(20);

    await until(
      () => phones.every((one) => [...said].every((id) => one.record.log.entry(id))),
      'every phone has everything',
      60,
    );
    await until(() => phones.every((one) => one.unsaved() === 0), 'all is told as kept', 60);
    note();
    expect(await lost()).toEqual([]);
    const [first, ...others] = phones as [RecordPhone, ...RecordPhone[]];
    for (const other of others) expect(idsOf(other)).toEqual(idsOf(first));
    expect(await left()).toEqual(new Set(idsOf(first)));
    expect(told.size).toBeGreaterThan(before);
    console.log(`two servers: ${said.size} entries said, ${told.size} told as kept, none lost`);
  }, 120_000);
});

/** Bytes with their length before them, as the protocol frames them. */
function lengthOf(bytes: Uint8Array): number[] {
  const out: number[] = [];
  let length = bytes.length;
  for (; length > 127; length >>= 7) out.push((length & 127) | 128);
  return [...out, length, ...bytes];
}
