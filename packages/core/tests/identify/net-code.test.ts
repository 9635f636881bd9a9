import fc from 'fast-check';
import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import { netCode } from '../../src/identify/net-code.ts';
import { type Random, seededRandom } from '../../src/math/random.ts';
import { lowestCode } from '../../src/shell/canonical.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { makeShell, type Shell } from '../../src/shell/shell.ts';
import { ownLabels, readKinds, truthOf } from './piles.ts';

/** Triangles as hub triples; positions do not matter to a code. */
type Triangles = readonly (readonly number[])[];

const shellOf = (places: Triangles): Shell => {
  const hubs = new Float64Array(3 * (Math.max(...places.flat()) + 1));
  return makeShell({ radius: 1, hubs, places: places.map((p) => ({ hubs: p, kind: 0, turn: 0 })) });
};

const octahedron: Triangles = [
  [0, 1, 2],
  [0, 2, 3],
  [0, 3, 4],
  [0, 4, 1],
  [5, 2, 1],
  [5, 3, 2],
  [5, 4, 3],
  [5, 1, 4],
];

/** A sphere of triangles: some triangles get a hub in their middle, then seams are turned over. */
function randomSphere(random: Random): Triangles {
  let all = octahedron.map((t) => [...t]);
  for (let hub = 6; hub < 9; hub++) {
    const [a, b, c] = all.splice(random.below(all.length), 1)[0] as [number, number, number];
    all.push([a, b, hub], [b, c, hub], [c, a, hub]);
  }
  for (let i = 0; i < 12; i++) all = flipped(all, random) ?? all;
  return all;
}

/** With the seam between two triangles laid the other way; null where hubs are joined so already. */
function flipped(all: number[][], random: Random): number[][] | null {
  const [a, b, c] = random.shuffle(all)[0] as [number, number, number];
  const other = all.find((t) => t.some((h, i) => h === b && t[(i + 1) % 3] === a)) as number[];
  const d = other.find((h) => h !== a && h !== b) as number;
  const joined = all.some((t) => t.includes(c) && t.includes(d));
  if (joined) return null;
  const rest = all.filter((t) => t !== other && !(t.includes(a) && t.includes(b) && t.includes(c)));
  return [...rest, [a, d, c], [d, b, c]];
}

/** The same net with its places, their first hubs and its hubs numbered anew. */
function renumbered(all: Triangles, random: Random): Triangles {
  const name = random.shuffle(Array.from({ length: Math.max(...all.flat()) + 1 }, (_, h) => h));
  return random.shuffle(all).map((t) => {
    const from = random.below(3);
    return t.map((_, i) => name[t[(i + from) % 3] as number] as number);
  });
}

const blank = (shell: Shell): number[] => Array.from(shell.mate, () => 0);
const fast = (shell: Shell): string => netCode(shell, blank(shell)).code;
const slow = (shell: Shell, labels: ArrayLike<number> = blank(shell)): string =>
  lowestCode(
    shell,
    labels,
    Array.from(shell.mate, (_, s) => s as SideId),
  ).code.join();

test('two spheres have one code exactly where reading them from every side says they are one', () => {
  const random = seededRandom(12);
  const shells = Array.from({ length: 150 }, () => shellOf(randomSphere(random)));
  const byFast = shells.map(fast);
  const bySlow = shells.map((shell) => slow(shell));
  const kinds = new Set(bySlow).size;
  expect(kinds).toBeGreaterThan(30);
  expect(kinds).toBeLessThan(150);
  expect(new Set(byFast).size).toBe(kinds);
  const pairs = new Set(byFast.map((code, i) => `${code} ${bySlow[i]}`));
  expect(pairs.size).toBe(kinds);
});

test('a code does not depend on any numbering, seed 5', () => {
  const law = fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
    const random = seededRandom(seed);
    const all = randomSphere(random);
    expect(fast(shellOf(renumbered(all, random)))).toBe(fast(shellOf(all)));
  });
  fc.assert(law, { seed: 5, numRuns: 60 });
});

test('the classes of sides are those that read alike, and a label apart splits them', () => {
  const random = seededRandom(8);
  for (let i = 0; i < 20; i++) {
    const shell = shellOf(randomSphere(random));
    const labels = blank(shell);
    if (i % 2 === 1) labels[random.below(labels.length)] = 1;
    const { leader } = netCode(shell, labels);
    const read = Array.from(shell.mate, (_, s) =>
      lowestCode(shell, labels, [s as SideId]).code.join(),
    );
    const lowest = read.map((code) => read.indexOf(code));
    expect([...leader]).toEqual(lowest);
  }
});

test('a net and its mirror image are two', () => {
  const mirrored = (shell: Shell): Shell =>
    shellOf(
      Array.from({ length: shell.kind.length }, (_, p) => [
        ...shell.sideHub.slice(3 * p, 3 * p + 3),
      ]).map((hubs) => hubs.reverse()),
    );
  const { shell } = truthOf(2, 1);
  const image = mirrored(shell);
  expect(fast(image)).not.toBe(fast(shell));
  expect(slow(image)).not.toBe(slow(shell));
  const other = truthOf(3, 0).shell;
  expect(fast(mirrored(other))).toBe(fast(other));
});

test('the four twins of (4, 0) have four codes, by either way of reading', () => {
  const truth = truthOf(4, 0);
  const { shapes } = identify({ kinds: readKinds(truth, 2e-4, 3), groups: [] });
  const sides = truth.kinds.map((kind) => kind.sides);
  const codes = shapes.map(({ shell }) => {
    // A turned equilateral panel is the same: its sides share a label.
    const own = ownLabels(shell, sides).map((label) => Math.min(label, 15));
    const rare = Array.from(own, (_, s) => s as SideId).filter((s) => own[s] === 15);
    return [netCode(shell, own).code, lowestCode(shell, own, rare).code.join()] as const;
  });
  expect(codes).toHaveLength(4);
  expect(new Set(codes.map(([code]) => code)).size).toBe(4);
  expect(new Set(codes.map(([, code]) => code)).size).toBe(4);
});

test('an open shell has a code too, and it is not that of the whole', () => {
  const whole = shellOf(octahedron);
  const part = shellOf(octahedron.slice(0, 7));
  expect(fast(part)).not.toBe(fast(whole));
  expect(fast(shellOf(renumbered(octahedron.slice(0, 7), seededRandom(2))))).toBe(fast(part));
});
