// What may wait for the next trip, and what can't: the shell is asked with each item missing by itself, all
// else done, in the worst gust of the weeks between; then with as much of it missing together as it
// bears. That last state is the one to leave, a stage of its own. Gusts in m/s at the shell. An estimate
// and no design approval: local codes and a licensed engineer or rigger decide.

import { commonPractice, type Provenance } from '../../loads/provenance.ts';
import type { Read } from '../../measure/fault.ts';
import { refuse } from '../../measure/fault.ts';
import { type StageAnswer, stageAnswer } from '../../stages/answer.ts';
import type { StageModel } from '../../stages/model.ts';
import type { Stage } from '../../stages/stage.ts';
import { type ClosedDown, closedDown } from '../../stages/stop-work.ts';
import type { RaisingPlan } from '../plan.ts';
import { itemWords, stateWithout, type WaitItem, waitItems } from './items.ts';

/** What is asked. */
export interface WaitQuestion {
  readonly model: StageModel;
  readonly plan: Pick<RaisingPlan, 'stages'>;
  /** The stage after which everybody goes home. */
  readonly stage: number;
  /** The worst gust until they are back: see `gustBetween`. */
  readonly gust: number;
  /** Hubs that have a plate. */
  readonly plates: readonly number[];
  /** Whether tape or gaskets lie between the flanges: they go in as seams close, and can't wait. */
  readonly tapeInSeams: boolean;
}

/** How long to look. */
export interface WaitOptions {
  /** Seams and panels too, by the frame with its stiffness: slower. True where left out. */
  readonly strength?: boolean;
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (part: number) => void;
}

/** How the shell stands with something missing. */
export interface Left {
  readonly verdict: ClosedDown['verdict'] | 'does not stand';
  /** The gust at which everybody would leave it over the one to expect, 1: none to spare; null: no limit
   * is known. */
  readonly reserve: number | null;
  /** In words: what reaches its limit first, or what moves. */
  readonly why: string;
}

/** One item and whether it may wait. */
export interface WaitVerdict extends Left {
  readonly item: WaitItem;
  readonly words: string;
  /** `as far as known`: nothing known is reached, but some limits are unknown. */
  readonly mayWait: 'yes' | 'as far as known' | 'no';
}

/** The state to leave the shell in: a stage of its own. */
export interface LeaveState {
  readonly stage: Stage;
  readonly answer: StageAnswer;
  readonly left: Left;
  /** Indices of the items that wait in it. */
  readonly waiting: readonly number[];
  readonly card: LeaveCard;
}

/** What its card says, a line each. */
export interface LeaveCard {
  readonly title: string;
  readonly before: readonly string[];
  readonly waits: readonly string[];
  readonly back: readonly string[];
  readonly caution: string;
}

/** The answer. */
export interface WaitAnswer {
  /** With everything done. */
  readonly done: Left;
  readonly items: readonly WaitVerdict[];
  /** Null where it may not be left at all. */
  readonly leave: LeaveState | null;
  /** In words: whether it may be left, and if not the least that would help. */
  readonly words: string;
  readonly assumed: readonly string[];
  readonly flags: readonly Provenance[];
}

const CAUTION =
  'An estimate and no design approval: local codes and a licensed engineer or rigger decide.';
const SEALS = commonPractice('sealant over closed seams may wait, water meanwhile gets in');
const FINAL = commonPractice('snug bolts work loose in weeks of wind: gone over on every visit');

/** What may wait once a stage is done. Faults: no such stage, one that nothing of stands in, a gust that
 * is none. Null answer parts where it was stopped: `items` then has what was asked until then. */
export function whatMayWait(question: WaitQuestion, options: WaitOptions = {}): Read<WaitAnswer> {
  const { model, plan, gust, plates } = question;
  const stage = plan.stages.find(({ number }) => number === question.stage);
  if (stage === undefined)
    return refuse('stage', `${question.stage}`, `a stage of the plan, 1 to ${plan.stages.length}`);
  if (!(gust >= 0 && gust < 200)) return refuse('gust', `${gust} m/s`, '0 to 200 m/s');
  const built = plan.stages.at(-1)?.placed ?? [];
  const items = waitItems(model.shell, stage, built, plates);
  let asked = 0;
  const ask = (missing: readonly WaitItem[]): Read<Asked> => {
    options.onProgress?.(Math.min(1, asked++ / (items.length + 3)));
    return askWith(question, stateWithout(model.shell, stage, plates, missing), options);
  };
  const done = ask([]);
  if (!done.ok) return done;
  const verdicts: WaitVerdict[] = [];
  for (const item of items) {
    if (options.shouldStop?.()) break;
    const found = item.sort === 'seal' || item.sort === 'final pass' ? done : ask([item]);
    if (!found.ok) return found;
    verdicts.push(verdictOf(item, found.value.left, question));
  }
  const leave = isLeft(done.value.left) ? leaveWith(question, verdicts, ask, options) : null;
  if (leave !== null && !leave.ok) return leave;
  options.onProgress?.(1);
  return {
    ok: true,
    value: {
      done: done.value.left,
      items: verdicts,
      leave: leave?.value ?? null,
      words: wordsOf(done.value.left, gust, leave?.value ?? null),
      assumed: [
        'Left with nobody at work: held to the load at which everybody would leave.',
        'A plate that lacks a bolt counts as missing; seals and the final pass hold nothing in the frame.',
        ...done.value.answer.assumed,
        CAUTION,
      ],
      flags: [SEALS, FINAL, ...done.value.answer.flags],
    },
  };
}

interface Asked {
  readonly state: Stage;
  readonly answer: StageAnswer;
  readonly left: Left;
}

function askWith(
  { model, gust }: WaitQuestion,
  state: Stage,
  { strength = true }: WaitOptions,
): Read<Asked> {
  const found = stageAnswer(model, state, { strength, sets: 1 });
  if (!found.ok) return found;
  const answer = found.value;
  if (answer.status !== 'stands' || answer.bears === null)
    return {
      ok: true,
      value: {
        state,
        answer,
        left: {
          verdict: 'does not stand',
          reserve: null,
          why: `${answer.movements} free movements: ${answer.moving.slice(0, 6).join(', ')}${answer.moving.length > 6 ? ' and more' : ''} can fold`,
        },
      },
    };
  const { limits, untied } = answer.bears;
  const { verdict, by, reserve } = closedDown(limits, untied, gust);
  const unknown = limits.filter(({ status }) => status === 'unknown').map(({ what }) => what);
  const why =
    by !== null
      ? `the first ${by.what} reaches its limit at ${(by.gust ?? 0).toFixed(1)} m/s${by === untied ? ', untied' : ''}`
      : unknown.length > 0
        ? `no known limit is reached; unknown: ${unknown.join(', ')}`
        : 'no limit is reached';
  return { ok: true, value: { state, answer, left: { verdict, reserve, why } } };
}

const isLeft = ({ verdict }: Left): boolean => verdict === 'holds' || verdict === 'unknown';

function verdictOf(item: WaitItem, left: Left, { tapeInSeams }: WaitQuestion): WaitVerdict {
  const told = { item, words: itemWords(item), ...left };
  const mayWait = !isLeft(left) ? 'no' : left.verdict === 'holds' ? 'yes' : 'as far as known';
  const tape = item.sort === 'seal' && tapeInSeams;
  return {
    ...told,
    mayWait,
    why: tape
      ? `tape between flanges goes in as they close and cannot wait; sealant over them may: ${left.why}`
      : left.why,
  };
}

/** As much of it left as the shell bears: all that may wait by itself, less the one with the least reserve
 * until it holds; then any of those that can be added again. Nothing missing holds, so this ends. */
function leaveWith(
  question: WaitQuestion,
  verdicts: readonly WaitVerdict[],
  ask: (missing: readonly WaitItem[]) => Read<Asked>,
  { shouldStop }: WaitOptions,
): Read<LeaveState> {
  const askAll = (list: readonly number[]): Read<Asked> =>
    ask(list.map((i) => (verdicts[i] as WaitVerdict).item));
  const isFine = ({ left }: Asked): boolean => isLeft(left) && !hasWorse(left, verdicts);
  let waiting = [...verdicts.keys()].filter((i) => verdicts[i]?.mayWait !== 'no');
  let found = askAll(waiting);
  const out: number[] = [];
  while (found.ok && !isFine(found.value)) {
    const frames = waiting.filter((i) => isFrame((verdicts[i] as WaitVerdict).item));
    if (frames.length === 0) throw new Error('a shell that may be left when done may not be left');
    const next = shouldStop?.() ? frames : [leastReserve(frames, verdicts)];
    out.push(...next);
    waiting = waiting.filter((i) => !next.includes(i));
    found = askAll(waiting);
  }
  for (const i of out.slice(0, -1)) {
    if (!found.ok || shouldStop?.()) break;
    const more = [...waiting, i].sort((a, b) => a - b);
    const again = askAll(more);
    if (again.ok && isFine(again.value)) [waiting, found] = [more, again];
  }
  if (!found.ok) return found;
  const { state, answer, left } = found.value;
  const card = cardOf(question, verdicts, waiting, left);
  return { ok: true, value: { stage: state, answer, left, waiting, card } };
}

/** Whether it is less sure than every item by itself. */
const hasWorse = ({ verdict }: Left, verdicts: readonly WaitVerdict[]): boolean =>
  verdict === 'unknown' && verdicts.length > 0 && verdicts.every((one) => one.verdict === 'holds');

const isFrame = ({ sort }: WaitItem): boolean => sort === 'hub plates' || sort === 'snug pass';

/** Of equals the snug pass goes before plates, the lowest ring first. */
function leastReserve(list: readonly number[], verdicts: readonly WaitVerdict[]): number {
  const key = (i: number): number => {
    const { reserve, item } = verdicts[i] as WaitVerdict;
    return (reserve ?? 1e6) + (item.sort === 'snug pass' ? 0 : 1e-3) + 1e-6 * (item.ring ?? 0);
  };
  return list.reduce((best, i) => (key(i) < key(best) ? i : best), list[0] as number);
}

function cardOf(
  { stage, gust, model, plan }: WaitQuestion,
  verdicts: readonly WaitVerdict[],
  waiting: readonly number[],
  left: Left,
): LeaveCard {
  const before = verdicts.filter((_, i) => !waiting.includes(i)).map(({ words }) => words);
  const open = new Set(plan.stages.at(-1)?.placed ?? []);
  const last = plan.stages.find(({ number }) => number === stage);
  const missing = [...open].filter((p) => !last?.placed.includes(p));
  const spare = left.reserve === null ? '' : `, ${left.reserve.toFixed(2)} times that to spare`;
  return {
    title: `Leave it after stage ${stage}`,
    before: [
      ...before.map((words) => `Do now: ${words}`),
      ...(last?.props.length ? [`${last.props.length} props stay, tied at head and foot`] : []),
      'Every anchor in and tight; ladders, props and panels that are loose lashed down or taken along',
      ...(missing.length > 0
        ? [
            `Open places stay open to the wind: ${missing
              .slice(0, 12)
              .map((p) => model.numbers[p])
              .join(', ')}${missing.length > 12 ? ` and ${missing.length - 12} more` : ''}`,
          ]
        : ['Door shut and made fast']),
      'Leave a name and a number on it, and tell a neighbour who looks after a storm',
    ],
    waits: waiting.map((i) => (verdicts[i] as WaitVerdict).words),
    back: [
      `Over ${gust.toFixed(1)} m/s gust it was not reckoned${spare}: after such a storm look before anyone goes in`,
      'First of all go over every bolt that is finger-tight or snug, then the anchors',
      ...(missing.length > 0
        ? [
            'Where holes will not meet, slacken the rim’s seams to finger-tight before the next panels go in',
          ]
        : []),
    ],
    caution: CAUTION,
  };
}

function wordsOf(done: Left, gust: number, leave: LeaveState | null): string {
  if (leave === null)
    return `After this stage it must not be left in ${gust.toFixed(1)} m/s even with all done: ${done.why}. Least change that helps: ${
      done.verdict === 'does not stand'
        ? 'go on to a stage that stands without more props'
        : 'more anchors or guys, or go on to a stage that bears more'
    }.`;
  const sure = leave.left.verdict === 'holds' ? '' : ' as far as known';
  return `It may be left in gusts of ${gust.toFixed(1)} m/s${sure}, with ${leave.waiting.length} items waiting: ${leave.left.why}.`;
}
