// A small shell that stands: half of a two-frequency ball, its kinds with stock, and its plan.

import {
  arrangements,
  type Kind,
  namedNet,
  type StockRow,
  shellOfNet,
  standingShell,
  type WayUp,
} from '@shellraise/core';
import { planPicture } from '../../src/engine/drawings.ts';

/** The whole ball. */
export const net = shellOfNet(
  namedNet({ solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' }),
  2,
);

/** The kinds of the net: 60 places of kind 1, 20 of kind 2. */
export const kinds: readonly Kind[] = net.kinds.map(({ sides }, i) => ({
  id: String(i + 1),
  marks: [i === 0 ? 'heron' : 'rook'],
  sides,
  sideSds: sides.map(() => 0.001),
  hand: null,
  good: i === 0 ? 40 : 9,
  repair: 1,
  scrap: 0,
  counted: true,
  mass: null,
}));

/** All ways to stand of the ball. */
export const list = arrangements(net.shell, kinds);

const best = list.arrangements[0];
if (!best) throw new Error('the ball stands nowhere');

/** The first of them. */
export const standing = standingShell(net.shell, list.waysUp[best.wayUp] as WayUp, best.cut);
export const { shell, courses } = standing;
export const { numbers } = courses;
export const stock: readonly StockRow[] = best.stock;

/** Its plan from above and from below. */
export const picture = planPicture({ shell, numbers, kinds, fromBelow: false });
export const turned = planPicture({ shell, numbers, kinds, fromBelow: true });

/** Index of the place with this number. */
export function placeOf(number: string): number {
  const place = numbers.indexOf(number);
  if (place < 0) throw new Error(`no place ${number}`);
  return place;
}

/** Every place. */
export const places = numbers.map((_, place) => place);
