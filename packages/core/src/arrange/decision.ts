// A decision of the project file, found again in the net.

import type { Kind } from '../pile/kind.ts';
import type { Shell } from '../shell/shell.ts';
import {
  type Arrangement,
  type Arrangements,
  type ArrangeOptions,
  arrangements,
} from './arrangements.ts';
import type { PlacesDecision } from './schema.ts';
import { SAME_HEIGHT } from './tolerances.ts';
import type { WayUp } from './ways-up.ts';

/** A decision found again, or why the net has nothing of the kind. */
export type Decided =
  | { readonly found: true; readonly way: WayUp; readonly arrangement: Arrangement }
  | { readonly found: false; readonly reason: string };

/** The decision that an arrangement stands for, to be kept in the project file. */
export function decisionFor(
  list: Arrangements,
  arrangement: Arrangement,
  repaired: boolean,
  datumTurn = 0,
): PlacesDecision {
  const wayUp = decidedWay(list.waysUp[arrangement.wayUp] as WayUp);
  const cut = { places: arrangement.cut.places.length, height: arrangement.cut.height };
  return { wayUp, cut, repaired, datumTurn };
}

/** A way up as the project keeps it. */
export const decidedWay = ({ at, kinds, orbit, lean }: WayUp): PlacesDecision['wayUp'] => ({
  at,
  kinds: [...kinds],
  orbit,
  ...(lean && { lean: { ...lean } }),
});

/** The arrangement that a decision stands for: the cut of its way up with as many places whose
 * height is nearest, within 5 %. `options` other than `repaired` as when it was made. */
export function findDecided(
  shell: Shell,
  kinds: readonly Kind[],
  decision: PlacesDecision,
  options: ArrangeOptions = {},
): Decided {
  const { wayUp, cut, repaired } = decision;
  const list = arrangements(shell, kinds, {
    ...options,
    repaired,
    only: (way) => sameWay(way, wayUp),
    ...(wayUp.lean && { lean: wayUp.lean }),
  });
  if (list.status !== 'arranged') return { found: false, reason: list.reason };
  const way = list.waysUp.find(
    (candidate) => sameWay(candidate, wayUp) && candidate.lean?.by === wayUp.lean?.by,
  );
  if (!way) {
    const crown = `${wayUp.at} ${wayUp.kinds.join(' ')} (${wayUp.orbit})`;
    return { found: false, reason: `the net has no way up with crown ${crown}` };
  }
  const off = (a: Arrangement): number => Math.abs(a.cut.height - cut.height);
  const near = list.arrangements
    .filter(
      (a) =>
        a.wayUp === list.waysUp.indexOf(way) &&
        a.cut.places.length === cut.places &&
        off(a) <= SAME_HEIGHT * cut.height,
    )
    .sort((a, b) => off(a) - off(b))[0];
  if (near) return { found: true, way, arrangement: near };
  const reason = `no cut of that way up leaves ${cut.places} places ${cut.height.toFixed(3)} m high`;
  return { found: false, reason };
}

const sameWay = (way: WayUp, wanted: PlacesDecision['wayUp']): boolean =>
  way.at === wanted.at &&
  way.orbit === wanted.orbit &&
  way.kinds.length === wanted.kinds.length &&
  way.kinds.every((id, i) => id === wanted.kinds[i]);
