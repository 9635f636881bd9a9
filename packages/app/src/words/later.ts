// The words of every sheet but the first, which waits for none of them: loaded with the first other sheet.

import { codesWords } from './codes.ts';
import { fitoutWords } from './fitout.ts';
import { fittingWords } from './fitting.ts';
import { groundWords } from './ground.ts';
import { groundFormWords } from './ground-forms.ts';
import { groundStabilityWords } from './ground-stability.ts';
import { hardWords } from './hard-piles.ts';
import { papersWords } from './papers.ts';
import { patternWords } from './patterns.ts';
import { placesWords } from './places.ts';
import { raisingWords } from './raising.ts';
import { recordWords } from './record.ts';
import { recordingWords } from './recording.ts';
import { shapeWords } from './shape.ts';
import { twinWords } from './twin.ts';
import { weekendWords } from './weekend.ts';
import { yardWords } from './yard.ts';

/** The table's other part in English. */
export const laterWords = {
  patterns: patternWords,
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
  codes: codesWords,
  twin: twinWords,
};
