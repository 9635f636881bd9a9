// Inputs that nobody would write, from those that somebody did: seeded damage to good texts and bytes, and
// a run over many of them that counts. `npm run soak -- fuzz` asks for a million in all.

import { expect } from 'vitest';
import { type Random, seededRandom } from '../../src/math/random.ts';

/** How many inputs in all, over every sort: SHELLRAISE_FUZZ, else few. */
const IN_ALL = Number(process.env.SHELLRAISE_FUZZ ?? 3000);

/** The longest that any input may take, milliseconds of processor. */
const LONGEST = 1000;

/** What came of an input: whether it was read; an assertion of the test's own throws. */
export type Tried = 'read' | 'refused';

/** Runs `share` (of 1) of all inputs through `tryOne`, tells the counts, and holds that none took long, that
 * something was read and something refused. */
export function fuzz<T>(
  what: string,
  share: number,
  make: (random: Random) => T,
  tryOne: (input: T) => Tried,
): void {
  const count = Math.ceil(IN_ALL * share);
  const told = { read: 0, refused: 0 };
  let longest = 0;
  for (let seed = 1; seed <= count; seed++) {
    const input = make(seededRandom(seed));
    const before = process.cpuUsage();
    try {
      told[tryOne(input)] += 1;
    } catch (error) {
      throw new Error(`${what}, seed ${seed}: ${shown(input)}`, { cause: error });
    }
    const { user } = process.cpuUsage(before);
    longest = Math.max(longest, user / 1000);
  }
  tell(what, count, told, longest);
}

/** The same where the answer comes later. */
export async function fuzzLater<T>(
  what: string,
  share: number,
  make: (random: Random) => T,
  tryOne: (input: T) => Promise<Tried>,
): Promise<void> {
  const count = Math.ceil(IN_ALL * share);
  const told = { read: 0, refused: 0 };
  let longest = 0;
  for (let seed = 1; seed <= count; seed++) {
    const input = make(seededRandom(seed));
    const before = process.cpuUsage();
    told[await tryOne(input)] += 1;
    longest = Math.max(longest, process.cpuUsage(before).user / 1000);
  }
  tell(what, count, told, longest);
}

function tell(
  what: string,
  count: number,
  { read, refused }: { readonly read: number; readonly refused: number },
  longest: number,
): void {
  if (process.env.SHELLRAISE_FUZZ)
    process.stdout.write(
      `${what}: ${count} inputs, ${read} read, ${refused} refused, longest ${longest.toFixed(0)} ms\n`,
    );
  expect(longest, `${what}: the longest, ms`).toBeLessThan(LONGEST);
  expect(read, `${what}: read`).toBeGreaterThan(0);
  expect(refused, `${what}: refused`).toBeGreaterThan(0);
}

const shown = (input: unknown): string =>
  input instanceof Uint8Array
    ? Buffer.from(input).toString('base64').slice(0, 2000)
    : String(input).slice(0, 2000);

/** One of a list. */
export const oneOf = <T>(random: Random, list: readonly T[]): T =>
  list[random.below(list.length)] as T;

/** What stands in texts by accident or by malice. */
const scraps = [
  ...['', ' ', '\n', '\t', '"', "'", ',', ';', '-', '.', '0', '-1', '1e999', '1e-999', 'NaN'],
  ...[
    'null',
    'true',
    '{',
    '}',
    '[',
    ']',
    '[[[[[[[[',
    '{"__proto__":',
    '\u0000',
    '\ufeff',
    '\ud800',
  ],
  ...['é', '٣', '１', '½', '″', '′', 'م', '😀', '\u202e', '9'.repeat(40), '0x10', '1/0', '1/3'],
  ...['constructor', 'mm', 'in', 'ft', '"kinds"', '"sides"', 'Infinity', '\r\n', '\\u0000', '/'],
];

/** A text damaged in one to four places: scraps put in, parts left out, told twice, moved or swapped. */
export function damagedText(random: Random, texts: readonly string[]): string {
  let text = oneOf(random, texts);
  for (let i = random.below(5); i > 0; i--) {
    const [a, b] = twoPlaces(random, text.length);
    const sort = random.below(6);
    if (sort === 0) text = text.slice(0, a) + oneOf(random, scraps) + text.slice(a);
    else if (sort === 1) text = text.slice(0, a) + oneOf(random, scraps) + text.slice(b);
    else if (sort === 2) text = text.slice(0, a) + text.slice(b);
    else if (sort === 3) text = text.slice(0, b) + text.slice(a);
    else if (sort === 4) text = text.slice(0, a);
    else text = text.replace(/\d+(\.\d+)?/g, (number) => damagedNumber(random, number));
  }
  return text;
}

function damagedNumber(random: Random, number: string): string {
  if (random.below(12) > 0) return number;
  return oneOf(random, [
    `-${number}`,
    `${number}e9`,
    '0',
    `${number}${number}`,
    `${number}.5`,
    '1e308',
  ]);
}

/** Bytes damaged in one to six places: flipped, cut off, told twice. */
export function damagedBytes(random: Random, all: readonly Uint8Array[]): Uint8Array {
  let bytes = Uint8Array.from(oneOf(random, all));
  for (let i = random.below(7); i > 0; i--) {
    const [a, b] = twoPlaces(random, bytes.length);
    const sort = random.below(8);
    if (sort < 5) bytes[a] = (bytes[a] ?? 0) ^ (1 << random.below(8));
    else if (sort === 5) bytes = bytes.slice(0, a);
    else if (sort === 6) bytes = join(bytes.subarray(0, a), bytes.subarray(b));
    else bytes = join(bytes.subarray(0, b), bytes.subarray(a));
  }
  return bytes;
}

function join(a: Uint8Array, b: Uint8Array): Uint8Array<ArrayBuffer> {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/** Two places of something, the second at most forty on. */
function twoPlaces(random: Random, length: number): readonly [number, number] {
  const a = random.below(length + 1);
  return [a, Math.min(length, a + random.below(40))];
}
