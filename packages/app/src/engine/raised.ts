// What is asked of a raising plan besides its order: where the stacks lie, bags and kit, the way in and
// out of what stands inside with the opening drawn, what may wait for the next trip.

import {
  bodyOf,
  type Gear,
  type HardwareLot,
  type HeightsOfStage,
  heightsOf,
  type InsideAnswer,
  type KitAnswer,
  kitAnswer,
  type LeftAnswer,
  placedAt,
  type RaisedShell,
  type RaisingPlan,
  type Read,
  raisedShell,
  type WaitAsked,
  type WayAnswer,
  waitAnswer,
  wayAnswer,
  type YardAnswer,
  type YardWishes,
  yardAnswer,
} from '@shellraise/core';
import { type GroundQuestion, siteOfQuestion } from './ground.ts';

/** A plan with all that is known of its shell. */
export interface RaisedQuestion extends GroundQuestion {
  readonly plan: RaisingPlan;
  readonly gear: Gear | undefined;
  readonly hardware: readonly HardwareLot[];
}

/** The yard and the kit of a plan. */
export interface YardAndKit {
  readonly yard: Read<YardAnswer>;
  readonly kit: KitAnswer;
  readonly heights: readonly HeightsOfStage[];
}

/** The yard as the lead wants it. */
export interface YardAsked extends RaisedQuestion {
  readonly wishes: YardWishes;
}

/** What may wait after a stage, as it is asked. */
export interface WaitAskedOf extends RaisedQuestion {
  readonly asked: WaitAsked;
}

/** What may wait, without what can't be copied between threads. */
export type WaitTold = Omit<LeftAnswer, 'leave'> & {
  readonly leave: Omit<NonNullable<LeftAnswer['leave']>, 'stage' | 'answer'> | null;
};

/** One thing inside, and where it is on its way out. */
export type ThingTold = InsideAnswer['things'][number] & {
  /** Hulls of its parts on the way, from inside to outside, stride 3; none where nothing stands yet. */
  readonly seen: readonly (readonly Float64Array[])[];
};

/** Way in and way out with what is drawn of it. */
export type WayTold = Omit<WayAnswer, 'inside'> & {
  readonly inside: Omit<InsideAnswer, 'things'> & { readonly things: readonly ThingTold[] };
};

/** Poses of a thing that are drawn at most. */
const MOST_SEEN = 7;

/** The yard and the kit; faults where the site can't be reckoned. */
export function yardAndKit({ wishes, ...question }: YardAsked): Read<YardAndKit> {
  const raised = raisedOf(question);
  if (!raised.ok) return raised;
  return {
    ok: true,
    value: {
      yard: yardAnswer(raised.value, wishes),
      kit: kitAnswer(raised.value),
      heights: heightsOf(raised.value),
    },
  };
}

/** Way in and way out: seconds for each thing inside. */
export function ways(question: RaisedQuestion, onProgress?: (part: number) => void): Read<WayTold> {
  const raised = raisedOf(question);
  if (!raised.ok) return raised;
  const { inside, ...heights } = wayAnswer(raised.value, onProgress ? { onProgress } : {});
  const shapes = new Map(raised.value.gear.inside.map(({ name, shape }) => [name, shape]));
  const things = inside.things.map((thing): ThingTold => {
    const shape = shapes.get(thing.name);
    const { motion } = thing;
    if (shape === undefined || motion.length === 0) return { ...thing, seen: [] };
    const body = bodyOf(shape);
    const step = Math.max(1, (motion.length - 1) / (MOST_SEEN - 1));
    const count = Math.min(MOST_SEEN, motion.length);
    const poses = Array.from({ length: count }, (_, i) => motion[Math.round(i * step)]);
    return { ...thing, seen: poses.flatMap((pose) => (pose ? [placedAt(body, pose)] : [])) };
  });
  return { ok: true, value: { ...heights, inside: { ...inside, things } } };
}

/** What may wait; a second or more for each of its items. */
export function mayWait(
  { asked, ...question }: WaitAskedOf,
  onProgress?: (part: number) => void,
): Read<WaitTold> {
  const raised = raisedOf(question);
  if (!raised.ok) return raised;
  const read = waitAnswer(raised.value, asked, onProgress ? { onProgress } : {});
  if (!read.ok) return read;
  const { leave, ...told } = read.value;
  if (leave === null) return { ok: true, value: { ...told, leave } };
  const { stage: _, answer: __, ...plain } = leave;
  return { ok: true, value: { ...told, leave: plain } };
}

function raisedOf(question: RaisedQuestion): Read<RaisedShell> {
  const site = siteOfQuestion(question);
  return site.ok ? { ok: true, value: raisedShell(question, site.value, question.plan) } : site;
}
