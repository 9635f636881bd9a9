import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Entry } from '@shellraise/core';
import { addToDoc, listName } from '@shellraise/sync';
import * as encoding from 'lib0/encoding';
import { describe, expect, it, onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { writeUpdate } from 'y-protocols/sync';
import * as Y from 'yjs';
import { bucket, buckets } from '../../src/sync/bucket.ts';
import { readCode } from '../../src/sync/codes.ts';
import { MESSAGES } from '../../src/sync/limits.ts';
import { foreign } from '../../src/sync/sites.ts';
import { ask, joinWith, recordPhone, serve, until } from './phones.ts';

/** A socket that says whatever it is told, and how it ended. */
function rawLine(port: number, headers: Record<string, string>, path = '/sync/doc/record') {
  const socket = new WebSocket(`ws://127.0.0.1:${port}${path}`, { headers });
  onTestFinished(() => socket.terminate());
  socket.on('error', () => undefined);
  const ended = new Promise<number>((resolve) => {
    socket.once('close', (code) => resolve(code));
    socket.once('unexpected-response', (_, reply) => resolve(reply.statusCode ?? 0));
  });
  const opened = new Promise<void>((resolve) => socket.once('open', () => resolve()));
  return { socket, ended, opened };
}

/** A sync message with an update. */
function message(update: Uint8Array): Uint8Array {
  const out = encoding.createEncoder();
  encoding.writeVarUint(out, 0);
  writeUpdate(out, update);
  return encoding.toUint8Array(out);
}

const made = (change: (doc: Y.Doc) => void): Uint8Array => {
  const doc = new Y.Doc();
  change(doc);
  return Y.encodeStateAsUpdate(doc);
};

const note = (seq: number, more: object = {}): Entry =>
  ({
    writer: 'eve00000',
    seq,
    order: seq + 1,
    at: Date.now(),
    by: 'Eve',
    what: { kind: 'note', text: 'x' },
    ...more,
  }) as Entry;

async function site() {
  const served = await serve();
  const codes = await served.codes();
  const crew = await joinWith(served.port, codes.crew);
  const honest = recordPhone(served.port, crew, 'Ada');
  await until(() => honest.provider.synced, 'an honest phone is in');
  /** The honest phone still gets through, and the record holds what it alone has said. */
  const unharmed = async (): Promise<void> => {
    honest.say();
    await until(() => honest.unsaved() === 0, 'an honest phone is heard');
    expect(honest.record.log.entries().every(({ by }) => by === 'Ada')).toBe(true);
    expect(honest.record.refused()).toBe(0);
  };
  return { ...served, all: codes, crew, honest, unharmed };
}

describe('joining', () => {
  it('is refused for a wrong code, slowed down, and opens nothing', async () => {
    const { port, all } = await site();
    const join = (code: unknown) => ask(port, 'POST', '/sync/join', { body: { code } });
    const wrong = [
      '',
      'AAAAAAAAAA',
      all.crew.slice(1),
      7,
      null,
      { code: all.crew },
      'x'.repeat(500),
    ];
    const statuses: number[] = [];
    for (const code of wrong) statuses.push((await join(code)).status);
    expect(statuses).toEqual(wrong.map(() => 403));
    for (let i = 0; i < 3; i++) statuses.push((await join('AAAAAAAAAA')).status);
    expect(statuses.slice(-1)).toEqual([429]);
    expect((await join(all.crew)).status).toBe(429);
  });

  it('reads a code however it is typed, and nothing else', () => {
    expect(readCode('abcde-fghjk')).toBe('ABCDEFGHJK');
    expect(readCode(' ABCDE FGHJK ')).toBe('ABCDEFGHJK');
    for (const typed of ['ABCDEFGHJ', 'ABCDEFGHJKL', 'ABCDEFGH1K', "' OR 1=1--", undefined, 1])
      expect(readCode(typed)).toBeNull();
  });

  it('is asked for: without a cookie, or with a made-up one, no line opens', async () => {
    const { port, unharmed } = await site();
    for (const cookie of ['', 'shellraise=', `shellraise=${'A'.repeat(43)}`, 'shellraise=../../x'])
      expect(await rawLine(port, { cookie }).ended).toBe(401);
    expect((await ask(port, 'GET', '/sync/codes')).status).toBe(401);
    await unharmed();
  });
});

describe('another site', () => {
  it('cannot join, read or write by way of somebody’s browser', async () => {
    const { port, crew, all, unharmed } = await site();
    const host = `127.0.0.1:${port}`;
    const tries: Record<string, string>[] = [
      { origin: 'http://evil.example' },
      { origin: 'null' },
      { origin: `http://127.0.0.1:${port + 1}` },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
      { host: `evil.example:${port}` },
      { host: '127.0.0.1.evil.example' },
    ];
    for (const headers of tries) {
      const body = { code: all.lead };
      const said = JSON.stringify(headers);
      expect(
        (await ask(port, 'POST', '/sync/join', { body, headers })).status,
        said,
      ).toBeGreaterThanOrEqual(400);
      expect(
        (await ask(port, 'GET', '/sync/who', { headers: { cookie: crew, ...headers } })).status,
        said,
      ).toBeGreaterThanOrEqual(400);
      expect(await rawLine(port, { cookie: crew, ...headers }).ended, said).toBeGreaterThanOrEqual(
        400,
      );
    }
    const own = { cookie: crew, origin: `http://${host}`, 'sec-fetch-site': 'same-origin' };
    expect((await ask(port, 'GET', '/sync/who', { headers: own })).status).toBe(200);
    await unharmed();
  });

  it('is told from ours by host and origin', () => {
    expect(foreign({ host: 'localhost:4180', origin: 'http://localhost:4180' })).toBeNull();
    expect(foreign({ host: '[::1]:4180' })).toBeNull();
    expect(foreign({ host: 'localhost', origin: 'https://localhost' })).toBeNull();
    expect(foreign({})).toContain('no host');
    expect(foreign({ host: 'localhost@evil.example' })).toContain('no host');
    expect(foreign({ host: 'localhost', origin: 'http://localhost.evil.example' })).toContain(
      'evil',
    );
  });
});

describe('a phone that sends what is no entry', () => {
  it('is cut off, nothing of it is kept, and others are unharmed', async () => {
    const { port, crew, data, honest, unharmed, server } = await site();
    honest.say();
    await until(() => honest.unsaved() === 0, 'something is there');
    const whole = Y.encodeStateAsUpdate(honest.doc);
    const deleting = new Y.Doc();
    Y.applyUpdate(deleting, whole);
    deleting.getArray(listName(honest.doc.clientID)).delete(0, 1);
    const bad: Uint8Array[] = [
      Uint8Array.of(),
      Uint8Array.of(0),
      Uint8Array.of(9, 9, 9),
      Uint8Array.of(0, 7, 1, 1),
      new Uint8Array(5000).fill(255),
      message(new Uint8Array(300).fill(255)),
      message(Y.encodeStateAsUpdate(deleting)),
      message(made((doc) => doc.getArray(listName(doc.clientID)).push([{ some: 'thing' }]))),
      message(made((doc) => doc.getArray(listName(doc.clientID)).push(['x'.repeat(100_000)]))),
      message(made((doc) => addToDoc(doc, [note(0, { order: 2 ** 39 })]))),
      message(made((doc) => addToDoc(doc, [note(0, { by: 'x'.repeat(1000) })]))),
      message(made((doc) => addToDoc(doc, [note(0), note(1, { what: { kind: 'wiped' } })]))),
      message(made((doc) => doc.getMap('project').set('title', 'x'))),
      message(made((doc) => doc.getArray(listName(honest.doc.clientID)).push([note(0)]))),
      message(made((doc) => doc.getArray(listName(doc.clientID)).push([new Y.Text('x')]))),
    ];
    for (const [i, bytes] of bad.entries()) {
      const line = rawLine(port, { cookie: crew });
      await line.opened;
      line.socket.send(bytes);
      expect(await line.ended, `try ${i}`).toBe(4400);
    }
    const text = rawLine(port, { cookie: crew });
    await text.opened;
    text.socket.send('no bytes');
    expect(await text.ended).toBe(4400);
    await unharmed();
    await server.close();
    const kept = readFileSync(join(data, 'site.sqlite'));
    expect(['Ada', 'Eve'].map((by) => kept.includes(by))).toEqual([true, false]);
  });

  it('cannot reach a file or another document by its path', async () => {
    const { port, crew, unharmed } = await site();
    const paths = [
      '/sync/doc/other',
      '/sync/doc/..%2f..%2fsite.sqlite',
      '/sync/doc/__proto__',
      '/sync/doc/',
    ];
    for (const path of paths)
      expect(await rawLine(port, { cookie: crew }, path).ended, path).toBe(404);
    for (const path of [
      '/site.sqlite',
      '/../site.sqlite',
      '/sync/site.sqlite',
      '/sync/%2e%2e/site.sqlite',
    ])
      expect((await ask(port, 'GET', path)).status, path).toBeGreaterThanOrEqual(400);
    await unharmed();
  });

  it('that sends more than any message may hold is cut off before it is read', async () => {
    const { port, crew, unharmed } = await site();
    const line = rawLine(port, { cookie: crew });
    await line.opened;
    line.socket.send(new Uint8Array(65 * 1024 * 1024));
    expect([1006, 1009]).toContain(await line.ended);
    await unharmed();
  });

  it('that floods is cut off and told to come later, and others are heard meanwhile', async () => {
    const { port, crew, unharmed } = await site();
    const line = rawLine(port, { cookie: crew });
    await line.opened;
    const nothing = message(Uint8Array.of(0, 0));
    for (let i = 0; i < MESSAGES.burst * 2; i++) line.socket.send(nothing);
    expect(await line.ended).toBe(4529);
    await unharmed();
  });

  it('that opens line after line gets only so many', async () => {
    const { port, crew, unharmed } = await site();
    const lines = Array.from({ length: 20 }, () => rawLine(port, { cookie: crew }));
    const refused = await Promise.all(
      lines.map(({ opened, ended }) => Promise.race([opened.then(() => 0), ended])),
    );
    expect(refused.filter((code) => code === 503).length).toBeGreaterThanOrEqual(8);
    await unharmed();
  });
});

describe('a bucket', () => {
  it('gives so much at once, and so much a second after', () => {
    const take = bucket({ burst: 3, perSecond: 2 });
    expect([take(2, 0), take(2, 0), take(1, 0), take(1, 0)]).toEqual([true, false, true, false]);
    expect([take(2, 999), take(2, 1000), take(1, 900)]).toEqual([false, true, false]);
    expect([take(4, 1e9), take(3, 1e9)]).toEqual([false, true]);
  });

  it('for each of endlessly many keys takes no endless memory', () => {
    const take = buckets({ burst: 1, perSecond: 0 }, 2);
    expect([take('a', 1), take('a', 1), take('b', 1), take('c', 1), take('a', 1)]).toEqual([
      true,
      false,
      true,
      true,
      true,
    ]);
  });
});
