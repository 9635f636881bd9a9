// What the Raising sheet asks: an order of work in which every stage stands, one stage in full with its
// winds and its lifts, and what an order changed by hand breaks. Places, hubs and seams by index.

import {
  checkOrder,
  type Gear,
  type HolesOff,
  holesOff,
  type Lift,
  type LiftCard,
  liftCard,
  needsCard,
  noGear,
  type OrderBreak,
  type OrderedLift,
  passAfter,
  pieceLifter,
  planRaising,
  type RaiseAsked,
  type RaisingBrief,
  type RaisingPlan,
  type RaisingStage,
  type Read,
  raisingBrief,
  type StageAnswer,
  type StageHeights,
  seamFacts,
  siteFor,
  stageAnswer,
  stageHeights,
  tightestLift,
} from '@shellraise/core';
import { siteOfQuestion } from './ground.ts';

/** A shell to be raised, with what the lead has fixed. */
export interface RaisingQuestion extends RaiseAsked {
  readonly hands: number;
}

/** How far the search is. */
export interface RaisingProgress {
  readonly tried: number;
  readonly tries: number;
}

/** Orders tried at most, and how long they may take, milliseconds: on a slow phone the best so far. */
const TRIES = 1200;
const MOST_TIME = 48_000;

/** The plan; `onPlan` is told of the first that stands, `onProgress` how far the search for a better one
 * is. Faults where the shell can't be raised so. */
export function raisingPlan(
  question: RaisingQuestion,
  onProgress?: (progress: RaisingProgress) => void,
  onPlan?: (plan: RaisingPlan) => void,
): Read<RaisingPlan> {
  const brief = briefOf(question);
  if (!brief.ok) return brief;
  const until = performance.now() + MOST_TIME;
  let told = 0;
  return planRaising(brief.value, {
    tries: TRIES,
    shouldStop: () => performance.now() > until,
    onPlan: (plan) => onPlan?.(plan),
    onProgress: (tried, tries) => {
      if (performance.now() - told < 150) return;
      told = performance.now();
      onProgress?.({ tried, tries });
    },
  });
}

function briefOf(question: RaisingQuestion): Read<RaisingBrief> {
  const site = siteOfQuestion(question);
  return raisingBrief(question, site.ok ? site.value : null);
}

// --- one stage ---

/** One stage of a plan. */
export interface RaisingStageQuestion extends RaiseAsked {
  readonly plan: readonly RaisingStage[];
  readonly number: number;
}

/** How one piece is lifted. */
export interface LiftFacts {
  readonly places: readonly number[];
  /** kg; null where unknown. */
  readonly mass: number | null;
  /** m². */
  readonly area: number;
  /** Height of its highest hub over the ground, metres. */
  readonly high: number;
  /** The way that does, what it stands on or is called, and the people at the piece; null: none does. */
  readonly way: {
    readonly by: 'hands' | 'gin pole' | 'lift';
    readonly name: string;
    readonly people: number | null;
    /** Gust over which it stops, m/s. */
    readonly gust: number;
    readonly why: readonly string[];
  } | null;
  readonly leastChange: string;
  readonly needsCard: boolean;
  /** Its lift card; null where it needs none, or nothing lifts it. */
  readonly card: LiftCard | null;
  /** Each hand's share against what the lifting equation recommends; Infinity where it allows none,
   * null where it says nothing. */
  readonly index: number | null;
}

/** A stage in full. */
export interface RaisingStageDetail {
  readonly number: number;
  /** The state when it is done: how it stands and when work stops. */
  readonly answer: StageAnswer;
  readonly lifts: readonly LiftFacts[];
  readonly heights: StageHeights;
  /** What to do where the holes of its tightest lift (from 0) will not meet; null where nothing is lifted. */
  readonly holesOff: (HolesOff & { readonly lift: number }) | null;
}

/** One stage in full; faults where nothing can be said of its wind. */
export function raisingStage(question: RaisingStageQuestion): Read<RaisingStageDetail> {
  const site = siteOfQuestion(question);
  if (!site.ok) return site;
  const { shell, plan, number, gear = noGear } = question;
  const stage = plan.find((one) => one.number === number);
  if (!stage) throw new RangeError(`stage ${number}: the plan has 1 to ${plan.length}`);
  const pass = passAfter(plan, number, shell.seams.length / 2);
  const answer = stageAnswer(
    site.value.stages,
    { placed: stage.placed, props: stage.props, pass: (seam) => pass[seam] ?? null },
    { strength: false, sets: 60 },
  );
  if (!answer.ok) return answer;
  const lift = pieceLifter(question);
  const lifts = stage.pieces.map(lift);
  const ground = shell.hubs.reduce((low, z, i) => (i % 3 === 2 ? Math.min(low, z) : low), 0);
  return {
    ok: true,
    value: {
      number,
      answer: answer.value,
      lifts: lifts.map((one) => factsOf(one, gear)),
      heights: stageHeights(lifts, gear, { radius: shell.radius, ground }),
      holesOff: holesOffOf(question, stage),
    },
  };
}

function holesOffOf(
  asked: RaisingStageQuestion,
  stage: RaisingStage,
): RaisingStageDetail['holesOff'] {
  const lift = tightestLift(stage);
  if (lift < 0) return null;
  const { shell, numbers, plan } = asked;
  const question = { shell, numbers, plan: { stages: plan }, threadOf: seamFacts(asked).thread };
  return { lift, ...holesOff(question, stage.number, lift) };
}

function factsOf(lift: Lift, gear: Gear): LiftFacts {
  const { piece, best, leastChange } = lift;
  return {
    places: piece.places,
    mass: piece.unweighed.length > 0 ? null : piece.mass,
    area: piece.area,
    high: piece.high,
    way: best && {
      by: best.by,
      name: best.name,
      people: best.people,
      gust: best.gustLimit.value,
      why: best.why,
    },
    leastChange,
    needsCard: needsCard(lift, gear),
    card: liftCard(lift, gear),
    index: best?.index ?? null,
  };
}

// --- an order changed by hand ---

/** An order to be checked: its lifts with the props that are planned for them. */
export interface RaisingCheckQuestion extends RaisingQuestion {
  readonly lifts: readonly OrderedLift[];
}

/** The first thing that an order breaks, and pins that it does not keep; nothing: every state stands. */
export function raisingCheck(question: RaisingCheckQuestion): Read<readonly OrderBreak[]> {
  const brief = briefOf(question);
  if (!brief.ok) return brief;
  const site = siteFor(brief.value);
  if (!site.ok) return site;
  return {
    ok: true,
    value: checkOrder(site.value, question.lifts, brief.value.pins, { firstOnly: true }),
  };
}
