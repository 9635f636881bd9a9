// From a raising plan to tasks: stake-out and anchors, pieces made up on the ground, each lift with the
// bolts that must be in before it is let go, the bolts that follow, tightening, hub plates, and after each
// stage that may be left overnight a stop point. Lifts follow each other as the plan has them, since only
// its states were asked; all else goes on beside them.

import { type Lift, liftOf } from '../raise/lifts/lift.ts';
import { pieceModel, pieceOf } from '../raise/lifts/piece.ts';
import { footholds } from '../raise/lifts/reach.ts';
import { commonRates } from '../raise/order/rates.ts';
import type { RaisingPlan, RaisingStage } from '../raise/plan.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf, type Shell } from '../shell/shell.ts';
import type { RaiseFacts, RaiseTask } from './raise-task.ts';
import { crewRates } from './recorded-rates.ts';
import { taskMaker } from './task-maker.ts';

/** A piece that nobody and nothing there can lift, and the least change that helps. */
export interface TooHeavy {
  readonly stage: number;
  readonly lift: number;
  readonly numbers: readonly string[];
  /** kg; null where unknown. */
  readonly mass: number | null;
  /** Its highest hub in its place, m above the ground. */
  readonly high: number;
  readonly why: readonly string[];
  readonly change: string;
}

/** The tasks of a plan, the pieces that can't be lifted as they are, and how many panels nobody weighed. */
export interface RaiseTasks {
  readonly tasks: readonly RaiseTask[];
  readonly tooHeavy: readonly TooHeavy[];
  readonly unweighed: number;
  /** Bolts of seams of which nobody knows the holes count as so many each. */
  readonly boltsSupposed: number | null;
}

/** All tasks of raising a shell by a plan. */
export function raiseTasks(facts: RaiseFacts): RaiseTasks {
  const rates = crewRates(facts.crew, facts.observed);
  const model = pieceModel(facts.shell, facts.numbers, facts.massOf);
  const stands = footholds(facts.gear).filter(({ kind }) => kind !== 'leaning ladder');
  const made = taskMaker(facts, rates, stands);
  const tasks: RaiseTask[] = [...made.ground()];
  const tooHeavy: TooHeavy[] = [];
  const plated = new Set<number>();
  let [before, panels] = [['stake out'], 0];
  for (const stage of facts.plan.stages) {
    const bolted: string[] = [];
    stage.lifts.forEach((own, i) => {
      const lift = liftOf(pieceOf(model, own.places), facts.gear, { gust: null });
      const heavy = cannotLift(stage.number, i, lift);
      if (heavy) tooHeavy.push(heavy);
      const of = made.ofLift(stage, i, { own, lift, after: before, panels });
      tasks.push(...of.tasks);
      before = [of.lift];
      if (of.bolts) bolted.push(of.bolts);
      panels += own.places.length;
    });
    const tightened = made.tightening(stage, [...before, ...bolted]);
    tasks.push(...tightened);
    const done = [...before, ...bolted, ...tightened.map(({ id }) => id)];
    const closed = closedHubs(facts.shell, stage).filter((hub) => !plated.has(hub));
    for (const hub of closed) plated.add(hub);
    const plates = made.plates(stage, closed.length, before);
    if (plates) tasks.push(plates);
    const stop = made.stop(stage, done);
    if (stop) tasks.push(stop);
    before = stop ? [stop.id] : [...new Set(done)];
  }
  const unweighed = facts.numbers.filter((_, p) => isBuilt(facts.plan, p) && !facts.massOf(p));
  const blind = facts.plan.stages.some(({ lifts }) =>
    lifts.some(({ seams }) => seams.some((seam) => facts.holes(seam) === null)),
  );
  return {
    tasks,
    tooHeavy,
    unweighed: unweighed.length,
    boltsSupposed: blind ? commonRates.boltsUnknown : null,
  };
}

/** A piece that no way lifts, for another reason than that nobody weighed it. */
function cannotLift(
  stage: number,
  i: number,
  { best, ways, piece, leastChange }: Lift,
): TooHeavy | null {
  if (best !== null || piece.mass === null || piece.unweighed.length > 0) return null;
  const why = [...new Set(ways.flatMap((way) => way.why.map((one) => `${way.name}: ${one}`)))];
  return {
    stage,
    lift: i,
    numbers: piece.numbers,
    mass: piece.mass,
    high: piece.high,
    why,
    change: leastChange,
  };
}

const isBuilt = ({ stages }: RaisingPlan, place: number): boolean =>
  stages.at(-1)?.placed.includes(place) ?? false;

/** Hubs that have all their panels after a stage, away from any rim. */
function closedHubs(shell: Shell, { placed, lifts }: RaisingStage): number[] {
  const standing = new Set(placed);
  const own = new Set(
    lifts.flatMap(({ places }) => places.flatMap((p) => hubsOf(shell, p as PlaceId))),
  );
  const open = new Set<number>();
  shell.mate.forEach((mate, side) => {
    const p = shell.sidePlace[side] as number;
    const beyond = mate < 0 || !standing.has(shell.sidePlace[mate] as number);
    if (standing.has(p) && !beyond) return;
    const next =
      side + 1 < (shell.placeStart[p + 1] as number) ? side + 1 : (shell.placeStart[p] as number);
    open.add(shell.sideHub[side] as number).add(shell.sideHub[next] as number);
  });
  return [...own].filter((hub) => !open.has(hub)).sort((a, b) => a - b);
}
