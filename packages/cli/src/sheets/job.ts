// What the sheets of one arrangement are made from. What takes long is reckoned when the first sheet
// asks for it, and once.

import type { Drawing, Paper, SheetFacts, TakeOff } from '@shellraise/core';
import { takeOffOf } from '../commands/takeoff.ts';
import { type ChosenSite, siteOfChosen } from '../ground-site.ts';
import { type Chosen, fittedKinds } from '../job.ts';
import { lengthsIn } from '../lengths.ts';
import { keptOpenings } from '../openings.ts';
import type { LengthSystem } from '../options.ts';
import { startProgress } from '../progress.ts';
import { type Raised, raisedOf } from '../raise-job.ts';
import { assumptions } from './assumptions.ts';

/** One arrangement, and how its sheets are to look. */
export interface SheetJob {
  readonly file: string;
  readonly chosen: Chosen;
  /** Its kinds with their fitted sides. */
  readonly kinds: ReturnType<typeof fittedKinds>;
  readonly lengths: LengthSystem;
  readonly paper: Paper;
  /** Places left open on purpose, by index: no panel, seam or hub of theirs is on a sheet of the raising. */
  readonly leftOut: readonly number[];
  /** The day that the sheets bear, as 2026-05-01. */
  readonly date: string;
  /** Project, day and assumptions, under the name of a sheet. */
  readonly facts: (sheet: string) => SheetFacts;
  readonly takeOff: () => TakeOff;
  /** On its site; ends where the file's site can't be reckoned with. */
  readonly site: () => ChosenSite;
  /** With its order of work and winds; ends where there is no order. */
  readonly raised: () => Raised;
}

/** A set of sheets that is made as one, and one file of pages as PDF. */
export interface SheetMaker {
  /** Its file's name, and what `--only` takes: lower case, digits, hyphens. */
  readonly name: string;
  /** What it is, a few words. */
  readonly what: string;
  /** Its sheets in order; none where the project has nothing for them. Ends where they can't be made. */
  readonly make: (job: SheetJob) => readonly Drawing[];
}

/** How sheets are to look. */
export interface SheetLook {
  readonly lengths: LengthSystem;
  readonly paper: Paper;
  readonly date: string;
}

/** Orders of work tried, and the seed: as `shellraise raise` does where nothing else is asked for. */
const SEARCH = { tries: 200, seed: 1 };

/** The job of an arrangement. */
export function sheetJob(file: string, chosen: Chosen, look: SheetLook): SheetJob {
  const assumes = assumptions(chosen, lengthsIn(look.lengths));
  return {
    file,
    chosen,
    kinds: fittedKinds(chosen),
    ...look,
    leftOut: keptOpenings(chosen),
    facts: (sheet) => ({ project: chosen.loaded.title, sheet, date: look.date, assumes }),
    takeOff: once(() => takeOffOf(chosen)),
    site: once(() => siteOfChosen(file, chosen)),
    raised: once(() => {
      const progress = startProgress();
      try {
        return raisedOf(file, chosen, { ...SEARCH, progress });
      } finally {
        progress.stop();
      }
    }),
  };
}

/** The value, made at the first call; an ending is thrown again at each. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | { readonly error: unknown } | null = null;
  return () => {
    if (made === null)
      try {
        made = { value: make() };
      } catch (error) {
        made = { error };
      }
    if ('error' in made) throw made.error;
    return made.value;
  };
}
