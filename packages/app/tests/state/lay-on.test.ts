import { enablePatches, type Patch, produceWithPatches } from 'immer';
import { describe, expect, it } from 'vitest';
import { layOn, same } from '../../src/state/lay-on.ts';

enablePatches();

/** The value laid on another, and the steps that took. */
function laid<T extends object>(from: T, to: object): { now: T; patches: readonly Patch[] } {
  const [now, patches] = produceWithPatches(from, (draft) => {
    layOn(draft as object, to);
  });
  return { now, patches };
}

const rows = (...names: string[]) => names.map((name) => ({ name, sides: [1, 2] }));

describe('laying one whole on another', () => {
  it('makes them say the same, whatever was added, changed or taken out', () => {
    const cases: [object, object][] = [
      [{ a: 1 }, { a: 2, b: [1] }],
      [{ a: { b: 1, c: 2 } }, { a: { c: 3 } }],
      [{ a: rows('x', 'y', 'z') }, { a: rows('x', 'z') }],
      [{ a: rows('x', 'z') }, { a: rows('w', 'x', 'y', 'z') }],
      [{ a: rows('x') }, { a: [] }],
      [{ a: [1, 2, 3] }, { a: { b: 1 } }],
      [{ a: null }, { a: { b: null } }],
      [{}, { a: [[1], [2, 3]] }],
    ];
    for (const [from, to] of cases) expect(laid(from, to).now).toEqual(to);
  });

  it('touches nothing where nothing differs, and no more than what does', () => {
    const from = { title: 'x', pile: { rows: rows('a', 'b', 'c'), gap: undefined } };
    expect(laid(from, { title: 'x', pile: { rows: rows('a', 'b', 'c') } }).patches).toEqual([]);
    const to = { title: 'x', pile: { rows: [...rows('a', 'B'), ...rows('c')] } };
    expect(laid(from, to).patches).toEqual([
      { op: 'replace', path: ['pile', 'rows', 1, 'name'], value: 'B' },
    ]);
    const added = laid(from, { ...from, pile: { rows: rows('a', 'b', 'c', 'd') } }).patches;
    expect(added.map(({ op, path }) => [op, path])).toEqual([['add', ['pile', 'rows', 3]]]);
  });

  it('takes a key that holds nothing for none', () => {
    expect(same({ a: undefined, b: [1] }, { b: [1] })).toBe(true);
    expect(same({ a: null }, {})).toBe(false);
    expect(same([1, 2], [1])).toBe(false);
  });
});
