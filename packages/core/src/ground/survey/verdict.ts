// Go or no-go before course 2: whether the base is surveyed well enough, true enough, and whether
// the courses above will close on it; if not, which hub to move and how far, and which seams to keep
// slack. Advice from a model of stiff panels: the crew that sees a flange gape knows better.

import { commonPractice, mergeSources, type Provenance } from '../../loads/provenance.ts';
import type { Vec3 } from '../../math/vector.ts';
import type { Read } from '../../measure/fault.ts';
import { coursesOf } from '../../shell/courses.ts';
import type { HubId, SideId } from '../../shell/ids.ts';
import { placeCount, type Shell } from '../../shell/shell.ts';
import type { Base } from '../base.ts';
import { type AsBuilt, asBuilt } from './as-built.ts';
import { type FittedSphere, fitSphere } from './best-fit.ts';
import { type HubHeights, hubHeights } from './hub-heights.ts';
import { commonPlay, type Misfits, misfitSystem, type SeamPlay } from './misfit.ts';
import {
  type BaseTolerances,
  commonTolerances,
  type HubOff,
  type OutOfTrue,
  outOfTrue,
  toleranceSources,
} from './out-of-true.ts';
import type { SurveyReading } from './readings.ts';

/** What the survey says. `measure`: too little was measured, or readings that do not go together;
 * `go`; `go, keep slack`: with the seams named kept finger-tight until the course above is closed;
 * `no go`: move the hubs named first. */
export type Verdict = 'measure' | 'go' | 'go, keep slack' | 'no go';

/** A hub to move, metres. */
export interface HubMove {
  readonly hub: number;
  /** Outwards, clockwise along the ring, and up; the way it is to go. */
  readonly out: number;
  readonly along: number;
  readonly up: number;
}

/** A seam to keep slack. */
export interface SlackSeam {
  readonly side: SideId;
  /** Course of the lower panel, from 1. */
  readonly course: number;
  /** Share of the play that the misfit takes; over 1: it does not close. */
  readonly use: number;
}

/** The survey's answer. */
export interface SurveyAnswer {
  readonly verdict: Verdict;
  /** Why, one sentence each. */
  readonly reasons: readonly string[];
  readonly built: AsBuilt;
  readonly off: OutOfTrue;
  /** The sphere of the plan's radius that fits the base as it stands: its centre, and how far the
   * hubs lie off it. Null where it was left open. */
  readonly sphere: FittedSphere | null;
  /** Upper hubs measured, and the sphere of any radius through them and the base. */
  readonly heights: HubHeights;
  /** Null where too little was measured to reckon it. */
  readonly misfits: Misfits | null;
  /** Worst parting by course, metres; index 0 is course 1. */
  readonly byCourse: readonly number[];
  readonly moves: readonly HubMove[];
  readonly slack: readonly SlackSeam[];
  /** What is still to be measured: numbers of hubs. */
  readonly missing: { readonly radius: readonly number[]; readonly level: readonly number[] };
  readonly sources: readonly Provenance[];
}

/** Options of `surveyAnswer`. */
export interface SurveyOptions {
  readonly tolerances?: BaseTolerances;
  readonly play?: SeamPlay;
  /** Places left out on purpose. */
  readonly leftOut?: ReadonlySet<number>;
}

/** A seam whose misfit takes this share of its play is to be kept slack. */
const NEARLY_USED = 0.8;

/** Most hubs that are told to move at once: after that, survey again. */
const MOST_MOVES = 4;

/** The verdict on a base from the readings so far, or the readings that can't be. */
export function surveyAnswer(
  shell: Shell,
  base: Base,
  readings: readonly SurveyReading[],
  options: SurveyOptions = {},
): Read<SurveyAnswer> {
  const { tolerances = commonTolerances, play = commonPlay } = options;
  const built = asBuilt(base, readings);
  if (!built.ok) return built;
  const heights = hubHeights(shell, base, built.value, readings);
  if (!heights.ok) return heights;
  const off = outOfTrue(base, built.value);
  const missing = {
    radius: built.value.hubs.filter(({ known }) => !known.radial).map(({ hub }) => hub),
    level: built.value.hubs.filter(({ known }) => !known.height).map(({ hub }) => hub),
  };
  const enough = missing.radius.length === 0 && missing.level.length === 0;
  const system = enough
    ? misfitSystem(shell, play, options.leftOut ? { leftOut: options.leftOut } : {})
    : null;
  const misfits = system?.misfits(offMap(base, off.hubs)) ?? null;
  const slack = misfits === null ? [] : slackSeams(shell, misfits, play);
  const judged = judge(built.value, off, heights.value, missing, misfits, slack, tolerances, play);
  const moves =
    judged.verdict === 'no go' && system !== null
      ? movesFor(base, off.hubs, system.strain, tolerances)
      : [];
  return {
    ok: true,
    value: {
      ...judged,
      built: built.value,
      off,
      sphere: sphereOf(base, built.value),
      heights: heights.value,
      misfits,
      byCourse: misfits === null ? [] : worstByCourse(shell, misfits),
      moves,
      slack,
      missing,
      sources: mergeSources(toleranceSources(tolerances), playSources(play), surveySources),
    },
  };
}

const surveySources = [
  commonPractice('tapes to 2 mm and levels to 1 mm, standard deviations'),
  commonPractice('panels reckoned as stiff plates, seams as two ends and a hinge'),
];

const playSources = (play: SeamPlay): Provenance[] =>
  play.slack === commonPlay.slack && play.gap === commonPlay.gap && play.depth === commonPlay.depth
    ? [commonPractice('1.5 mm of play at a bolt, 2 mm of gape at a flange 50 mm deep')]
    : [{ text: 'play of the bolts and depth of the flanges as entered', confirmation: 'entered' }];

/** How each base hub stands off its plan, in the shell's frame. The shell is laid on the base, so
 * the moves and turns of the whole are left out. */
function offMap(base: Base, hubs: readonly HubOff[]): Map<HubId, Vec3> {
  return new Map(
    hubs.map(({ radial, along, up }, k) => {
      const { at, radius, hub } = base.hubs[k] as Base['hubs'][number];
      const [ux, uy] = [at[0] / radius, at[1] / radius];
      return [hub, [radial * ux + along * uy, radial * uy - along * ux, up]] as const;
    }),
  );
}

function sphereOf(base: Base, built: AsBuilt): FittedSphere | null {
  const points = built.hubs.map(({ at: [x, y], height }): Vec3 => [x, y, height + base.level]);
  return fitSphere(points, [0, 0, 0], base.sphereRadius);
}

function judge(
  built: AsBuilt,
  off: OutOfTrue,
  heights: HubHeights,
  missing: SurveyAnswer['missing'],
  misfits: Misfits | null,
  slack: readonly SlackSeam[],
  tolerances: BaseTolerances,
  play: SeamPlay,
): { readonly verdict: Verdict; readonly reasons: string[] } {
  const measure: string[] = [];
  for (const [what, hubs] of [
    ['radius', missing.radius],
    ['level', missing.level],
  ] as const)
    if (hubs.length > 0) measure.push(`Measure the ${what} at hub ${hubs.join(', ')}.`);
  for (const { reading, off: by } of built.suspects)
    measure.push(
      `Reading ${reading + 1} is ${millimetres(by)} off what the others say: read it again.`,
    );
  const stop: string[] = [];
  const warn: string[] = [];
  const against = (value: number, good: number, limit: number, words: string): void => {
    if (Math.abs(value) > limit) stop.push(`${words}: over ${millimetres(limit)}.`);
    else if (Math.abs(value) > good) warn.push(`${words}: over ${millimetres(good)}.`);
  };
  const { radiusGood, radiusStop, neighbour, overall } = tolerances;
  const { outOfRound, outOfLevel, step } = off;
  against(
    outOfRound.off,
    radiusGood,
    radiusStop,
    `Hub ${outOfRound.hub} stands ${millimetres(outOfRound.off)} off its radius`,
  );
  against(
    outOfLevel.off,
    overall,
    overall,
    `Hub ${outOfLevel.hub} stands ${millimetres(outOfLevel.off)} off the plane`,
  );
  against(
    step.off,
    neighbour,
    2 * neighbour,
    `From hub ${step.hub} to the next it steps ${millimetres(step.off)}`,
  );
  for (const { ring, number, off: by } of heights.hubs)
    against(
      by,
      tolerances.hubHeight,
      Number.POSITIVE_INFINITY,
      `Hub ${number} of ring ${ring} stands ${millimetres(by)} off its height`,
    );
  const doubt = Math.max(...built.hubs.map(({ sd }) => sd.radial));
  if (misfits !== null && misfits.left > CLOSED) {
    const beyond = `${millimetres(misfits.left)} beyond the play of ${millimetres(play.slack)}`;
    if (misfits.left > doubt) stop.push(`The courses above do not close: ${beyond}.`);
    else
      warn.push(
        `The courses above may not close: ${beyond}, no more than the readings may be off.`,
      );
  }
  if (misfits !== null && misfits.gape > play.gap)
    warn.push(`A flange gapes ${millimetres(misfits.gape)}: over ${millimetres(play.gap)}.`);
  if (slack.length > 0) warn.push(`${slack.length} seams take most of their play.`);
  if (measure.length > 0) return { verdict: 'measure', reasons: [...measure, ...stop, ...warn] };
  if (stop.length > 0) return { verdict: 'no go', reasons: [...stop, ...warn] };
  return warn.length > 0
    ? { verdict: 'go, keep slack', reasons: warn }
    : { verdict: 'go', reasons: ['Round and level within what is allowed; the courses close.'] };
}

/** Misfit left beyond the play that no one would notice, metres. */
const CLOSED = 1e-4;

const millimetres = (metres: number): string => `${(metres * 1000).toFixed(1)} mm`;

function slackSeams(shell: Shell, misfits: Misfits, play: SeamPlay): SlackSeam[] {
  const { course } = coursesOf(shell);
  return misfits.seams
    .flatMap(({ side, part, gape }) => {
      const use = Math.max(part / play.slack, gape / play.gap);
      return use < NEARLY_USED ? [] : [{ side, course: courseAt(shell, course, side), use }];
    })
    .sort((a, b) => b.use - a.use || a.side - b.side);
}

function courseAt(shell: Shell, course: Int32Array, side: SideId): number {
  const own = course[shell.sidePlace[side] as number] as number;
  const mate = shell.mate[side] as number;
  return mate < 0 ? own : Math.min(own, course[shell.sidePlace[mate] as number] as number);
}

function worstByCourse(shell: Shell, misfits: Misfits): number[] {
  if (placeCount(shell) === 0) return [];
  const { course, counts } = coursesOf(shell);
  const worst = counts.map(() => 0);
  for (const { side, part } of misfits.seams) {
    const c = courseAt(shell, course, side) - 1;
    worst[c] = Math.max(worst[c] as number, part);
  }
  return worst;
}

/** A move that takes away less than this share of the strain is not worth telling. */
const WORTH_MOVING = 0.1;

/** Which hubs to move: each time the one whose being set right takes away most of the strain, until
 * none stands off by more than is good, or no move helps. */
function movesFor(
  base: Base,
  hubs: readonly HubOff[],
  strain: (off: ReadonlyMap<HubId, Vec3>) => number,
  { radiusGood, overall }: BaseTolerances,
): HubMove[] {
  let now = hubs;
  let before = strain(offMap(base, now));
  const moves: HubMove[] = [];
  const isOff = ({ radial, up }: HubOff): boolean =>
    Math.abs(radial) > radiusGood || Math.abs(up) > overall;
  while (moves.length < MOST_MOVES) {
    const set = (hub: HubOff): HubOff[] =>
      now.map((one) => (one === hub ? { ...one, radial: 0, along: 0, up: 0 } : one));
    const off = now.filter(isOff);
    const tries = (off.length > 0 || moves.length > 0 ? off : now).map((hub) => ({
      hub,
      after: strain(offMap(base, set(hub))),
    }));
    if (tries.length === 0) break;
    const best = tries.reduce((a, b) => (b.after < a.after ? b : a));
    if (best.after > before * (1 - WORTH_MOVING)) break;
    moves.push({
      hub: best.hub.hub,
      out: -best.hub.radial,
      along: -best.hub.along,
      up: -best.hub.up,
    });
    now = set(best.hub);
    before = best.after;
  }
  return moves;
}
