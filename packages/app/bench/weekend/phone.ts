// A simulated phone in a process of its own: the app's own record, documents and lines to the laptop, with
// sockets over https, and no screen. What it keeps lies in a folder. Arguments: the folder, the phone's
// number, how often it was started, the laptop's port.

import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { request } from 'node:https';
import {
  type EntryId,
  entryIdOf,
  type Project,
  readProject,
  readRecordFile,
  recordState,
  seededRandom,
  type What,
  writeProject,
  writeRecordFile,
} from '@shellraise/core';
import { WebSocket as NodeSocket } from 'ws';
import { type Noting, nextOf, type Thing } from '../../src/record/next-state.ts';
import { bringPhotos, notedPhotos, photoTag } from '../../src/record/note-photos.ts';
import { opened, openRecord, type RecordSession } from '../../src/record/record-session.ts';
import { openLines, type SiteLines } from '../../src/sync/lines.ts';
import { siteCalls } from '../../src/sync/site-calls.ts';
import { diskIn } from './disk.ts';
import { plan as planOf } from './plan.ts';
import { answerCalls } from './remote.ts';
import { type Weight, weigh } from './weight.ts';

/** What a phone knows and holds. */
export interface Look {
  /** Whether both its lines are up. */
  readonly on: boolean;
  /** Changes not known to be on the laptop, of record and project; updates not on its own disk. */
  readonly waiting: number;
  readonly unsaved: number;
  readonly entries: number;
  readonly questions: number;
  /** Of all entries, questions and states; of the project. */
  readonly record: string;
  readonly project: string;
}

/** What a phone does when told to; `at` is the true time, which its own clock gets wrong. */
export interface PhoneCalls {
  /** Joins with a code; what it was answered. */
  join(code: string): Promise<string>;
  /** Opens the page, with or without a network. */
  open(network: boolean, skew: number): Promise<void>;
  close(): void;
  network(on: boolean): void;
  say(what: What, at: number): EntryId;
  /** Taps on a thing of the plan: says what comes next of it, or nothing. */
  tap(noting: Noting, thing: Thing, at: number): EntryId | null;
  /** Takes back an entry of the record, counted from its start. */
  undo(nth: number, at: number): EntryId | null;
  /** Says what is so where others said different things. */
  settle(at: number): EntryId | null;
  /** A note with a photo of so many bytes. */
  photo(seed: number, bytes: number, at: number): EntryId;
  /** Brings its photos to the laptop and gets the newest that it has not; whether all are there. */
  photos(): Promise<boolean>;
  /** A lead writes what a panel measures into the project. */
  write(row: number, side: number): boolean;
  put(project: Project): void;
  /** Saves record and project as files on a stick; reads one: how many entries were new. */
  toStick(folder: string): void;
  fromStick(folder: string): number;
  /** All entries that it was told to be kept on the laptop; none while something waits. */
  told(): readonly EntryId[];
  look(): Look;
  weigh(): Weight;
}

const [folder = '', number = '', life = '', port = ''] = process.argv.slice(2);
const name = `P${number}`;
const disk = diskIn(folder);
const plan = planOf();
const photoNotes = new Set<string>();

interface Page {
  readonly record: RecordSession;
  readonly lines: SiteLines;
  readonly skew: number;
}

let page: Page | null = null;
let openings = 0;
let clock = 0;

const shown = (): Page => {
  if (!page) throw new Error(`${name} is closed`);
  return page;
};

/** Phones have addresses of their own, where this machine's loopback has more than one. */
const localAddress = process.platform === 'linux' ? `127.0.0.${10 + Number(number)}` : undefined;

/** As the browser's `fetch`, with the cookies that its disk has. */
const ask: typeof fetch = async (input, init) => {
  const body =
    init?.body instanceof Blob ? new Uint8Array(await init.body.arrayBuffer()) : init?.body;
  const cookie = disk.texts.getItem('cookie') ?? '';
  return new Promise((resolve, reject) => {
    const headers = { ...(init?.headers as Record<string, string>), cookie };
    const asked = request(
      `${input}`,
      { method: init?.method ?? 'GET', headers, localAddress, agent: false },
      (reply) => {
        const parts: Buffer[] = [];
        reply.on('data', (part: Buffer) => parts.push(part));
        reply.on('end', () => {
          const own = reply.headers['set-cookie']?.[0]?.split(';')[0];
          if (own) disk.texts.setItem('cookie', own);
          const status = reply.statusCode ?? 500;
          const bytes = status === 204 ? null : new Uint8Array(Buffer.concat(parts));
          const type = reply.headers['content-type'] ?? '';
          resolve(new Response(bytes, { status, headers: { 'content-type': type } }));
        });
      },
    );
    asked.once('error', reject);
    asked.end(body as Uint8Array | string | undefined);
  });
};

const site = siteCalls(`https://127.0.0.1:${port}/`, ask);

const Socket = class extends NodeSocket {
  constructor(address: string, protocols: string[]) {
    const headers = { cookie: disk.texts.getItem('cookie') ?? '' };
    super(address, protocols, { headers, localAddress });
  }
};

/** The page's own words for what is shown: entries, questions and the state of every thing. */
const textOf = ({ log }: RecordSession): string =>
  JSON.stringify([log.entries(), recordState(log, plan), log.clashes()]);

const hashOf = (bytes: string | Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex');

function say(what: What, at: number): EntryId {
  const { record, skew } = shown();
  clock = at + skew;
  return entryIdOf(record.say(what, name));
}

/** A JPEG of so many bytes that shows nothing. */
function picture(seed: number, bytes: number): Uint8Array {
  const random = seededRandom(seed);
  const segment = (mark: number, body: readonly number[]): number[] => [
    ...[0xff, mark, 0, body.length + 2],
    ...body,
  ];
  const before = [
    ...[0xff, 0xd8],
    ...segment(0xdb, [0, ...Array.from({ length: 64 }, () => 1)]),
    ...segment(0xc0, [8, 3, 192, 5, 0, 1, 1, 0x11, 0]),
    ...segment(0xda, [1, 1, 0, 0, 63, 0]),
  ];
  const all = new Uint8Array(bytes);
  for (let i = 0; i < bytes; i++) all[i] = random.below(255);
  all.set(before);
  all.set([0xff, 0xd9], bytes - 2);
  return all;
}

const calls: PhoneCalls = {
  join: async (code) => {
    const answer = await site.join(code);
    if (typeof answer === 'string') return answer;
    disk.texts.setItem('site', answer.site);
    return answer.role;
  },
  open: async (network, skew) => {
    const project = disk.texts.getItem('site') ?? '';
    const record = openRecord(`of ${project}`, {
      ...{ updates: Promise.resolve(disk.updates), channel: null },
      now: () => clock,
      newWriter: () => `p${number}l${life}o${openings++}`.padEnd(12, '0'),
    });
    await opened(record);
    const outside = {
      ...{ server: `wss://127.0.0.1:${port}/sync/doc`, channel: () => null },
      ...{ updates: async () => disk.updates, storage: () => disk.texts },
      ...{ Socket: Socket as never, longestPause: 500 },
    };
    const told = { changed: () => undefined, others: () => undefined };
    page = { record, lines: openLines(project, record, outside, told), skew };
    if (network) page.lines.connect();
  },
  close: () => {
    page?.lines.stop();
    page?.record.close();
    page = null;
  },
  network: (on) => (on ? shown().lines.connect() : shown().lines.disconnect()),
  say,
  tap: (noting, thing, at) => {
    const next = nextOf(plan, recordState(shown().record.log, plan), noting, thing);
    return typeof next === 'string' ? null : say(next, at);
  },
  undo: (nth, at) => {
    const { record, skew } = shown();
    const all = record.log.entries();
    const entry = all[nth % Math.max(1, all.length)];
    clock = at + skew;
    return entry ? entryIdOf(record.takeBack(entry, name)) : null;
  },
  settle: (at) => {
    const { log } = shown().record;
    const subject = log.questions()[0];
    const state = subject === undefined ? null : log.stands(subject);
    return state ? say(state.entry.what, at) : null;
  },
  photo: (seed, bytes, at) => {
    const photo = picture(seed, bytes);
    const hash = hashOf(photo);
    disk.keepPhoto(hash, photo);
    return say({ kind: 'note', text: 'As it is.', photo: { hash, type: 'image/jpeg', bytes } }, at);
  },
  photos: async () => {
    const hashes = notedPhotos(shown().record.log);
    const here = {
      photosOf: async (_: string, tag: string) => {
        const bytes = disk.photo(tag.slice(photoTag('').length));
        return bytes ? [{ picture: new Blob([bytes], { type: 'image/jpeg' }) }] : [];
      },
      keepPhoto: async () => true,
    };
    const all = await bringPhotos(hashes, photoNotes, '', here, site);
    const other = hashes.find((hash) => disk.photo(hash) === null);
    const got = other === undefined ? null : await site.photo(other);
    if (got?.ok && other !== undefined) {
      const bytes = new Uint8Array(await got.value.arrayBuffer());
      if (hashOf(bytes) !== other) throw new Error('another photo came than was asked for');
      disk.keepPhoto(other, bytes);
    }
    return all;
  },
  write: (row, side) => {
    const { lines } = shown();
    const shared = lines.shared();
    if (shared.is !== 'there') return false;
    const { project } = shared;
    const readings = (project.pile?.readings ?? []).map((one, i) =>
      i === row ? { ...one, sides: [side, ...one.sides.slice(1)], by: name } : one,
    );
    lines.write({ ...project, pile: { ...project.pile, readings } } as Project);
    return true;
  },
  put: (project) => shown().lines.write(project),
  toStick: (to) => {
    const { record, lines } = shown();
    writeFileSync(`${to}/record`, writeRecordFile(record.log.entries()));
    const shared = lines.shared();
    writeFileSync(`${to}/project`, shared.is === 'there' ? writeProject(shared.project) : '');
  },
  fromStick: (from) => {
    const { entries, faults } = readRecordFile(readFileSync(`${from}/record`, 'utf8'));
    if (faults.length > 0) throw new Error(JSON.stringify(faults[0]));
    const project = readProject(readFileSync(`${from}/project`, 'utf8'));
    if (!project.ok) throw new Error(JSON.stringify(project.faults[0]));
    return shown().record.bring(entries);
  },
  told: () => {
    const { record, lines } = shown();
    const line = lines.record();
    return line?.on && line.waiting === 0 ? record.log.entries().map(entryIdOf) : [];
  },
  look: () => {
    const { record, lines } = shown();
    const [line, project, shared] = [lines.record(), lines.project(), lines.shared()];
    return {
      on: (line?.on ?? false) && project.on,
      waiting: (line?.waiting ?? 0) + project.waiting,
      unsaved: record.store.getState().unsaved,
      entries: record.log.size,
      questions: record.log.questions().length,
      record: hashOf(textOf(record)),
      project: shared.is === 'there' ? hashOf(writeProject(shared.project)) : shared.is,
    };
  },
  weigh: () => weigh(page?.record.log.size ?? 0),
};
answerCalls({ ...calls });
