// What sheets of a small shell are asked for: fifteen panels, every section of the project left out. In
// `npm run soak` SHELLRAISE_SHEETS is the frequency of a larger one: 4 gives 240.

import type { PaperQuestion } from '../../src/papers/sets/question.ts';
import { standing } from './standing.ts';

const { shell, kinds, numbers } = standing(
  {
    solid: 'icosahedron',
    b: Number(process.env.SHELLRAISE_SHEETS ?? 1),
    c: 0,
    division: 'equal chords',
  },
  -0.5,
  2,
);

/** The question; `more` replaces parts of it. */
export const askedOfSmall = (more: Partial<PaperQuestion> = {}): PaperQuestion => ({
  ...{ shell, numbers, kinds },
  title: 'Hollow by the weir',
  date: '2026-05-14',
  assumes: 'Nothing.',
  which: '',
  leftOut: [],
  painted: false,
  ...{ paper: 'A4', lengths: 'metric' },
  holes: [],
  hardware: [],
  plan: null,
  windFrom: null,
  ...{ loads: undefined, ground: undefined, parts: undefined, stages: undefined },
  ...{ takeoff: undefined, gear: undefined, crew: undefined, raising: undefined },
  ...{ fitout: undefined, storage: undefined },
  ...more,
});
