// Case 3: spares, losses and odd panels. Some kinds with 0 to 40 % more than the ball needs, others
// with up to 15 % missing, and one to five panels of a different shell.

import type { Random } from '../../src/math/random.ts';
import { type Base, randomBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, sameSet, wholeJudge } from './judging.ts';
import { pileOf, rowOf, rowsOf, type Written } from './rows.ts';

/** Spares, losses, odd panels. */
export const strangers: HardCase = {
  name: 'strangers',
  about: 'surplus, shortages, up to five panels of another shell',
  make(random, most) {
    const base = randomBase(random, { least: 60, most, solids: ['icosahedron', 'octahedron'] });
    const rows = rowsOf(base, random, counted(base, random));
    const odd = oddPanels(base, random, 1 + random.below(5));
    const all = random.shuffle([...rows, ...odd]);
    return {
      label: `${base.name}, ${rows.length} kinds, ${odd.length} odd panels`,
      pile: pileOf({ readingSd: base.sd, kinds: all.map(rowOf) }),
      radius: base.radius,
      judge: wholeJudge({ net: base.net, rows: all, sd: base.sd }, (shape): Demand[] => [
        [
          sameSet(
            shape.strangers,
            odd.map(({ id }) => id),
          ),
          `strangers ${odd.map(({ id }) => id).join(', ')}, not ${shape.strangers.join(', ')}`,
        ],
        [shape.mends.length === 0, 'no mends'],
      ]),
    };
  },
};

/** Counts with surplus and shortages. */
export const counted = ({ net }: Base, random: Random): number[] =>
  net.kinds.map(({ count }) =>
    random.uniform() < 0.5
      ? Math.round(count * (1 + 0.4 * random.uniform()))
      : Math.ceil(count * (1 - 0.15 * random.uniform())),
  );

/** Panels of another shell of like size, one of each kind; none so near a kind of this one that a
 * tape would take it for that. */
function oddPanels(base: Base, random: Random, panels: number): Written[] {
  const found: Written[] = [];
  for (let tries = 0; found.length < panels && tries < 500; tries++) {
    const other = randomBase(random, { least: 60, most: 500 });
    for (const row of rowsOf(
      other,
      random,
      other.net.kinds.map(() => 1),
    ).slice(0, 2)) {
      const like = mean(row.truth) / mean(base.net.kinds.flatMap(({ sides }) => sides));
      if (found.length >= panels || like < 0.6 || like > 1.6 || isOfBase(row, base)) continue;
      found.push({ ...row, id: `odd${found.length + 1}`, kind: -1 });
    }
  }
  return found;
}

const isOfBase = ({ truth }: Written, { net, sd }: Base): boolean =>
  net.kinds.some(({ sides }) => {
    const [a, b] = [sorted(sides), sorted(truth)];
    return a.length === b.length && a.every((x, i) => Math.abs(x - (b[i] as number)) < 12 * sd);
  });

const sorted = (sides: readonly number[]): number[] => [...sides].sort((p, q) => p - q);

const mean = (sides: readonly number[]): number => sides.reduce((s, x) => s + x, 0) / sides.length;
