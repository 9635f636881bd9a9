// A need in words, as it is written on a bag.

import type { Need } from '../../takeoff/needs.ts';

/** One line: `96 bolts 5/16-18 × 25.4 mm`. */
export function needWords({ item, thread, length, corners, rim, quantity, unit }: Need): string {
  const count = unit === 'm' ? `${quantity.toFixed(1)} m of` : `${quantity}`;
  const many = unit === 'piece' && quantity !== 1 ? 's' : '';
  const size = [
    thread,
    length === null ? null : `× ${Number((length * 1000).toFixed(1))} mm`,
    corners === null ? null : `for ${corners} corners${rim ? ' at the rim' : ''}`,
  ].filter((part) => part !== null);
  return [count, `${item}${many}`, ...size].join(' ');
}

/** What tells needs of one item and size apart from others, as text. */
export const needKey = ({ item, thread, length, corners, rim }: Need): string =>
  [item, thread, length === null ? null : Math.round(length * 1e4), corners, rim].join('|');
