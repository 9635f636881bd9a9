// Orders that are the same on every machine and do not depend on a locale.

/** Negative, 0 or positive as `a` is before, like or after `b`, compared item by item; a list that
 * begins the other comes first. */
export function compareLists(a: ArrayLike<number>, b: ArrayLike<number>): number {
  const shared = Math.min(a.length, b.length);
  for (let i = 0; i < shared; i++) {
    const difference = (a[i] as number) - (b[i] as number);
    if (difference !== 0) return difference;
  }
  return a.length - b.length;
}

/** Negative, 0 or positive as `a` is before, like or after `b`, by code unit. */
export const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
