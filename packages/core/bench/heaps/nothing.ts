// Case 11: nothing closes. Random obtuse triangles, the panels of a flat floor, or a ball's kinds of
// which half are missing. (Acute triangles all close: four of one kind make a tetrahedron.)

import type { Random } from '../../src/math/random.ts';
import { randomBase } from './bases.ts';
import type { HardCase, HardPile, HardVerdict, Run } from './heap.ts';
import { isCertain, likeness } from './judging.ts';
import { pileOf, rowOf, rowsOf, written } from './rows.ts';

/** Nothing closes. */
export const nothing: HardCase = {
  name: 'nothing',
  about: 'random triangles, a floor’s panels, half of the kinds missing',
  make(random, most) {
    const sort = random.uniform();
    if (sort < 0.4) return loose(random);
    return sort < 0.6 ? floor(random) : halfMissing(random, most);
  },
};

/** Nothing may close; a part that is said to be open and unlikely is no lie. */
function noJudge({ answer }: Run): HardVerdict {
  const [best] = answer.shapes;
  if (!best) {
    const lacks = answer.reasons.length === 0 ? ['a reason'] : [];
    return { outcome: lacks.length > 0 ? 'short' : 'right', lacks, bestRight: null };
  }
  const humble = !best.closed && best.probability < 0.5;
  return {
    outcome: humble ? 'no' : isCertain(answer) ? 'certain' : 'wrong',
    lacks: [],
    bestRight: false,
  };
}

function loose(random: Random): HardPile {
  const kinds = Array.from({ length: 2 + random.below(9) }, (_, i) => {
    const [a, b] = [0.6 + 0.9 * random.uniform(), 0.6 + 0.9 * random.uniform()];
    const angle = ((100 + 50 * random.uniform()) * Math.PI) / 180;
    const c = Math.sqrt(a * a + b * b - 2 * a * b * Math.cos(angle));
    return { id: `t${i + 1}`, sides: [a, b, c].map(written), seenFrom: 'outside' };
  });
  return {
    label: `${kinds.length} random obtuse triangles`,
    pile: pileOf({ readingSd: 0.001, kinds }),
    radius: null,
    judge: noJudge,
  };
}

function floor(random: Random): HardPile {
  const side = 0.7 + 0.8 * random.uniform();
  const read = (sides: readonly number[]) => sides.map((x) => written(x + 0.001 * random.normal()));
  const sorts = [
    [Array.from({ length: 6 }, () => side)],
    [Array.from({ length: 12 }, () => 0.5 * side), Array.from({ length: 6 }, () => 0.5 * side)],
    [[side, 0.8 * side, 1.5 * side]],
  ];
  const chosen = sorts[random.below(sorts.length)] as number[][];
  return {
    label: `a floor of panels with ${chosen.map((sides) => sides.length).join(' and ')} sides`,
    pile: pileOf({
      readingSd: 0.001,
      kinds: chosen.map((sides, i) => ({
        id: `f${i + 1}`,
        sides: read(sides),
        seenFrom: 'outside',
      })),
    }),
    radius: null,
    judge: noJudge,
  };
}

/** Half of a ball's kinds: a no, or what does stand of the truth. */
function halfMissing(random: Random, most: number): HardPile {
  const base = randomBase(random, { least: 180, most: Math.min(most, 420), plain: true });
  const rows = rowsOf(base, random, null).filter((_, i) => i % 2 === 0);
  const truth = { net: base.net, rows, sd: base.sd };
  return {
    label: `${rows.length} of ${base.net.kinds.length} kinds of ${base.name}`,
    pile: pileOf({ readingSd: base.sd, kinds: rows.map(rowOf) }),
    radius: null,
    judge: (run) => {
      const best = run.answer.shapes[0];
      if (best && likeness(best, run.question.kinds, truth) !== null)
        return { outcome: 'right', lacks: [], bestRight: true };
      return noJudge(run);
    },
  };
}
