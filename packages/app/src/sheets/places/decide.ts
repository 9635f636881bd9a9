// Decisions about places, each made from the one before: numbers that are painted stay painted, the
// datum stays where it was as long as the same thing is uppermost.

import {
  type DecidedBreak,
  type DecidedOpening,
  type DecidedSecond,
  frozenOf,
  type PlacesDecision,
} from '@shellraise/core';
import { sameStand } from './fit/same-stand.ts';

/** A way up and cut chosen, after what was decided before. */
export function chosen(
  { wayUp, cut, repaired, openings }: PlacesDecision,
  before: PlacesDecision | undefined,
): PlacesDecision {
  const same = before && JSON.stringify(before.wayUp) === JSON.stringify(wayUp);
  const kept = before && sameStand(before, { wayUp, cut }) ? before : null;
  return {
    wayUp: { ...wayUp, kinds: [...wayUp.kinds] },
    cut: { ...cut },
    repaired,
    datumTurn: same ? before.datumTurn : 0,
    ...withOpenings(openings ?? kept?.openings),
    ...(kept?.broken ? { broken: kept.broken } : {}),
    ...(before?.seconds ? { seconds: before.seconds } : {}),
    ...(before?.frozen ? { frozen: before.frozen } : {}),
  };
}

const withOpenings = (openings: PlacesDecision['openings']): Pick<PlacesDecision, 'openings'> =>
  openings ? { openings: structuredClone(openings) } : {};

/** One more opening; what it has in common with those before goes over to it. */
export function opened(decision: PlacesDecision, opening: DecidedOpening): PlacesDecision {
  const others = (decision.openings ?? []).flatMap((one) => {
    const places = one.places.filter((place) => !opening.places.includes(place));
    return places.length > 0 ? [{ ...one, places }] : [];
  });
  return { ...decision, openings: [...others, opening] };
}

/** An opening closed again. */
export const closed = (decision: PlacesDecision, at: number): PlacesDecision =>
  withList(decision, 'openings', without(decision.openings, at));

/** A break answered. */
export const mended = (decision: PlacesDecision, broken: DecidedBreak): PlacesDecision =>
  withList(decision, 'broken', [...(decision.broken ?? []), broken]);

/** A break that was noted by mistake; what was decided after it stays. */
export const notBroken = (decision: PlacesDecision, at: number): PlacesDecision =>
  withList(decision, 'broken', without(decision.broken, at));

/** One more lesser shell. */
export const withSecond = (decision: PlacesDecision, second: DecidedSecond): PlacesDecision =>
  withList(decision, 'seconds', [...(decision.seconds ?? []), second]);

/** A lesser shell given up. */
export const withoutSecond = (decision: PlacesDecision, at: number): PlacesDecision =>
  withList(decision, 'seconds', without(decision.seconds, at));

type ListKey = 'openings' | 'broken' | 'seconds';

/** An empty list is none. */
function withList<K extends ListKey>(
  decision: PlacesDecision,
  key: K,
  list: NonNullable<PlacesDecision[K]>,
): PlacesDecision {
  const { [key]: _, ...rest } = decision;
  return (list.length > 0 ? { ...rest, [key]: list } : rest) as PlacesDecision;
}

const without = <T>(list: readonly T[] | undefined, at: number): T[] =>
  (list ?? []).filter((_, i) => i !== at);

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
