// Sets that grow together: whole numbers from 0, each at first alone. Forest with path halving; the
// lowest member is the root, so that the order in which sets are joined names nothing.

/** Member → another of its set, nearer to the root or the root itself; an array where sets are added
 * one by one. */
export type Sets = Int32Array | number[];

/** Each of the numbers 0 … count − 1 in a set of its own. */
export const singletons = (count: number): Int32Array =>
  Int32Array.from({ length: count }, (_, i) => i);

/** The lowest member of the set that `member` is in; shortens the way there for the next call. */
export function rootInto(sets: Sets, member: number): number {
  let at = member;
  while (sets[at] !== at) {
    sets[at] = sets[sets[at] as number] as number;
    at = sets[at] as number;
  }
  return at;
}

/** Makes the sets of two members one. */
export function joinInto(sets: Sets, a: number, b: number): void {
  const [p, q] = [rootInto(sets, a), rootInto(sets, b)];
  sets[Math.max(p, q)] = Math.min(p, q);
}
