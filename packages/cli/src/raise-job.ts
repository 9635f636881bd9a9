// The raising plan of the chosen shell, with the winds of its stages: what the raise command works on.

import {
  type CrewSettings,
  defaultCrew,
  defaultRaising,
  type Gear,
  leadFixed,
  liftOf,
  MOST_TEAM,
  noGear,
  pieceModel,
  pieceOf,
  placeMasses,
  plainBrief,
  planRaising,
  type RaisingBrief,
  type RaisingPlan,
  type ShellSite,
  type StageWinds,
  seamBolts,
  stageWinds,
  type WeekendQuestion,
} from '@shellraise/core';
import { Ending } from './ending.ts';
import { type ChosenSite, orEnd, siteOfChosen } from './ground-site.ts';
import { type Chosen, fittedKinds } from './job.ts';
import { keptOpenings } from './openings.ts';
import type { Progress } from './progress.ts';

/** A shell with its plan. */
export interface Raised {
  readonly chosen: Chosen;
  readonly site: ChosenSite;
  readonly brief: RaisingBrief;
  readonly plan: RaisingPlan;
  readonly winds: readonly StageWinds[];
  readonly gear: Gear;
  /** Thread of a seam's bolts; null where nobody knows. */
  readonly threadOf: (seam: number) => string | null;
  /** What the weekend is planned from. */
  readonly question: WeekendQuestion;
}

/** How the plan is sought. */
export interface RaisedOptions {
  readonly tries: number;
  readonly seed: number;
  readonly progress: Progress;
}

/** The plan of the chosen shell by what its file says. Ends the command where there is none. */
export function raisedOf(file: string, chosen: Chosen, options: RaisedOptions): Raised {
  const { project, takeoff, holes } = chosen.loaded;
  const { shell } = chosen.standing;
  const numbers = chosen.numbers.numbers;
  const site = siteOfChosen(file, chosen);
  const gear = project?.gear ?? noGear;
  const bolts = seamBolts(shell, fittedKinds(chosen), takeoff, holes);
  const holesOf = (seam: number): number | null => {
    const one = bolts[seam];
    return one?.status === 'known' ? one.pattern.holes : null;
  };
  const threadOf = (seam: number): string | null => {
    const one = bolts[seam];
    return one?.status === 'known' ? one.pattern.thread : null;
  };
  const massOf = placeMasses(shell, chosen.kinds, site.loads.panelMass);
  const model = pieceModel(shell, numbers, massOf);
  const hands = handsOf(project?.crew ?? defaultCrew);
  const lift = (places: readonly number[]) =>
    liftOf(pieceOf(model, places), gear, { gust: null, hands });
  const lead = orEnd(file, leadFixed(project?.raising ?? defaultRaising, shell, numbers));
  const plain = plainBrief(shell);
  const brief: RaisingBrief = {
    ...plain,
    openings: keptOpenings(chosen),
    groups: lead.groups,
    wayOut: lead.wayOut,
    pins: lead.pins,
    order: lead.order,
    holes: holesOf,
    model: site.site.stages,
    makeUp: { mayLift: (places) => lift(places).best !== null, highest: plain.rates.reach },
    mayLiftCap:
      gear.lifts.length === 0 && gear.ginPole === null
        ? null
        : (places) => lift(places).ways.some(({ by, can }) => by !== 'hands' && can),
  };
  const read = planRaising(brief, {
    seed: options.seed,
    tries: options.tries,
    onProgress: (tried, tries) => options.progress.update((0.6 * tried) / tries, 'order of work'),
  });
  if (!read.ok)
    throw new Ending(
      1,
      read.faults.map(({ path, found, expected }) => `${path}: ${found}; expected ${expected}`),
    );
  options.progress.update(0.6, 'wind of the stages');
  const winds = windsOf(file, site.site, read.value);
  const { anchors } = site.site;
  return {
    chosen,
    site,
    brief,
    plan: read.value,
    winds,
    gear,
    threadOf,
    question: {
      shell,
      numbers,
      plan: read.value,
      holes: holesOf,
      massOf,
      gear,
      crew: project?.crew ?? defaultCrew,
      winds,
      anchors: anchors.ok ? anchors.value.hubs.reduce((sum, { count }) => sum + count, 0) : null,
    },
  };
}

const windsOf = (file: string, { stages }: ShellSite, plan: RaisingPlan): StageWinds[] =>
  orEnd(file, stageWinds(stages, plan));

/** People who can be at one piece on the day with the fewest, besides two who bolt and one who calls. */
function handsOf(crew: CrewSettings): number {
  const planned = crew.dates.map((date) => {
    const there = crew.people.filter(({ shifts }) => shifts.some((one) => one.date === date));
    const sure = there.filter((one) => one.sure).length;
    return sure + Math.round((1 - crew.noShow) * (there.length - sure));
  });
  return planned.length === 0 ? MOST_TEAM : Math.max(1, Math.min(...planned) - 3);
}
