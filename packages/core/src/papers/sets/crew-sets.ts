// What the crew fills in, packs, buys and reads aloud: tallies, record on paper, kit, buy list, lift cards.

import { kitAnswer } from '../../raise/raised/kit.ts';
import { liftsOfStages } from '../../raise/raised/lifts.ts';
import { twinLines } from '../../record/twin.ts';
import { buySheets, kitSheets } from '../kit-sheets.ts';
import { liftCardSheets } from '../lift-card-sheets.ts';
import { tallySheets } from '../tally-sheets.ts';
import { twinSheets } from '../twin-sheets.ts';
import type { SheetMaker } from './job.ts';
import { planNames } from './label-sets.ts';

/** The makers. */
export const crewMakers: readonly SheetMaker[] = [
  {
    name: 'tally',
    what: 'rows to measure panels with a pencil',
    make: ({ asked: { kinds, paper, lengths }, facts }) =>
      tallySheets(kinds, facts('Tally'), { paper, lengths }),
  },
  {
    name: 'record-on-paper',
    what: 'a line for every panel, seam and hub, to tick',
    make: ({ asked, facts }) =>
      twinSheets(twinLines(planNames(asked), asked.leftOut), facts('Record'), {
        paper: asked.paper,
      }),
  },
  {
    name: 'kit',
    what: 'kit and tools, whole and by stage',
    ordered: true,
    make: ({ raised, facts, asked: { paper } }) =>
      kitSheets(kitAnswer(raised().shell), facts('Kit and tools'), { paper }),
  },
  {
    name: 'buy-list',
    what: 'what to buy, by shop, and before which stage',
    ordered: true,
    make: ({ raised, facts, asked: { paper } }) => {
      const { buy, bags } = kitAnswer(raised().shell);
      return buySheets(buy, facts('Buy list'), { paper, unknown: bags.unknown });
    },
  },
  {
    name: 'lift-cards',
    what: 'what is said and done before a piece leaves the ground',
    ordered: true,
    make: ({ raised, facts, asked: { paper, lengths } }) =>
      liftCardSheets(liftsOfStages(raised().shell), facts('Lift card'), { paper, lengths }),
  },
];
