// The sets of sheets that were asked for: made, empty because the project has nothing for them, or not
// made and why.

import { type Drawing, makeSheets, type SheetJob, sheetMakers } from '@shellraise/core';
import { badInput, Ending } from '../ending.ts';

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
export interface MadeSets {
  readonly made: readonly MadeSet[];
  readonly missed: readonly MissedSet[];
  /** Names of sets that the file has nothing for. */
  readonly nothing: readonly string[];
}

/** What was made of what was asked for. Without `only` every set is asked for, and one that can't be
 * made is told beside the others; a set that is named ends the command where it can't be made. */
export function makeSets(job: SheetJob, only?: string): MadeSets {
  const named = only === undefined ? null : namesIn(only);
  const made: MadeSet[] = [];
  const missed: MissedSet[] = [];
  const nothing: string[] = [];
  for (const maker of sheetMakers) {
    const { name, what } = maker;
    if (named !== null && !named.includes(name)) continue;
    const set = makeSheets(maker, job);
    if (!set.made) {
      if (named !== null)
        throw new Ending(
          set.why === 'no' ? 1 : 2,
          set.lines.map((line) => `${name}: ${line}`),
        );
      missed.push({ name, why: set.lines });
    } else if (set.drawings.length > 0) made.push({ name, what, drawings: set.drawings });
    else nothing.push(name);
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
