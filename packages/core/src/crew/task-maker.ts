// Makes the tasks of a raising plan one by one: what each is of work, hands, gear and wind.

import type { Gear } from '../raise/gear.ts';
import { needsCard } from '../raise/lifts/card.ts';
import type { Lift, LiftWay } from '../raise/lifts/lift.ts';
import { type Foothold, REACH as HANDS } from '../raise/lifts/reach.ts';
import { commonRates } from '../raise/order/rates.ts';
import { heldAtLift, heldWords, type RaisingLift, type RaisingStage } from '../raise/plan.ts';
import { baseRing } from '../shell/rims.ts';
import type { Shell } from '../shell/shell.ts';
import { HANDLING_LIMITS } from '../stages/stop-work.ts';
import { durationOf, type WorkAmount } from './durations.ts';
import type { RaiseFacts, RaiseTask } from './raise-task.ts';
import { type CrewRates, SETTLED, type Work } from './rates.ts';
import { type Task, taskOf } from './task.ts';

/** People who bolt at a lift, one inside and one outside, and who hold the piece where nobody knows how
 * heavy it is. */
const BOLTERS = 2;
const LIFTERS_UNKNOWN = 2;

/** Anchors that one pair sets as a task. */
const ANCHORS_A_TASK = 5;

/** Bolts of a tightening task at most, so that several pairs can be at it. */
const MOST_BOLTS = 160;

/** What a task is put together from. */
interface Piecework {
  readonly own: RaisingLift;
  readonly lift: Lift;
  readonly after: readonly string[];
  /** Panels that stand before it. */
  readonly panels: number;
}

/** What makes the tasks of these facts with these rates; `stands`: what hands may stand on, by height. */
export function taskMaker(facts: RaiseFacts, rates: CrewRates, stands: readonly Foothold[]) {
  const { crew, winds, holes } = facts;
  const handling = HANDLING_LIMITS[0]?.gust ?? null;
  const windsOf = new Map(winds.map((one) => [one.stage, one]));
  const boltsIn = (seams: readonly number[]): number =>
    seams.reduce((sum, seam) => sum + (holes(seam) ?? commonRates.boltsUnknown), 0);
  const amountOf = (
    counts: Partial<Record<Work, number>>,
    height = 0,
    panelsBefore = 0,
  ): WorkAmount => ({ counts, height, panelsBefore });
  const task = (
    given: Pick<RaiseTask, 'id' | 'what' | 'sort' | 'stage'> &
      Partial<RaiseTask> & { readonly amount: WorkAmount; readonly people: number },
  ): RaiseTask => ({
    lift: null,
    places: [],
    ...given,
    ...taskOf({ ...given, duration: durationOf(rates, given.amount, given.people) }),
    sort: given.sort,
  });
  // Bolts and plates are learnt with the first panels: work beside the lifts is reckoned as settled.
  const settled = SETTLED;
  const standAt = (height: number): Foothold | null =>
    height <= HANDS.up.value
      ? null
      : (stands.find((one) => one.hands >= height - 1e-9) ?? stands.at(-1) ?? null);
  /** What work at a height needs: people who climb, and what they stand on. */
  const atHeight = (height: number): Partial<Task> => {
    const stand = standAt(height);
    return {
      atHeight: height > HANDS.up.value,
      climbers: height > HANDS.up.value ? 1 : 0,
      gear: stand === null || stand.kind === 'ground' ? {} : { [stand.name]: 1 },
    };
  };
  const anchorCount = facts.anchors ?? baseRing(facts.shell)?.hubs.length ?? 0;
  const anchorTasks = (): string[] =>
    Array.from(
      { length: Math.max(1, Math.round(anchorCount / ANCHORS_A_TASK)) },
      (_, k) => `anchors ${k + 1}`,
    );
  return {
    ground(): RaiseTask[] {
      const hubs = baseRing(facts.shell)?.hubs.length ?? 0;
      const anchors = anchorCount;
      const parts = Math.max(1, Math.round(anchors / ANCHORS_A_TASK));
      return [
        task({
          id: 'stake out',
          what: `Stake out and level the ground for ${hubs} base hubs`,
          sort: 'stake out',
          stage: 0,
          amount: amountOf({ base: hubs }),
          people: 2,
          usefulPeople: 6,
          shared: 0.8,
          priority: 1,
          pauses: true,
        }),
        ...Array.from({ length: parts }, (_, k) => {
          const own = Math.floor(((k + 1) * anchors) / parts) - Math.floor((k * anchors) / parts);
          return task({
            id: `anchors ${k + 1}`,
            what: `Set ${own} anchors and tie the base to them, part ${k + 1} of ${parts}`,
            sort: 'anchors',
            stage: 0,
            after: ['stake out'],
            amount: amountOf({ anchor: own }),
            people: 2,
            usefulPeople: 4,
            shared: 1,
            pauses: true,
          });
        }),
      ];
    },
    ofLift(stage: RaisingStage, i: number, { own, lift, after, panels }: Piecework) {
      const number = `${stage.number}.${i + 1}`;
      const named = namesOf(facts.numbers, own.places);
      const tasks: RaiseTask[] = [];
      const inner = boltsIn(innerSeams(facts.shell, own.places));
      const above: string[] = [...after];
      const common = { stage: stage.number, lift: i, places: own.places } as const;
      if (inner > 0 && own.made !== 'group') {
        above.push(`make up ${number}`);
        tasks.push(
          task({
            ...common,
            id: `make up ${number}`,
            what: `Make up ${named} on the ground: ${inner} bolts, snug`,
            sort: 'make up',
            amount: amountOf({ bolt: inner, tighten: inner }, 0, settled),
            people: 2,
            usefulPeople: 4,
            shared: 1,
            gustLimit: handling,
            pauses: true,
          }),
        );
      }
      const first = own.seams.reduce(
        (sum, seam, k) => sum + Math.min(own.boltsBeforeLettingGo[k] ?? 2, holes(seam) ?? 2),
        0,
      );
      const rest = Math.max(0, boltsIn(own.seams) - first);
      const needs = liftNeeds(lift, facts.gear, standAt(lift.piece.high));
      const held = heldWords(heldAtLift(facts.plan, stage.number, i, 'in'));
      const limits = [
        lift.best?.gustLimit.value,
        windsOf.get(stage.number - 1)?.stopWork,
        windsOf.get(stage.number)?.stopWork,
        handling,
      ];
      tasks.push(
        task({
          ...common,
          ...needs,
          id: `lift ${number}`,
          what: `Lift ${named}${held === '' ? '' : `, ${held} first`}${first > 0 ? `: ${first} bolts, then let go` : ''}`,
          sort: 'lift',
          after: above,
          amount: amountOf(
            { panel: own.places.length, bolt: first, prop: own.propsIn.length },
            lift.piece.high,
            panels,
          ),
          usefulPeople: needs.people + 1,
          shared: 0.3,
          gustLimit: Math.min(...limits.filter((one) => typeof one === 'number')),
          commits: true,
        }),
      );
      if (rest > 0)
        tasks.push(
          task({
            ...common,
            ...atHeight(lift.piece.middle),
            id: `bolts ${number}`,
            what: `The other ${rest} bolts of ${named}, finger-tight`,
            sort: 'bolts',
            after: [`lift ${number}`],
            amount: amountOf({ bolt: rest }, lift.piece.middle, settled),
            people: 2,
            usefulPeople: 4,
            shared: 1,
            pauses: true,
          }),
        );
      return { tasks, lift: `lift ${number}`, bolts: rest > 0 ? `bolts ${number}` : null };
    },
    tightening(stage: RaisingStage, after: readonly string[]): RaiseTask[] {
      const inside = new Set(stage.lifts.flatMap(({ places }) => innerSeams(facts.shell, places)));
      const passes = [
        ['snug', stage.pass.snug.filter((seam) => !inside.has(seam))],
        ['final', stage.pass.final],
      ] as const;
      return passes.flatMap(([pass, seams]) =>
        inParts(seams, boltsIn).map((part, k, parts) => {
          const bolts = boltsIn(part);
          const height = heightOf(facts.shell, part);
          return task({
            ...atHeight(height),
            id: `${pass} ${stage.number}${parts.length > 1 ? `.${k + 1}` : ''}`,
            what: `Tighten ${bolts} bolts of ${part.length} seams to ${pass}${parts.length > 1 ? `, part ${k + 1} of ${parts.length}` : ''}`,
            sort: 'tighten',
            stage: stage.number,
            after,
            amount: amountOf({ tighten: bolts }, height, settled),
            people: 2,
            usefulPeople: 6,
            shared: 1,
            pauses: true,
          });
        }),
      );
    },
    plates(stage: RaisingStage, hubs: number, after: readonly string[]): RaiseTask | null {
      if (hubs === 0) return null;
      const height = stage.lifts.reduce((most, { height: own }) => Math.max(most, own), 0);
      return task({
        ...atHeight(height),
        id: `plates ${stage.number}`,
        what: `Hub plates over ${hubs} ${hubs === 1 ? 'hub' : 'hubs'}`,
        sort: 'plates',
        stage: stage.number,
        after,
        amount: amountOf({ plate: hubs }, height, settled),
        people: 2,
        usefulPeople: 4,
        shared: 1,
        priority: -1,
        pauses: true,
      });
    },
    stop(stage: RaisingStage, after: readonly string[]): RaiseTask | null {
      const own = windsOf.get(stage.number);
      if (!(stage.props.length === 0 || own?.propsHold)) return null;
      const { seconds, hands } = crew.closeDown;
      return {
        ...taskOf({
          id: `stage ${stage.number}`,
          what: `stage ${stage.number}, ${stage.placed.length} panels up`,
          duration: 0,
          people: 0,
          after: [...after, ...anchorTasks()],
          daylight: false,
          stopPoint: { allowedGust: own?.leave ?? null, closeDown: seconds, hands },
        }),
        sort: 'stop point',
        stage: stage.number,
        lift: null,
        places: [],
        amount: null,
      };
    },
  };
}

/** What a lift needs of people and gear: by its way, or as if its weight were no hindrance. */
function liftNeeds(
  lift: Lift,
  gear: Gear,
  stand: Foothold | null,
): Pick<Task, 'people' | 'climbers' | 'leads' | 'gear' | 'atHeight'> {
  const way = lift.best ?? lift.ways.find(({ by }) => by === 'hands') ?? null;
  const high = lift.piece.high > HANDS.up.value;
  const leads = needsCard(lift, gear) ? 1 : 0;
  const holding = way?.by === 'hands' ? (way.people ?? LIFTERS_UNKNOWN) : machineHands(way);
  const people = holding + BOLTERS + leads;
  const stood = stand !== null && stand.kind !== 'ground' ? { [stand.name]: 1 } : {};
  const machine = way !== null && way.by !== 'hands' ? { [way.name]: 1 } : {};
  return {
    people,
    climbers: high ? BOLTERS : 0,
    leads,
    gear: { ...stood, ...machine },
    atHeight: high,
  };
}

/** A driver, or two who haul; and two at tag lines. */
const machineHands = (way: LiftWay | null): number =>
  way === null ? LIFTERS_UNKNOWN : (way.by === 'lift' ? 1 : 2) + way.tagLines;

/** Numbers of places: all of a few, else the first and how many more. */
export const namesOf = (numbers: readonly string[], places: readonly number[]): string =>
  places.length <= 3
    ? places.map((p) => numbers[p]).join(', ')
    : `${numbers[places[0] as number]} and ${places.length - 1} more`;

/** Seams between panels of one piece. */
function innerSeams({ seams, sidePlace }: Shell, places: readonly number[]): number[] {
  if (places.length < 2) return [];
  const own = new Set(places);
  return Array.from({ length: seams.length / 2 }, (_, seam) => seam).filter((seam) =>
    [0, 1].every((k) => own.has(sidePlace[seams[2 * seam + k] as number] as number)),
  );
}

/** Seams in their order of work, cut so that no part has more bolts than MOST_BOLTS by much. */
function inParts(
  seams: readonly number[],
  boltsIn: (seams: readonly number[]) => number,
): readonly (readonly number[])[] {
  if (seams.length === 0) return [];
  const count = Math.max(1, Math.round(boltsIn(seams) / MOST_BOLTS));
  return Array.from({ length: count }, (_, k) =>
    seams.slice(
      Math.floor((k * seams.length) / count),
      Math.floor(((k + 1) * seams.length) / count),
    ),
  ).filter((part) => part.length > 0);
}

/** Mean height of seams over the base ring's mean, metres. */
function heightOf(shell: Shell, seams: readonly number[]): number {
  const ground = baseRing(shell)?.z.mean ?? 0;
  const sum = seams.reduce(
    (all, seam) =>
      all +
      (shell.hubs[3 * (shell.sideHub[shell.seams[2 * seam] as number] as number) + 2] as number),
    0,
  );
  return sum / Math.max(1, seams.length) - ground;
}
