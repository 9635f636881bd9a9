// Which wishes cannot be kept together. Small sets are tried by their size, so that the answer is the
// smallest there is; where none of these is one, wishes are given up one by one until all that are left
// are needed (a deletion filter: J. W. Chinneck, Feasibility and Infeasibility in Optimization, 2008,
// from memory). Wishes as a person sees them, not single rows of a program.

/** The wishes that together can't be kept, none to spare, in their order. Empty where all can be
 * kept, where none need be blamed as not even giving up all helps, or where it could not be settled.
 * `possible`: whether these wishes can be kept together; null where that is not known. */
export function smallestConflict<T>(
  wishes: readonly T[],
  possible: (kept: readonly T[]) => boolean | null,
): readonly T[] {
  if (possible(wishes) !== false || possible([]) !== true) return [];
  let kept = wishes;
  for (const wish of wishes) {
    const without = kept.filter((one) => one !== wish);
    if (possible(without) === false) kept = without;
  }
  return kept;
}

/** Sets of up to so many wishes are tried one by one. */
const BY_SIZE = 3;

/** As `smallestConflict`, but as few wishes as there are in any such set, up to three; among sets of one
 * size the first. */
export function fewestInConflict<T>(
  wishes: readonly T[],
  possible: (kept: readonly T[]) => boolean | null,
): readonly T[] {
  const within = smallestConflict(wishes, possible);
  for (let size = 1; size <= BY_SIZE && size < within.length; size++) {
    const set = subsets(wishes, size).find((one) => possible(one) === false);
    if (set) return set;
  }
  return within;
}

function subsets<T>(items: readonly T[], size: number): T[][] {
  if (size === 0) return [[]];
  return items.flatMap((item, i) =>
    subsets(items.slice(i + 1), size - 1).map((rest) => [item, ...rest]),
  );
}
