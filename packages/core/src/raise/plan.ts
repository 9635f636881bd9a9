// The raising plan as plain data: stages from the base to the last panel, what goes up in each, what
// is propped meanwhile, how far seams are tightened. Places, hubs and seams are indices of the
// standing shell; metres and seconds. An estimate and no design approval: local codes and a licensed
// engineer or rigger decide.

import type { Provenance } from '../loads/provenance.ts';
import type { SupportLine } from '../stages/supports/choose.ts';

/** How a piece comes to be one: a single panel; a group still joined in the pile; one made up on the
 * ground; a cap made up on the ground and lifted whole. */
export type PieceMade = 'panel' | 'group' | 'made up' | 'cap';

/** Work of one lift, seconds: of the whole crew, one thing after another. */
export interface LiftTime {
  /** On the ground: bolting the piece together. */
  readonly ground: number;
  /** Lifting, holding and bolting up there, props included. */
  readonly up: number;
}

/** One lift: a piece that goes up as one. */
export interface RaisingLift {
  /** Its places, ascending. */
  readonly places: readonly number[];
  readonly made: PieceMade;
  /** Hubs propped when it is let go, ascending: the state then stands. */
  readonly props: readonly number[];
  /** Props put in while it is held, before it is let go; and those that go once it has been. */
  readonly propsIn: readonly number[];
  readonly propsOut: readonly number[];
  /** Whether it closes its course. */
  readonly closes: boolean;
  /** Its highest hub over the mean of the base ring's, metres. */
  readonly height: number;
  /** Seams that it is bolted along up there (both panels in place), ascending. */
  readonly seams: readonly number[];
  /** Bolts wanted in each of `seams` before it is let go; null where nobody knows the holes. */
  readonly boltsBeforeLettingGo: readonly (number | null)[];
  readonly time: LiftTime;
}

/** What a stage does to the passes of seams; a seam is in at most one of the lists. */
export interface PassChange {
  /** Seams bolted finger-tight. */
  readonly finger: readonly number[];
  /** Seams brought from finger to snug, in the order of work: from the rim inward. */
  readonly snug: readonly number[];
  /** Seams brought from snug to final, in the order of work. */
  readonly final: readonly number[];
}

/** What a stage is: the ring that stands on the ground; a course or a part of one; the piece that
 * closes a course; a cap lifted whole; the piece left out as the way out; the last pass over all seams, with no
 * lift. */
export type StageSort = 'base' | 'course' | 'closing' | 'cap' | 'way out' | 'final pass';

/** Whether a stage may be left overnight. */
export interface LeftOvernight {
  /** `stands`: without a prop, wind not asked; `holds`, `gives way`, `unknown`: closed down, in the
   * gust asked for; `no`: it stands only by props that are moved in the work. */
  readonly verdict: 'stands' | 'holds' | 'gives way' | 'unknown' | 'no';
  /** Gust that it was asked for, and the one at which everybody would leave, m/s; null: not asked,
   * or not known. */
  readonly gust: number | null;
  readonly leave: number | null;
  /** Why, in words. */
  readonly why: string;
}

/** A stage of the plan: one card. */
export interface RaisingStage {
  /** From 1. */
  readonly number: number;
  readonly sort: StageSort;
  /** Course that its pieces belong to (their lowest), 1 at the ground. */
  readonly course: number;
  /** Each the places that go up in one lift, in the order of work: as in `lifts`. */
  readonly pieces: readonly (readonly number[])[];
  readonly lifts: readonly RaisingLift[];
  /** Places with their panels after it, ascending. */
  readonly placed: readonly number[];
  readonly pass: PassChange;
  /** Hubs propped when it is done, ascending. */
  readonly props: readonly number[];
  /** Hubs propped at some time in it that were not before, and those before that are not any more. */
  readonly propsIn: readonly number[];
  readonly propsOut: readonly number[];
  /** Whether it may be left overnight: `overnight` says why. */
  readonly stopPoint: boolean;
  readonly overnight: LeftOvernight;
  /** Sum over its lifts, and of tightening, seconds. */
  readonly time: LiftTime & { readonly tighten: number };
}

/** One hub that is held: where, by what, and from when until when. A prop, or lines in its place. */
export interface PlannedProp {
  readonly hub: number;
  /** Guys and chains that hold it in the place of a prop, with the most that each carries in all that
   * time; none: it is a prop. */
  readonly lines: readonly SupportLine[];
  /** Height of the hub over the mean of the base ring's, metres. */
  readonly height: number;
  /** Put in, or rigged, with lift `from.lift` (from 0) of stage `from.stage`, before it is let go. */
  readonly from: { readonly stage: number; readonly lift: number };
  /** May go once that lift has been let go: every state from there on stands without it; null: it
   * stays to the end. */
  readonly until: { readonly stage: number; readonly lift: number } | null;
}

/** What an order costs: see `order/cost.ts`. */
export interface OrderCost {
  /** Weighted sum, hours. */
  readonly total: number;
  /** Hours of work higher than people reach from the ground, weighted by height. */
  readonly atHeight: number;
  /** Props put in, over the whole build. */
  readonly propsMoved: number;
  /** Hours for which what stands needs props. */
  readonly exposed: number;
  /** Hours of all work. */
  readonly hours: number;
  /** Most props that stand at once. */
  readonly mostProps: number;
}

/** What the guys and chains of a plan are reckoned with. */
export interface Rigging {
  /** Gust up to which they hold, m/s: 3-second gust at the shell. */
  readonly gust: number;
  /** The most that presses on the head of the mast and pulls it sideways, N, and the part of what it
   * bears; null where no chain is used. */
  readonly mast: {
    readonly push: number;
    readonly sideways: number;
    readonly use: number | null;
  } | null;
}

/** An order of work in which every stage stands. */
export interface RaisingPlan {
  readonly stages: readonly RaisingStage[];
  readonly props: readonly PlannedProp[];
  /** What guys and chains are reckoned with; null where none hold anything. */
  readonly rigging: Rigging | null;
  /** Places left out or loose to the last, through which people leave; empty where an opening is the
   * way out. */
  readonly wayOut: readonly number[];
  readonly cost: OrderCost;
  /** Whether each stage's props were shown to be the fewest for that stage, by its number. */
  readonly fewest: readonly boolean[];
  readonly seed: number;
  /** Orders looked at. */
  readonly tried: number;
  /** What is assumed, a sentence each, and the sources that are not confirmed. */
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

/** What holds hubs: how many props, and the lines. */
export interface HeldHubs {
  readonly props: number;
  readonly lines: readonly SupportLine[];
}

/** What holds hubs when a lift (from 0) of a stage is let go, or at the end of the stage where `lift` is
 * null. `in`: only what goes in with that lift; `out`: only what may go once it has been let go. */
export function heldAtLift(
  { props }: Pick<RaisingPlan, 'props'>,
  stage: number,
  lift: number | null,
  what: 'held' | 'in' | 'out' = 'held',
): HeldHubs {
  const at = (point: { readonly stage: number; readonly lift: number }): number =>
    1e4 * point.stage + point.lift;
  // Between lifts: what may go with the last one is gone.
  const here = lift === null ? 1e4 * (stage + 1) - 0.5 : at({ stage, lift });
  const held = props.filter(({ from, until }) =>
    what === 'in'
      ? at(from) === here
      : what === 'out'
        ? until !== null && at(until) === here
        : at(from) <= here && (until === null || at(until) >= here),
  );
  return {
    props: held.filter(({ lines }) => lines.length === 0).length,
    lines: held.flatMap(({ lines }) => lines),
  };
}

/** What goes in to hold hubs in all of a stage. */
export function heldInStage(
  plan: Pick<RaisingPlan, 'props'>,
  { number, lifts }: Pick<RaisingStage, 'number' | 'lifts'>,
): HeldHubs {
  const own = lifts.map((_, lift) => heldAtLift(plan, number, lift, 'in'));
  return {
    props: own.reduce((sum, { props }) => sum + props, 0),
    lines: own.flatMap(({ lines }) => lines),
  };
}

/** What holds hubs, in words: `2 props, 3 guys and 1 chain`; empty where nothing does. */
export function heldWords({ props, lines }: HeldHubs): string {
  const count = (n: number, what: string): string[] =>
    n === 0 ? [] : [`${n} ${what}${n === 1 ? '' : 's'}`];
  const parts = [
    ...count(props, 'prop'),
    ...(['guy', 'chain'] as const).flatMap((kind) =>
      count(lines.filter((line) => line.kind === kind).length, kind),
    ),
  ];
  const last = parts.pop();
  return last === undefined ? '' : parts.length === 0 ? last : `${parts.join(', ')} and ${last}`;
}

/** How far a seam is tightened; null: not bolted. */
export type SeamPassOrNone = 'finger' | 'snug' | 'final' | null;

/** Seam → its pass once stage `number` is done, null where it is not bolted; number 0: nothing is. */
export function passAfter(
  stages: readonly RaisingStage[],
  number: number,
  seams: number,
): SeamPassOrNone[] {
  const pass = new Array<SeamPassOrNone>(seams).fill(null);
  for (const stage of stages) {
    if (stage.number > number) break;
    for (const seam of stage.pass.finger) pass[seam] = 'finger';
    for (const seam of stage.pass.snug) pass[seam] = 'snug';
    for (const seam of stage.pass.final) pass[seam] = 'final';
  }
  return pass;
}
