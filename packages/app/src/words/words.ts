// The message table: every text that people see. Another language is another table of this form.

import { createContext, use } from 'react';
import { frameWords } from './frame.ts';
import type { laterWords } from './later.ts';
import { pileWords } from './pile.ts';
import { sharingWords } from './sharing.ts';

/** What the first sheet and the frame around all of them say. */
const firstWords = {
  frame: frameWords,
  pile: pileWords,
  sharing: sharingWords,
};

/** A message table. */
export type Words = typeof firstWords & typeof laterWords;

/** The table in English. Until `wholeTable` it lacks what only later sheets say. */
export const english = { ...firstWords } as Words;

/** The table with all words in it: whatever speaks more than those of the first sheet is loaded with it. */
export async function wholeTable(): Promise<Words> {
  const { laterWords: later } = await import('./later.ts');
  return Object.assign(english, later);
}

const WordsContext = createContext<Words>(english);

/** Gives the page its language. */
export const WordsProvider = WordsContext.Provider;

/** The message table of the page. */
export const useWords = (): Words => use(WordsContext);
