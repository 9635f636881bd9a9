import { array, assert, constantFrom, property, record, string } from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  changed,
  freshHistory,
  type History,
  MOST_STEPS,
  redone,
  undone,
} from '../../src/state/doc.ts';
import { pileOf } from './notation.ts';

const start = freshHistory(pileOf('one', [1, 1, 1]));

const named = (history: History, title: string, at = 0, of?: string): History =>
  changed(
    history,
    ({ project }) => {
      project.title = title;
      return undefined;
    },
    { label: title, at, ...(of === undefined ? {} : { of }) },
  );

describe('a history', () => {
  it('goes back to what was before a change, and on again', () => {
    const two = named(start, 'two');
    expect(undone(two).doc).toEqual(start.doc);
    expect(redone(undone(two)).doc).toEqual(two.doc);
  });

  it('is the same object where a change changes nothing', () => {
    expect(named(start, 'one')).toBe(start);
    expect(undone(start)).toBe(start);
    expect(redone(start)).toBe(start);
  });

  it('forgets what was undone once something new is done', () => {
    expect(named(undone(named(start, 'two')), 'three').future).toEqual([]);
  });

  it('makes one step of a word typed letter by letter', () => {
    const typed = named(named(start, 'a', 0, 'title'), 'ab', 500, 'title');
    expect(typed.past).toHaveLength(1);
    expect(undone(typed).doc).toEqual(start.doc);
    expect(redone(undone(typed)).doc).toEqual(typed.doc);
  });

  it('makes two steps of words typed with a pause, or of different things', () => {
    expect(named(named(start, 'a', 0, 'title'), 'b', 5000, 'title').past).toHaveLength(2);
    expect(named(named(start, 'a', 0, 'title'), 'b', 100, 'other').past).toHaveLength(2);
  });

  it('never joins a step that was redone with a later one', () => {
    const again = redone(undone(named(start, 'a', 0, 'title')));
    expect(named(again, 'ab', 100, 'title').past).toHaveLength(2);
  });

  it('keeps the last steps and forgets the first', () => {
    let history = start;
    for (let i = 0; i < MOST_STEPS + 20; i++) history = named(history, `title ${i}`, i * 10_000);
    expect(history.past).toHaveLength(MOST_STEPS);
  });

  it('comes back to the start from any changes, and to the end again (seed 7)', () => {
    const change = record({ title: string(), of: constantFrom(undefined, 'title', 'note') });
    assert(
      property(array(change, { maxLength: 12 }), (changes) => {
        let history = start;
        changes.forEach(({ title, of }, i) => {
          history = named(history, title, i * 800, of);
        });
        let back = history;
        while (back.past.length > 0) back = undone(back);
        expect(back.doc).toEqual(start.doc);
        while (back.future.length > 0) back = redone(back);
        expect(back.doc).toEqual(history.doc);
      }),
      { seed: 7, numRuns: 100 },
    );
  });
});
