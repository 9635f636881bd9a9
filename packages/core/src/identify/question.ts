// What the identification is asked of a pile, once its readings are worked up.

import type { HubPlate } from '../pile/kind.ts';
import type { PileKinds } from '../pile/kinds.ts';
import type { HubPlateRow, Pile } from '../pile/schema.ts';
import { ANGLE_SD } from '../pile/tolerances.ts';
import type { LooseGroup, ShapeQuestion } from './shape.ts';

/** Tape held along holes or skin and nobody said how far the hubs lie beyond: corners are cut back by
 * up to about 25 mm on either side of a hub, so 0 to 50 mm in all, metres (our own judgement). */
const UNKNOWN_ALLOWANCE = 0.025;

/** The question that a worked-up pile asks. Kinds that somebody left out are not in it, nor the
 * groups that have them; so kinds are numbered as in the question, not as in the pile. */
export function shapeQuestion(
  pile: Pile,
  { kinds, groups, unsettledGroups }: PileKinds,
): ShapeQuestion {
  const out = new Set(pile.kinds.filter((row) => row.leaveOut).map((row) => row.id));
  const looseGroups = looseWithout(out, unsettledGroups);
  const hubPlates = (pile.hubPlates ?? []).map((row) => hubPlate(row, pile));
  return {
    kinds: kinds.filter((kind) => !out.has(kind.id)),
    groups: groups.filter((group) => !group.around.some((id) => out.has(id))),
    allowanceSd:
      pile.hubAllowance === null && pile.measuredAlong !== 'hubs' ? UNKNOWN_ALLOWANCE : 0,
    readingSd: pile.readingSd,
    ...(pile.hubAllowance && { allowance: pile.hubAllowance }),
    ...(looseGroups.length > 0 && { looseGroups }),
    ...(hubPlates.length > 0 && { hubPlates }),
  };
}

/** The groups that may be read in several ways, without the kinds left out. One that no way fits
 * contradicts itself and says nothing of the shape. */
function looseWithout(
  out: ReadonlySet<string>,
  groups: PileKinds['unsettledGroups'],
): readonly LooseGroup[] {
  return groups
    .filter(({ readings }) => readings.length > 0)
    .map(({ around, closed, count }) => ({
      around: around.map((ids) => ids.filter((id) => !out.has(id))),
      closed,
      count,
    }))
    .filter(({ around }) => around.every((ids) => ids.length > 0));
}

/** A plate's readings with their deviations. */
function hubPlate({ corners, radius, arms }: HubPlateRow, pile: Pile): HubPlate {
  const sd = pile.angleSd ?? ANGLE_SD;
  return {
    corners,
    radius: radius === undefined ? null : { value: radius, sd: pile.readingSd },
    arms: (arms ?? []).map((value) => ({ value, sd })),
  };
}
