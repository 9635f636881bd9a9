// One document and the phones that share it, by the sync protocol of Yjs. What comes in is looked
// through, kept on disk, and only then handed on and told as kept: the server sends its state vector,
// which is the protocol's own way of saying what it has.

import { projectUpdate, recordUpdate, type UpdateVerdict } from '@shellraise/sync';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { writePermissionDenied } from 'y-protocols/auth';
import * as sync from 'y-protocols/sync';
import * as Y from 'yjs';
import { bucket } from './bucket.ts';
import { BYTES_IN, BYTES_OUT, LOOSE_UPDATES, MESSAGES, SILENCE } from './limits.ts';
import type { DocName, Role, Storage } from './storage.ts';

/** Kinds of message on a socket, as the WebSocket provider of Yjs counts them. */
const SYNC = 0;
const AWARENESS = 1;
const AUTH = 2;
const ASK_AWARENESS = 3;

/** Why a socket is closed. The provider takes 4400 to 4499 for good, 4500 and up for "try later". */
export const CLOSE = {
  malformed: 4400,
  revoked: 4403,
  flood: 4529,
  notKept: 4507,
  ending: 1001,
} as const;

/** The line to one phone. */
export interface Line {
  readonly role: Role;
  send(message: Uint8Array): void;
  close(code: number, reason: string): void;
}

/** A phone in the room. */
export interface Peer {
  /** A message came from it. */
  hear(message: Uint8Array): void;
  leave(): void;
}

/** A document and its phones. */
export interface Room {
  readonly doc: Y.Doc;
  join(line: Line): Peer;
  /** Tells every phone what is kept, and lets go of those that have been silent. */
  beat(now: number): void;
  /** Keeps what has come and not been kept yet. */
  flush(): void;
}

/** Told of what goes wrong on our side: a full disk, a broken database. */
export type OnFault = (error: unknown) => void;

interface Guest extends Peer {
  readonly line: Line;
  heard: number;
  denied: boolean;
}

interface Waiting {
  readonly from: Guest;
  readonly bytes: Uint8Array;
}

const CHECKS: { readonly [N in DocName]: (doc: Y.Doc, update: Uint8Array) => UpdateVerdict } = {
  project: projectUpdate,
  record: recordUpdate,
};

const mayWrite = (role: Role, name: DocName): boolean =>
  role === 'lead' || (role === 'crew' && name === 'record');

/** The room of a document, with what the storage has of it. */
export function openRoom(storage: Storage, name: DocName, onFault: OnFault): Room {
  let doc = load(storage, name);
  const guests = new Set<Guest>();
  let waiting: Waiting[] = [];
  let flushing = false;

  /** All that has come, in one commit; then to the others, and the news that it is kept. */
  const flush = (): void => {
    flushing = false;
    const batch = waiting;
    waiting = [];
    const taken: Waiting[] = [];
    const told = new Set<Guest>();
    for (const one of batch) {
      const verdict = take(one);
      if (verdict === 'take') taken.push(one);
      if (verdict !== 'no') told.add(one.from);
    }
    if (taken.length > 0 && !keep(taken)) return;
    for (const { from, bytes } of taken) {
      const message = framed((out) => sync.writeUpdate(out, bytes));
      for (const guest of guests) if (guest !== from) guest.line.send(message);
    }
    const kept = stateMessage(doc);
    for (const guest of told) if (guests.has(guest)) guest.line.send(kept);
  };

  /** Looks an update through and applies it; nobody sees it before it is kept. `no` gets no answer:
   * told what is kept, a phone would send the same again. */
  const take = ({ from, bytes }: Waiting): 'take' | 'known' | 'gap' | 'no' => {
    const told = CHECKS[name](doc, bytes);
    if (told.verdict === 'refuse') {
      deny(from, told.why);
      from.line.close(CLOSE.malformed, told.why.slice(0, 100));
      from.leave();
      return 'no';
    }
    if (told.verdict !== 'known' && !mayWrite(from.line.role, name)) {
      deny(from, `a ${from.line.role} may not change the ${name}`);
      return 'no';
    }
    if (told.verdict === 'take') Y.applyUpdate(doc, bytes);
    return told.verdict;
  };

  /** False where it could not be kept: then the document is as the disk has it, and phones come again. */
  const keep = (taken: readonly Waiting[]): boolean => {
    try {
      storage.append(taken.map(({ bytes }) => ({ doc: name, bytes })));
      return true;
    } catch (error) {
      onFault(error);
      doc.destroy();
      doc = load(storage, name);
      for (const guest of [...guests]) {
        guest.line.close(CLOSE.notKept, 'it could not be kept: see the laptop');
        guest.leave();
      }
      return false;
    }
  };

  const deny = (guest: Guest, why: string): void => {
    if (guest.denied) return;
    guest.denied = true;
    const out = encoding.createEncoder();
    encoding.writeVarUint(out, AUTH);
    writePermissionDenied(out, why);
    guest.line.send(encoding.toUint8Array(out));
  };

  const join = (line: Line): Peer => {
    const [messages, bytesIn, bytesOut] = [MESSAGES, BYTES_IN, BYTES_OUT].map((flow) =>
      bucket(flow),
    );
    const guest: Guest = {
      line,
      heard: performance.now(),
      denied: false,
      hear: (message) => {
        if (!guests.has(guest)) return;
        guest.heard = performance.now();
        if (!messages?.(1) || !bytesIn?.(message.length))
          return end(CLOSE.flood, 'too much at once');
        const read = readMessage(message);
        if (read === null) return end(CLOSE.malformed, 'a message that can not be read');
        if (read.ask) {
          const answer = answerTo(doc, read.ask);
          if (answer === null) return end(CLOSE.malformed, 'a state that can not be read');
          if (!bytesOut?.(answer.length)) return end(CLOSE.flood, 'too much asked for');
          line.send(answer);
        }
        if (read.update && !isEmpty(read.update)) {
          waiting.push({ from: guest, bytes: read.update });
          if (!flushing) setImmediate(flush);
          flushing = true;
        }
      },
      leave: () => void guests.delete(guest),
    };
    const end = (code: number, reason: string): void => {
      guest.leave();
      line.close(code, reason);
    };
    guests.add(guest);
    line.send(stateMessage(doc));
    return guest;
  };

  return {
    get doc() {
      return doc;
    },
    join,
    flush,
    beat: (now) => {
      const state = stateMessage(doc);
      for (const guest of [...guests])
        if (now - guest.heard > SILENCE) {
          guest.leave();
          guest.line.close(CLOSE.ending, 'silent for too long');
        } else guest.line.send(state);
    },
  };
}

/** The document as the disk has it; many updates are put together there, so that it opens fast. */
function load(storage: Storage, name: DocName): Y.Doc {
  const doc = new Y.Doc();
  const updates = storage.updates(name);
  doc.transact(() => {
    for (const bytes of updates) Y.applyUpdate(doc, bytes);
  });
  if (updates.length > LOOSE_UPDATES) storage.replace(name, Y.encodeStateAsUpdate(doc));
  return doc;
}

/** What a message holds: a state vector to be answered, an update, neither; null where it is none. */
function readMessage(message: Uint8Array): { ask?: Uint8Array; update?: Uint8Array } | null {
  try {
    const from = decoding.createDecoder(message);
    const kind = decoding.readVarUint(from);
    // Who looks at what is nobody's business here: names stay on the site.
    if (kind === AWARENESS || kind === ASK_AWARENESS) return {};
    if (kind !== SYNC) return null;
    const step = decoding.readVarUint(from);
    const bytes = decoding.readVarUint8Array(from);
    if (step === sync.messageYjsSyncStep1) return { ask: bytes };
    return step === sync.messageYjsSyncStep2 || step === sync.messageYjsUpdate
      ? { update: bytes.slice() }
      : null;
  } catch {
    return null;
  }
}

function answerTo(doc: Y.Doc, state: Uint8Array): Uint8Array | null {
  try {
    return framed((out) => sync.writeSyncStep2(out, doc, state));
  } catch {
    return null;
  }
}

const stateMessage = (doc: Y.Doc): Uint8Array => framed((out) => sync.writeSyncStep1(out, doc));

/** An update without structs and without deletions: the answer of one who has nothing new. */
const isEmpty = (update: Uint8Array): boolean =>
  update.length === 2 && update[0] === 0 && update[1] === 0;

function framed(write: (out: encoding.Encoder) => void): Uint8Array {
  const out = encoding.createEncoder();
  encoding.writeVarUint(out, SYNC);
  write(out);
  return encoding.toUint8Array(out);
}
