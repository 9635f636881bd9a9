// Two shells in one heap, and two halves of a ball with a straight course between, by the seeded
// generator of the hard piles.

import { expect, test } from 'vitest';
import { elongated } from '../../bench/heaps/mixtures.ts';
import { answerOf } from '../../bench/heaps/run.ts';
import { linkedLots } from '../../src/identify/apart-heaps.ts';
import { identify } from '../../src/identify/identify.ts';
import { courseLooking } from '../../src/identify/straight-course.ts';
import { seededRandom } from '../../src/math/random.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { kindWith, readKinds, truthOf } from './piles.ts';

const SD = 5e-4;

/** The kinds of (3, 1), and those of an octahedral (3, 1) half as large again. */
function heap(seed: number): Kind[] {
  const other = readKinds(truthOf(3, 1, 'octahedron'), SD, seed + 100);
  return [
    ...other.map((kind) => ({
      ...kind,
      id: `o${kind.id}`,
      sides: kind.sides.map((x) => 1.5 * x),
    })),
    ...readKinds(truthOf(3, 1), SD, seed),
  ];
}

test.each([1, 2, 3])('two shells in one heap are both found, seed %i', (seed) => {
  const kinds = heap(seed);
  const { shapes, besides } = identify({ kinds, groups: [] });
  const [one, two] = [shapes[0], besides?.shapes[0]];
  expect([one, two].map((shape) => shape && placeCount(shape.shell)).sort()).toEqual([104, 260]);
  expect(one?.probability).toBeGreaterThan(0.9);
  expect(one?.strangers).toHaveLength(kinds.length - new Set(one?.shell.kind).size);
  expect(new Set(one?.explained.map(({ as }) => as))).toEqual(new Set(['other shell']));
  expect(two?.strangers).toEqual([]);
  const used = new Set([...(one?.shell.kind ?? []), ...(two?.shell.kind ?? [])]);
  expect(used.size).toBe(kinds.length);
});

test('the kinds of one shell hang together', () => {
  expect(linkedLots(readKinds(truthOf(3, 1), SD, 1), true)).toEqual([]);
});

test('kinds of one length within three deviations are linked, thirty off they are not', () => {
  const kinds = (off: number): Kind[] => [
    kindWith('a', [1, 1, 1.2], SD),
    kindWith('b', [1 + off, 1.4, 1.4], SD),
    kindWith('c', [2, 2, 2], SD),
    kindWith('d', [2, 2, 2.2], SD),
  ];
  expect(linkedLots(kinds(3 * SD), true)).toEqual([
    [0, 1],
    [2, 3],
  ]);
  expect(linkedLots(kinds(30 * SD), true)).toEqual([[2, 3], [0], [1]]);
});

test.each([1, 2, 3, 4, 5, 6])('a straight course is found with its height, seed %i', (seed) => {
  const pile = elongated(seededRandom(seed));
  expect(pile.judge(answerOf(pile))).toMatchObject({ outcome: 'right', lacks: [] });
});

test('squares whose sides all meet others look like no course', () => {
  const square = kindWith('s', [1, 1, 1, 1], SD);
  const triangle = kindWith('t', [1, 1, 1], SD);
  expect(courseLooking([square, triangle])).toEqual([]);
  expect(courseLooking([kindWith('r', [1, 0.7, 1, 0.7], SD), triangle])).toEqual([0]);
});
