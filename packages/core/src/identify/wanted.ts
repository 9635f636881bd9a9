// Kinds that the pile has none of: where all its kinds are right but one is absent, the others close
// around holes, and the holes say what the absent one's sides are. Only nets with the rotations of the
// icosahedron or octahedron, with one piece of each kind or two, and one absent kind of three sides.

import { turned } from '../math/cyclic.ts';
import type { Kind } from '../pile/kind.ts';
import { fitsWell } from './candidates.ts';
import { solidFolds } from './fold-starts.ts';
import { foldNets } from './folding.ts';
import { type FilledNet, fillHoles } from './holes.ts';
import type { AddedKind } from './shape.ts';
import { type SideBelief, sideBelief } from './side-belief.ts';

/** Work of one start and of one way to look, in tries (see FoldSearch): some 40 000 a second. */
const TRIES = { start: 6000, way: 40000 };
/** Nets of more places are not looked for: so many kinds are those of a shell of less symmetry. */
const MOST_PLACES = 1200;
/** Sides of the panels that stand which look onto a panel that is absent, folded. */
const HOLE_SIDES = 3;
/** A net with a hole is believed where it closes so many conditions that the readings did not have to
 * keep. */
const LEAST_CONDITIONS = 8;
/** A kind less probable than this among those that would do is not told. */
const TOLD = 0.9;
/** Three panels around an axis in the place of one are that much less probable (natural logarithm): the
 * hole is the same. */
const PARTED = Math.log(20);

/** A kind that the pile lacks. */
export interface WantedKind {
  /** Sides and their deviations, metres. */
  readonly sides: readonly number[];
  readonly sds: readonly number[];
}

/** What was found to be lacking. */
export interface Wanted {
  readonly kinds: readonly WantedKind[];
  /** That these are it, among all that would do. */
  readonly probability: number;
}

/** The kind that these lack; null where none was found, or several that are as probable. `onWork` is
 * told the work done; false stops. */
export function wantedKinds(
  kinds: readonly Kind[],
  allowanceSd: number,
  onWork: (work: number) => boolean,
): Wanted | null {
  const readings = sideBelief(kinds, allowanceSd);
  for (const { axis, mostUses } of ways) {
    const folds = solidFolds.slice(0, 2).filter(({ order }) => order * kinds.length <= MOST_PLACES);
    const found = folds.flatMap((fold) => {
      const filled: FilledNet[] = [];
      let work = 0;
      foldNets(readings, fold, {
        axis: axis === 'top' ? (fold.axes[0] as number) : 1,
        mostUses,
        maxTries: TRIES.start,
        spareKinds: 0,
        radius: null,
        periods: readings.sides.map((own) => own.length),
        labels: readings.sides.flat().map((_, s) => s),
        holeSides: HOLE_SIDES,
        fillHoles: (net, radius) => {
          filled.push(...fillHoles(readings, net, radius).filter(isSure));
          return null;
        },
        onTry: (_, own) => {
          work += own;
          return work < TRIES.way && onWork(own);
        },
      });
      return filled;
    });
    const wanted = soleOf(found, readings);
    if (wanted) return wanted;
  }
  return null;
}

/** From the highest axis, then from anywhere, as the absent panel may stand on that axis. */
const ways = [
  { axis: 'top', mostUses: 1 },
  { axis: 'none', mostUses: 1 },
  { axis: 'top', mostUses: 2 },
] as const;

const isSure = (net: FilledNet): boolean =>
  net.missing === 1 && net.fit.conditions >= LEAST_CONDITIONS && fitsWell(net);

/** The wanted kind of the best net, with its probability among those of the others; none where that
 * is too small. */
function soleOf(found: readonly FilledNet[], { sides: known }: SideBelief): Wanted | null {
  const [best, ...others] = found
    .map((net) => ({
      evidence: net.fit.evidence - (net.parted ? PARTED : 0),
      ...wantedOf(net, known.length),
    }))
    .sort((a, b) => b.evidence - a.evidence);
  if (!best) return null;
  const rivals = others
    .filter((one) => !isSame(best.sides, one.sides, best.sds))
    .reduce((sum, one) => sum + Math.exp(one.evidence - best.evidence), 0);
  const probability = 1 / (1 + rivals);
  return probability < TOLD ? null : { kinds: [{ sides: best.sides, sds: best.sds }], probability };
}

function wantedOf({ fit }: FilledNet, kind: number): WantedKind {
  const sides = fit.sides[kind] as readonly number[];
  const first = fit.sides.slice(0, kind).flat().length;
  return { sides, sds: sides.map((_, i) => Math.sqrt(fit.variances[first + i] as number)) };
}

/** Whether two triangles are one, in some turn or turned over. */
function isSame(a: readonly number[], b: readonly number[], sds: readonly number[]): boolean {
  const near = 4 * Math.max(...sds);
  const over = [...b].reverse();
  return [b, over].some((other) =>
    other.some((_, turn) =>
      turned(other, turn).every((side, i) => Math.abs(side - (a[i] as number)) <= near),
    ),
  );
}

/** The kinds with the wanted ones at their end, as the answer names them: none in stock. */
export const withWanted = (wanted: readonly WantedKind[]): AddedKind[] =>
  wanted.map(({ sides, sds }, i) => ({
    why: 'wanted',
    of: null,
    kind: {
      id: `wanted ${i + 1}`,
      marks: [],
      sides,
      sideSds: sds,
      hand: null,
      good: 0,
      repair: 0,
      scrap: 0,
      counted: true,
      mass: null,
    },
  }));
