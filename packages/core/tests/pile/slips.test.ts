import { describe, expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import { shapeQuestion } from '../../src/identify/question.ts';
import { kindsOfPile, type PileKinds } from '../../src/pile/kinds.ts';
import { pileOf } from './heap.ts';
import { type Mischief, type SlippedHeap, slippedHeap } from './slipped.ts';

const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);
const outside = (sides: readonly number[], more: object = {}): object => ({
  sides,
  seenFrom: 'outside',
  ...more,
});
const times = (count: number, row: object): object[] => Array.from({ length: count }, () => row);

/** Culprits named with their slip, and slips that are nobody's. */
function score(found: PileKinds, { culprits }: SlippedHeap): { named: number; others: number } {
  return {
    named: culprits.filter((culprit) =>
      found.slips.some((s) => s.reading === culprit.reading && s.slip === culprit.slip),
    ).length,
    others: found.slips.filter((s) => !culprits.some((one) => one.reading === s.reading)).length,
  };
}

describe('in piles in which nothing is wrong', () => {
  test('nothing is told of slips or of tapes that are off (80 piles, seeds 1 to 80)', () => {
    const alarms = range(80).filter((seed) => {
      const { pile } = slippedHeap({ seed, unknown: seed % 4 === 0 ? 1 : 0.1 });
      const found = kindsOfPile(pile);
      return found.slips.length > 0 || found.people.some((one) => one.applied);
    });
    expect(alarms).toEqual([]);
  });

  test('the few panels of the other hand that were read so far are a kind', () => {
    for (const [many, few] of [
      [3, 1],
      [6, 1],
      [12, 2],
      [6, 2],
    ] as const) {
      const found = kindsOfPile(
        pileOf({
          readings: [...times(many, outside([0.9, 1, 1.1])), ...times(few, outside([0.9, 1.1, 1]))],
        }),
      );
      expect(found.slips).toEqual([]);
      expect(found.kinds.map((kind) => kind.good)).toEqual([few, many]);
    }
  });

  test('people who share out the kinds among them are no broken tapes (seeds 1 to 40)', () => {
    for (const seed of range(40)) {
      const { pile } = slippedHeap({ seed });
      const kindOf = kindsOfPile(pile).assigned.map((a) => a.candidates[0]);
      const ids = [...new Set(kindOf)];
      const readings = pile.readings.map((row, i) => ({
        ...row,
        by: ids.indexOf(kindOf[i]) % 2 === 0 ? 'Ada' : 'Ben',
      }));
      const found = kindsOfPile({ ...pile, readings });
      expect(found.people.filter((one) => one.applied)).toEqual([]);
    }
  });
});

describe('a reading that slipped', () => {
  const cases: readonly (readonly [Mischief, number])[] = [
    ['one side', 38],
    ['two sides', 33],
    ['inches', 40],
    ['one in inches', 40],
  ];
  test.each(cases)(
    'with %s wrong is named in at least %i of 40 piles, and nothing else is (seeds 1 to 40)',
    (mischief, least) => {
      const scores = range(40).map((seed) => {
        const heap = slippedHeap({ seed, mischief: [mischief] });
        return score(kindsOfPile(heap.pile), heap);
      });
      expect(scores.reduce((sum, { named }) => sum + named, 0)).toBeGreaterThanOrEqual(least);
      expect(scores.reduce((sum, { others }) => sum + others, 0)).toBe(0);
    },
  );

  test('from the wrong face is named where no kind is the other hand (net (3, 1), seeds 1 to 40)', () => {
    let [seen, named] = [0, 0];
    for (const seed of range(40)) {
      const heap = slippedHeap({ seed, net: [3, 1], panels: 260, mischief: ['face'] });
      if (heap.culprits.some(({ hasPair }) => hasPair)) continue;
      const found = kindsOfPile(heap.pile);
      const [slip] = found.slips;
      seen++;
      if (slip?.reading !== heap.culprits[0]?.reading || slip?.slip !== 'face') continue;
      named++;
      expect(slip.orElse).toBe('swapped');
      expect(found.kinds).toHaveLength(heap.kinds);
    }
    expect(seen).toBeGreaterThan(10);
    expect(named).toBeGreaterThanOrEqual(0.9 * seen);
  });

  test('tells what it should say, in the order in which it was written', () => {
    const kinds = [...times(12, outside([0.9, 1, 1.1])), ...times(12, outside([1, 1, 1.2]))];
    const only = (row: object) => {
      const found = kindsOfPile(pileOf({ readings: [...kinds, row] }));
      expect(found.kinds.map((kind) => kind.sides.length)).toEqual([3, 3]);
      expect(found.slips).toHaveLength(1);
      return found.slips[0];
    };
    const inches = only(outside([1.1 / 2.54, 0.9 / 2.54, 1 / 2.54], { tag: '7', by: 'Wim' }));
    expect(inches).toMatchObject({
      reading: 24,
      tag: '7',
      by: 'Wim',
      slip: 'unit',
      sides: [0, 1, 2],
    });
    expect(inches?.expected.map((x) => x.toFixed(3))).toEqual(['1.100', '0.900', '1.000']);
    const inside = only({ sides: [1.02, 0.9, 1.1], seenFrom: 'inside' });
    expect(inside).toMatchObject({ slip: 'length', sides: [0], measured: [1.02, 0.9, 1.1] });
    expect(inside?.expected.map((x) => x.toFixed(3))).toEqual(['1.000', '0.900', '1.100']);
    const one = only(outside([1, 1.1, 0.9 / 2.54]));
    expect(one).toMatchObject({ slip: 'unit', sides: [2] });
  });

  test('of four sides is told swapped from turned over', () => {
    const kite = [0.8, 0.9, 1.1, 1.3];
    const found = (sides: readonly number[]) =>
      kindsOfPile(
        pileOf({
          readings: [
            ...times(20, outside(kite)),
            ...times(20, outside([1, 1, 1, 1])),
            outside(sides),
          ],
        }),
      );
    const swapped = found([0.8, 1.1, 0.9, 1.3]);
    expect(swapped.slips).toMatchObject([{ reading: 40, slip: 'swapped', sides: [1, 2] }]);
    expect(swapped.slips[0]?.expected.map((x) => x.toFixed(1))).toEqual([
      '0.8',
      '0.9',
      '1.1',
      '1.3',
    ]);
    expect(swapped.kinds).toHaveLength(2);
    expect(found([1.3, 1.1, 0.9, 0.8]).slips).toMatchObject([{ slip: 'face', orElse: null }]);
  });

  test('pulls on no kind, and counts as a panel of its own', () => {
    const many = times(20, outside([0.9, 1, 1.1]));
    const clean = kindsOfPile(pileOf({ readings: many })).kinds[0];
    for (const bad of [outside([0.9, 1.1, 1]), outside([0.9 / 2.54, 1 / 2.54, 1.1 / 2.54])]) {
      const [kind] = kindsOfPile(pileOf({ readings: [...many, bad] })).kinds;
      expect(kind?.good).toBe(21);
      kind?.sides.forEach((x, i) => {
        expect(Math.abs(x - (clean?.sides[i] as number))).toBeLessThan(1e-9);
      });
    }
  });

  test('that a person says stands as it was read is a kind of its own', () => {
    const readings = [...times(20, outside([0.9, 1, 1.1])), outside([0.9, 1.1, 1])];
    const asRead = [...readings.slice(0, 20), outside([0.9, 1.1, 1], { asRead: true })];
    expect(kindsOfPile(pileOf({ readings })).slips).toHaveLength(1);
    const found = kindsOfPile(pileOf({ readings: asRead }));
    expect(found.slips).toEqual([]);
    expect(found.kinds.map((kind) => kind.id)).toEqual(['1L', '1R']);
  });
});

describe("one person's tape with a broken hook", () => {
  test.each([0.025, -0.025])('%f m off is found and taken off (seeds 1 to 40)', (dee) => {
    for (const seed of range(40)) {
      const heap = slippedHeap({ seed, dee });
      const found = kindsOfPile(heap.pile);
      expect(found.people.filter((one) => one.applied)).toMatchObject([
        { by: 'Dee', basis: 'kinds' },
      ]);
      const off = (bias: number): number =>
        Math.abs((found.people.find(({ by }) => by === 'Dee')?.bias ?? 0) - bias);
      expect(off(dee)).toBeLessThan(0.001);
      expect(off(dee + 0.01)).toBeGreaterThan(0.001);
      expect(found.kinds).toHaveLength(heap.kinds);
    }
  });

  test('says nothing of the other tapes where all measured the same panels', () => {
    const readings = ['Ada', 'Ben', 'Cas', 'Dee'].flatMap((by) =>
      range(10).map((i) =>
        outside(
          [0.9, 1, 1.1].map((x) => x + (by === 'Dee' ? 0.025 : 0)),
          { by, tag: `${i}` },
        ),
      ),
    );
    const { people, kinds } = kindsOfPile(pileOf({ readings }));
    expect(people.map(({ by, applied }) => [by, applied])).toEqual([
      ['Ada', false],
      ['Ben', false],
      ['Cas', false],
      ['Dee', true],
    ]);
    expect(people[3]?.bias).toBeCloseTo(0.025, 9);
    expect(kinds).toHaveLength(1);
    expect(kinds[0]?.sides[0]).toBeCloseTo(0.9, 9);
  });

  test('is left alone where a person says so, and is as a person states it', () => {
    const plain = slippedHeap({ seed: 4, dee: 0.025 });
    const stated = (shift: number) =>
      kindsOfPile({ ...plain.pile, people: [{ by: 'Dee', shift }] });
    const left = stated(0);
    expect(left.people.find(({ by }) => by === 'Dee')).toMatchObject({
      bias: 0,
      applied: false,
      stated: true,
    });
    expect(left.kinds.length).toBeGreaterThan(plain.kinds);
    const told = stated(0.025);
    expect(told.kinds).toHaveLength(plain.kinds);
    expect(told.people.find(({ by }) => by === 'Dee')).toMatchObject({
      bias: 0.025,
      applied: true,
      stated: true,
    });
  });
});

test('three culprits and a broken hook at once are named, and the shell is found (seeds 1 to 6)', () => {
  const sets: readonly (readonly Mischief[])[] = [
    ['two sides', 'inches', 'one side'],
    ['one in inches', 'two sides', 'one side'],
    ['inches', 'one side', 'one in inches'],
  ];
  let [named, all, shells] = [0, 0, 0];
  for (const seed of range(6)) {
    const mischief = sets[seed % 3] as readonly Mischief[];
    const heap = slippedHeap({ seed, mischief, panels: 120 + 40 * seed, dee: 0.025 });
    const found = kindsOfPile(heap.pile);
    const { named: own, others } = score(found, heap);
    expect(others).toBe(0);
    named += own;
    all += heap.culprits.length;
    const { shapes } = identify(shapeQuestion(heap.pile, found));
    const right = shapes.find(
      ({ shell, radius }) =>
        shell.kind.length === heap.places && Math.abs(radius - heap.radius) < 0.002 * heap.radius,
    );
    if (right) shells++;
  }
  expect(named).toBeGreaterThanOrEqual(all - 1);
  expect(shells).toBe(6);
});

test('two panels alike are a kind, though others have two of their sides', () => {
  const found = kindsOfPile(
    pileOf({
      readingSd: 0.003,
      readings: [
        ...times(3, outside([2.08, 2.29, 2.35])),
        ...times(2, outside([2.08, 2.29, 2.08])),
      ],
    }),
  );
  expect(found.kinds.map((kind) => kind.good).sort()).toEqual([2, 3]);
});
