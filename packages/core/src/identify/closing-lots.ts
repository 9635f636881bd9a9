// Which kinds of a heap close into a ball without the others: what is left beside it may be cut panels, a
// straight course, another shell or strangers. Nets with the rotations of the icosahedron or octahedron
// are grown from every start with any number of kinds left over; nets that close many conditions which
// the readings did not have to keep are no chance.

import type { Kind } from '../pile/kind.ts';
import { fitsWell } from './candidates.ts';
import { workingKinds } from './canonical-kinds.ts';
import { solidFolds } from './fold-starts.ts';
import { foldNets } from './folding.ts';
import { FINEST_SD, sideBelief } from './side-belief.ts';

/** Work of one start and of one group of rotations, in tries (see FoldSearch): some 40 000 a second. */
const TRIES = { start: 3000, way: 12000 };
/** Pieces of one kind, folded, at most. */
const MOST_USES = 2;
/** Conditions that the readings did not have to keep, at least. */
const LEAST_CONDITIONS = 5;
/** Kinds are one and the same within so many deviations of the difference of every side. */
const SAME = 4;

/** The lots of kinds (by index, ascending) that close without the others, the most telling first. Lots
 * without a kind that is the same as one of theirs are none. `onWork` is told the work done; false
 * stops. */
export function closingLots(
  kinds: readonly Kind[],
  allowanceSd: number,
  onWork: (work: number) => boolean,
): number[][] {
  if (kinds.length < 3) return [];
  const working = workingKinds(kinds);
  const readings = sideBelief(working.kinds, allowanceSd);
  const found = solidFolds.slice(0, 2).flatMap((fold) => {
    let work = 0;
    const { nets } = foldNets(readings, fold, {
      maxTries: TRIES.start,
      spareKinds: kinds.length - 2,
      mostUses: MOST_USES,
      radius: null,
      periods: readings.sides.map((own) => own.length),
      labels: readings.sides.flat().map((_, s) => s),
      onTry: (_, own) => {
        work += own;
        return work < TRIES.way && onWork(own);
      },
    });
    return nets.filter((net) => net.fit.conditions >= LEAST_CONDITIONS && fitsWell(net));
  });
  found.sort((a, b) => b.fit.conditions - a.fit.conditions || b.fit.evidence - a.fit.evidence);
  const seen = new Set<string>();
  return found
    .map(({ shell }) =>
      [...new Set(shell.kind)].map((k) => working.source[k] as number).sort((a, b) => a - b),
    )
    .filter((lot) => {
      const key = lot.join();
      const isNew = !seen.has(key) && lot.length < kinds.length && isWhole(lot, kinds);
      seen.add(key);
      return isNew;
    });
}

/** Whether no kind that is left over is the same as one of the lot. */
const isWhole = (lot: readonly number[], kinds: readonly Kind[]): boolean =>
  kinds.every(
    (kind, k) => lot.includes(k) || !lot.some((own) => areSame(kinds[own] as Kind, kind)),
  );

const areSame = (a: Kind, b: Kind): boolean =>
  a.sides.length === b.sides.length &&
  a.sides.some((_, turn) =>
    a.sides.every((x, i) => {
      const j = (i + turn) % b.sides.length;
      const sd = Math.hypot(sdAt(a, i), sdAt(b, j));
      return Math.abs(x - (b.sides[j] as number)) <= SAME * sd;
    }),
  );

const sdAt = ({ sideSds }: Kind, i: number): number => Math.max(sideSds[i] as number, FINEST_SD);
