// Every set of sheets that `shellraise papers` makes, in the order in which they are told and written.
// A new set is a maker in this list.

import { bookMakers } from './book-sheets.ts';
import { crewMakers } from './crew-sheets.ts';
import { fitoutMakers } from './fitout-sheets.ts';
import { groundSheets } from './ground-sheets.ts';
import { handOverMakers } from './hand-over-sheets.ts';
import type { SheetMaker } from './job.ts';
import { labelMakers } from './label-sheets.ts';
import { shellSheets } from './shell-sheets.ts';

/** The makers. */
export const sheetMakers: readonly SheetMaker[] = [
  ...shellSheets,
  ...groundSheets,
  ...bookMakers,
  ...labelMakers,
  ...crewMakers,
  ...handOverMakers,
  ...fitoutMakers,
];
