import type { Replacement } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import {
  breakOf,
  builtUpTo,
  costsOf,
  stepsOf,
} from '../../src/sheets/places/broken/answer-words.ts';
import { lengthsIn } from '../../src/ui/lengths.ts';
import { fittingWords } from '../../src/words/fitting.ts';

const words = fittingWords.broken;
const numbers = ['1-01', '1-02', '2-01'];
const way: Replacement = {
  act: 'move',
  moves: [
    { from: 2, to: 1, kind: '4', turn: 1, misfit: 0 },
    { from: 1, to: 0, kind: '3L', turn: 0, misfit: 0.0023 },
  ],
  undone: 2,
  misfit: 0.0023,
  holesTake: false,
  leaves: 2,
  lacks: '4',
};

describe('a way out in words', () => {
  it('tells its moves in the order in which they are done, with the misfit in millimetres', () => {
    expect(stepsOf(way, numbers, words, lengthsIn('metric'))).toEqual([
      'The 4 of 2-01 into 1-02',
      'The 3L of 1-02 into 1-01, sides off by up to 2.3 mm',
    ]);
  });

  it('tells what is undone, what then lacks, and whether the holes take it', () => {
    expect(costsOf(way, numbers, words)).toEqual([
      '2 seams undone.',
      'Then 2-01 lacks its panel: get one of kind 4.',
      words.holesDont,
    ]);
    const easy = { ...way, undone: 0, misfit: 0, leaves: null, lacks: null };
    expect(costsOf(easy, numbers, words)).toEqual([words.nothingUndone]);
  });

  it('is kept by the numbers that no turn of the datum changes', () => {
    expect(breakOf(0, way, ['1-11', '1-12', '2-11'])).toEqual({
      place: '1-11',
      moves: [
        { from: '2-11', to: '1-12', kind: '4', turn: 1 },
        { from: '1-12', to: '1-11', kind: '3L', turn: 0 },
      ],
      lacks: '4',
    });
  });
});

describe('what is up', () => {
  it('are the courses up to the one told, without what is left out', () => {
    expect([...builtUpTo([1, 1, 2, 3], 2, [1])]).toEqual([1, 0, 1, 0]);
    expect([...builtUpTo([1, 1, 2, 3], 0, [])]).toEqual([0, 0, 0, 0]);
  });
});
