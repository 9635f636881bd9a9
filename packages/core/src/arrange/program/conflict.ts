// Which wishes can't be kept together: the smallest set in the sense that all can be kept once any
// one of it is given up (a deletion filter: J. W. Chinneck, Feasibility and Infeasibility in
// Optimization, 2008, from memory). Wishes as a person sees them, not single rows of a program.

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
