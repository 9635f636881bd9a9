// Buckling, snap-through and swing of the whole shell and of a stage as text and as plain data, with
// what the numbers mean.

import {
  type HubMode,
  halfBuiltStability,
  type SnapThrough,
  type Stage,
  type StageAnswer,
  type StageBuckling,
  type StageStability,
  type StageSwing,
  wholeStability,
} from '@shellraise/core';
import { flagBlock } from './ground-loads.ts';
import type { ChosenSite } from './ground-site.ts';
import { hubWords, speed } from './ground-stage.ts';
import type { Chosen } from './job.ts';
import { startProgress } from './progress.ts';
import { bullets, heading, paint, wrap } from './terminal.ts';

/** Buckling and swing of the whole shell, every seam tight. */
export function stabilityOfWhole({ site, loads }: ChosenSite): StageStability {
  const all = [...site.stages.shell.kind.keys()];
  return withProgress((tell) => wholeStability(site.stages, loads, all, tell));
}

/** The same of a stage with its props. */
export const stabilityOfStage = (
  { site }: ChosenSite,
  stage: Stage,
  answer: StageAnswer,
): StageStability => withProgress((tell) => halfBuiltStability(site.stages, stage, answer, tell));

function withProgress(reckon: (tell: (done: number) => void) => StageStability): StageStability {
  const progress = startProgress();
  const found = reckon((done) => progress.update(done, 'buckling'));
  progress.stop();
  return found;
}

/** Whether it may buckle or snap through in its own load: an honest no. */
export function mayBuckle({ buckling, snapThrough }: StageStability): boolean {
  const buckles =
    buckling.status === 'reckoned' && buckling.real !== null && buckling.real.least < 1;
  const snaps = 'hub' in snapThrough && snapThrough.factor < 1;
  return buckles || snaps;
}

/** The blocks of a whole shell or a stage. */
export function stabilityBlocks(
  found: StageStability,
  chosen: Chosen,
  what: string,
  told: readonly (Pick<StageStability, 'assumed' | 'flags'> | null)[] = [],
): string[] {
  const before = new Set(
    told.flatMap((one) => [...(one?.assumed ?? []), ...(one?.flags.map(({ text }) => text) ?? [])]),
  );
  const { buckling, snapThrough, swing, gust, seams, assumed, flags } = found;
  const held = gust === null ? 'no wind' : `a gust of ${speed(gust)} at the shell`;
  const none =
    buckling.status === 'not reckoned' && swing.status === 'not reckoned' ? buckling.why : null;
  return [
    heading(`Buckling and swing of ${what}`),
    none === null
      ? wrap(
          `Every seam ${seams}, in ${held}. A factor of 1 is the load itself; below 1 it may fold in it.`,
          '',
        )
      : paint.yellow(wrap(`Not reckoned: ${none}.`, '')),
    ...(none === null
      ? [
          buckling.status === 'reckoned'
            ? bucklingText(buckling, chosen)
            : notReckoned('Buckling', buckling.why),
          snapText(snapThrough, chosen),
          swing.status === 'reckoned' ? swingText(swing, chosen) : notReckoned('Swing', swing.why),
        ]
      : []),
    mayBuckle(found)
      ? paint.red(
          wrap(
            'It may fold in that load. Work in less wind, close the course first or prop more, and ask a licensed engineer.',
            '',
          ),
        )
      : '',
    found.cap === null ? '' : capText(found.cap),
    bullets(
      'Assumed:',
      assumed.filter((one) => !before.has(one)),
    ),
    flagBlock(
      'Not confirmed, or entered, besides what stands above:',
      flags.filter(({ text }) => !before.has(text)),
    ),
  ];
}

const notReckoned = (what: string, why: string): string =>
  wrap(`${what}: not reckoned: ${why}.`, '');

function bucklingText({ factor, real, load, hub }: StageBuckling, chosen: Chosen): string {
  if (factor === null || real === null)
    return 'Buckling: none of its loads buckles it, however large.';
  const where = hub === null ? '' : `, the hub of ${hubWords(chosen, hub)} moving most`;
  return wrap(
    `Buckling: ${paint.bold(`a real shell may buckle at ${times(real.least)} to ${times(real.most)} times the load`)}, a perfect one at ${times(factor)}${where}; load: weight and ${load}.`.replace(
      'weight and its weight alone',
      'its weight alone',
    ),
    '',
  );
}

function snapText(snap: SnapThrough, chosen: Chosen): string {
  switch (snap.status) {
    case 'not reckoned':
      return notReckoned('Snap-through', snap.why);
    case 'none':
      return wrap(
        snap.factor === null
          ? 'Snap-through: none, the load only pulls its sides.'
          : `Snap-through: none found up to ${times(snap.factor)} times that load.`,
        '',
      );
    default:
      return wrap(
        `Snap-through: under ${times(snap.factor)} times that load a perfect one ${snap.status === 'snaps' ? 'dents inwards or folds' : 'gives way sideways'}, first at the hub of ${hubWords(chosen, snap.hub)}; a real one sooner.`,
        '',
      );
  }
}

function swingText({ frequency, slow, hub }: StageSwing, chosen: Chosen): string {
  const so = slow
    ? 'slower than once a second: gusts rock it, and wind loads by a code are too low'
    : 'faster than once a second: gusts act on it as a steady push does';
  return wrap(
    `Swing: ${frequency.toFixed(1)} times a second, most at the hub of ${hubWords(chosen, hub)}; ${so}.`,
    '',
  );
}

const capText = ({ pressure, part }: NonNullable<StageStability['cap']>): string =>
  wrap(
    `To compare: a smooth cap as thick as the skin, without flanges, may buckle under an even ${(pressure / 1000).toFixed(2)} kPa from outside, ${(100 * part).toFixed(0)} % of what a perfect one bears (NASA SP-8032).`,
    '',
  );

const times = (factor: number): string => (factor >= 10 ? factor.toFixed(0) : factor.toFixed(2));

/** The answer as plain data: movements as a list of [x, y, z], one a hub. */
export function stabilityDocument({
  buckling,
  snapThrough,
  swing,
  ...rest
}: StageStability): object {
  return {
    ...rest,
    buckling: plain(buckling),
    snapThrough: plain(snapThrough),
    swing: plain(swing),
  };
}

const plain = <T extends object>(part: T): object =>
  'mode' in part && part.mode instanceof Float64Array
    ? { ...part, mode: vectors(part.mode) }
    : part;

const vectors = (mode: HubMode): number[][] =>
  Array.from({ length: mode.length / 3 }, (_, hub) => [...mode.subarray(3 * hub, 3 * hub + 3)]);
