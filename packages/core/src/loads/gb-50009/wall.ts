// Free-standing wall by GB 50009-2012, Table 8.3.1 item 34.

import { numberOf, type Override } from '../numbers.ts';
import type { Sourced } from '../provenance.ts';

/** Net coefficient of a free-standing wall, 1.3; it may act either way.
 * Source: GB 50009-2012, Table 8.3.1 item 34. */
export const gbWall = (overrides: readonly Override[] = []): Sourced =>
  numberOf('gbWall', overrides);
