// The fewest elements of which every one of some sets has one: exact, by taking the set with the
// fewest elements left and trying each of them, for one more element after another. An element that
// is in no set but those of another is left out; sets that share nothing bound from below.

/** The fewest elements that hit every set. */
export interface FewestHits {
  readonly hits: readonly number[];
  /** Nodes of the search that were looked at. */
  readonly nodes: number;
}

/** The fewest elements that hit all sets; `empty` where a set has none, `gave up` where more than
 * `nodes` nodes of the search would have to be looked at. Of elements that serve alike
 * the one with the larger weight is taken, of equals the lower; weights 0 where left out. No answer
 * is shorter than `least`. */
export function fewestHits(
  sets: readonly (readonly number[])[],
  { nodes = 50_000, least = 0, weight = () => 0 }: HitOptions = {},
): FewestHits | 'empty' | 'gave up' {
  if (sets.some((set) => set.length === 0)) return 'empty';
  const elements = [...new Set(sets.flat())].sort((a, b) => weight(b) - weight(a) || a - b);
  const index = new Map(elements.map((element, e) => [element, e]));
  const words = (sets.length + 31) >> 5;
  const inSets = elements.map(() => new Int32Array(words));
  sets.forEach((set, s) => {
    for (const element of set)
      (inSets[index.get(element) as number] as Int32Array)[s >> 5] |= 1 << (s & 31);
  });
  const members = sets.map((set) => set.map((element) => index.get(element) as number));
  const search: Search = { inSets, members, words, left: nodes };
  const open = new Int32Array(words);
  for (let s = 0; s < sets.length; s++) open[s >> 5] |= 1 << (s & 31);
  const all = undominated(search, open, [...elements.keys()]);
  for (let size = Math.max(least, disjoint(search, open, all)); ; size++) {
    const found = hitsOf(search, open, all, size);
    if (search.left < 0) return 'gave up';
    if (found !== null)
      return { hits: found.map((e) => elements[e] as number), nodes: nodes - search.left };
  }
}

/** Options of `fewestHits`. */
export interface HitOptions {
  readonly nodes?: number;
  readonly least?: number;
  readonly weight?: (element: number) => number;
}

interface Search {
  /** Element → the sets it is in, by bits. */
  readonly inSets: readonly Int32Array[];
  /** Set → its elements. */
  readonly members: readonly (readonly number[])[];
  readonly words: number;
  left: number;
}

/** At most `size` of the allowed elements that hit all open sets; null where there are none, or
 * where the search was given up. */
function hitsOf(
  search: Search,
  open: Int32Array,
  allowed: readonly number[],
  size: number,
): readonly number[] | null {
  if (open.every((word) => word === 0)) return [];
  if (search.left-- <= 0) return null;
  const own = undominated(search, open, allowed);
  if (disjoint(search, open, own) > size) return null;
  let rest = own;
  for (const e of smallestSet(search, open, own)) {
    const now = open.map((word, w) => word & ~(search.inSets[e] as Int32Array)[w]);
    rest = rest.filter((one) => one !== e);
    const found = hitsOf(search, now, rest, size - 1);
    if (found !== null) return [e, ...found];
    if (search.left < 0) return null;
  }
  return null;
}

/** The elements, less those that hit no open set which another does not hit too (the later one goes
 * where they hit the same). */
function undominated(search: Search, open: Int32Array, allowed: readonly number[]): number[] {
  const { words, inSets } = search;
  const count = allowed.length;
  const hit = new Int32Array(count * words);
  const many = new Int32Array(count);
  for (let i = 0; i < count; i++) {
    const own = inSets[allowed[i] as number] as Int32Array;
    for (let w = 0; w < words; w++) {
      hit[i * words + w] = open[w] & own[w];
      many[i] += ones(hit[i * words + w]);
    }
  }
  const within = (i: number, k: number): boolean => {
    for (let w = 0; w < words; w++)
      if ((hit[i * words + w] & ~hit[k * words + w]) !== 0) return false;
    return true;
  };
  const kept: number[] = [];
  const gone = new Uint8Array(count);
  for (let i = 0; i < count; i++) {
    if (many[i] === 0) gone[i] = 1;
    for (let k = 0; gone[i] === 0 && k < count; k++) {
      if (k === i || gone[k] === 1 || many[k] < many[i]) continue;
      if ((k < i || many[k] > many[i]) && within(i, k)) gone[i] = 1;
    }
    if (gone[i] === 0) kept.push(allowed[i] as number);
  }
  return kept;
}

/** How many open sets were found that share no allowed element, small ones first: so many hits at
 * least. More than there are sets where one of them has no element left. */
function disjoint(search: Search, open: Int32Array, allowed: readonly number[]): number {
  const { members, inSets } = search;
  const may = new Uint8Array(inSets.length);
  for (const e of allowed) may[e] = 1;
  // Size first, then the set: sorted as one number.
  const sizes = new Float64Array(members.length).fill(Infinity);
  let some = 0;
  for (let s = 0; s < members.length; s++) {
    if ((open[s >> 5] & (1 << (s & 31))) === 0) continue;
    let size = 0;
    for (const e of members[s] as readonly number[]) size += may[e];
    if (size === 0) return members.length + 1;
    sizes[some++] = size * members.length + s;
  }
  let count = 0;
  for (const key of sizes.subarray(0, some).sort()) {
    const set = members[key % members.length] as readonly number[];
    if (set.some((e) => may[e] === 2)) continue;
    for (const e of set) if (may[e] === 1) may[e] = 2;
    count++;
  }
  return count;
}

/** The allowed elements of the open set that has the fewest of them, those that hit most first. */
function smallestSet(search: Search, open: Int32Array, allowed: readonly number[]): number[] {
  const { members, inSets } = search;
  const may = new Uint8Array(inSets.length);
  for (const e of allowed) may[e] = 1;
  let best: number[] | null = null;
  for (let s = 0; s < members.length; s++) {
    if ((open[s >> 5] & (1 << (s & 31))) === 0) continue;
    const own = (members[s] as readonly number[]).filter((e) => may[e] === 1);
    if (best === null || own.length < best.length) best = own;
  }
  const hits = (e: number): number =>
    open.reduce((sum, word, w) => sum + ones(word & (inSets[e] as Int32Array)[w]), 0);
  return (best ?? []).sort((a, b) => hits(b) - hits(a) || a - b);
}

/** Bits of a word that are set, counted side by side. */
function ones(word: number): number {
  const pairs = word - ((word >>> 1) & 0x55555555);
  const fours = (pairs & 0x33333333) + ((pairs >>> 2) & 0x33333333);
  return Math.imul((fours + (fours >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
