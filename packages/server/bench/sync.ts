// The end of a weekend: fifty phones on a record of 200,000 entries, the last of which they make while it is
// measured. `npm run bench -- sync [entries [each second]]`. The server is a process of its own; the phones
// are real sockets within this one, and each sees what all others say.

import { type ChildProcess, spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Entry, RecordLog, seededRandom } from '@shellraise/core';
import { addToDoc, sharedRecord } from '@shellraise/sync';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { WebSocket } from 'ws';
import * as protocol from 'y-protocols/sync';
import * as Y from 'yjs';
import type { Line } from '../../../scripts/bench-line.d.ts';

const PHONES = 50;
const WHOLE = 200_000;
const CODE = 'CREWCREWCR';
const SEAMS = Array.from(
  { length: 1080 },
  (_, i) => `${1 + (i % 9)}-${10 + Math.floor(i / 9)}/${2 + (i % 9)}-${10 + Math.floor(i / 9)}`,
);
const server = new URL('../../dist/', import.meta.url);

/** Prints times and sizes. */
export async function main([entries = '2000', perSecond = '50']: readonly string[]): Promise<
  readonly Line[]
> {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-bench-'));
  try {
    return await weekend(folder, Number(entries), Number(perSecond));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function weekend(folder: string, count: number, perSecond: number): Promise<readonly Line[]> {
  const random = seededRandom(1);
  const log = new RecordLog();
  const say = (phone: number): Entry => {
    const entry = log.write(
      {
        kind: 'seam pass',
        seam: SEAMS[random.below(SEAMS.length)] as string,
        pass: (['finger', 'snug', 'final'] as const)[random.below(3)] as 'finger',
      },
      { writer: `phone${String(phone).padStart(4, '0')}`, by: `P${phone}`, at: 1_780_000_000_000 },
    );
    log.add(entry);
    return entry;
  };
  const before = await seeded(folder, say, random.below, WHOLE - count);
  const start = performance.now();
  const { child, port } = await started(folder);
  const cookies = await Promise.all(Array.from({ length: 6 }, () => joined(port)));
  await new Promise<void>((resolve) => {
    const first = lineTo(port, cookies[0] as string);
    first.once('message', () => {
      first.terminate();
      resolve();
    });
  });
  const opened = performance.now() - start;
  console.log(
    `server with ${WHOLE - count} entries (${mb(before)}): started, opened and answers after ${s(opened)}; ${await told(child)}`,
  );
  const fresh = await newcomer(port, cookies[0] as string, WHOLE - count);
  const tapped = await taps(child, port, cookies, say, count, perSecond);
  console.log(`folder: ${mb(before)} before, ${mb(sizeOf(folder))} after ${count} more entries`);
  const { memory } = await usedBy(child);
  child.kill('SIGKILL');
  return [
    ...fresh,
    ...tapped,
    {
      what: `a server with ${WHOLE - count} entries: start to first answer`,
      found: opened / 1000,
      unit: 's',
    },
    { what: 'memory of that server, resident', found: memory / 1e6, unit: 'MB' },
  ];
}

/** A folder with a code and a record by fifty writers; its size. */
async function seeded(
  folder: string,
  say: (phone: number) => Entry,
  below: (n: number) => number,
  count: number,
): Promise<number> {
  const { openStorage } = (await import(new URL('sync/sqlite.js', server).href)) as {
    openStorage: (folder: string) => Promise<{
      addCode(role: string, code: string, now: number): Promise<unknown>;
      replace(doc: string, upTo: number, bytes: Uint8Array): Promise<void>;
      close(): Promise<void>;
    }>;
  };
  const lists = Array.from({ length: PHONES }, (): Entry[] => []);
  for (let i = 0; i < count; i++) {
    const phone = below(PHONES);
    lists[phone]?.push(say(phone));
  }
  const all = new Y.Doc();
  for (const list of lists) {
    const doc = new Y.Doc();
    addToDoc(doc, list);
    Y.applyUpdate(all, Y.encodeStateAsUpdate(doc));
  }
  const storage = await openStorage(folder);
  await storage.addCode('crew', CODE, Date.now());
  await storage.replace('record', 1, Y.encodeStateAsUpdate(all));
  await storage.close();
  return sizeOf(folder);
}

/** A phone with nothing gets and opens all of it, then taps. */
async function newcomer(port: number, cookie: string, count: number): Promise<readonly Line[]> {
  const doc = new Y.Doc();
  const start = performance.now();
  let taken = Number.NaN;
  const socket = lineTo(port, cookie);
  await new Promise<void>((resolve) => {
    socket.on('open', () => socket.send(message((out) => protocol.writeSyncStep1(out, doc))));
    socket.on('message', (data: Buffer) => {
      const update = updateIn(data);
      if (!update) return;
      const before = cpuSeconds();
      Y.applyUpdate(doc, update);
      taken = cpuSeconds() - before;
      resolve();
    });
  });
  const came = performance.now();
  const before = cpuSeconds();
  const record = sharedRecord(doc);
  record.log.questions();
  const used = cpuSeconds() - before;
  if (record.log.size !== count) throw new Error(`${record.log.size} of ${count} entries came`);
  console.log(
    `a new phone: ${s(came - start)} until all has come, ${s(performance.now() - came)} to read and fold it (${used.toFixed(2)} s of processor, ${taken.toFixed(2)} s to take it in)`,
  );
  const times: number[] = [];
  for (let i = 0; i < 500; i++) {
    const from = performance.now();
    const pen = { writer: 'bench000', by: 'Ada', at: 1_780_000_000_000 + i };
    record.bring([
      record.log.write({ kind: 'seam pass', seam: SEAMS[i] as string, pass: 'snug' }, pen),
    ]);
    times.push(performance.now() - from);
  }
  console.log(`a tap on it: ${quantiles(times)}`);
  socket.terminate();
  const what = `a new phone: ${count} entries taken in, read and folded`;
  return [
    {
      what,
      found: taken + used,
      unit: 's',
      wanted: 2,
      beside: { library: 'Yjs, which takes them in alone', ratio: (taken + used) / taken },
    },
    { what: 'a tap on that record, 99 %', found: quantile(times, 0.99), unit: 'ms', wanted: 50 },
  ];
}

const cpuSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Fifty phones say so many entries; how long until each of the others has each. */
async function taps(
  child: ChildProcess,
  port: number,
  cookies: readonly string[],
  say: (phone: number) => Entry,
  count: number,
  perSecond: number,
): Promise<readonly Line[]> {
  const sent = new Map<string, number>();
  const times: number[] = [];
  let came = 0;
  const phones = await Promise.all(
    Array.from({ length: PHONES }, async (_, number) => {
      const socket = lineTo(port, cookies[number % cookies.length] as string);
      await new Promise<void>((resolve) => socket.once('open', () => resolve()));
      const doc = new Y.Doc();
      doc.on('update', (bytes: Uint8Array) => {
        sent.set(`${doc.clientID} ${Y.getState(doc.store, doc.clientID)}`, performance.now());
        socket.send(message((out) => protocol.writeUpdate(out, bytes)));
      });
      socket.on('message', (data: Buffer) => {
        const update = updateIn(data);
        if (!update) return;
        for (const [client, clock] of Y.parseUpdateMeta(update).to) {
          const from = sent.get(`${client} ${clock}`);
          if (from === undefined) continue;
          came++;
          times.push(performance.now() - from);
        }
      });
      socket.on('close', () => {
        throw new Error(`phone ${number} was cut off`);
      });
      return { doc, socket };
    }),
  );
  const from = performance.now();
  for (let i = 0; i < count; i++) {
    const number = i % PHONES;
    addToDoc(phones[number]?.doc as Y.Doc, [say(number)]);
    const due = from + ((i + 1) * 1000) / perSecond;
    if (due > performance.now())
      await new Promise((resolve) => setTimeout(resolve, due - performance.now()));
    else if (i % 20 === 0) await new Promise((resolve) => setImmediate(resolve));
  }
  const end = performance.now() + 60_000;
  while (came < count * (PHONES - 1) && performance.now() < end)
    await new Promise((resolve) => setTimeout(resolve, 10));
  console.log(
    `${count} taps by ${PHONES} phones, ${(count / ((performance.now() - from) / 1000)).toFixed(0)} a second: ${came} of ${count * (PHONES - 1)} came; from tap to another phone ${quantiles(times)}; ${await told(child)}`,
  );
  for (const { socket } of phones) {
    socket.removeAllListeners('close');
    socket.terminate();
  }
  const of = `${count} taps by ${PHONES} phones, ${perSecond} a second`;
  return [
    {
      what: `${of}: arrived`,
      found: (100 * came) / (count * (PHONES - 1)),
      unit: '%',
      wanted: 100,
      least: true,
    },
    { what: 'from a tap to another phone, half', found: quantile(times, 0.5), unit: 'ms' },
    { what: 'from a tap to another phone, 99 %', found: quantile(times, 0.99), unit: 'ms' },
  ];
}

/** The built server on a folder and a port of its own; it answers messages with what it uses. */
async function started(folder: string): Promise<{ child: ChildProcess; port: number }> {
  const root = join(folder, 'app');
  mkdirSync(root);
  writeFileSync(join(root, 'index.html'), '<!doctype html>');
  const options = JSON.stringify({ root, data: folder, port: 0, host: '127.0.0.1' });
  const script = `const { listen } = await import(${JSON.stringify(new URL('listening.js', server).href)});
const { port } = await listen(${options});
process.on('message', () => process.send({ memory: process.memoryUsage.rss(), cpu: process.cpuUsage() }));
process.send({ port });`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', script], {
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
  });
  const { port } = (await answer(child)) as { port: number };
  return { child, port };
}

const answer = (child: ChildProcess): Promise<unknown> =>
  new Promise((resolve) => child.once('message', resolve));

async function usedBy(child: ChildProcess) {
  const reply = answer(child);
  child.send({});
  return (await reply) as { memory: number; cpu: NodeJS.CpuUsage };
}

async function told(child: ChildProcess): Promise<string> {
  const { memory, cpu } = await usedBy(child);
  return `the server has ${mb(memory)} of memory and used ${s((cpu.user + cpu.system) / 1000)} of processor`;
}

const joined = (port: number): Promise<string> =>
  new Promise((resolve, reject) => {
    const headers = { 'content-type': 'application/json' };
    request({ host: '127.0.0.1', port, path: '/sync/join', method: 'POST', headers }, (reply) => {
      reply.resume();
      resolve((reply.headers['set-cookie']?.[0] ?? '').split(';')[0] as string);
    })
      .once('error', reject)
      .end(JSON.stringify({ code: CODE }));
  });

const lineTo = (port: number, cookie: string): WebSocket =>
  new WebSocket(`ws://127.0.0.1:${port}/sync/doc/record`, { headers: { cookie } });

function message(write: (out: encoding.Encoder) => void): Uint8Array {
  const out = encoding.createEncoder();
  encoding.writeVarUint(out, 0);
  write(out);
  return encoding.toUint8Array(out);
}

/** The update in a message; null where it holds none. */
function updateIn(data: Uint8Array): Uint8Array | null {
  const from = decoding.createDecoder(data);
  if (decoding.readVarUint(from) !== 0 || decoding.readVarUint(from) === 0) return null;
  return decoding.readVarUint8Array(from);
}

const sizeOf = (folder: string): number =>
  readdirSync(folder)
    .filter((name) => name.startsWith('site.sqlite'))
    .reduce(
      (sum, name) => sum + (statSync(join(folder, name), { throwIfNoEntry: false })?.size ?? 0),
      0,
    );

function quantile(times: readonly number[], part: number): number {
  const sorted = Float64Array.from(times).sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0;
}

function quantiles(times: readonly number[]): string {
  const at = (part: number): string => quantile(times, part).toFixed(1);
  return `50 % ${at(0.5)} ms, 99 % ${at(0.99)} ms, worst ${at(1)} ms`;
}

const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`;
const s = (time: number): string => `${(time / 1000).toFixed(2)} s`;
