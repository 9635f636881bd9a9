// Case 12: ambiguity. Nets whose halves can be turned against each other by a step: sides alone
// leave several tilings. In half of the piles stars of the true one were noted while still joined.

import { namedNet } from '../../src/nets/named.ts';
import { placeAt } from '../../src/shell/shell.ts';
import { starsOf } from '../../src/shell/stars.ts';
import { twinBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, wholeJudge } from './judging.ts';
import { maybeCounts, pileOf, rowOf, rowsOf } from './rows.ts';

const nets = [
  ['icosahedron', 2, 0],
  ['icosahedron', 4, 0],
  ['icosahedron', 3, 3],
  ['octahedron', 2, 0],
  ['octahedron', 3, 0],
] as const;

/** Ambiguity. */
export const ambiguity: HardCase = {
  name: 'ambiguity',
  about: 'sides alone leave several tilings; groups in half of the piles',
  make(random) {
    const [solid, b, c] = nets[random.below(nets.length)] as (typeof nets)[number];
    const net = namedNet({ solid, b, c, division: 'equal chords' });
    const base = twinBase(`${solid} (${b}, ${c})`, net, random);
    const rows = rowsOf(base, random, maybeCounts(base.net, random));
    const ids = new Map(rows.map(({ id, kind }) => [kind, id]));
    const { shell } = base.net;
    const groups = random.shuffle(starsOf(shell)).slice(0, random.uniform() < 0.5 ? 0 : 6);
    return {
      label: `${base.name}, ${groups.length} groups`,
      pile: pileOf({
        readingSd: base.sd,
        kinds: rows.map(rowOf),
        groups: groups.map(({ corners }) => ({
          around: corners.map((side) => ids.get(shell.kind[placeAt(shell, side)] as number)),
          closed: true,
        })),
      }),
      radius: base.radius,
      judge: wholeJudge({ net: base.net, rows, sd: base.sd }, (shape, { answer }): Demand[] => {
        const alone = answer.shapes.length === 1;
        return [
          [shape.misfitGroups.length === 0, 'a place for every group'],
          [alone || shape.apart !== '', 'what tells the shapes apart'],
          [alone || answer.next.length + answer.settle.length > 0, 'what to look at to settle it'],
        ];
      }),
    };
  },
};
