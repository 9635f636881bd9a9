import { describe, expect, it } from 'vitest';
import { compareEntries, type Entry, entryText, readEntry } from '../../src/record/entry.ts';
import { rankOf, saysOf, subjectOf } from '../../src/record/subject.ts';
import { MOST_ORDER } from '../../src/record/tolerances.ts';
import type { What, WhatKind } from '../../src/record/what.ts';
import { whatSchema } from '../../src/record/what.ts';
import { NINE, seam } from './fixtures.ts';

/** One of each kind: the compiler asks for a new one. */
const each: { readonly [K in WhatKind]: Extract<What, { kind: K }> } = {
  'panel measured': {
    kind: 'panel measured',
    tag: '017',
    sides: [0.9, 0.9, 1.0],
    seenFrom: 'outside',
  },
  'panel found': { kind: 'panel found', tag: '017' },
  'panel cleaned': { kind: 'panel cleaned', tag: '017' },
  'panel condition': { kind: 'panel condition', tag: '017', condition: 'repair' },
  'panel placed': { kind: 'panel placed', place: '3-07', tag: '017', turn: 1, hands: 4 },
  'panel taken out': { kind: 'panel taken out', place: '3-07' },
  'seam pass': { kind: 'seam pass', seam: '3-07/3-08', pass: 'finger' },
  'seam sealed': { kind: 'seam sealed', seam: '3-07/3-08', sealed: true },
  'seam sampled': { kind: 'seam sampled', seam: '3-07/3-08', bolts: 2, failed: 1, torque: 17 },
  'hub plate': { kind: 'hub plate', hub: '3-07 3-08 4-05', on: true },
  'hub bolt': { kind: 'hub bolt', hub: '3-07 3-08 4-05', pass: 'snug' },
  prop: { kind: 'prop', hub: '3-07 3-08 4-05', set: true },
  'anchor driven': { kind: 'anchor driven', anchor: 3, driven: true },
  'anchor pulled': { kind: 'anchor pulled', anchor: 3, pull: 4000, held: true },
  surveyed: { kind: 'surveyed', reading: { what: 'chord', from: 1, to: 4, length: 3.2 } },
  'bolts counted': { kind: 'bolts counted', thread: 'M8', length: 0.025, count: 120 },
  note: { kind: 'note', text: 'dent', about: { what: 'panel', name: '017' } },
  weather: { kind: 'weather', gust: 9, sky: 'dry' },
  person: { kind: 'person', person: 'Ada', here: true },
  'stage done': { kind: 'stage done', stage: 4, done: true },
  'closed down': { kind: 'closed down', stage: 4, closed: true },
  stop: { kind: 'stop', why: 'lightning', on: true },
  undo: { kind: 'undo', of: 'ada00000-4' },
};

const entry = (what: unknown = seam('3-07/3-08', 'finger')) => ({
  writer: 'ada00000',
  seq: 0,
  order: 1,
  at: NINE,
  by: 'Ada',
  what,
});

const faultsOf = (raw: unknown) => {
  const read = readEntry(raw);
  return read.ok ? [] : read.faults.map(({ path }) => path);
};

describe('an entry', () => {
  it.each(Object.values(each))('of kind $kind is read as it was written', (what) => {
    expect(readEntry(entry(what))).toEqual({ ok: true, value: entry(what) });
    expect(readEntry(JSON.parse(JSON.stringify(entry(what))))).toEqual({
      ok: true,
      value: entry(what),
    });
  });

  it('has a kind for each shape that is read, and none besides', () => {
    const kinds = whatSchema.options.map((option) => option.shape.kind.value);
    expect(kinds.sort()).toEqual(Object.keys(each).sort());
  });

  it('is refused with every fault and where it is', () => {
    expect(faultsOf({ ...entry(), seq: -1, order: 0.5, by: '' })).toEqual(['seq', 'order', 'by']);
    expect(faultsOf({ ...entry(), order: MOST_ORDER + 1 })).toEqual(['order']);
    expect(faultsOf({ ...entry(), at: Number.NaN })).toEqual(['at']);
    expect(faultsOf({ ...entry(), at: 12 })).toEqual(['at']);
    expect(faultsOf({ ...entry(), more: 1 })).toEqual(['more']);
    expect(faultsOf({ ...entry(), writer: '../../x' })).toEqual(['writer']);
    expect(faultsOf({ ...entry(), follows: Array(101).fill('ada00000-1') })).toEqual(['follows']);
    expect(faultsOf(null)).toHaveLength(1);
    expect(faultsOf([])).toHaveLength(1);
  });

  it('is refused where what it says cannot be', () => {
    const bad = [
      { kind: 'seam pass', seam: '3-07', pass: 'finger' },
      { kind: 'seam pass', seam: '3-07/3-08', pass: 'loose' },
      { kind: 'panel placed', place: 'x', tag: null, turn: 0 },
      { kind: 'panel placed', place: '3-07', tag: ' 017', turn: 0 },
      { kind: 'seam sampled', seam: '3-07/3-08', bolts: 1, failed: 2 },
      { kind: 'note', text: 'x'.repeat(2001) },
      { kind: 'note', text: '', photo: { hash: '../x', type: 'image/png', bytes: 4 } },
      { kind: 'panel measured', tag: '017', sides: [1, 1, 2.5], seenFrom: 'outside' },
      { kind: 'erased', of: 'everything' },
    ];
    for (const what of bad) expect(faultsOf(entry(what)), JSON.stringify(what)).not.toEqual([]);
  });

  it('comes after what its writer had seen, whatever the clocks say', () => {
    const later = { ...(entry() as Entry), order: 2, at: NINE - 86_400_000 };
    expect(compareEntries(entry() as Entry, later)).toBeLessThan(0);
    const other = { ...(entry() as Entry), writer: 'bob00000' };
    expect(compareEntries(entry() as Entry, other)).toBeLessThan(0);
    expect(compareEntries(other, entry() as Entry)).toBeGreaterThan(0);
    expect(compareEntries(other, other)).toBe(0);
  });

  it('has one text, whatever the order of its keys', () => {
    const { writer, ...rest } = entry() as Entry;
    expect(entryText({ ...rest, writer })).toBe(entryText(entry() as Entry));
    expect(entryText({ ...rest, writer, seq: 1 })).not.toBe(entryText(entry() as Entry));
  });
});

describe('what an entry is about', () => {
  it('is one subject for a claim and none for an event', () => {
    const events = Object.values(each).filter((what) => subjectOf(what) === null);
    expect(events.map(({ kind }) => kind)).toEqual([
      'panel measured',
      'seam sampled',
      'anchor pulled',
      'surveyed',
      'note',
      'weather',
      'undo',
    ]);
    expect(subjectOf(each['panel placed'])).toBe(subjectOf(each['panel taken out']));
    expect(saysOf(each['seam pass'])).toBe('finger');
    expect(saysOf(each.undo)).toBe('');
  });

  it('ranks what is safe to suppose lowest', () => {
    expect(rankOf(seam('3-07/3-08', 'none'))).toBeLessThan(rankOf(seam('3-07/3-08', 'finger')));
    expect(rankOf(each.person)).toBeLessThan(rankOf({ ...each.person, here: false }));
    expect(rankOf(each.stop)).toBeLessThan(rankOf({ ...each.stop, on: false }));
    expect(rankOf(each.prop)).toBeGreaterThan(rankOf({ ...each.prop, set: false }));
  });
});
