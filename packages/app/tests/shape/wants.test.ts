import type { AddedKind } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { misfitsOf } from '../../src/sheets/shape/misfits.ts';
import { kindsBesides, strangersOf, wantedOf } from '../../src/sheets/shape/wants.ts';
import { answerOf, ball, kind, shapeOf } from './notation.ts';

const { shell, kinds } = ball(2);
const [first, last] = kinds;
const wanted: AddedKind = {
  why: 'wanted',
  of: null,
  kind: kind('w', last?.sides ?? [], { good: 0, counted: true }),
};

describe('kinds that a shape needs besides', () => {
  const asked = [first ?? kind('1', [1, 1, 1])];
  const shape = shapeOf(shell, kinds, { added: [wanted] });

  it('are told with their places', () => {
    const places = [...shell.kind].filter((k) => k === 1).length;
    expect(wantedOf(shape, asked)).toEqual([{ kind: wanted.kind, places }]);
  });

  it('have no measured sides in the table', () => {
    const rows = misfitsOf(shape, asked);
    expect(rows).toHaveLength(2);
    expect(rows[1]?.sides.every(({ measured, off }) => measured === null && off === null)).toBe(
      true,
    );
    expect(rows[0]?.sides.every(({ measured }) => measured !== null)).toBe(true);
  });
});

describe('kinds without a place', () => {
  it('are told even where nothing explains them', () => {
    const shape = shapeOf(shell, kinds, {
      strangers: ['1', '2'],
      explained: [{ kind: '2', as: 'other shell' }],
    });
    expect(strangersOf(shape)).toEqual([
      { kind: '1', as: 'nothing' },
      { kind: '2', as: 'other shell' },
    ]);
  });

  it('number a second shell, over all kinds or over themselves alone', () => {
    const heap = [kind('x', [1, 1, 1]), ...kinds];
    const main = shapeOf(shell, heap, { strangers: kinds.map(({ id }) => id) });
    const alone = answerOf([shapeOf(shell, kinds)]);
    expect(kindsBesides(main, alone, heap)).toEqual(kinds);
    const shifted = { ...shell, kind: shell.kind.map((k) => k + 1) };
    expect(kindsBesides(main, answerOf([shapeOf(shifted, heap)]), heap)).toBe(heap);
  });
});
