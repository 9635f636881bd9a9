// Round upright structures by GB 50009-2012, Table 8.3.1 item 37(a): pressure around a tank or tower.

import { assertBetween } from '../doors.ts';
import { confirmed, type Provenance } from '../provenance.ts';

/** Item 37(a), read in its table. */
export const GB_CYLINDER: Provenance = confirmed('GB 50009-2012, Table 8.3.1 item 37(a)');

/** Every 15° from the windward line to the leeward one, for height over width 1, 7 and 25. */
const AROUND: readonly (readonly [number, readonly number[]])[] = [
  [1, [1, 0.8, 0.1, -0.7, -1.2, -1.5, -1.7, -1.2, -0.7, -0.5, -0.4, -0.4, -0.4]],
  [7, [1, 0.8, 0.1, -0.8, -1.7, -2.2, -2.2, -1.7, -0.8, -0.6, -0.5, -0.5, -0.5]],
  [25, [1, 0.8, 0.1, -0.9, -1.9, -2.5, -2.6, -1.9, -0.9, -0.7, -0.6, -0.6, -0.6]],
];

/** Shape coefficient at an angle from the windward line, radians 0 … π, straight between the rows and
 * columns of the table. A structure lower than its width takes the column of height over width 1,
 * one over 25 that of 25. RangeError for an angle or a ratio that is none.
 * Source: GB 50009-2012, Table 8.3.1 item 37(a). Range: height over width 1 and more; below that the
 * side suction is less, so that it errs on the safe side there. */
export function gbCylinder(angle: number, heightOverWidth: number): number {
  assertBetween('angle from the windward line', angle, 0, Math.PI, 'rad');
  assertBetween('height over width', heightOverWidth, 0, 1000);
  const ratio = Math.min(25, Math.max(1, heightOverWidth));
  const above = ratio <= 7 ? 1 : 2;
  const [low, atLow] = AROUND[above - 1] as (typeof AROUND)[0];
  const [high, atHigh] = AROUND[above] as (typeof AROUND)[0];
  const part = (ratio - low) / (high - low);
  return inRow(atLow, angle) * (1 - part) + inRow(atHigh, angle) * part;
}

function inRow(row: readonly number[], angle: number): number {
  const at = (angle * 12) / Math.PI;
  const i = Math.min(11, Math.floor(at));
  return (row[i] as number) * (1 + i - at) + (row[i + 1] as number) * (at - i);
}
