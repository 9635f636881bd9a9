// Which reading would tell an unknown hub allowance apart from the radius: each is added to the fit as
// the net has it, and the deviation that is left is looked at. Nothing is taken for granted: angles
// between panels, say, stay the same when everything grows, and seldom help.

import { ANGLE_SD } from '../pile/tolerances.ts';
import type { Shell } from '../shell/shell.ts';
import { starsOf } from '../shell/stars.ts';
import { cornerModel, firstSides } from './corner-model.ts';
import { type Fact, factAt, sharedShares } from './facts.ts';
import { kindSideOf } from './facts-in-net.ts';
import { conditionsOf, fitNet, type NetFit } from './fit.ts';
import type { AllowanceFound } from './shape.ts';
import type { SideBelief } from './side-belief.ts';

/** What a reading would leave of the allowance's deviation. */
export interface Sharper {
  /** `plate`: a hub plate from its middle to where the tape was held. `rim`: across all panels joined
   * around a hub, between opposite far ends. `angle`: between the panels at every sort of side. */
  readonly by: 'plate' | 'rim' | 'angle';
  /** Metres. */
  readonly sd: number;
}

/** Deviation of a length read anew, metres. */
const READ_SD = 1e-3;
/** An allowance known better than this is known well enough, metres. */
const WELL_KNOWN = 0.002;

/** What each reading would leave, the sharpest first; empty where the allowance is known well. */
export function sharperReadings(shell: Shell, readings: SideBelief, fit: NetFit): Sharper[] {
  if (!fit.shared || fit.shared.sd <= WELL_KNOWN) return [];
  const model = cornerModel(fit.sides, 1 / fit.radius ** 2);
  if (!model) return [];
  const conditions = conditionsOf(shell, firstSides(readings.sides));
  const shares = sharedShares(readings);
  const asInNet = (fact: Fact): Fact => ({ ...fact, value: factAt(model, fact, shares) });
  const tries: [Sharper['by'], Fact[]][] = [
    ['plate', [{ what: 'allowance', value: 0, sd: 2 * READ_SD }]],
    ['rim', rimAcross(shell, model.first)],
    ['angle', angles(shell, model.first)],
  ];
  return tries
    .flatMap(([by, facts]): Sharper[] => {
      const then =
        facts.length > 0 ? fitNet(readings, conditions, fit.radius, facts.map(asInNet)) : null;
      return then?.shared ? [{ by, sd: then.shared.sd }] : [];
    })
    .sort((a, b) => a.sd - b.sd);
}

/** Across the largest closed star, from spoke 0 to the one opposite. */
function rimAcross(shell: Shell, first: ArrayLike<number>): Fact[] {
  const closed = starsOf(shell).filter((star) => star.closed);
  const star = closed.reduce<(typeof closed)[number] | null>(
    (best, one) => (one.corners.length > (best?.corners.length ?? 0) ? one : best),
    null,
  );
  if (!star) return [];
  const own = star.corners.map((side) => kindSideOf(shell, first, side));
  const to = Math.floor(own.length / 2);
  const spokes = [own[0] as number, own[to] as number] as const;
  return [{ what: 'rim', value: 0, sd: READ_SD, spokes, corners: own.slice(0, to), allowance: 0 }];
}

/** At every sort of seam. */
function angles(shell: Shell, first: ArrayLike<number>): Fact[] {
  return conditionsOf(shell, first).seams.map(([side, mate]) => ({
    what: 'dihedral',
    value: 0,
    sd: ANGLE_SD,
    side,
    mate,
  }));
}

const WAYS: Readonly<Record<Sharper['by'], string>> = {
  plate: 'a hub plate, from its middle to where the tape was held along the sides',
  rim: 'the distance across all panels joined around one hub, between two opposite far ends',
  angle: 'the angle between the panels at every sort of side',
};

/** Share of the present deviation that a reading must get below to be worth while. */
const WORTH_WHILE = 0.6;

/** The allowance and what would sharpen it, in words; none where it is known well. */
export function allowanceWords(found: AllowanceFound, sharper: readonly Sharper[]): string[] {
  if (sharper.length === 0) return [];
  const mm = (metres: number): string => `${(1000 * metres).toFixed(1)} mm`;
  const worth = sharper.filter(({ sd }) => sd < WORTH_WHILE * found.sd);
  const known = found.tellable
    ? `the sides make the hubs lie ${mm(found.value)} beyond what was measured, give or take ${mm(found.sd)}`
    : 'the sides do not tell how far the hubs lie beyond what was measured: the radius grows with it';
  const ways = worth.map(({ by, sd }) => `${WAYS[by]} (then ± ${mm(sd)})`);
  return [ways.length > 0 ? `${known}; to know it better measure ${ways.join(', or ')}` : known];
}
