// The sets of sheets that were asked for: made, empty because the project has nothing for them, or not
// made and why.

import { type Drawing, withPageNumbers } from '@shellraise/core';
import { badInput, Ending } from '../ending.ts';
import type { SheetJob } from './job.ts';
import { sheetMakers } from './list.ts';

/** A set that was made. */
export interface MadeSet {
  readonly name: string;
  readonly what: string;
  readonly drawings: readonly Drawing[];
}

/** A set that could not be made, with the reasons. */
export interface MissedSet {
  readonly name: string;
  readonly why: readonly string[];
}

/** What came of the sets. */
export interface MadeSheets {
  readonly made: readonly MadeSet[];
  readonly missed: readonly MissedSet[];
  /** Names of sets that the file has nothing for. */
  readonly nothing: readonly string[];
}

/** What was made of what was asked for. Without `only` every set is asked for, and one that can't be
 * made is told beside the others; a set that is named ends the command where it can't be made. */
export function makeSheets(job: SheetJob, only?: string): MadeSheets {
  const named = only === undefined ? null : namesIn(only);
  const { title } = job.chosen.loaded;
  const made: MadeSet[] = [];
  const missed: MissedSet[] = [];
  const nothing: string[] = [];
  for (const { name, what, make } of sheetMakers) {
    if (named !== null && !named.includes(name)) continue;
    try {
      const drawings = make(job);
      if (drawings.length > 0)
        made.push({
          name,
          what,
          drawings: withPageNumbers(drawings, `${title}: ${name.replaceAll('-', ' ')}`),
        });
      else nothing.push(name);
    } catch (error) {
      // What fits no sheet is the file's doing: its title, its names.
      const lines = error instanceof RangeError ? [error.message] : null;
      if (named !== null && lines !== null)
        throw badInput(...lines.map((line) => `${name}: ${line}`));
      if (named !== null || !(lines !== null || error instanceof Ending)) throw error;
      missed.push({ name, why: lines ?? (error as Ending).lines });
    }
  }
  return { made, missed, nothing };
}

/** Name of the lists among the sets. */
export const LISTS = 'lists';

/** The names, each known. Ends the command where one is not. */
export function namesIn(only: string): readonly string[] {
  const names = only.split(',').map((name) => name.trim());
  const known = [...sheetMakers.map(({ name }) => name), LISTS];
  for (const name of names)
    if (!known.includes(name))
      throw badInput(`--only: found "${name}", expected some of ${known.join(', ')}`);
  return names;
}
