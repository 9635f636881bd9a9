import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import type { Identification, Mend } from '../../src/identify/shape.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { placeCount } from '../../src/shell/shell.ts';
import { kindWith, readKinds, truthOf } from './piles.ts';

const SD = 5e-4;

/** The kinds of (3, 1), 260 places, each as often as the ball needs it; some of them changed. */
function pile(seed: number, change: (kind: Kind, k: number) => readonly number[]): Kind[] {
  const truth = truthOf(3, 1);
  return readKinds(truth, SD, seed).map((kind, k) => ({
    ...kind,
    sides: change(kind, k),
    good: truth.kinds[k]?.count as number,
    counted: true,
  }));
}

const asRead = ({ sides }: Kind): readonly number[] => sides;

const answerOf = (kinds: readonly Kind[]): Identification => identify({ kinds, groups: [] });

/** The mend of the kind at `k`, and the answer's radius and places. */
function mendOf(kinds: readonly Kind[], k: number): Mend | undefined {
  const { shapes } = answerOf(kinds);
  expect(shapes).toHaveLength(1);
  expect(placeCount((shapes[0] as (typeof shapes)[0]).shell)).toBe(260);
  expect(Math.abs((shapes[0]?.radius ?? 0) - 2.7)).toBeLessThan(0.01);
  expect(shapes[0]?.strangers).toEqual([]);
  expect(shapes[0]?.mends).toHaveLength(1);
  return shapes[0]?.mends.find(({ kind }) => kind === kinds[k]?.id);
}

const trueSides = (k: number): readonly number[] => truthOf(3, 1).kinds[k]?.sides as number[];

/** Sides within 3 mm of each other. */
function expectNear(sides: readonly number[] | undefined, truth: readonly number[]): void {
  sides?.forEach((x, i) => {
    expect(Math.abs(x - (truth[i] as number))).toBeLessThan(0.003);
  });
  expect(sides).toHaveLength(truth.length);
}

test('single panels among many are strangers, and the ball stays nearly certain, seed 1', () => {
  const odd = [
    { ...kindWith('x', [0.71, 0.76, 0.83], SD), good: 1, counted: true },
    { ...kindWith('y', [0.62, 0.62, 0.9], SD), good: 2, counted: true },
  ];
  const { shapes } = answerOf([...odd, ...pile(1, asRead)]);
  expect(shapes).toHaveLength(1);
  expect(shapes[0]?.strangers).toEqual(['x', 'y']);
  expect(shapes[0]?.explained.map(({ as }) => as)).toEqual(['nothing', 'nothing']);
  expect(shapes[0]?.probability).toBeGreaterThan(0.9);
  expect(Math.min(...(shapes[0]?.shell.kind ?? []))).toBe(2);
});

test('a kind written in another unit is told what it should read, seed 2', () => {
  const kinds = pile(2, ({ sides }, k) => (k === 1 ? sides.map((x) => x / 2.54) : sides));
  const mend = mendOf(kinds, 1);
  expect(mend?.slip).toBe('unit');
  expect(mend?.measured).toEqual(kinds[1]?.sides);
  expectNear(mend?.expected, trueSides(1));
});

test('a side 18 mm wrong is named with what it should read, seed 3', () => {
  const kinds = pile(3, ({ sides }, k) =>
    sides.map((x, i) => (k === 3 && i === 0 ? x + 0.018 : x)),
  );
  const mend = mendOf(kinds, 3);
  expect(mend).toMatchObject({ slip: 'length', sides: [0] });
  expectNear(mend?.expected, trueSides(3));
});

test('a panel read from the wrong face is turned over, seed 4', () => {
  const handed = truthOf(3, 1).kinds.findIndex(({ sides: [a = 0, b = 0, c = 0] }) => {
    return Math.min(Math.abs(a - b), Math.abs(b - c), Math.abs(c - a)) > 0.01;
  });
  const kinds = pile(4, ({ sides }, k) => (k === handed ? [...sides].reverse() : sides));
  const mend = mendOf(kinds, handed);
  expect(mend?.slip).toBe('face');
  const truth = trueSides(handed);
  expect(
    truth.some((_, by) =>
      truth.every((x, i) => Math.abs(x - (mend?.expected[(i + by) % 3] ?? 0)) < 0.003),
    ),
  ).toBe(true);
});

test('a pile with nothing wrong has nothing mended, seed 5', () => {
  const { shapes } = answerOf(pile(5, asRead));
  expect(shapes).toHaveLength(1);
  expect(shapes[0]?.mends).toEqual([]);
  expect(shapes[0]?.strangers).toEqual([]);
});

test('whoever stops the search is heard at the next try, seed 6', () => {
  const kinds = pile(6, ({ sides }, k) =>
    k < 3 ? sides.map((x, i) => x + 0.02 * (i - 1)) : sides,
  );
  let asked = 0;
  const answer = identify({ kinds, groups: [] }, { shouldStop: () => ++asked > 300 });
  expect(answer.complete).toBe(false);
  expect(asked).toBeLessThan(400);
});
