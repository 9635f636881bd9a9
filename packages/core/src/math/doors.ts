// What every public function asks of its numbers before it reckons with them.

/** Throws RangeError where a number that must be finite, and at least `least`, is not; `name` says
 * which one it is. */
export function assertNumber(name: string, value: number, least = Number.NEGATIVE_INFINITY): void {
  if (Number.isFinite(value) && value >= least) return;
  const expected = Number.isFinite(least) ? `a number of at least ${least}` : 'a finite number';
  throw new RangeError(`${name} is ${value}, expected ${expected}`);
}
