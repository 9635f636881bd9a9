// One set of sheets: made, empty because the project has nothing for it, or not made and why.

import type { Drawing } from '../drawing.ts';
import { withPageNumbers } from '../page-numbers.ts';
import { SheetFault } from './fault.ts';
import type { SheetJob, SheetMaker } from './job.ts';

/** What came of a set: its pages, none where the project has nothing for it; or the reasons why it was not
 * made. `input`: what was entered can't be; `no`: nothing is wrong with what was entered. */
export type MadeSheets =
  | { readonly made: true; readonly drawings: readonly Drawing[] }
  | { readonly made: false; readonly why: SheetFault['why']; readonly lines: readonly string[] };

/** Makes a set, its pages numbered. What fits no sheet, such as a very long title, is the input's doing;
 * any other error is thrown on. */
export function makeSheets({ name, make }: SheetMaker, job: SheetJob): MadeSheets {
  try {
    const drawings = make(job);
    const title = `${job.asked.title}: ${name.replaceAll('-', ' ')}`;
    return { made: true, drawings: withPageNumbers(drawings, title) };
  } catch (error) {
    if (error instanceof SheetFault) return { made: false, why: error.why, lines: error.lines };
    if (error instanceof RangeError) return { made: false, why: 'input', lines: [error.message] };
    throw error;
  }
}
