// Every set of sheets, in the order in which they are told and written. A new set is a maker in this list.

import { bookMakers } from './book-sets.ts';
import { crewMakers } from './crew-sets.ts';
import { fitoutMakers } from './fitout-sets.ts';
import { groundMakers } from './ground-sets.ts';
import { handOverMakers } from './hand-over-sets.ts';
import type { SheetMaker } from './job.ts';
import { labelMakers } from './label-sets.ts';
import { shellMakers } from './shell-sets.ts';

/** The makers. */
export const sheetMakers: readonly SheetMaker[] = [
  ...shellMakers,
  ...groundMakers,
  ...bookMakers,
  ...labelMakers,
  ...crewMakers,
  ...handOverMakers,
  ...fitoutMakers,
];
