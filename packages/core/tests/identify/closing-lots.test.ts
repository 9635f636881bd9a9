// Kinds of a heap that close without the others.

import { expect, test } from 'vitest';
import { closingLots } from '../../src/identify/closing-lots.ts';
import { identify } from '../../src/identify/identify.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { onTheGround, wayUp } from './on-the-ground.ts';
import { readKinds, truthOf } from './piles.ts';

const SD = 7e-4;
const go = (): boolean => true;

/** Two balls of nearly one size, whose sides are as long as each other's again and again. */
function heap(seed: number): Kind[] {
  const named = (letter: string, kinds: readonly Kind[], by: number): Kind[] =>
    kinds.map((kind) => ({
      ...kind,
      id: `${letter}${kind.id}`,
      sides: kind.sides.map((x) => x * by),
    }));
  return [
    ...named('a', readKinds(truthOf(4, 1, 'octahedron'), SD, seed), 1),
    ...named('b', readKinds(truthOf(3, 2, 'octahedron'), SD, seed + 50), 0.94),
  ];
}

test.each([1, 2, 3])(
  'the kinds of both balls of a heap close without the other, seed %i',
  (seed) => {
    const kinds = heap(seed);
    const lots = closingLots(kinds, 0, go).map((lot) =>
      [...new Set(lot.map((k) => kinds[k]?.id.charAt(0)))].join(''),
    );
    expect(new Set(lots)).toEqual(new Set(['a', 'b']));
  },
);

test.each([1, 2, 3])('two balls of nearly one size are sorted apart, seed %i', (seed) => {
  const { shapes, besides } = identify({ kinds: heap(seed), groups: [] });
  const found = [shapes[0], besides?.shapes[0]].map((shape) => shape && placeCount(shape.shell));
  expect(found.sort()).toEqual([152, 168]);
});

test('whole kinds close without the cut ones', () => {
  const truth = truthOf(2, 2);
  const up = wayUp(truth.shell, 'seam');
  const { kinds, cut } = onTheGround(truth, up, -0.5, SD, 3);
  const whole = kinds.flatMap(({ id }, k) => (cut.has(id) ? [] : [k]));
  expect(closingLots(kinds, 0, go)[0]).toEqual(whole);
});

test('of one ball no lot closes, as each of its kinds is needed', () => {
  for (const [b, c] of [
    [3, 1],
    [3, 0],
    [2, 2],
  ] as const)
    expect(closingLots(readKinds(truthOf(b, c), SD, 1), 0, go)).toEqual([]);
});

test('it stops when told to', () => {
  let asked = 0;
  expect(closingLots(heap(1), 0, () => ++asked < 3)).toEqual([]);
  expect(asked).toBeLessThan(20);
});
