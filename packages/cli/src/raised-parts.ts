// What else the command tells of a plan, each under its own flag: the yard, the lifts, way in and way out,
// bags and kit, what may wait.

import {
  describeFault,
  type KitAnswer,
  kitAnswer,
  type LeftAnswer,
  liftsOfStages,
  readSectors,
  type Sector,
  type StageLifts,
  type WayAnswer,
  waitAnswer,
  wayAnswer,
  type YardAnswer,
  yardAnswer,
} from '@shellraise/core';
import { badInput } from './ending.ts';
import { orEnd } from './ground-site.ts';
import type { RaiseOptions } from './options.ts';
import type { Progress } from './progress.ts';
import type { Raised } from './raise-job.ts';
import { kitBlocks, liftBlocks, waitBlocks, wayBlocks, yardBlocks } from './raised-blocks.ts';

/** What was asked for; nothing else is in it. */
export interface RaisedParts {
  readonly yard?: YardAnswer;
  readonly lifts?: readonly StageLifts[];
  readonly inside?: WayAnswer;
  readonly bags?: KitAnswer;
  readonly wait?: LeftAnswer;
}

/** Whether any of it is asked for. */
export const asksRaised = ({ yard, lifts, inside, bags, wait }: RaiseOptions): boolean =>
  [yard, lifts, inside, bags, wait].includes(true);

/** Ends the command where a gust or days are given for nothing that takes them. */
export function checkRaisedOptions(options: RaiseOptions): void {
  const { yard, lifts, wait, gust, days, keepClear } = options;
  if (keepClear !== undefined && !yard)
    throw badInput('--keep-clear: found alone, expected with --yard');
  if (gust !== undefined && !(yard || lifts || wait))
    throw badInput('--gust: found alone, expected with --yard, --lifts or --wait');
  if (days !== undefined && !wait) throw badInput('--days: found alone, expected with --wait');
}

function sectorsOf(text: string): readonly Sector[] {
  const read = readSectors(text);
  if (!read.ok) throw badInput(`--keep-clear: ${read.faults.map(describeFault).join('; ')}`);
  return read.value;
}

/** Answers what is asked for. Ends the command where a gust, days or a stage is missing or wrong. */
export function raisedParts(
  file: string,
  raised: Raised,
  options: RaiseOptions,
  progress: Progress,
): RaisedParts {
  const { yard, lifts, inside, bags, wait, stage, gust, days, keepClear = '' } = options;
  if (!asksRaised(options)) return {};
  const { shell } = raised;
  const told = (from: number, to: number, what: string) => (part: number) =>
    progress.update(0.7 + 0.3 * (from + (to - from) * part), what);
  return {
    ...(yard && {
      yard: orEnd(file, yardAnswer(shell, { gust: gust ?? null, avoid: sectorsOf(keepClear) })),
    }),
    ...(lifts && {
      lifts: liftsOfStages(
        shell,
        { gust: gust ?? null },
        stage === undefined ? undefined : [stage],
      ),
    }),
    ...(inside && {
      inside: wayAnswer(shell, { onProgress: told(0, 0.6, 'way in and way out') }),
    }),
    ...(bags && { bags: kitAnswer(shell) }),
    ...(wait && {
      wait: orEnd(
        file,
        waitAnswer(
          shell,
          {
            gust: gust ?? null,
            ...(stage !== undefined && { stage }),
            ...(days !== undefined && { days }),
          },
          { onProgress: told(0.6, 1, 'what may wait') },
        ),
      ),
    }),
  };
}

/** Whether any of it is a "no": a piece that nothing lifts, a thing trapped, boards too low, a shell that
 * must not be left. */
export const isRaisedNo = ({ lifts = [], inside, wait }: RaisedParts): boolean =>
  lifts.some((stage) => stage.lifts.some(({ told }) => told.best === null)) ||
  (inside?.inside.things.some(({ status }) => status === 'trapped') ?? false) ||
  (inside?.heights.some(({ short }) => short.length > 0) ?? false) ||
  wait?.leave === null;

/** All of it as text. */
export const raisedPartBlocks = (
  { yard, lifts, inside, bags, wait }: RaisedParts,
  { stage }: RaiseOptions,
): string[] => [
  ...(yard ? yardBlocks(yard) : []),
  ...(lifts ? liftBlocks(lifts, stage !== undefined) : []),
  ...(inside ? wayBlocks(inside) : []),
  ...(bags ? kitBlocks(bags, stage) : []),
  ...(wait ? waitBlocks(wait) : []),
];
