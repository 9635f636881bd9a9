import { entryIdOf, type What } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { carryRecord } from '../../src/record/carry-record.ts';
import type { Channel } from '../../src/record/kept-doc.ts';
import { opened, openRecord, type RecordOutside } from '../../src/record/record-session.ts';
import { updateMemory } from './update-memory.ts';

let writers = 0;
function device() {
  const memory = updateMemory();
  const outside = (record: string): RecordOutside => ({
    updates: Promise.resolve(memory.store),
    channel: new BroadcastChannel(`carry-test ${record}`) as unknown as Channel,
    now: () => 1_781_254_800_000,
    newWriter: () => `carrier${(writers++).toString().padStart(4, '0')}`,
  });
  return { ...memory, outside };
}

const placed = (place: string): What => ({ kind: 'panel placed', place, tag: null, turn: null });
const settled = () => new Promise((done) => setTimeout(done, 20));

describe('what was noted on the demo', () => {
  it('is in the project that it becomes, each entry as it was, and no longer in the demo', async () => {
    const { outside, state } = device();
    const demo = openRecord('demo', outside('demo'));
    demo.say(placed('1-01'), 'Ada');
    const wrong = demo.say(placed('1-02'), 'Ada');
    demo.takeBack(wrong, 'Ada');
    const said = demo.log.entries().map(entryIdOf);
    // The sheet has the new project's record open already.
    const shown = openRecord('own', outside('own'));
    expect(await carryRecord('demo', 'own', demo, outside)).toBe(3);
    await settled();
    expect(shown.log.entries().map(entryIdOf)).toEqual(said);
    for (const session of [demo, shown]) session.close();
    const again = openRecord('own', outside('own'));
    await opened(again);
    expect(again.log.entries().map(entryIdOf)).toEqual(said);
    expect(state.rows.filter(({ record }) => record === 'demo')).toEqual([]);
    again.close();
  });

  it('comes along from the store too, and brought twice makes no doubles', async () => {
    const { outside } = device();
    const demo = openRecord('demo', outside('demo'));
    demo.say(placed('1-01'), 'Ada');
    await settled();
    demo.close();
    expect(await carryRecord('demo', 'own', null, outside)).toBe(1);
    expect(await carryRecord('demo', 'own', null, outside)).toBe(0);
    const own = openRecord('own', outside('own'));
    await opened(own);
    expect(own.log.size).toBe(1);
    own.close();
  });

  it('stays where it is where it cannot be kept elsewhere', async () => {
    const { outside, state } = device();
    const demo = openRecord('demo', outside('demo'));
    demo.say(placed('1-01'), 'Ada');
    await settled();
    state.full = true;
    await expect(carryRecord('demo', 'own', demo, outside)).rejects.toThrow('no room');
    expect(state.rows.map(({ record }) => record)).toEqual(['demo']);
    demo.close();
  });
});
