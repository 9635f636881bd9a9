// What the days of a raising plan are asked: the weekend with its odds, what to do now, how to meet a
// storm. The winds of all stages are reckoned once for a plan.

import {
  type CrewSettings,
  type Gear,
  type Here,
  type NowAnswer,
  nowPlan,
  type RaisingPlan,
  type Read,
  type RecordedWork,
  raiseFacts,
  type StageWinds,
  type StormAnswer,
  stageWinds,
  stormPlan,
  type Weekend,
  type WeekendOptions,
  type WeekendQuestion,
  weekendPlan,
} from '@shellraise/core';
import { type GroundQuestion, siteOfQuestion } from './ground.ts';
import { keepLast } from './keep-last.ts';
import { siteKey } from './site-key.ts';

/** A plan with the people who come. */
export interface WeekendAsked extends GroundQuestion {
  readonly gear: Gear | undefined;
  readonly crew: CrewSettings | undefined;
  readonly plan: RaisingPlan;
  /** Work of this crew as its record shows it. */
  readonly observed?: readonly RecordedWork[];
  /** How it is planned; the usual tries, runs and changes where left out. */
  readonly how?: Omit<WeekendOptions, 'onProgress'>;
}

/** First odds, after a few hundred runs of a schedule that was hardly improved. */
export const FIRST_ODDS = { tries: 40, runs: 400, changes: [] } as const;

/** What changes of one's own are asked with: the whole plan, fewer runs. */
export const OWN_CHANGES = { runs: 2000, whatIfRuns: 2000 } as const;

/** The same with who is here and what stands. */
export interface NowAsked extends WeekendAsked {
  readonly here: Here;
}

/** The same with a storm: hours until it is here, and its gusts, m/s; null: by the forecast. */
export interface StormAsked extends NowAsked {
  readonly hours: number;
  readonly stormGust: number | null;
}

/** The weekend; faults where it can't be planned. */
export function weekend(
  { how, ...question }: WeekendAsked,
  onProgress?: (done: number) => void,
): Read<Weekend> {
  const facts = factsOf(question);
  if (!facts.ok) return facts;
  return weekendPlan(facts.value, { ...how, ...(onProgress && { onProgress }) });
}

/** What to do now. */
export function now(question: NowAsked): Read<NowAnswer> {
  const facts = factsOf(question);
  return facts.ok ? nowPlan({ ...facts.value, here: question.here }) : facts;
}

/** How to meet a storm. */
export function storm({ here, hours, stormGust, ...question }: StormAsked): Read<StormAnswer> {
  const facts = factsOf(question);
  return facts.ok ? stormPlan({ ...facts.value, here, hours, stormGust }) : facts;
}

function factsOf(question: WeekendAsked): Read<WeekendQuestion> {
  const site = siteOfQuestion(question);
  if (!site.ok) return site;
  const winds = windsOf(question);
  if (!winds.ok) return winds;
  const { plan, observed } = question;
  const facts = raiseFacts(question, site.value, plan, winds.value);
  return { ok: true, value: { ...facts, ...(observed && { observed }) } };
}

const windsOf = keepLast(
  (question: WeekendAsked) => `${siteKey(question)} ${JSON.stringify(question.plan.stages)}`,
  (question: WeekendAsked): Read<StageWinds[]> => {
    const site = siteOfQuestion(question);
    return site.ok ? stageWinds(site.value.stages, question.plan) : site;
  },
);
