// Phones for tests: the sync provider that a browser would run, over real sockets, with the cookie that
// joining gave.

import { request } from 'node:http';
import type { Entry, RecordLog, What } from '@shellraise/core';
import { followKept, type SharedRecord, sharedRecord } from '@shellraise/sync';
import { onTestFinished } from 'vitest';
import { WebSocket } from 'ws';
import { WebsocketProvider } from 'y-websocket';
import * as Y from 'yjs';
import { type Listening, listen } from '../../src/listening.ts';
import type { Role } from '../../src/sync/storage.ts';
import { builtApp, emptyFolder } from '../built.ts';

/** A server on a folder, ended with the test. */
export async function serve(
  data = emptyFolder(),
  onFault: (error: unknown) => void = () => undefined,
): Promise<Listening & { readonly data: string; codes: () => Promise<Record<Role, string>> }> {
  const listening = await listen({ root: builtApp(), host: '127.0.0.1', port: 0, data, onFault });
  onTestFinished(() => listening.server.close());
  return {
    ...listening,
    data,
    codes: async () => {
      const rows = (await listening.server.joinCodes?.()) ?? [];
      return Object.fromEntries(rows.map(({ role, code }) => [role, code])) as Record<Role, string>;
    },
  };
}

export interface Answer {
  readonly status: number;
  readonly text: string;
  readonly cookie: string;
}

/** A plain request, with any headers. */
export function ask(
  port: number,
  method: string,
  path: string,
  { body, headers = {} }: { body?: unknown; headers?: Record<string, string> } = {},
): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const text = body === undefined ? '' : JSON.stringify(body);
    const asked = request(
      {
        host: '127.0.0.1',
        port,
        method,
        path,
        headers: { ...(text && { 'content-type': 'application/json' }), ...headers },
      },
      (reply) => {
        let got = '';
        reply.on('data', (data: Buffer) => {
          got += data;
        });
        reply.on('end', () => {
          const cookie = (reply.headers['set-cookie']?.[0] ?? '').split(';')[0] as string;
          resolve({ status: reply.statusCode ?? 0, text: got, cookie });
        });
      },
    );
    asked.once('error', reject);
    asked.end(text);
  });
}

/** Joins; the cookie of the session. */
export async function joinWith(port: number, code: string): Promise<string> {
  const { status, cookie, text } = await ask(port, 'POST', '/sync/join', { body: { code } });
  if (status !== 200) throw new Error(`${status} ${text}`);
  return cookie;
}

/** A device that shares a document. */
export interface Device {
  readonly doc: Y.Doc;
  readonly provider: WebsocketProvider;
  /** Changes that the server has not told to be on disk. */
  readonly unsaved: () => number;
  readonly connect: (port: number) => void;
  readonly stop: () => void;
}

/** A device on a document, connected to a port. */
export function device(port: number, cookie: string, name = 'record', doc = new Y.Doc()): Device {
  const Socket = class extends WebSocket {
    constructor(address: string, protocols: string | string[]) {
      super(address, protocols, { headers: { cookie } });
    }
  };
  const provider = new WebsocketProvider(addressOf(port), name, doc, {
    WebSocketPolyfill: Socket as never,
    disableBc: true,
    maxBackoffTime: 100,
  });
  const kept = followKept(provider as never);
  const stop = (): void => provider.destroy();
  return {
    doc,
    provider,
    unsaved: kept.waiting,
    connect: (to) => {
      provider.disconnect();
      (provider as { serverUrl: string }).serverUrl = addressOf(to);
      provider.connect();
    },
    stop,
  };
}

const addressOf = (port: number): string => `ws://127.0.0.1:${port}/sync/doc`;

/** A phone that records. */
export interface RecordPhone extends Device {
  readonly record: SharedRecord;
  readonly say: (what?: What) => Entry;
}

/** A phone on the record, ended with the test. */
export function recordPhone(
  port: number,
  cookie: string,
  by: string,
  doc = new Y.Doc(),
): RecordPhone {
  const own = device(port, cookie, 'record', doc);
  const record = sharedRecord(doc);
  const writer = `${by.toLowerCase()}${Math.floor(doc.clientID).toString(36)}00000000`.slice(0, 20);
  onTestFinished(own.stop);
  return {
    ...own,
    record,
    say: (what = { kind: 'note', text: `by ${by}` }) => {
      const entry = record.log.write(what, { writer, by, at: Date.now() });
      record.bring([entry]);
      return entry;
    },
  };
}

/** Waits until something is so; fails after some seconds. */
export async function until(
  is: () => boolean | Promise<boolean>,
  what: string,
  seconds = 15,
): Promise<void> {
  const end = performance.now() + seconds * 1000;
  while (!(await is())) {
    if (performance.now() > end) throw new Error(`waited ${seconds} s until ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}

/** The record that the server's folder would open to. */
export const logOf = (doc: Y.Doc): RecordLog => {
  const shared = sharedRecord(doc);
  shared.stop();
  return shared.log;
};
