// What the readings can't tell apart. Side classes nearer to each other than the noise of a
// reading count as alike; kinds with alike sides in the same turning order may stand for one
// another, and a panel whose sides are alike under a turn may be turned. Nets that differ in no
// more than that are one answer.

import { lowestTurn, turned } from '../math/cyclic.ts';
import { compareLists } from '../math/order.ts';
import type { SideId } from '../shell/ids.ts';
import { kindSide, placeAt, type Shell, sideCount } from '../shell/shell.ts';
import { type Joints, makeOf } from './joints.ts';

/** Labels of kind-sides, numbered through all kinds; alike sides of alike kinds share one. */
export interface Alikeness {
  readonly first: Int32Array;
  readonly label: Int32Array;
  /** Kind → number of its group of kinds that may stand for one another. */
  readonly group: readonly number[];
  /** Kinds that look the same when turned, by what the readings can tell. */
  readonly turns: readonly boolean[];
}

/** Kinds (side lengths, metres) whose sides differ by less than `noise` metres are alike, if they are
 * joined alike. Lengths in a chain, each nearer than that to the next, are all alike. */
export function alikeness(
  sides: readonly (readonly number[])[],
  first: Int32Array,
  noise: number,
  joints: Joints | null = null,
): Alikeness {
  const classes = withMakes(classesByGap(sides, noise), joints);
  const rounds = classes.map(lowestRound);
  const keys = rounds.map((round) => round.key);
  const names = [...new Set(keys)].sort();
  const label = new Int32Array(first[sides.length] as number);
  let next = 0;
  const starts = names.map((name) => {
    const start = next;
    next += name.split(',').length;
    return start;
  });
  rounds.forEach(({ key, start, period }, k) => {
    const own = (classes[k] as number[]).length;
    for (let i = 0; i < own; i++)
      label[(first[k] as number) + ((start + i) % own)] =
        (starts[names.indexOf(key)] as number) + (i % period);
  });
  return {
    first,
    label,
    group: keys.map((key) => names.indexOf(key)),
    turns: rounds.map(({ period }, k) => period < (classes[k] as number[]).length),
  };
}

/** Side → label, for a shell with these kinds. */
export function labelsOf(shell: Shell, alike: Alikeness): Int32Array {
  const labels = new Int32Array(sideCount(shell));
  for (let s = 0; s < labels.length; s++) {
    const kind = shell.kind[placeAt(shell, s as SideId)] as number;
    labels[s] = alike.label[(alike.first[kind] as number) + kindSide(shell, s as SideId)] as number;
  }
  return labels;
}

function classesByGap(sides: readonly (readonly number[])[], noise: number): number[][] {
  const lengths = sides.flat().sort((a, b) => a - b);
  const ends = lengths.filter((length, i) => (lengths[i + 1] ?? Infinity) - length > noise);
  return sides.map((own) => own.map((length) => ends.findIndex((end) => length <= end)));
}

/** Classes told apart by how the sides are joined as well, numbered by class first. */
function withMakes(classes: number[][], joints: Joints | null): number[][] {
  if (!joints) return classes;
  const makes = joints.map((own) => own.map(makeOf));
  const most = 1 + Math.max(...makes.flat());
  return classes.map((own, k) =>
    own.map((c, i) => c * most + ((makes[k] as number[])[i] as number)),
  );
}

/** The lowest turn of a cyclic list, and the shortest period it repeats with. */
function lowestRound(classes: readonly number[]): { key: string; start: number; period: number } {
  const start = lowestTurn(classes);
  const best = turned(classes, start);
  let period = 1;
  while (compareLists(turned(best, period), best) !== 0) period++;
  return { key: best.join(), start, period };
}
