// Seeded random numbers for trials: same seed, same sequence, on every machine.
// Generator: mulberry32 (Tommy Ettinger, public domain, 32-bit state), enough for noise and
// shuffles, not for secrets.

/** A seeded source of random numbers. */
export interface Random {
  /** Uniform in [0, 1). */
  uniform(): number;
  /** Normal with mean 0 and standard deviation 1 (Box–Muller). */
  normal(): number;
  /** Whole number in [0, n). */
  below(n: number): number;
  /** A new array with the same items in random order (Fisher–Yates). */
  shuffle<T>(items: readonly T[]): T[];
}

/** The source that belongs to a whole-number seed. */
export function seededRandom(seed: number): Random {
  let state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const below = (n: number): number => Math.floor(uniform() * n);
  const shuffle = <T>(items: readonly T[]): T[] => {
    const out = [...items];
    for (let i = out.length - 1; i > 0; i--) {
      const j = below(i + 1);
      [out[i], out[j]] = [out[j] as T, out[i] as T];
    }
    return out;
  };
  return { uniform, normal, below, shuffle };
}
