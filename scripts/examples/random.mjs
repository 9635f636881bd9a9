// Seeded randomness of the example piles: the same seed gives the same bytes on every machine.

/** Uniform numbers in [0, 1): mulberry32 (T. Ettinger, public domain). */
export function seeded(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A standard normal number: twelve uniform ones less six, the same to the last bit everywhere. */
export function normal(random) {
  let sum = -6;
  for (let i = 0; i < 12; i++) sum += random();
  return sum;
}

/** The items in a random order. */
export function shuffled(items, random) {
  const out = [...items];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [out[i], out[j]] = [out[j], out[i]];
  }
  return out;
}
