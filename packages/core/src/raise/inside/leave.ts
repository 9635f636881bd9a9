// What stands inside while the shell closes round it: the last stage after which each thing still passes
// through what is open, by its real shape, and what to change where that is too soon. A way that is clear
// after a stage is clear after every one before it, for there is less wall; so the last is found by
// halving. One thing at a time: the others are out of its way.

import { commonPractice, type Provenance } from '../../loads/provenance.ts';
import { type PassAnswer, type PassOptions, passing } from '../../passage/passing.ts';
import type { Pose } from '../../passage/pose.ts';
import { barrierOf } from '../../passage/wall.ts';
import { coursesOf } from '../../shell/courses.ts';
import type { Shell } from '../../shell/shell.ts';
import type { Gear, ThingInside } from '../gear.ts';
import { type HeightsOfStage, neededUntil } from '../lifts/heights-by-stage.ts';
import { SLING } from '../lifts/lift.ts';
import { fewestPeople, MOST_TEAM, teamLifts } from '../lifts/team.ts';
import type { RaisingPlan } from '../plan.ts';
import { type Change, leastChangeFor } from './change.ts';

/** What is asked. */
export interface InsideQuestion {
  readonly shell: Shell;
  readonly plan: Pick<RaisingPlan, 'stages' | 'wayOut'>;
  readonly gear: Gear;
  /** From the skin inwards to the flanges' edge, m; null: nobody knows, 50 mm are supposed. */
  readonly flange: number | null;
  /** Heights of the plan's stages, which tell how long ladders and towers are needed; none where left
   * out. A thing inside is the ladder or tower of its name. */
  readonly heights?: readonly HeightsOfStage[];
}

/** What becomes of one thing. */
export interface ThingLeaves {
  readonly name: string;
  readonly must: ThingInside['must'];
  /** `free`: it passes to the end; `in time`: it must go before the shell is closed, and can; `trapped`:
   * it is needed longer than a way out was found, or none was found after any stage; `stays`: nobody
   * wants it out. */
  readonly status: 'free' | 'in time' | 'trapped' | 'stays';
  /** The last stage after which a way was found, 0: only before the first. */
  readonly last: number;
  /** That way, by hand or with a hook, poses from inside to outside; none where nothing stands yet. */
  readonly motion: readonly Pose[];
  readonly by: 'hands' | 'hook';
  /** The stage after which none was found, and whether it is shown that there is none; null: none. */
  readonly shut: {
    readonly stage: number;
    readonly shown: boolean;
    readonly why: string;
  } | null;
  /** The last stage that it is needed in; null: not known to be. */
  readonly needed: number | null;
  /** The least change found that lets it out when it is no more needed; null where none is wanted. */
  readonly change: Change | null;
  /** In words: what to do by when. */
  readonly words: string;
}

/** The answer for all things inside. */
export interface InsideAnswer {
  readonly things: readonly ThingLeaves[];
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

/** How long to look: of a passing search, and told the part done. */
export type InsideOptions = Omit<PassOptions, 'start' | 'carried'>;

/** Depth of flanges where nobody knows it, m. */
export const FLANGE_SUPPOSED = 0.05;

/** What becomes of each thing inside. RangeError for a shape without size or a flange without depth. */
export function thingsInside(question: InsideQuestion, options: InsideOptions = {}): InsideAnswer {
  const { gear, flange } = question;
  const count = gear.inside.length;
  const things = gear.inside.map((thing, i) =>
    leaves(question, thing, {
      ...options,
      onProgress: (part) => options.onProgress?.((i + part) / count),
    }),
  );
  options.onProgress?.(1);
  return {
    things,
    assumed: [
      'One thing at a time: whatever else stands inside is out of its way.',
      `Flanges are ${((flange ?? FLANGE_SUPPOSED) * 1000).toFixed(0)} mm deep${flange === null ? ', supposed: nobody measured them' : ''}; panels count as solid to that depth.`,
      'Not found is no proof that it cannot pass: where it is shown, it says so.',
      'An estimate: whoever carries it decides.',
    ],
    flags: [
      commonPractice('a thing in hands is carried no higher than 1.2 m over the ground'),
      ...(flange === null ? [commonPractice('flanges 50 mm deep')] : []),
    ],
  };
}

function leaves(question: InsideQuestion, thing: ThingInside, options: InsideOptions): ThingLeaves {
  const { plan, heights = [] } = question;
  const needed = neededUntil(heights, thing.name);
  const stages = plan.stages.length;
  let asked = 0;
  const turns = Math.ceil(Math.log2(stages + 1)) + 2;
  const ask = (stage: number, cells: number): Way => {
    const found = passesAfter(question, thing, placedAfter(question, stage), {
      ...options,
      cells,
      onProgress: (part) => options.onProgress?.(Math.min(1, (asked + part) / turns)),
    });
    asked++;
    return found;
  };
  let [low, high] = [0, stages];
  let way: Way = { by: 'hands', answer: { status: 'passes', motion: [], clearance: 0 } };
  const end = ask(stages, 0);
  if (end.answer.status === 'passes') [low, way] = [stages, end];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    const found = ask(middle, 0);
    if (found.answer.status === 'passes') [low, way] = [middle, found];
    else high = middle;
  }
  const motion = way.answer.status === 'passes' ? way.answer.motion : [];
  const shut =
    low === stages ? null : shutAt(ask(low + 1, options.cells ?? 400_000).answer, low + 1);
  const status = statusOf(thing, low, stages, needed);
  const change =
    status === 'trapped' ? leastChangeFor(question, thing, needed ?? stages, options) : null;
  const told = { name: thing.name, must: thing.must, status, last: low, motion, by: way.by };
  return {
    ...told,
    shut,
    needed,
    change,
    words: wordsOf(question, thing, { ...told, shut, needed, change }),
  };
}

const shutAt = (answer: PassAnswer, stage: number): ThingLeaves['shut'] => ({
  stage,
  shown: answer.status === 'cannot pass',
  why: answer.status === 'passes' ? 'found only when looked for longer' : answer.why,
});

function statusOf(
  { must }: ThingInside,
  last: number,
  stages: number,
  needed: number | null,
): ThingLeaves['status'] {
  if (must === 'stay') return 'stays';
  if (last === stages) return 'free';
  if (must === 'go in') return 'in time';
  return last === 0 || (needed !== null && needed > last) ? 'trapped' : 'in time';
}

/** Places with their panels after a stage; 0: none. */
export const placedAfter = (
  { plan }: Pick<InsideQuestion, 'plan'>,
  stage: number,
): readonly number[] => plan.stages[stage - 1]?.placed ?? [];

/** A way, and by what. */
export interface Way {
  readonly by: 'hands' | 'hook';
  readonly answer: PassAnswer;
}

/** Whether a thing passes when some places have their panels: in hands, else on the highest hook. */
export function passesAfter(
  { shell, gear, flange }: InsideQuestion,
  thing: ThingInside,
  placed: readonly number[],
  options: PassOptions,
): Way {
  const barrier = barrierOf(shell, placed, flange ?? FLANGE_SUPPOSED);
  const byHand = passing(thing.shape, barrier, options);
  const hook = Math.max(0, ...gear.lifts.map(({ hookHeight }) => hookHeight)) - SLING;
  if (byHand.status === 'passes' || !(hook > 0)) return { by: 'hands', answer: byHand };
  const hoisted = passing(thing.shape, barrier, { ...options, carried: { by: 'hook', top: hook } });
  return hoisted.status === 'passes'
    ? { by: 'hook', answer: hoisted }
    : { by: 'hands', answer: byHand };
}

function wordsOf(
  { plan, gear, shell }: InsideQuestion,
  thing: ThingInside,
  { name, status, last, shut, by, needed, change }: Omit<ThingLeaves, 'words'>,
): string {
  const heavy = tooHeavy(thing, gear);
  const how = by === 'hook' ? 'on the hook' : 'in hands';
  const { numbers } = coursesOf(shell);
  const next = plan.stages[last]?.pieces.flat().map((p) => numbers[p] as string) ?? [];
  const until =
    last === 0
      ? 'before the first stage'
      : `after stage ${last}${next.length > 0 && next.length <= 12 ? `, before ${next.join(', ')} ${next.length === 1 ? 'goes' : 'go'} in` : ''}`;
  const shutWords =
    shut === null
      ? ''
      : ` After stage ${shut.stage} ${shut.shown ? `it cannot pass: ${shut.why}` : `no way was found: ${shut.why}`}.`;
  switch (status) {
    case 'stays':
      return last === plan.stages.length
        ? `${name} stays; it would pass when all is built.`
        : `${name} stays and does not come out again unless panels are taken out; it must be inside ${until}.`;
    case 'free':
      return `${name} passes ${how} when all is built.${heavy}`;
    case 'in time': {
      const way =
        thing.must === 'go in'
          ? 'Bring in'
          : thing.must === 'both'
            ? 'Bring in and out'
            : 'Take out';
      return `${way} ${name} ${how} at the latest ${until}.${shutWords}${heavy}`;
    }
    case 'trapped':
      return `${name}${needed === null ? ' must come out' : ` is needed in stage ${needed}`}, and passes only ${until}.${shutWords} ${change?.words ?? ''}${heavy}`;
  }
}

/** A sentence where nobody can carry it. */
function tooHeavy({ mass }: ThingInside, { personLifts, lifts }: Gear): string {
  if (mass === null) return ' Nobody knows its mass: weigh it.';
  if (fewestPeople(mass, personLifts) !== null) return '';
  if (lifts.some(({ bears }) => bears !== null && bears >= mass)) return '';
  return ` ${mass.toFixed(0)} kg is more than the ${teamLifts(MOST_TEAM, personLifts).value.toFixed(0)} kg that ${MOST_TEAM} people lift: take it apart, or put it on wheels.`;
}
