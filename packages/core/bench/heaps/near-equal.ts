// Case 5: near-equal kinds. Nets moved so little that their sides come apart by 0.08 % to 0.3 %,
// one reading a side with 1 mm of noise.

import { movedNet } from '../../src/nets/moved.ts';
import { namedNet } from '../../src/nets/named.ts';
import { baseOf } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, wholeJudge } from './judging.ts';
import { maybeCounts, pileOf, rowOf, rowsOf } from './rows.ts';

const nets = [
  [3, 0],
  [4, 0],
  [2, 2],
  [2, 1],
  [3, 1],
] as const;

/** Near-equal kinds. */
export const nearEqual: HardCase = {
  name: 'near-equal',
  about: 'side classes 0.08 % to 0.3 % apart, 1 mm noise, one reading each',
  make(random) {
    const [b, c] = nets[random.below(nets.length)] as (typeof nets)[number];
    const fraction = 0.0008 + 0.0022 * random.uniform();
    const named = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
    const net = movedNet(named, { solid: 'icosahedron', fraction, random });
    const given = baseOf(`(${b}, ${c}) moved ${(100 * fraction).toFixed(2)} %`, net, random);
    const base = { ...given, sd: 0.001 };
    const rows = rowsOf(base, random, maybeCounts(base.net, random));
    return {
      label: `${base.name}, ${rows.length} kinds`,
      pile: pileOf({ readingSd: base.sd, kinds: rows.map(rowOf) }),
      radius: base.radius,
      judge: wholeJudge({ net: base.net, rows, sd: base.sd }, (shape): Demand[] => [
        [shape.interchangeCosts.length === shape.interchangeable.length, 'the cost of exchange'],
        [shape.strangers.length + shape.mends.length === 0, 'no strangers, no mends'],
      ]),
    };
  },
};
