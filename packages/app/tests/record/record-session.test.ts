import { type What, writeRecordFile } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import type { Channel } from '../../src/record/kept-doc.ts';
import { openRecord, type RecordSession } from '../../src/record/record-session.ts';
import type { UpdateStore } from '../../src/record/update-store.ts';
import { updateMemory as memory } from './update-memory.ts';

let writers = 0;
const opened = (
  store: UpdateStore | Promise<UpdateStore>,
  channel: Channel | null = null,
  project = 'p1',
): RecordSession =>
  openRecord(project, {
    updates: Promise.resolve(store),
    channel,
    now: () => 1_781_254_800_000,
    newWriter: () => `writer${(writers++).toString().padStart(4, '0')}`,
  });

const settled = () => new Promise((done) => setTimeout(done, 5));
const snug: What = { kind: 'seam pass', seam: '1-01/1-02', pass: 'snug' };
const passOf = ({ log }: RecordSession) => {
  const what = log.stands('seam 1-01/1-02')?.entry.what;
  return what?.kind === 'seam pass' ? what.pass : null;
};

describe('what was said', () => {
  it('is there when the page is opened again, and in its own project alone', async () => {
    const { store } = memory();
    const one = opened(store);
    one.say(snug, 'Ada');
    await settled();
    expect(one.store.getState()).toMatchObject({ open: true, unsaved: 0, fault: null });
    one.close();
    const again = opened(store);
    await settled();
    expect(passOf(again)).toBe('snug');
    const other = opened(store, null, 'p2');
    await settled();
    expect(other.log.size).toBe(0);
  });

  it('counts as unsaved until it is on the disk, and is not lost where there is no room', async () => {
    const { state, store } = memory();
    const session = opened(store);
    await settled();
    session.say(snug, 'Ada');
    expect(session.store.getState().unsaved).toBe(1);
    await settled();
    state.full = true;
    session.say({ ...snug, pass: 'final' }, 'Ada');
    await settled();
    expect(session.store.getState()).toMatchObject({ unsaved: 1, fault: 'no room' });
    expect(passOf(session)).toBe('final');
    state.full = false;
    await session.again();
    expect(session.store.getState()).toMatchObject({ unsaved: 0, fault: null });
    const again = opened(store);
    await settled();
    expect(passOf(again)).toBe('final');
  });

  it('goes on where the browser keeps nothing, and says why', async () => {
    const session = opened(Promise.reject(new Error('no database here')));
    session.say(snug, 'Ada');
    await settled();
    expect(session.store.getState()).toMatchObject({ unsaved: 1, fault: 'no database here' });
    expect(passOf(session)).toBe('snug');
  });

  it('is taken back by an entry, and the one before stands again', async () => {
    const session = opened(memory().store);
    session.say(snug, 'Ada');
    const wrong = session.say({ ...snug, pass: 'final' }, 'Ada');
    expect(session.store.getState().last).toBe(wrong);
    session.takeBack(wrong, 'Ada');
    expect(passOf(session)).toBe('snug');
    expect(session.log.size).toBe(3);
    expect(session.store.getState().last).toBeNull();
  });

  it('is refused where it is no entry, and nothing is kept of it', async () => {
    const { state, store } = memory();
    const session = opened(store);
    await settled();
    expect(() => session.say({ kind: 'seam pass', seam: 'door', pass: 'snug' }, 'Ada')).toThrow(
      'seam',
    );
    expect(() => session.say(snug, '')).toThrow('by');
    await settled();
    expect(state.rows.length).toBe(0);
  });
});

describe('a device that may only look', () => {
  it('adds nothing to the record, whoever asks it to, and may again when it is let', async () => {
    const { state, store } = memory();
    const session = opened(store);
    await settled();
    const entry = session.say(snug, 'Ada');
    session.let(false);
    expect(() => session.say(snug, 'Ada')).toThrow('only look');
    expect(() => session.takeBack(entry, 'Ada')).toThrow('only look');
    expect(session.bring([{ ...entry, seq: 7 }])).toBe(0);
    await settled();
    expect([session.log.size, state.rows.length]).toEqual([1, 1]);
    session.let(true);
    session.takeBack(entry, 'Ada');
    expect(session.log.size).toBe(2);
  });
});

describe('many updates', () => {
  it('are put together when the record is opened, and say the same', async () => {
    const { state, store } = memory();
    const session = opened(store);
    for (let i = 0; i < 250; i++)
      session.say({ ...snug, pass: i % 2 === 0 ? 'snug' : 'finger' }, 'Ada');
    await settled();
    expect(state.rows.length).toBe(250);
    const second = opened(store);
    await settled();
    expect(state.rows.length).toBe(1);
    const third = opened(store);
    await settled();
    const file = writeRecordFile(session.log.entries());
    expect(writeRecordFile(second.log.entries())).toBe(file);
    expect(writeRecordFile(third.log.entries())).toBe(file);
  });
});

describe('two pages of one browser', () => {
  it('tell each other, and each entry is stored once', async () => {
    const { state, store } = memory();
    const [one, other] = [opened(store, channel()), opened(store, channel())];
    await settled();
    one.say(snug, 'Ada');
    await settled();
    expect(passOf(other)).toBe('snug');
    expect(other.store.getState()).toMatchObject({ unsaved: 0, last: null });
    expect(state.rows.length).toBe(1);
    other.say({ ...snug, pass: 'final' }, 'Bram');
    await settled();
    expect(passOf(one)).toBe('final');
    expect(one.log.questions()).toEqual([]);
    for (const session of [one, other]) session.close();
  });
});

const channel = () => new BroadcastChannel('record-session-test') as unknown as Channel;
