// Devices as a browser has them, against a real server on loopback: storage of their own that outlives a
// page, cookies, sockets that carry them.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { listen } from '@shellraise/server';
import { onTestFinished } from 'vitest';
import { WebSocket as NodeSocket } from 'ws';
import { openRecord, type RecordSession } from '../../src/record/record-session.ts';
import type { App } from '../../src/state/app-state.ts';
import { memoryStore } from '../../src/store/memory-store.ts';
import { openLines } from '../../src/sync/lines.ts';
import { createSite, type SiteNow, type SiteSession } from '../../src/sync/site.ts';
import { type Role, siteCalls } from '../../src/sync/site-calls.ts';
import { mayChange, siteLinks } from '../../src/sync/site-links.ts';
import { updateMemory } from '../record/update-memory.ts';
import { appWith, pileOf } from '../state/notation.ts';

/** A folder that goes with the test. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-app-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A laptop that shares a folder, on a port of its own unless one is given. */
export async function laptop(data: string | null = emptyFolder(), port = 0) {
  const root = emptyFolder();
  mkdirSync(join(root, 'assets'));
  writeFileSync(join(root, 'index.html'), '<!doctype html><title>app</title>');
  const up = await listen({ root, host: '127.0.0.1', port, ...(data === null ? {} : { data }) });
  let ended = false;
  const end = async (): Promise<void> => {
    if (!ended) await up.server.close();
    ended = true;
  };
  onTestFinished(end);
  const codes = async (): Promise<Record<Role, string>> => {
    const rows = (await up.server.joinCodes?.()) ?? [];
    return Object.fromEntries(rows.map(({ role, code }) => [role, code])) as never;
  };
  return { port: up.port, data, end, codes };
}

/** A page that is open on a device. */
export interface OpenPage {
  readonly app: App;
  readonly site: SiteSession;
  readonly now: () => SiteNow;
  /** The record of the project on show. */
  readonly record: () => RecordSession;
  readonly refused: () => number;
  readonly close: () => void;
}

/** A browser at a port: what it keeps outlives its pages. */
export function browser(port: number, title = 'the demo') {
  const texts = new Map<string, string>();
  const storage = {
    getItem: (key: string) => texts.get(key) ?? null,
    setItem: (key: string, text: string) => void texts.set(key, text),
  };
  const updates = updateMemory();
  const projects = memoryStore();
  let cookie = '';
  let writers = 0;
  const ask: typeof fetch = async (input, init) => {
    const reply = await fetch(input, { ...init, headers: { ...init?.headers, cookie } });
    cookie = reply.headers.getSetCookie()[0]?.split(';')[0] ?? cookie;
    return reply;
  };
  const Socket = class extends NodeSocket {
    constructor(address: string, protocols: string[]) {
      super(address, protocols, { headers: { cookie } });
    }
  };
  const open = (): OpenPage => {
    const links = siteLinks(() => storage);
    const sessions = new Map<string, RecordSession>();
    let refused = 0;
    const { app } = appWith(pileOf(title, [1, 1, 1]), projects, {
      newId: () => `own${texts.size}x${writers++}`,
      mayChange: (id) => mayChange(links.all(), id),
      refused: () => {
        refused++;
      },
    });
    const recordOf = (project: string): RecordSession => {
      const there = sessions.get(project);
      if (there) return there;
      const session = openRecord(project, {
        updates: Promise.resolve(updates.store),
        channel: null,
        now: () => Date.now(),
        newWriter: () =>
          `w${port}${title.toLowerCase().replace(/\W/g, '')}${writers++}`.padEnd(10, '0'),
      });
      sessions.set(project, session);
      return session;
    };
    const site = createSite({
      app,
      links,
      calls: siteCalls(`http://127.0.0.1:${port}/`, ask),
      label: 'others',
      pause: 30,
      carry: async () => undefined,
      unopened: () => undefined,
      open: async (link, withRecord, told) => {
        const record = withRecord && link.project ? recordOf(link.project) : null;
        record?.let(link.role !== 'looker');
        const outside = {
          server: `ws://127.0.0.1:${port}/sync/doc`,
          updates: async () => updates.store,
          channel: () => null,
          storage: () => storage,
          Socket: Socket as never,
          longestPause: 60,
        };
        return openLines(link.site, record, outside, told);
      },
    });
    const close = (): void => {
      site.stop();
      for (const session of sessions.values()) session.close();
    };
    onTestFinished(close);
    return {
      app,
      site,
      now: site.store.getState,
      record: () => recordOf(app.state.getState().projectId),
      refused: () => refused,
      close,
    };
  };
  return { open, projects, texts };
}

/** Waits until something is so; fails after some seconds. */
export async function until(is: () => boolean, what: string, seconds = 15): Promise<void> {
  const end = performance.now() + seconds * 1000;
  while (!is()) {
    if (performance.now() > end) throw new Error(`waited ${seconds} s until ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}
