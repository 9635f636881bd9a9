// What the crew fills in, packs, buys and reads aloud: tallies, record on paper, kit, buy list, lift cards.

import {
  buySheets,
  kitAnswer,
  kitSheets,
  liftCardSheets,
  liftsOfStages,
  tallySheets,
  twinLines,
  twinSheets,
} from '@shellraise/core';
import { raisedShell } from '../raised-parts.ts';
import type { SheetMaker } from './job.ts';
import { planOf } from './label-sheets.ts';

/** The makers. */
export const crewMakers: readonly SheetMaker[] = [
  {
    name: 'tally',
    what: 'rows to measure panels with a pencil',
    make: ({ kinds, facts, paper, lengths }) =>
      tallySheets(kinds, facts('Tally'), { paper, lengths }),
  },
  {
    name: 'record-on-paper',
    what: 'a line for every panel, seam and hub, to tick',
    make: (job) =>
      twinSheets(twinLines(planOf(job), job.leftOut), job.facts('Record'), { paper: job.paper }),
  },
  {
    name: 'kit',
    what: 'kit and tools, whole and by stage',
    make: ({ raised, facts, paper }) =>
      kitSheets(kitAnswer(raisedShell(raised())), facts('Kit and tools'), { paper }),
  },
  {
    name: 'buy-list',
    what: 'what to buy, by shop, and before which stage',
    make: ({ raised, facts, paper }) => {
      const { buy, bags } = kitAnswer(raisedShell(raised()));
      return buySheets(buy, facts('Buy list'), { paper, unknown: bags.unknown });
    },
  },
  {
    name: 'lift-cards',
    what: 'what is said and done before a piece leaves the ground',
    make: ({ raised, facts, paper, lengths }) =>
      liftCardSheets(liftsOfStages(raisedShell(raised())), facts('Lift card'), { paper, lengths }),
  },
];
