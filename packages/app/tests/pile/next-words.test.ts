import { kindsOfPile, nextAtPile, type PileNext } from '@shellraise/core';
import { expect, it } from 'vitest';
import { nextWords } from '../../src/sheets/pile/next-words.ts';
import { lengthsIn } from '../../src/ui/lengths.ts';
import { pileWords } from '../../src/words/pile.ts';
import { docOfReadings, reading } from './notation.ts';

const { pile } = docOfReadings(
  ...Array.from({ length: 3 }, () => reading([0.92, 0.92, 1.073])),
  reading([1.1, 1.15, 1.2], { tag: '007' }),
).project;
const kinds = kindsOfPile(pile);
const says = (one: PileNext, system: 'metric' | 'inch' = 'metric'): string =>
  nextWords(one, { pile, kinds }, lengthsIn(system), pileWords);
const thing = (more: Partial<PileNext>): PileNext => ({
  act: 'read',
  why: 'neighbour',
  kinds: ['1'],
  side: 2,
  row: null,
  lengths: [1.073, 1.07],
  people: [],
  words: '',
  bits: 1,
  ...more,
});

it('what core asks for is said with the panel’s tag, and with lengths as this person reads them', () => {
  const all = nextAtPile(kinds, { most: 9 });
  const single = all.find(({ why }) => why === 'one reading');
  expect(single && says(single)).toContain('panel 007');
  expect(says(thing({}))).toContain('1073 mm');
  expect(says(thing({}), 'inch')).toContain('42 1/4"');
});

it('every reason has a sentence of its own', () => {
  const reasons = [
    'new kind',
    'neighbour',
    'stuck',
    'one reading',
    'loosest',
    'suspect',
    'maybe one',
    'maybe two',
    'face',
    'two fit',
    'tapes',
    'miscount',
    'uncounted',
  ] as const satisfies readonly PileNext['why'][];
  const sentences = reasons.map((why) => says(thing({ why, row: 3, people: ['Ada', 'Bo'] })));
  expect(new Set(sentences).size).toBe(reasons.length);
  expect(sentences.join()).not.toMatch(/undefined|NaN/);
});

it('many kinds that nobody counted are told as a number', () => {
  const ids = Array.from({ length: 9 }, (_, i) => String(i + 1));
  expect(says(thing({ why: 'uncounted', kinds: ids }))).toContain('9 kinds');
  expect(says(thing({ why: 'uncounted', kinds: ['1', '2'] }))).toContain('1 and 2');
});
