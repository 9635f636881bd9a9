// What the sheets of one standing shell are made from. What takes long is reckoned when the first set asks
// for it, and once; what can't be reckoned throws a `SheetFault` at each.

import { handsAtPiece, raiseFacts } from '../../crew/raise-facts.ts';
import type { RaiseFacts } from '../../crew/raise-task.ts';
import { defaultGround, type GroundSettings } from '../../ground/schema.ts';
import { planRaising } from '../../raise/order/raise.ts';
import type { RaisingPlan } from '../../raise/plan.ts';
import { raisedShell } from '../../raise/raised/of-facts.ts';
import type { RaisedShell } from '../../raise/raised/raised.ts';
import { raisingBrief } from '../../raise/shell-brief.ts';
import { type StageWinds, stageWinds } from '../../raise/winds.ts';
import { type BaseShims, baseShims } from '../../stages/base-shims.ts';
import { seamFacts, siteOfFacts } from '../../stages/shell-facts.ts';
import type { Site } from '../../stages/site.ts';
import { defaultTakeoff } from '../../takeoff/schema.ts';
import { type TakeOff, takeOff } from '../../takeoff/take-off.ts';
import type { Drawing } from '../drawing.ts';
import type { SheetFacts } from '../flat-plan-sheet.ts';
import { noLines, readOr, SheetFault } from './fault.ts';
import type { PaperQuestion } from './question.ts';

/** The shell on its site, with what was entered of the ground. */
export interface SheetSite extends BaseShims {
  readonly site: Site;
  readonly ground: GroundSettings;
}

/** The shell with its order of work. */
export interface SheetRaised {
  readonly site: Site;
  readonly plan: RaisingPlan;
  readonly winds: readonly StageWinds[];
  /** Thread of a seam's bolts; null where nobody knows. */
  readonly threadOf: (seam: number) => string | null;
  readonly facts: RaiseFacts;
  readonly shell: RaisedShell;
}

/** What makers make sheets from. */
export interface SheetJob {
  readonly asked: PaperQuestion;
  /** Project, day and assumptions, under the name of a sheet. */
  readonly facts: (sheet: string) => SheetFacts;
  readonly takeOff: () => TakeOff;
  readonly site: () => SheetSite;
  readonly raised: () => SheetRaised;
}

/** A set of sheets that is made as one, and one file of pages as PDF. */
export interface SheetMaker {
  /** Lower case, digits, hyphens. */
  readonly name: string;
  /** What it is, a few words. */
  readonly what: string;
  /** Whether it takes an order of work. */
  readonly ordered?: boolean;
  /** Its sheets in order; none where the project has nothing for them. Throws a `SheetFault` where they
   * can't be made, a RangeError where words fit no sheet. */
  readonly make: (job: SheetJob) => readonly Drawing[];
}

/** How an order of work is sought where none is found yet. */
export interface SheetSearch {
  readonly tries: number;
  readonly seed: number;
  /** Told how far it is, 0 … 1. */
  readonly onProgress?: (part: number) => void;
}

/** The job of a shell. */
export function sheetJob(asked: PaperQuestion, search: SheetSearch): SheetJob {
  const { title, date, assumes } = asked;
  const site = once(() => readOr(siteOfFacts(asked)));
  return {
    asked,
    facts: (sheet) => ({ project: title, sheet, date, assumes }),
    takeOff: once(() => {
      const { shell, kinds, hardware, takeoff = defaultTakeoff, holes = [] } = asked;
      return takeOff(shell, kinds, hardware, takeoff, holes);
    }),
    site: once(() => {
      const ground = asked.ground ?? defaultGround;
      return { site: site(), ground, ...readOr(baseShims(site().base, ground)) };
    }),
    raised: once(() => raisedOf(asked, site(), search)),
  };
}

function raisedOf(asked: PaperQuestion, site: Site, search: SheetSearch): SheetRaised {
  const plan = asked.plan ?? planOf(asked, site, search);
  const winds = readOr(stageWinds(site.stages, plan));
  return {
    ...{ site, plan, winds },
    threadOf: seamFacts(asked).thread,
    facts: raiseFacts(asked, site, plan, winds),
    shell: raisedShell(asked, site, plan),
  };
}

function planOf(
  asked: PaperQuestion,
  site: Site,
  { tries, seed, onProgress }: SheetSearch,
): RaisingPlan {
  const brief = readOr(raisingBrief({ ...asked, hands: handsAtPiece(asked.crew) }, site));
  const read = planRaising(brief, {
    ...{ tries, seed },
    onProgress: (tried, of) => onProgress?.(tried / of),
  });
  if (read.ok) return read.value;
  throw new SheetFault('no', noLines(read.faults));
}

/** The value, made at the first call; what was thrown is thrown again at each. */
export function once<T>(make: () => T): () => T {
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
