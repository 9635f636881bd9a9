// The steps of the pile one by one: outlines, symmetries, numbers, groups, people, chi-square.

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { turned } from '../../src/math/cyclic.ts';
import { chiSquareDeviate } from '../../src/pile/findings.ts';
import { resolveGroups } from '../../src/pile/groups.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import { blunderCost, itemOf, readingLikelihood } from '../../src/pile/mixture.ts';
import { nameKinds, type Unnamed } from '../../src/pile/numbering.ts';
import { biasesOf, type SharedReading } from '../../src/pile/people.ts';
import { fromOtherFace, handOf, nearestTurn } from '../../src/pile/polygon.ts';
import { tieSides, tiesOf } from '../../src/pile/ties.ts';
import { pileOf } from './heap.ts';

const SEED = 17;
const outline = fc.array(fc.integer({ min: 1, max: 5 }), { minLength: 3, maxLength: 6 });

describe('outlines', () => {
  test(`seeing from the other face twice changes nothing (seed ${SEED})`, () => {
    fc.assert(
      fc.property(outline, (sides) => {
        expect(fromOtherFace(fromOtherFace(sides))).toEqual(sides);
      }),
      { seed: SEED },
    );
  });

  test(`a mirror image has the other hand, and every turn the same one (seed ${SEED})`, () => {
    const other = { L: 'R', R: 'L' } as const;
    fc.assert(
      fc.property(outline, fc.nat(5), (sides, by) => {
        const hand = handOf(sides);
        expect(handOf(fromOtherFace(sides))).toBe(hand === null ? null : other[hand]);
        expect(handOf(turned(sides, by))).toBe(hand);
      }),
      { seed: SEED },
    );
  });

  test('a triangle is R where short, middle, long follow anticlockwise', () => {
    expect(handOf([1.1, 0.9, 1])).toBe('R');
    expect(handOf([1.1, 1, 0.9])).toBe('L');
    expect(handOf([1, 1.1, 1])).toBeNull();
  });

  test('the nearest turn is that of least squares, infinite for another number of sides', () => {
    expect(nearestTurn([1, 2, 3], [3.1, 1, 2])).toMatchObject({ turn: 2 });
    expect(nearestTurn([1, 2, 3], [3.1, 1, 2]).cost).toBeCloseTo(0.01, 12);
    expect(nearestTurn([1, 2, 3], [1, 2, 3, 4]).cost).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('symmetries', () => {
  const classes = (n: number): string[] => tiesOf(n).map((tie) => tie.classOf.join(''));
  test('of a triangle: none, three isosceles, equilateral', () =>
    expect(classes(3).sort()).toEqual(['000', '001', '010', '011', '012']));
  test('of a quadrilateral: kites, trapezia, parallelogram, rhombus; a hexagon may have turns and no mirror', () => {
    expect(classes(4).sort()).toEqual(['0000', '0011', '0101', '0102', '0110', '0121', '0123']);
    const handed = tiesOf(4)
      .filter((tie) => !tie.mirror)
      .map((tie) => tie.classOf.join(''));
    expect(handed).toEqual(['0123']);
    expect(
      tiesOf(6)
        .filter((tie) => !tie.mirror)
        .map((tie) => tie.classOf.join('')),
    ).toEqual(['012345', '012012']);
  });
  test('tied sides are their weighted mean; without weight the plain one', () => {
    const iso = tiesOf(3).find((tie) => tie.classOf.join('') === '001');
    if (!iso) throw new Error('no isosceles tie');
    expect(tieSides(iso, [1, 2, 5], [3, 1, 1]).map((x) => x.toFixed(4))).toEqual([
      '1.2500',
      '1.2500',
      '5.0000',
    ]);
    expect(tieSides(iso, [1, 2, 5], [0, 0, 0]).map((x) => x.toFixed(4))).toEqual([
      '1.5000',
      '1.5000',
      '5.0000',
    ]);
  });
});

describe('numbers and hands', () => {
  const kind = (sides: number[], id: string | null = null): Unnamed => ({
    id,
    sides,
    sds: sides.map(() => 0.001),
    mirror: handOf(sides) === null,
  });
  const noise = (chiSquare: number, sides: number): boolean => chiSquare < 4 * sides;
  test('run from the smallest and skip those in use', () => {
    expect(
      nameKinds([kind([2, 2, 2], '1'), kind([1.5, 1.5, 1.5]), kind([1, 1, 1])], noise).map(
        (n) => n.id,
      ),
    ).toEqual(['1', '3', '2']);
  });
  test('a pair in the file with two names of its own stays so, near-equal as its hands may be', () => {
    const names = nameKinds(
      [kind([1.0127, 1.1781, 1.181], 'tit'), kind([1.0127, 1.181, 1.1781], 'rook')],
      noise,
    );
    expect(names.map((n) => [n.id, n.hand, n.partner])).toEqual([
      ['tit', 'R', 1],
      ['rook', 'L', 0],
    ]);
  });
  test('hands that their noise makes nearly their own mirror image are a pair while each is nearer the other', () => {
    const near = (sides: number[]): Unnamed => ({ ...kind(sides), mirror: true });
    expect(
      nameKinds([near([1, 1.2, 1.206]), near([1, 1.206, 1.2])], noise).map((n) => n.id),
    ).toEqual(['1R', '1L']);
    expect(nameKinds([near([1, 1.2, 1.2]), near([1, 1.2, 1.2])], noise).map((n) => n.id)).toEqual([
      '1',
      '2',
    ]);
  });
});

describe('groups', () => {
  const kind = (id: string, sides: number[]): Kind => ({
    id,
    sides,
    sideSds: sides.map(() => 0.0005),
    marks: [],
    hand: null,
    good: 0,
    repair: 0,
    scrap: 0,
    counted: false,
    mass: null,
  });
  const kinds = [
    kind('1', [0.9, 0.9, 1.05]),
    kind('2', [1.05, 1.05, 1.05]),
    kind('3', [1.3, 1.3, 1.4]),
  ];
  const marks = new Map([
    ['R', ['1']],
    ['x', ['1', '3']],
    ['y', ['1', '2']],
  ]);
  const resolve = (around: string[], closed?: boolean) =>
    resolveGroups(
      [{ around, count: 2, ...(closed === undefined ? {} : { closed }) }],
      kinds,
      marks,
    );

  test('name kinds or marks; closed only where the file says so', () => {
    expect(resolve(['R', 'R', '1', '1', '1'], true).groups).toEqual([
      { around: ['1', '1', '1', '1', '1'], closed: true, count: 2 },
    ]);
    expect(resolve(['R', '1']).groups).toEqual([{ around: ['1', '1'], closed: false, count: 2 }]);
  });
  test('a mark of several kinds is settled by the seams of its neighbours', () => {
    expect(resolve(['x', '2', '2']).groups[0]?.around).toEqual(['1', '2', '2']);
  });
  test('what stays open is told with every way to read it', () => {
    expect(resolve(['y', '1'])).toEqual({
      groups: [],
      unsettled: [
        {
          group: 0,
          readings: [
            ['1', '1'],
            ['2', '1'],
          ],
          more: false,
          around: [['1', '2'], ['1']],
          closed: false,
          count: 2,
        },
      ],
    });
    expect(resolve(Array(6).fill('y')).unsettled[0]).toMatchObject({ more: true });
  });
  test('neighbours without a side in common fit no way', () => {
    expect(resolve(['1', '3']).unsettled).toMatchObject([{ group: 0, readings: [], more: false }]);
    expect(resolve(['1', '2', '1'], true).unsettled).toEqual([]);
    expect(resolve(['1', '1', '3', '3']).unsettled[0]?.readings).toEqual([]);
  });
  test("the run is anticlockwise: a panel's side that ends at the hub meets the next one's that starts there", () => {
    const a = kind('a', [1, 1.1, 1.2]);
    const b = kind('b', [1.2, 1.3, 1.4]);
    const c = kind('c', [1.4, 1.5, 1.6]);
    const run = (...around: Kind[]) =>
      resolveGroups([{ around: around.map((k) => k.id), count: 1 }], [a, b, c], new Map()).groups
        .length;
    // b starts with 1.2 where its corner is 0 and ends with 1.4; c starts with 1.4.
    expect(run(a, b, c)).toBe(1);
    expect(run(c, b, a)).toBe(0);
  });
  test('of a whole pile', () => {
    const pile = pileOf({
      kinds: [{ id: '1', sides: [0.9, 0.9, 1.05], marks: ['R'] }],
      groups: [{ around: ['R', '1', 'R', '1', 'R'], count: 3, closed: true }],
    });
    expect(kindsOfPile(pile).groups).toEqual([
      { around: ['1', '1', '1', '1', '1'], closed: true, count: 3 },
    ]);
  });
});

describe('people', () => {
  const row = (by: string, panel: string, meanSide: number): SharedReading => ({
    by,
    panel,
    meanSide,
    sideCount: 3,
  });
  test('two people on one panel: half the difference each, by hand', () => {
    const [ada, ben] = biasesOf([row('Ada', 'p', 1.002), row('Ben', 'p', 1)], 0.001, 'panels');
    expect(ada?.bias).toBeCloseTo(0.001, 12);
    expect(ben?.bias).toBeCloseTo(-0.001, 12);
    // The difference of two means of three sides has sd σ√(2/3); each bias half of that.
    expect(ada?.sd).toBeCloseTo((0.001 * Math.sqrt(2 / 3)) / 2, 9);
    expect(ada?.applied).toBe(false);
  });
  test('are linked through a third, and sets that share nothing are level each by itself', () => {
    const found = biasesOf(
      [
        row('A', 'p', 1.003),
        row('B', 'p', 1.001),
        row('B', 'q', 2.001),
        row('C', 'q', 2),
        row('D', 'r', 5),
        row('E', 's', 1),
        row('F', 's', 1.01),
      ],
      0.01,
      'panels',
    );
    const bias = (by: string): number => found.find((p) => p.by === by)?.bias as number;
    expect(bias('A') - bias('C')).toBeCloseTo(0.003, 9);
    expect(bias('F') - bias('E')).toBeCloseTo(0.01, 9);
    expect(found.find((p) => p.by === 'D')).toMatchObject({ bias: 0, sd: null, basis: 'nothing' });
  });
});

test('the normal deviate of chi-square agrees with tables: 95 % points 3.84, 7.81, 124.3 (1, 3, 100 degrees; from memory)', () => {
  for (const [chiSquare, freedom] of [
    [3.841, 1],
    [7.815, 3],
    [124.34, 100],
  ] as const) {
    expect(Math.abs(chiSquareDeviate(chiSquare, freedom) - 1.645)).toBeLessThan(0.05);
    expect(Math.abs(chiSquareDeviate(chiSquare, freedom) - 1.645 - 0.5)).toBeGreaterThan(0.05);
  }
});

test(`a reading's likelihood is that of the plain sum over its ways (seed ${SEED})`, () => {
  const sd = 0.001;
  const cap = blunderCost(sd);
  const near = fc.integer({ min: -60, max: 60 }).map((n) => 1 + n / 10_000);
  const triangle = fc.tuple(near, near, near);
  fc.assert(
    fc.property(triangle, triangle, fc.boolean(), (sides, mean, faceKnown) => {
      const reading = { index: 0, by: null, sides, faceKnown };
      const panel = {
        tag: null,
        marks: [],
        faded: [],
        readings: [reading],
        condition: 'good',
        count: 1,
        sideCount: 3,
      } as const;
      const [variants] = itemOf(panel, (r) => r.sides).readings;
      if (!variants) throw new Error('no reading');
      const faces = faceKnown ? [sides] : [sides, fromOtherFace(sides)];
      const ways = faces.flatMap((face) => [0, 1, 2].map((by) => turned(face, by)));
      const cost = (way: readonly number[]): number =>
        way.reduce(
          (sum, x, i) => sum + Math.min((x - (mean[i] as number)) ** 2 / (2 * sd * sd), cap),
          0,
        );
      const plain = Math.log(
        ways.reduce((sum, way) => sum + Math.exp(-cost(way)), 0) / ways.length,
      );
      expect(readingLikelihood(variants, mean, sd, cap, new Float64Array(64))).toBeCloseTo(
        plain,
        9,
      );
    }),
    { seed: SEED, numRuns: 500 },
  );
});
