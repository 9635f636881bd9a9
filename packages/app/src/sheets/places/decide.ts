// Decisions about places, each made from the one before: numbers that are painted stay painted, the
// datum stays where it was as long as the same thing is uppermost.

import { frozenOf, type PlacesDecision } from '@shellraise/core';

/** A way up and cut chosen, after what was decided before. */
export function chosen(
  { wayUp, cut, repaired }: PlacesDecision,
  before: PlacesDecision | undefined,
): PlacesDecision {
  const same = before && JSON.stringify(before.wayUp) === JSON.stringify(wayUp);
  return {
    wayUp: { ...wayUp, kinds: [...wayUp.kinds] },
    cut: { ...cut },
    repaired,
    datumTurn: same ? before.datumTurn : 0,
    ...(before?.frozen ? { frozen: before.frozen } : {}),
  };
}

/** The numbers as they are now are painted. */
export const frozen = (decision: PlacesDecision): PlacesDecision => ({
  ...decision,
  frozen: frozenOf(decision),
});

/** Numbers follow the shell again. */
export function unfrozen({ frozen: _, ...decision }: PlacesDecision): PlacesDecision {
  return decision;
}

/** The datum turned on, degrees anticlockwise seen from above, kept from −180 (left out) to 180. */
export function turnedTo(decision: PlacesDecision, degrees: number): PlacesDecision {
  const round = ((((degrees + 180) % 360) + 360) % 360) - 180;
  return { ...decision, datumTurn: ((round === -180 ? 180 : round) * Math.PI) / 180 };
}

/** Where the datum is, whole tenths of a degree. */
export const turnOf = ({ datumTurn }: PlacesDecision): number =>
  Math.round((datumTurn * 1800) / Math.PI) / 10;
