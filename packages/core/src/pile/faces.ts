// From which face panels were read: rows of the file turned so that their sides run anticlockwise
// seen from outside, kinds of which nobody noted the face, and the panels that may be of either hand.

import type { PanelKind } from './assign.ts';
import type { Kind } from './kind.ts';
import type { Panel } from './panels.ts';
import { fromOtherFace, nearestTurn } from './polygon.ts';
import type { Condition, KindRow } from './schema.ts';
import { NEIGHBOUR_Z } from './tolerances.ts';

/** The row with its sides as seen from outside. One of unknown face is turned the way in which more
 * readings of known face bear it out. `sd`: noise of one side, metres. */
export function facingOut(row: KindRow, panels: readonly Panel[], sd: number): KindRow {
  const over = (): KindRow => ({
    ...row,
    sides: fromOtherFace(row.sides),
    ...(row.laps && { laps: fromOtherFace(row.laps) }),
    ...(row.holes && { holes: fromOtherFace(row.holes) }),
    ...(row.dihedrals && { dihedrals: fromOtherFace(row.dihedrals) }),
  });
  if (row.seenFrom === 'inside') return over();
  if (row.seenFrom !== 'unknown') return row;
  const [asRead, back] = [row.sides, fromOtherFace(row.sides)].map((sides) =>
    readingsLike(sides, panels, sd),
  ) as [number, number];
  return back > asRead ? over() : row;
}

/** Readings of known face that may be of a panel with these sides. */
function readingsLike(sides: readonly number[], panels: readonly Panel[], sd: number): number {
  const most = sides.length * (NEIGHBOUR_Z * sd) ** 2;
  return panels.reduce(
    (sum, { readings }) =>
      sum + readings.filter((r) => r.faceKnown && nearestTurn(sides, r.sides).cost < most).length,
    0,
  );
}

/** What is known of a kind's face, to be set on the kind where it is not simply known. `paired`:
 * whether its other hand is a kind as well. */
export function facesOf(
  kind: { readonly id: string; readonly hand: Kind['hand'] },
  row: KindRow | null,
  paired: boolean,
  panels: readonly PanelKind[],
): Pick<Kind, 'faceUnknown' | 'bothHands'> {
  const own = panels.filter((p) => (p.kind ?? p.candidates[0]) === kind.id);
  const readings = own.flatMap(({ panel }) => panel.readings);
  const known = readings.filter((reading) => reading.faceKnown).length;
  if (row !== null) return row.seenFrom === 'unknown' && known === 0 ? { faceUnknown: true } : {};
  if (readings.length > 0 && known === 0) return { faceUnknown: true };
  const isMixed = kind.hand !== null && !paired && known < readings.length;
  return isMixed ? { bothHands: true } : {};
}

/** Panels of a condition that are of this kind: those that are settled, and of those that are of this
 * kind or its other hand the share that the settled ones of the two have; rounded down, so that an
 * odd one is given to neither. */
export function panelsOfKind(
  id: string,
  partner: string | null,
  condition: Condition,
  panels: readonly PanelKind[],
): number {
  const count = (list: readonly PanelKind[]): number =>
    list.reduce((sum, { panel }) => sum + panel.count, 0);
  const like = panels.filter(({ panel }) => panel.condition === condition);
  const own = count(like.filter(({ kind }) => kind === id));
  if (partner === null) return own;
  const either = count(
    like.filter(
      (p) => p.kind === null && p.candidates.includes(id) && p.candidates.includes(partner),
    ),
  );
  const settled = (of: string): number => count(panels.filter(({ kind }) => kind === of));
  const both = settled(id) + settled(partner);
  return own + Math.floor(either * (both === 0 ? 0.5 : settled(id) / both));
}
