// Counts that tell an incomplete kit: for a dome of F triangles and B base sides, seams =
// (3F − B)/2 and hubs = 1 + (F + B)/2. Exact by Euler's theorem; the three worked cases are those
// of the trade notes (own inference, exact): 40/10 → 55 and 26, 75/15 → 105 and 46, 105/15 → 150
// and 61.

import { describe, expect, it } from 'vitest';
import { countAccount } from '../../src/takeoff/count-account.ts';
import { above, ball } from '../takeoff/ball.ts';

const cases = [
  { n: 2, height: 0, places: 40, base: 10, seams: 55, hubs: 26 },
  { n: 3, height: 0.1, places: 75, base: 15, seams: 105, hubs: 46 },
  { n: 3, height: -0.15, places: 105, base: 15, seams: 150, hubs: 61 },
];

describe('closure counts of a dome', () => {
  it.each(cases)('$places places on $base base sides: $seams seams, $hubs hubs', (row) => {
    const account = countAccount(above(ball(row.n), row.height).shell);
    expect(account).toMatchObject({ places: row.places, openSides: row.base, rims: 1 });
    expect(account.seams).toEqual({ counted: row.seams, byFormula: row.seams });
    expect(account.hubs).toEqual({ counted: row.hubs, byFormula: row.hubs });
  });
});
