// The message table: every text that people see. Another language is another table of this form.

import { createContext, use } from 'react';
import { codesWords } from './codes.ts';
import { fitoutWords } from './fitout.ts';
import { fittingWords } from './fitting.ts';
import { frameWords } from './frame.ts';
import { groundWords } from './ground.ts';
import { groundFormWords } from './ground-forms.ts';
import { groundStabilityWords } from './ground-stability.ts';
import { hardWords } from './hard-piles.ts';
import { papersWords } from './papers.ts';
import { patternWords } from './patterns.ts';
import { pileWords } from './pile.ts';
import { placesWords } from './places.ts';
import { raisingWords } from './raising.ts';
import { recordWords } from './record.ts';
import { recordingWords } from './recording.ts';
import { shapeWords } from './shape.ts';
import { sharingWords } from './sharing.ts';
import { twinWords } from './twin.ts';
import { weekendWords } from './weekend.ts';
import { yardWords } from './yard.ts';

/** The table in English. */
export const english = {
  frame: frameWords,
  patterns: patternWords,
  pile: pileWords,
  shape: shapeWords,
  hard: hardWords,
  places: placesWords,
  fitting: fittingWords,
  fitout: fitoutWords,
  papers: papersWords,
  ground: groundWords,
  groundForms: groundFormWords,
  groundStability: groundStabilityWords,
  raising: raisingWords,
  weekend: weekendWords,
  yard: yardWords,
  record: recordWords,
  recording: recordingWords,
  sharing: sharingWords,
  codes: codesWords,
  twin: twinWords,
};

/** A message table. */
export type Words = typeof english;

const WordsContext = createContext<Words>(english);

/** Gives the page its language. */
export const WordsProvider = WordsContext.Provider;

/** The message table of the page. */
export const useWords = (): Words => use(WordsContext);
