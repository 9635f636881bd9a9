// A bucket that leaks: so much at once, and so much each second after.

/** How much at once, and each second. */
export interface Flow {
  readonly burst: number;
  readonly perSecond: number;
}

/** Takes from a bucket; false where there is not so much in it, and then nothing is taken. `now` in
 * milliseconds of a clock that never goes back. */
export type Bucket = (amount: number, now?: number) => boolean;

/** A full bucket. */
export function bucket({ burst, perSecond }: Flow): Bucket {
  let [level, at] = [burst, Number.NEGATIVE_INFINITY];
  return (amount, now = performance.now()) => {
    if (at > Number.NEGATIVE_INFINITY)
      level = Math.min(burst, level + (Math.max(0, now - at) / 1000) * perSecond);
    at = Math.max(at, now);
    if (amount > level) return false;
    level -= amount;
    return true;
  };
}

/** A bucket for each key, with the one that was used longest ago forgotten where there are too many:
 * so that inventing keys fills no memory. */
export function buckets(flow: Flow, most = 10_000): (key: string, amount: number) => boolean {
  const byKey = new Map<string, Bucket>();
  return (key, amount) => {
    const own = byKey.get(key) ?? bucket(flow);
    byKey.delete(key);
    byKey.set(key, own);
    if (byKey.size > most) byKey.delete(byKey.keys().next().value as string);
    return own(amount);
  };
}
