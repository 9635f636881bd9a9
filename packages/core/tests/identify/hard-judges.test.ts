// The generators of hard piles and their judge: a judge that took anything for the truth would prove
// nothing.

import { expect, test } from 'vitest';
import { cases } from '../../bench/heaps/cases.ts';
import { heapOf } from '../../bench/heaps/run.ts';
import { liesOn, mirrorOf } from '../../bench/heaps/same-net.ts';
import { seededRandom } from '../../src/math/random.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import { partOf } from '../../src/shell/part.ts';
import { truthOf } from './piles.ts';

const known = ({ kinds }: NetShell, within = 1e-7) => kinds.map(({ sides }) => ({ sides, within }));

test.each(cases.map(({ name }) => name))('the pile %s is the same for the same seed', (name) => {
  const one = cases.find((each) => each.name === name) as (typeof cases)[number];
  for (let seed = 1; seed <= 12; seed++) {
    const { label, pile } = heapOf(one, seed);
    expect(heapOf(one, seed)).toMatchObject({ label, pile });
    expect(pile.kinds.length + pile.readings.length).toBeGreaterThan(0);
  }
});

test.each([
  [3, 1],
  [2, 1],
  [4, 0],
] as const)('(%i, %i) lies on itself, and so does any place with its neighbours', (b, c) => {
  const truth = truthOf(b, c);
  expect(liesOn(truth.shell, known(truth), truth)).toBe(true);
  for (const place of [0, 17, 80]) {
    const { shell } = partOf(truth.shell, neighbours(truth, place));
    expect(liesOn(shell, known(truth), truth)).toBe(true);
  }
});

test('a net that turns one way does not lie on its mirror image, nor with two kinds exchanged', () => {
  const truth = truthOf(3, 1);
  const mirror = mirrorOf(truth);
  expect(liesOn(mirror.shell, known(mirror), mirror)).toBe(true);
  expect(liesOn(mirror.shell, known(mirror), truth)).toBe(false);
  const twice = mirrorOf(mirror);
  expect(liesOn(twice.shell, known(twice), truth)).toBe(true);
  const [a, b, ...rest] = known(truth);
  expect(liesOn(truth.shell, [b, a, ...rest] as ReturnType<typeof known>, truth)).toBe(false);
});

test('a side that is off by ten times what is allowed is no longer the truth', () => {
  const truth = truthOf(2, 1);
  const random = seededRandom(3);
  const off = (by: number) =>
    known(truth, 0.001).map(({ sides, within }) => ({
      within,
      sides: sides.map((x) => x + by * (random.uniform() < 0.5 ? -1 : 1)),
    }));
  expect(liesOn(truth.shell, off(0.0009), truth)).toBe(true);
  expect(liesOn(truth.shell, off(0.01), truth)).toBe(false);
});

/** A place with those that it shares a seam with. */
function neighbours({ shell }: NetShell, place: number): number[] {
  const own = [...shell.sidePlace.keys()].filter((s) => shell.sidePlace[s] === place);
  return [place, ...own.map((s) => shell.sidePlace[shell.mate[s] as number] as number)];
}
