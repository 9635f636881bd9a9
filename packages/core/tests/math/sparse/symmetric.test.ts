import { describe, expect, it } from 'vitest';
import {
  addBlockInto,
  cliquesOf,
  combine,
  diagonalOf,
  entryAt,
  multiply,
  patternOfCliques,
  shifted,
  symmetricOf,
} from '../../../src/math/sparse/symmetric.ts';
import { denseOf } from './fixtures.ts';

describe('a sparse symmetric matrix', () => {
  const a = symmetricOf(3, [
    [0, 0, 2],
    [1, 0, -1],
    [0, 1, -0.5],
    [2, 2, 4],
  ]);

  it('adds up entries of one place from both triangles', () => {
    expect([...denseOf(a)]).toEqual([2, -1.5, 0, -1.5, 0, 0, 0, 0, 4]);
    expect([...diagonalOf(a)]).toEqual([2, 0, 4]);
  });

  it('multiplies', () => {
    expect([...multiply(a, Float64Array.of(1, 2, 3))]).toEqual([-1, -1.5, 12]);
  });

  it('finds an entry from either side, and none where there is none', () => {
    expect(a.value[entryAt(a, 0, 1)]).toBe(-1.5);
    expect(entryAt(a, 1, 0)).toBe(entryAt(a, 0, 1));
    expect(entryAt(a, 2, 0)).toBe(-1);
  });

  it('is shifted along its diagonal, the former left as it was', () => {
    expect([...denseOf(shifted(a, -0.5))]).toEqual([1.5, -1.5, 0, -1.5, -0.5, 0, 0, 0, 3.5]);
    expect([...diagonalOf(a)]).toEqual([2, 0, 4]);
  });

  it('combines two on the union of their patterns', () => {
    const b = symmetricOf(3, [[2, 0, 1]]);
    expect([...denseOf(combine(2, a, -3, b))]).toEqual([4, -3, -3, -3, 0, 0, -3, 0, 8]);
    expect(() => combine(1, a, 1, symmetricOf(2, []))).toThrow('a matrix of 3 and one of 2');
  });

  it('couples the unknowns of a clique and leaves out those held', () => {
    const pattern = patternOfCliques(
      4,
      cliquesOf([
        [0, -1, 2],
        [2, 3],
      ]),
    );
    expect([...pattern.row]).toEqual([0, 2, 1, 2, 3, 3]);
    const value = new Float64Array(pattern.row.length);
    addBlockInto(value, pattern, [2, -1, 0], [1, 9, 9, 9, 9, 9, 5, 9, 7]);
    expect([...value]).toEqual([7, 5, 0, 1, 0, 0]);
    expect(() => addBlockInto(value, pattern, [0, 3], [1, 1, 1, 1])).toThrow('no entry 3, 0');
    expect(() => patternOfCliques(2, cliquesOf([[5]]))).toThrow('unknown 5 of 2');
  });

  it('puts both off-diagonal entries on the diagonal where two unknowns of a block are one', () => {
    const pattern = patternOfCliques(1, cliquesOf([[0]]));
    const value = new Float64Array(1);
    addBlockInto(value, pattern, [0, 0], [1, -1, -1, 1]);
    expect(value[0]).toBe(0);
  });
});
