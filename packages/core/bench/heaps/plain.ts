// An easy pile, for the calibration: every kind of a ball read once.

import { randomBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { wholeJudge } from './judging.ts';
import { maybeCounts, pileOf, rowOf, rowsOf } from './rows.ts';

/** Every kind of a ball, read once, with counts or without. */
export const plain: HardCase = {
  name: 'plain',
  about: 'every kind of a ball read once',
  make(random, most) {
    const base = randomBase(random, { least: 60, most: Math.min(most, 420), moved: 0.5 });
    const rows = rowsOf(base, random, maybeCounts(base.net, random));
    return {
      label: `${base.name}, ${rows.length} kinds`,
      pile: pileOf({ readingSd: base.sd, kinds: rows.map(rowOf) }),
      radius: base.radius,
      judge: wholeJudge({ net: base.net, rows, sd: base.sd }),
    };
  },
};
