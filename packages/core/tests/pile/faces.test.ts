import { describe, expect, test } from 'vitest';
import { handTest } from '../../src/identify/hand-test.ts';
import { identify } from '../../src/identify/identify.ts';
import { shapeQuestion } from '../../src/identify/question.ts';
import type { Shape } from '../../src/identify/shape.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import { pileOf } from './heap.ts';
import { slippedHeap } from './slipped.ts';

const reading = (sides: readonly number[], seenFrom: string, more: object = {}): object => ({
  sides,
  seenFrom,
  ...more,
});
const times = (count: number, row: object): object[] => Array.from({ length: count }, () => row);
const RIGHT = [0.9, 1, 1.1];
const LEFT = [0.9, 1.1, 1];
const kindsOf = (raw: object) => kindsOfPile(pileOf(raw)).kinds;

describe('a kind of which nobody noted the face', () => {
  test('is one kind for both hands, and says that its face is unknown', () => {
    const kinds = kindsOf({
      readings: [...times(5, reading(RIGHT, 'unknown')), ...times(7, reading(LEFT, 'unknown'))],
    });
    expect(kinds.map(({ id, good, faceUnknown }) => [id, good, faceUnknown])).toEqual([
      ['1R', 12, true],
    ]);
  });

  test('says so of a row of the file as well', () => {
    const row = (seenFrom?: string) => kindsOf({ kinds: [{ id: 'a', sides: LEFT, seenFrom }] })[0];
    expect(row('unknown')?.faceUnknown).toBe(true);
    expect(row('outside')?.faceUnknown).toBeUndefined();
    expect(row()?.faceUnknown).toBeUndefined();
    expect(row('unknown')?.sides).toEqual(LEFT);
  });

  test('is known once one reading is, but may hold panels of both hands', () => {
    const kinds = kindsOf({
      readings: [...times(2, reading(LEFT, 'outside')), ...times(7, reading(RIGHT, 'unknown'))],
    });
    expect(kinds.map(({ id, faceUnknown, bothHands }) => [id, faceUnknown, bothHands])).toEqual([
      ['1L', undefined, true],
    ]);
  });

  test('of two known hands shares out the panels of unknown face as the others are', () => {
    const kinds = kindsOf({
      readings: [
        ...times(8, reading(LEFT, 'outside')),
        ...times(4, reading(RIGHT, 'outside')),
        ...times(13, reading(RIGHT, 'unknown')),
      ],
    });
    // 13 panels two to one: 8 and 4, and an odd one that is given to neither.
    expect(kinds.map(({ id, good, bothHands }) => [id, good, bothHands])).toEqual([
      ['1L', 16, undefined],
      ['1R', 8, undefined],
    ]);
  });
});

describe('a row of the file', () => {
  test('read from inside is turned over, and a side that is off is named as it was written', () => {
    const found = kindsOfPile(
      pileOf({
        kinds: [{ id: 'a', sides: [1.10455, 1, 0.9], seenFrom: 'inside' }],
        readings: times(40, reading(RIGHT, 'outside')),
      }),
    );
    expect(found.kinds).toHaveLength(1);
    expect(found.kinds[0]?.sides.map((x) => x.toFixed(2))).toEqual(['0.90', '1.00', '1.10']);
    expect(found.suspects).toMatchObject([
      { reading: null, kind: 'a', side: 0, measured: 1.10455 },
    ]);
  });

  test('of unknown face is turned as its readings are', () => {
    for (const sides of [RIGHT, LEFT]) {
      const kinds = kindsOf({
        kinds: [{ id: 'a', sides: LEFT, seenFrom: 'unknown' }],
        readings: times(3, reading(sides, 'outside')),
      });
      expect(kinds).toHaveLength(1);
      expect(kinds[0]).toMatchObject({ id: 'a', hand: sides === LEFT ? 'L' : 'R', good: 3 });
      expect(kinds[0]?.faceUnknown).toBeUndefined();
    }
  });
});

test('a whole pile without faces gives its shell, and the look that settles its hand (seeds 1 to 6)', () => {
  for (const seed of [1, 2, 3, 4, 5, 6]) {
    const net = seed % 2 === 0 ? ([3, 1] as const) : ([4, 0] as const);
    const heap = slippedHeap({ seed, net, panels: 700, unknown: 1 });
    const found = kindsOfPile(heap.pile);
    const question = shapeQuestion(heap.pile, found);
    expect(found.kinds.every((kind) => kind.faceUnknown)).toBe(true);
    const { shapes } = identify(question);
    const right = shapes.find(({ shell }) => shell.kind.length === heap.places) as Shape;
    expect(Math.abs(right.radius - heap.radius)).toBeLessThan(0.002 * heap.radius);
    expect(right.strangers).toEqual([]);
    expect(handTest(right, question.kinds) === null).toBe(right.hands === 'known');
    if (net[1] === 1) expect(right.hands).toBe('mirrored');
  }
});

test('a joined group is read with panels of unknown face either way round', () => {
  const around = ['a', 'b', 'a', 'b'];
  const found = (seenFrom: string) =>
    kindsOfPile(
      pileOf({
        kinds: [
          { id: 'a', sides: [0.9, 1, 1.1], seenFrom },
          { id: 'b', sides: [0.9, 1, 1.2] },
        ],
        groups: [{ around, closed: true }],
      }),
    );
  // Both run 0.9, 1 anticlockwise: round one hub they only meet where one is turned over.
  expect(found('outside').groups).toEqual([]);
  expect(found('unknown').groups).toMatchObject([{ around }]);
});
