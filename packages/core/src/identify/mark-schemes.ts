// Schemes of marks: which place bears which mark. Families with one mark bear it everywhere; those
// with several are divided by a simple rule (mark-divisions.ts). Every scheme is weighed by the
// counts of each mark, by the joined groups and by how simple its rule is (Bayes' theorem); schemes
// that a rotation of the net carries into each other are one.

import { lowestTurn, turned } from '../math/cyclic.ts';
import { compareLists } from '../math/order.ts';
import type { PlaceId } from '../shell/ids.ts';
import { cornerCount, placeCount, type Shell, sidesOf } from '../shell/shell.ts';
import { fansOf } from '../shell/stars.ts';
import { placeOrbits, type Symmetry, symmetries } from '../shell/symmetry.ts';
import { axesOf, type Division, divisionsOf } from './mark-divisions.ts';
import {
  ANY_OF_FAMILY,
  groupWeight,
  likelyStands,
  plainMarks,
  type StandingGroup,
} from './mark-groups.ts';
import type { MarkTally } from './mark-tally.ts';

/** One scheme. */
export interface MarkScheme {
  /** Place → mark index, or NO_MARK, or ANY_OF_FAMILY. */
  readonly marks: Int32Array;
  /** Family with several marks → how they are shared out. */
  readonly divisions: ReadonlyMap<number, Division>;
  readonly probability: number;
}

/** Divisions kept of one family and axis, after its counts; and schemes kept as families join. */
const MOST_KEPT = 30;
const MOST_SCHEMES = 12;
/** Divisions so much (natural logarithm) less likely by counts than the best are left out. */
const FAINT = 14;
/** Least probability of a listed scheme. */
const LEAST = 0.002;

interface Partial {
  readonly divisions: ReadonlyMap<number, Division>;
  readonly marks: Int32Array;
  /** By counts and simplicity; and with the groups as well. */
  readonly own: number;
  readonly weight: number;
}

/** All likely schemes, best first; their probabilities add up to 1. */
export function markSchemes(
  shell: Shell,
  family: Int32Array,
  rotations: readonly Symmetry[],
  tally: MarkTally,
  groups: readonly StandingGroup[],
): MarkScheme[] {
  const plain = plainMarks(shell, family, tally.real);
  const places = tally.real.map(() => [] as number[]);
  family.forEach((f, p) => {
    places[f]?.push(p);
  });
  const split = tally.real.flatMap((own, f) =>
    own.length > 1 && (places[f]?.length ?? 0) > 0 ? [f] : [],
  );
  if (split.length === 0) return [{ marks: plain, divisions: new Map(), probability: 1 }];
  const isSplit = new Set(split);
  const near = groups.map((group) => likelyStands(group, plain, family, isSplit, tally.real));
  const orbits = placeOrbits(shell, rotations);
  const axes = axesOf(shell, bareRotations(shell));
  const weighed = split.map((f) =>
    divisionsOf(shell, places[f] as number[], tally.real[f] as number[], orbits, axes).map(
      (division) => ({
        division,
        weight: division.prior + countWeight(division, f, places, tally),
      }),
    ),
  );
  const found = new Map<string, Partial>();
  for (let axis = 0; axis < Math.max(1, axes.length); axis++) {
    let partials: Partial[] = [{ divisions: new Map(), marks: plain, own: 0, weight: 0 }];
    split.forEach((f, i) => {
      const options = likeliest(weighed[i] as Weighed[], axis);
      const next = partials.flatMap((partial) =>
        options.map((option) => extended(partial, f, option, places[f] as number[], near, family)),
      );
      partials = next.sort((a, b) => b.weight - a.weight).slice(0, MOST_SCHEMES);
    });
    for (const one of partials) {
      const code = schemeCode(shell, one.marks, family);
      const known = found.get(code);
      if (!known || known.weight < one.weight) found.set(code, one);
    }
  }
  const all = [...found.values()].sort((a, b) => b.weight - a.weight);
  const top = (all[0] as Partial).weight;
  const sum = all.reduce((total, { weight }) => total + Math.exp(weight - top), 0);
  return all
    .map(({ marks, divisions, weight }) => ({
      marks,
      divisions,
      probability: Math.exp(weight - top) / sum,
    }))
    .filter((one) => one.probability >= LEAST);
}

/** The rotations of the net whatever its kinds: its axes are what a builder sees. */
function bareRotations(shell: Shell): Symmetry[] {
  const corners = Int32Array.from(shell.sidePlace, (p) => cornerCount(shell, p as PlaceId));
  return rotationsIn(shell, corners);
}

/** The rotations of a net under labels of its sides; none where it lies in several pieces. */
export const rotationsIn = (shell: Shell, labels: ArrayLike<number>): Symmetry[] =>
  isOnePiece(shell) ? symmetries(shell, labels) : [];

function isOnePiece(shell: Shell): boolean {
  const seen = new Set<number>([0]);
  for (const p of seen)
    for (const side of sidesOf(shell, p as PlaceId)) {
      const mate = shell.mate[side] as number;
      if (mate >= 0) seen.add(shell.sidePlace[mate] as number);
    }
  return seen.size === placeCount(shell);
}

interface Weighed {
  readonly division: Division;
  readonly weight: number;
}

function likeliest(all: readonly Weighed[], axis: number): Weighed[] {
  const own = all
    .filter(({ division }) => division.axis === null || division.axis === axis)
    .sort((a, b) => b.weight - a.weight);
  const least = (own[0]?.weight ?? 0) - FAINT;
  const kept = own.filter(({ weight }) => weight >= least).slice(0, MOST_KEPT);
  // That no rule holds is always among them.
  const none = own.find(({ division }) => division.rule.by === 'none');
  return none && !kept.includes(none) ? [...kept, none] : kept;
}

function extended(
  partial: Partial,
  f: number,
  { division, weight }: Weighed,
  own: readonly number[],
  groups: readonly StandingGroup[],
  family: Int32Array,
): Partial {
  const marks = partial.marks.slice();
  own.forEach((p, i) => {
    marks[p] = division.marks[i] ?? ANY_OF_FAMILY;
  });
  const alone = partial.own + weight;
  return {
    divisions: new Map([...partial.divisions, [f, division]]),
    marks,
    own: alone,
    weight: groups.reduce((sum, group) => sum + groupWeight(group, marks, family), alone),
  };
}

/** Log likelihood of how many panels carry each mark. Losses and panels nobody tallied thin out all
 * marks of a family alike, binomially; spares and wrong marks add to the spread. */
function countWeight(
  { marks: bears, rule }: Division,
  f: number,
  places: readonly (readonly number[])[],
  { carried, real, wrong }: MarkTally,
): number {
  const own = real[f] as readonly number[];
  const counts = own.map((m) => (carried[m] as number[])[f] as number);
  const total = counts.reduce((sum, n) => sum + n, 0);
  if (total === 0) return 0;
  if (rule.by === 'none') {
    // Every way to share out the panels is as likely as any other.
    let ways = 0;
    for (let i = 1; i < own.length; i++) ways += Math.log((total + i) / i);
    return -ways;
  }
  const rate = total / (places[f] as readonly number[]).length;
  let sum = 0;
  own.forEach((m, i) => {
    const need = bears.filter((mark) => mark === m).length * rate;
    const variance = 0.5 + need * (0.02 + Math.abs(1 - rate) + wrong / 2);
    sum -=
      ((counts[i] as number) - need) ** 2 / variance / 2 + Math.log(2 * Math.PI * variance) / 2;
  });
  return (sum * (own.length - 1)) / own.length;
}

/** Equal for schemes that a rotation of the net carries into each other. */
function schemeCode(shell: Shell, marks: ArrayLike<number>, family: ArrayLike<number>): string {
  const runs = fansOf(shell)
    .flat()
    .map(({ corners, closed }) => {
      const around = corners.map((side) => {
        const p = shell.sidePlace[side] as number;
        const mark = marks[p] as number;
        return mark < 0 ? mark - 2 * (family[p] as number) : mark;
      });
      return closed ? turned(around, lowestTurn(around)) : around;
    });
  return runs
    .sort(compareLists)
    .map((run) => run.join())
    .join(';');
}
