import { describe, expect, it } from 'vitest';
import { largestMisfit, misfitsOf } from '../../src/sheets/shape/misfits.ts';
import { ball, kind, shapeOf } from './notation.ts';

const { shell, kinds } = ball(2);

describe('misfits', () => {
  it('count the places of every kind, and tell every side', () => {
    const rows = misfitsOf(shapeOf(shell, kinds), kinds);
    expect(rows.map(({ places }) => places).sort((a, b) => a - b)).toEqual([20, 60]);
    expect(rows.every(({ sides }) => sides.length === 3)).toBe(true);
    expect(largestMisfit(rows)).toBe(0);
  });

  it('are measured less fitted, and know the suspect side', () => {
    const read = kinds.map((one, k) =>
      k === 1 ? { ...one, sides: one.sides.map((x, i) => (i === 2 ? x + 0.012 : x)) } : one,
    );
    const [one] = read.slice(1);
    const suspects = [{ kind: one?.id ?? '', side: 2, measured: 0, expected: 0 }];
    const rows = misfitsOf(shapeOf(shell, kinds, { suspects }), read);
    expect(rows[1]?.sides[2]?.off).toBeCloseTo(0.012, 12);
    expect(rows.flatMap(({ sides }) => sides.filter(({ suspect }) => suspect)).length).toBe(1);
    expect(largestMisfit(rows)).toBeCloseTo(0.012, 12);
  });

  it('say nothing of a kind that the net has no place for', () => {
    const all = [...kinds, kind('x', [2, 2, 2])];
    const rows = misfitsOf(shapeOf(shell, kinds, { strangers: ['x'] }), all);
    expect(rows.at(-1)).toMatchObject({ places: 0, sides: [{ fitted: null, off: null }, {}, {}] });
  });
});
