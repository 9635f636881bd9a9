// Case 6: hands unknown. Nobody noted the face of any panel, or of some: a left and a right kind
// then lie in one row, read from either face, their counts together.

import type { NetShell } from '../../src/nets/kinds.ts';
import { fromOtherFace, nearestTurn } from '../../src/pile/polygon.ts';
import { randomBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, likeness, type Truth, verdictOf } from './judging.ts';
import { maybeCounts, pileOf, rowOf, rowsOf, type Written } from './rows.ts';
import { mirrorOf } from './same-net.ts';

/** Hands unknown. */
export const hands: HardCase = {
  name: 'hands',
  about: 'face not noted for all or some panels',
  make(random, most) {
    const base = randomBase(random, {
      least: 80,
      most: Math.min(most, 420),
      moved: 0.4,
      plain: true,
    });
    const rows = rowsOf(base, random, maybeCounts(base.net, random));
    const all = random.uniform() < 0.5;
    const unknown = new Set(
      base.net.kinds.flatMap(({ mirror }, k) =>
        all || random.uniform() < 0.5 ? [k, ...(mirror === null ? [] : [mirror])] : [],
      ),
    );
    const merged = mergedPairs(rows, base.net, unknown);
    const kinds = random.shuffle(merged).map((row) => {
      if (!unknown.has(row.kind)) return rowOf(row);
      const flipped = random.uniform() < 0.5;
      const sides = flipped ? [...row.sides].reverse() : [...row.sides];
      return { ...rowOf(row), sides, seenFrom: 'unknown' };
    });
    const known = base.net.kinds.some(({ mirror }, k) => mirror !== k && !unknown.has(k));
    // A kind that is its own mirror image but for a reading's noise tells no hand.
    const told = base.net.kinds.some(
      ({ sides }, k) => !unknown.has(k) && oddInMirror(sides) > TOLD * base.sd,
    );
    const handed = base.net.kinds.some(({ mirror }, k) => mirror !== k);
    const truth: Truth = { net: base.net, rows: merged, sd: base.sd };
    const mirror: Truth = { net: mirrorOf(base.net), rows: mirrored(merged), sd: base.sd };
    return {
      label: `${base.name}, ${unknown.size} of ${rows.length} faces unknown`,
      pile: pileOf({ readingSd: base.sd, kinds }),
      radius: base.radius,
      judge: ({ answer, question }) =>
        verdictOf(
          answer,
          (shape) =>
            likeness(shape, question.kinds, truth) === 'whole' ||
            (!told && likeness(shape, question.kinds, mirror) === 'whole'),
          (shape): Demand[] => [
            [
              !handed || known !== told || shape.hands === (known ? 'known' : 'mirrored'),
              known ? 'that hands are known' : 'that the mirror image fits as well',
            ],
            [shape.strangers.length === 0, 'no strangers'],
            [
              known || !handed || answer.next.length + answer.settle.length > 0,
              'the look that settles it',
            ],
          ],
        ),
    };
  },
};

/** Sides that differ by so many deviations of a reading in the mirror tell a hand. */
const TOLD = 6;

/** How far a panel's sides are off its own mirror image, metres: the root of the sum of squares. */
const oddInMirror = (sides: readonly number[]): number =>
  Math.sqrt(nearestTurn(fromOtherFace(sides), sides).cost);

/** One row of a left and right pair of unknown face, with the counts of both. */
function mergedPairs(
  rows: readonly Written[],
  { kinds }: NetShell,
  unknown: ReadonlySet<number>,
): Written[] {
  return rows.flatMap((row) => {
    const mirror = kinds[row.kind]?.mirror ?? null;
    if (mirror === null || mirror === row.kind || !unknown.has(row.kind)) return [row];
    if (mirror < row.kind) return [];
    const other = rows.find(({ kind }) => kind === mirror) as Written;
    return [{ ...row, good: row.good === null ? null : row.good + (other.good ?? 0) }];
  });
}

const mirrored = (rows: readonly Written[]): Written[] =>
  rows.map((row) => ({
    ...row,
    sides: [...row.sides].reverse(),
    truth: [...row.truth].reverse(),
  }));
