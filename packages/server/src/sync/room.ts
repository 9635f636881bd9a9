// One document and the phones that share it, by the sync protocol of Yjs. What comes in is looked
// through, kept on disk, and only then handed on and told as kept: the server sends its state vector,
// which is the protocol's own way of saying what it has. One thing is done at a time: a batch is looked
// through against all that is kept, whoever's server kept it; while it is on its way to the disk nobody is
// shown any of it.

import { projectUpdate, recordUpdate, type UpdateVerdict } from '@shellraise/sync';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { writePermissionDenied } from 'y-protocols/auth';
import * as sync from 'y-protocols/sync';
import * as Y from 'yjs';
import { type Bell, noBell } from './bell.ts';
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
  /** Keeps what has come and not been kept yet; done when nothing waits. */
  flush(): Promise<void>;
  /** Others may have kept something: reads it. */
  look(): void;
  /** Keeps what has come; nothing is tried after. */
  close(): Promise<void>;
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

/** How long until a storage that failed is tried again, milliseconds. */
const AGAIN = 500;

/** The room of a document, with what the storage has of it; `bell` tells other servers of what is kept. */
export async function openRoom(
  storage: Storage,
  name: DocName,
  onFault: OnFault,
  bell: Bell = noBell,
): Promise<Room> {
  let { doc, upTo } = await load(storage, name);
  /** What is told as kept. */
  let kept = stateMessage(doc);
  const guests = new Set<Guest>();
  let waiting: Waiting[] = [];
  /** Phones that ask for what they lack while the document holds what is not kept yet. */
  let asking: (() => void)[] = [];
  let isAhead = false;
  /** The storage failed: nobody is let in before it is read again. */
  let isBroken = false;
  let isBehind = false;
  let isClosed = false;
  let working: Promise<void> | null = null;
  let planned = false;

  const plan = (): void => {
    if (planned) return;
    planned = true;
    setImmediate(() => {
      planned = false;
      void flush();
    });
  };

  const flush = (): Promise<void> => {
    working ??= work().finally(() => {
      working = null;
    });
    return working;
  };

  const work = async (): Promise<void> => {
    while (!isBroken && (waiting.length > 0 || isBehind)) {
      try {
        await turn();
      } catch (error) {
        onFault(error);
        fail();
      }
    }
  };

  /** All that has come, in one commit; then to the others, and the news that it is kept. */
  const turn = async (): Promise<void> => {
    const batch = waiting;
    waiting = [];
    isBehind = false;
    const taken: Waiting[] = [];
    const told = new Set<Guest>();
    let others: readonly Uint8Array[] = [];
    const hear = (came: readonly Uint8Array[]): readonly Uint8Array[] => {
      others = came;
      isAhead = true;
      for (const bytes of came) Y.applyUpdate(doc, bytes);
      for (const one of batch) {
        const verdict = take(one);
        if (verdict === 'take') taken.push(one);
        if (verdict !== 'no') told.add(one.from);
      }
      return taken.map(({ bytes }) => bytes);
    };
    if (batch.length > 0) upTo = await storage.turn(name, upTo, hear);
    else {
      const rows = await storage.updates(name, upTo);
      hear(rows.updates);
      upTo = rows.upTo;
    }
    isAhead = false;
    kept = stateMessage(doc);
    if (taken.length > 0) bell.ring(name);
    for (const bytes of others) hand(bytes, null);
    for (const { from, bytes } of taken) hand(bytes, from);
    for (const guest of told) if (guests.has(guest)) guest.line.send(kept);
    const asked = asking;
    asking = [];
    for (const answer of asked) answer();
  };

  const hand = (bytes: Uint8Array, from: Guest | null): void => {
    const message = framed((out) => sync.writeUpdate(out, bytes));
    for (const guest of guests) if (guest !== from) guest.line.send(message);
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

  /** It is not known what is kept: phones go, and come again when it is. */
  const fail = (): void => {
    isBroken = true;
    waiting = [];
    asking = [];
    for (const guest of [...guests]) {
      guest.leave();
      guest.line.close(CLOSE.notKept, NOT_KEPT);
    }
    void recover();
  };

  const recover = async (): Promise<void> => {
    try {
      const loaded = await load(storage, name);
      doc.destroy();
      ({ doc, upTo } = loaded);
      kept = stateMessage(doc);
      [isAhead, isBroken] = [false, false];
    } catch {
      if (!isClosed) setTimeout(() => void recover(), AGAIN).unref();
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
        if (read === null) return end(CLOSE.malformed, 'a message that cannot be read');
        const { ask, update } = read;
        if (ask && isAhead) asking.push(() => answer(ask));
        else if (ask) answer(ask);
        if (update && !isEmpty(update)) {
          waiting.push({ from: guest, bytes: update });
          plan();
        }
      },
      leave: () => void guests.delete(guest),
    };
    const answer = (state: Uint8Array): void => {
      if (!guests.has(guest)) return;
      const missing = answerTo(doc, state);
      if (missing === null) end(CLOSE.malformed, 'a state that cannot be read');
      else if (!bytesOut?.(missing.length)) end(CLOSE.flood, 'too much asked for');
      else line.send(missing);
    };
    const end = (code: number, reason: string): void => {
      guest.leave();
      line.close(code, reason);
    };
    if (isBroken) line.close(CLOSE.notKept, NOT_KEPT);
    else {
      guests.add(guest);
      line.send(kept);
    }
    return guest;
  };

  return {
    get doc() {
      return doc;
    },
    join,
    flush,
    close: async () => {
      await flush();
      isClosed = true;
    },
    look: () => {
      isBehind = true;
      plan();
    },
    beat: (now) => {
      for (const guest of [...guests])
        if (now - guest.heard > SILENCE) {
          guest.leave();
          guest.line.close(CLOSE.ending, 'silent for too long');
        } else guest.line.send(kept);
    },
  };
}

const NOT_KEPT = 'it could not be kept: see the laptop';

/** The document as the disk has it, and up to which row; many updates are put together there, so that it
 * opens fast. */
async function load(
  storage: Storage,
  name: DocName,
): Promise<{ readonly doc: Y.Doc; readonly upTo: number }> {
  const doc = new Y.Doc();
  const { updates, upTo } = await storage.updates(name);
  doc.transact(() => {
    for (const bytes of updates) Y.applyUpdate(doc, bytes);
  });
  if (updates.length > LOOSE_UPDATES) await storage.replace(name, upTo, Y.encodeStateAsUpdate(doc));
  return { doc, upTo };
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
