// Twenty phones and a room, with the network, the disk and the clock of each phone played by a seed:
// lines that break, messages that come twice, late or in another order, phones that reload or die, a
// server that is killed between taking and keeping, a disk that is full. Whatever happened: what was
// told as kept is on the disk; when all is healed every copy is the same, and holds everything that was
// said by phones that did not die with it.

import { type EntryId, entryIdOf, seededRandom } from '@shellraise/core';
import { keptElsewhere, type SharedRecord, sharedRecord } from '@shellraise/sync';
import * as decoding from 'lib0/decoding';
import * as encoding from 'lib0/encoding';
import { expect, it } from 'vitest';
import * as sync from 'y-protocols/sync';
import * as Y from 'yjs';
import { openRoom, type Peer, type Room } from '../../src/sync/room.ts';
import type { Storage } from '../../src/sync/storage.ts';
import { logOf } from './phones.ts';

const NINE = Date.UTC(2026, 5, 12, 9);
const PHONES = 20;
const STEPS = 1200;
const SEEDS = Array.from({ length: Number(process.env.SHELLRAISE_SEEDS ?? 3) }, (_, i) => i + 1);

/** A disk that can be full. */
function disk() {
  const kept: Uint8Array[] = [];
  const state = { full: false, refused: 0 };
  const storage = {
    updates: async () => ({ updates: [...kept], upTo: kept.length }),
    turn: async (_: string, after: number, look: (_: Uint8Array[]) => readonly Uint8Array[]) => {
      const taken = look([]);
      if (state.full && taken.length > 0) {
        state.refused++;
        throw new Error('disk full');
      }
      kept.push(...taken);
      return after + taken.length;
    },
    replace: async (_: string, __: number, bytes: Uint8Array) => {
      if (!state.full) kept.splice(0, kept.length, bytes);
    },
  } as unknown as Storage;
  const ids = (): Set<EntryId> => {
    const doc = new Y.Doc();
    for (const bytes of kept) Y.applyUpdate(doc, bytes);
    return new Set(logOf(doc).entries().map(entryIdOf));
  };
  return { storage, state, ids };
}

interface Sim {
  readonly doc: Y.Doc;
  readonly record: SharedRecord;
  /** What its own browser keeps. */
  readonly pocket: Uint8Array[];
  readonly kept: ReturnType<typeof keptElsewhere>;
  readonly skew: number;
  readonly number: number;
  line: { readonly peer: Peer; readonly up: Uint8Array[]; readonly down: Uint8Array[] } | null;
}

function phone(number: number, skew: number, pocket: Uint8Array[], id: number): Sim {
  const doc = new Y.Doc();
  doc.clientID = id;
  for (const bytes of pocket) Y.applyUpdate(doc, bytes);
  const one: Sim = {
    doc,
    record: sharedRecord(doc),
    pocket,
    kept: keptElsewhere(doc),
    skew,
    number,
    line: null,
  };
  doc.on('update', (bytes: Uint8Array, origin: unknown) => {
    pocket.push(bytes);
    if (origin !== 'line') one.line?.up.push(message((out) => sync.writeUpdate(out, bytes)));
  });
  return one;
}

function message(write: (out: encoding.Encoder) => void): Uint8Array {
  const out = encoding.createEncoder();
  encoding.writeVarUint(out, 0);
  write(out);
  return encoding.toUint8Array(out);
}

/** A message from the server reaches a phone, as its sync provider would read it. */
function reach(one: Sim, bytes: Uint8Array): void {
  const from = decoding.createDecoder(bytes);
  if (decoding.readVarUint(from) !== 0) return;
  const peek = decoding.clone(from);
  const step = decoding.readVarUint(peek);
  const body = decoding.readVarUint8Array(peek);
  const answer = encoding.createEncoder();
  encoding.writeVarUint(answer, 0);
  sync.readSyncMessage(from, answer, one.doc, 'line');
  if (step === 0) one.kept.told(body);
  else one.kept.came(body);
  if (encoding.length(answer) > 1) one.line?.up.push(encoding.toUint8Array(answer));
}

function connect(one: Sim, room: Room): void {
  const [up, down]: Uint8Array[][] = [[], []];
  const line = {
    role: 'crew' as const,
    send: (bytes: Uint8Array) => void down?.push(bytes),
    close: () => {
      one.line = null;
    },
  };
  one.line = { peer: room.join(line), up: up as Uint8Array[], down: down as Uint8Array[] };
  one.line.up.push(message((out) => sync.writeSyncStep1(out, one.doc)));
}

function cut(one: Sim): void {
  one.line?.peer.leave();
  one.line = null;
}

it.each(SEEDS)(
  `twenty phones agree after anything that can happen to them (seed %i)`,
  async (seed) => {
    const random = seededRandom(seed);
    const { storage, state, ids } = disk();
    const faults: unknown[] = [];
    const open = (): Promise<Room> => openRoom(storage, 'record', (fault) => faults.push(fault));
    let room = await open();
    let nextId = 1;
    const fresh = (number: number, pocket: Uint8Array[] = []): Sim =>
      phone(number, (random.below(48) - 24) * 3_600_000, pocket, nextId++);
    const phones = Array.from({ length: PHONES }, (_, number) => fresh(number));
    const told = new Set<EntryId>();
    const said = new Set<EntryId>();
    const count = {
      said: 0,
      undone: 0,
      reloads: 0,
      deaths: 0,
      cuts: 0,
      twice: 0,
      reordered: 0,
      crashes: 0,
      full: 0,
      files: 0,
    };
    const any = (): Sim => phones[random.below(PHONES)] as Sim;

    /** One message of a queue: the first, or now and then another, which may come again. */
    const next = (queue: Uint8Array[]): Uint8Array | undefined => {
      const late = random.uniform() < 0.1 && queue.length > 1;
      if (late) count.reordered++;
      const at = late ? random.below(queue.length) : 0;
      const again = random.uniform() < 0.05;
      if (again && queue.length > 0) count.twice++;
      return again ? queue[at] : queue.splice(at, 1)[0];
    };
    const carry = (one: Sim): void => {
      const { line } = one;
      if (!line) return;
      const up = next(line.up);
      if (up) line.peer.hear(up);
      const down = next(line.down);
      if (down && one.line === line) reach(one, down);
    };
    const crash = async (): Promise<void> => {
      for (const one of phones) one.line = null;
      room = await open();
      count.crashes++;
      const left = ids();
      expect([...told].filter((id) => !left.has(id))).toEqual([]);
    };
    const note = (one: Sim): void => {
      if (one.kept.waiting() === 0)
        for (const entry of one.record.log.entries()) told.add(entryIdOf(entry));
    };

    for (let step = 0; step < STEPS; step++) {
      const one = any();
      const dice = random.uniform();
      const pen = {
        writer: `p${one.doc.clientID}xxxxxxxx`.slice(0, 12),
        by: `P${one.number}`,
        at: NINE + one.skew + step * 1000,
      };
      if (dice < 0.3) {
        const pass = (['finger', 'snug', 'final', 'none'] as const)[random.below(4)] as 'finger';
        const entry = one.record.log.write(
          { kind: 'seam pass', seam: `1-0${1 + random.below(4)}/2-01`, pass },
          pen,
        );
        one.record.bring([entry]);
        said.add(entryIdOf(entry));
        count.said++;
      } else if (dice < 0.34 && one.record.log.size > 0) {
        const all = one.record.log.entries();
        const of = entryIdOf(all[random.below(all.length)] as (typeof all)[0]);
        const entry = one.record.log.write({ kind: 'undo', of }, pen);
        one.record.bring([entry]);
        said.add(entryIdOf(entry));
        count.undone++;
      } else if (dice < 0.42) {
        if (one.line) cut(one);
        else connect(one, room);
        count.cuts++;
      } else if (dice < 0.44) {
        cut(one);
        phones[one.number] = fresh(one.number, one.pocket);
        count.reloads++;
      } else if (dice < 0.443) {
        cut(one);
        phones[one.number] = fresh(one.number);
        count.deaths++;
      } else if (dice < 0.46) {
        one.record.bring(any().record.log.entries().slice(-20));
        count.files++;
      } else if (dice < 0.465) await crash();
      else if (dice < 0.475) {
        state.full = !state.full;
        count.full++;
      } else if (dice < 0.7) await room.flush();
      else for (let i = 0; i < 6; i++) carry(any());
      note(one);
    }

    // All is healed: the disk has room, every phone has a line, messages come once and in order.
    state.full = false;
    for (let round = 0; round < 4; round++)
      for (const one of phones) {
        cut(one);
        connect(one, room);
        while (one.line && one.line.up.length + one.line.down.length > 0) {
          for (const bytes of one.line.up.splice(0)) one.line.peer.hear(bytes);
          await room.flush();
          for (const bytes of one.line?.down.splice(0) ?? []) reach(one, bytes);
        }
      }
    const end = logOf(room.doc);
    for (const one of phones) {
      expect(one.kept.waiting()).toBe(0);
      expect(one.record.log.entries()).toEqual(end.entries());
      expect(one.record.log.questions()).toEqual(end.questions());
      expect(one.record.refused()).toBe(0);
    }
    const left = ids();
    expect(left).toEqual(new Set(end.entries().map(entryIdOf)));
    expect([...told].filter((id) => !left.has(id))).toEqual([]);
    const missing = [...said].filter((id) => !left.has(id));
    if (count.deaths === 0) expect(missing).toEqual([]);
    expect(missing.length).toBeLessThan(said.size / 4);
    expect([...left].filter((id) => !said.has(id))).toEqual([]);
    expect(
      Math.min(count.said, count.crashes, count.twice, count.reordered, state.refused, told.size),
    ).toBeGreaterThan(0);
    expect(state.refused).toBe(faults.length);
    console.log(
      `seed ${seed}: ${JSON.stringify({ ...count, refusedByDisk: state.refused, entries: end.size, toldAsKept: told.size, diedWithPhones: missing.length })}`,
    );
  },
);
