import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { kindsOfPile, type PileKinds } from '../../src/pile/kinds.ts';
import { nearestTurn } from '../../src/pile/polygon.ts';
import { type HeapOptions, heapOf, nearEqual, pileOf, type True } from './heap.ts';

const outside = (sides: readonly number[], more: object = {}): object => ({
  sides,
  seenFrom: 'outside',
  ...more,
});
const ids = (found: PileKinds): string[] => found.kinds.map((kind) => kind.id);
const SCALENE: True = [[0.9, 1, 1.1], 5];
const MIRROR: True = [[0.9, 1.1, 1], 5];

/** Largest error of a found side, metres, each found kind against the nearest true one; infinite
 * where a true kind is not met exactly once. */
function worstSide(found: PileKinds, truth: readonly True[]): number {
  if (found.kinds.length !== truth.length) return Number.POSITIVE_INFINITY;
  const met = new Set<number>();
  const errors = found.kinds.map((kind) => {
    const fits = truth.map(([sides]) => nearestTurn(kind.sides, sides));
    const best = fits.reduce((b, fit, t) => (fit.cost < (fits[b]?.cost as number) ? t : b), 0);
    met.add(best);
    const sides = truth[best]?.[0] as readonly number[];
    return Math.max(
      ...sides.map((x, i) =>
        Math.abs(x - (kind.sides[(i + (fits[best]?.turn as number)) % sides.length] as number)),
      ),
    );
  });
  return met.size === truth.length ? Math.max(...errors) : Number.POSITIVE_INFINITY;
}

describe('kinds are found in a heap', () => {
  test.each([1, 2, 3, 4])(
    'of 580 panels with classes 2.9 mm apart, 1 mm of noise and blunders (seed %i)',
    (seed) => {
      const heap = heapOf(nearEqual, { seed, sd: 0.001, inside: 0.2, blunders: 0.01 });
      const found = kindsOfPile(heap.pile);
      expect(worstSide(found, nearEqual)).toBeLessThan(0.0008);
      // Ten times the bound would let near kinds pass for each other.
      expect(
        worstSide(
          {
            ...found,
            kinds: found.kinds.map((k) => ({ ...k, sides: k.sides.map((x) => x + 0.008) })),
          },
          nearEqual,
        ),
      ).toBeGreaterThan(0.0008);
      expect(found.maybeOne).toEqual([]);
      const wrong = found.assigned.filter((a, i) => {
        const kind = found.kinds.find((k) => k.id === a.kind);
        const sides = nearEqual[heap.truth[i] as number]?.[0] as readonly number[];
        return !kind || nearestTurn(kind.sides, sides).cost > 0.001 ** 2 * 3;
      });
      expect(wrong.length).toBeLessThan(0.07 * heap.truth.length);
    },
  );

  test('in the order of size, a left and a right hand under one number', () => {
    const found = kindsOfPile(
      heapOf([[[1.1, 1.1, 1.1], 4], SCALENE, MIRROR, [[0.8, 0.8, 1], 4]], { seed: 1, sd: 0.001 })
        .pile,
    );
    expect(ids(found)).toEqual(['1', '2L', '2R', '3']);
    expect(found.kinds.map((kind) => kind.hand)).toEqual([null, 'L', 'R', null]);
    expect(found.kinds.map((kind) => kind.good)).toEqual([4, 5, 5, 4]);
    // R: short, middle, long anticlockwise seen from outside.
    expect(found.kinds[2]?.sides.map((s) => s.toFixed(1))).toEqual(['0.9', '1.0', '1.1']);
  });

  test('a hand without its mirror image keeps its letter', () => {
    expect(ids(kindsOfPile(heapOf([SCALENE], { seed: 1, sd: 0.001 }).pile))).toEqual(['1R']);
    expect(ids(kindsOfPile(heapOf([MIRROR], { seed: 1, sd: 0.001 }).pile))).toEqual(['1L']);
  });

  test('a panel read from inside is the same kind as from outside', () => {
    const found = kindsOfPile(
      pileOf({ readings: [outside([0.9, 1, 1.1]), { sides: [1.1, 1, 0.9], seenFrom: 'inside' }] }),
    );
    expect(ids(found)).toEqual(['1R']);
    expect(found.kinds[0]?.good).toBe(2);
  });

  test('quadrilaterals and triangles apart, a kite and a rectangle without hand', () => {
    const found = kindsOfPile(
      heapOf(
        [
          [[1, 1, 1.2, 1.2], 6],
          [[1, 1.3, 1, 1.3], 6],
          [[1, 1.1, 1.2, 1.4], 6],
          [[1, 1, 1], 6],
        ],
        { seed: 5, sd: 0.001 },
      ).pile,
    );
    expect(found.kinds.map((kind) => [kind.sides.length, kind.hand])).toEqual([
      [3, null],
      [4, null],
      [4, null],
      [4, 'R'],
    ]);
  });

  test('sides are the mean of the readings plus the hub allowance, with their standard deviation', () => {
    const readings = [
      outside([0.9, 1, 1.1]),
      outside([0.902, 1, 1.1]),
      outside([0.901, 1.003, 1.1]),
    ];
    const kind = kindsOfPile(pileOf({ readings, hubAllowance: 0.004 })).kinds[0];
    expect(kind?.sides.map((s) => s.toFixed(4))).toEqual(['0.9050', '1.0050', '1.1040']);
    for (const sd of kind?.sideSds ?? []) expect(sd).toBeCloseTo(0.001 / Math.sqrt(3), 7);
  });

  test("no number of readings brings a side below the tape's own error", () => {
    const found = kindsOfPile(heapOf([[[1, 1, 1], 400]], { seed: 3, sd: 0.001 }).pile);
    expect(found.kinds.map((kind) => kind.sideSds)).toEqual([[0.0001, 0.0001, 0.0001]]);
  });

  test('an empty pile has none', () => {
    expect(kindsOfPile(pileOf({}))).toMatchObject({
      kinds: [],
      assigned: [],
      suspects: [],
      people: [],
    });
  });
});

describe('the order of the readings plays no part', () => {
  const result = (options: HeapOptions, shuffle: number) => {
    const heap = heapOf(
      nearEqual.map(([sides]) => [sides, 6] as const),
      options,
    );
    const order = seededRandom(shuffle).shuffle(heap.pile.readings.map((_, i) => i));
    const found = kindsOfPile({
      ...heap.pile,
      readings: order.map((i) => heap.pile.readings[i] as (typeof heap.pile.readings)[number]),
    });
    const back: (string | null)[] = [];
    for (const a of found.assigned) back[order[a.reading] as number] = a.kind;
    return {
      kinds: found.kinds,
      back,
      suspects: found.suspects.map((s) => [order[s.reading as number], s.side, s.z]),
    };
  };
  test('down to the last digit (seed 99)', () => {
    fc.assert(
      fc.property(fc.nat(1000), fc.nat(1000), (seed, shuffle) => {
        const options = { seed, sd: 0.001, inside: 0.3, unknown: 0.2, blunders: 0.05 };
        expect(result(options, shuffle)).toEqual(result(options, 0));
      }),
      { seed: 99, numRuns: 25 },
    );
  });
});

describe('a reading that disagrees with its kind', () => {
  const good = Array.from({ length: 6 }, () => outside([0.9, 1, 1.1]));
  test('is named with its side, what it said and what to expect, and pulls on nothing', () => {
    const found = kindsOfPile(
      pileOf({ readings: [...good, outside([1, 1.1254, 0.9], { tag: '17', by: 'Wim' })] }),
    );
    expect(found.suspects).toHaveLength(1);
    expect(found.suspects[0]).toMatchObject({
      reading: 6,
      tag: '17',
      by: 'Wim',
      kind: '1R',
      side: 1,
      measured: 1.1254,
    });
    expect(found.suspects[0]?.expected).toBeCloseTo(1.1, 9);
    expect(found.kinds[0]?.sides[2]).toBeCloseTo(1.1, 9);
  });

  test('from inside, the side is the one that was written', () => {
    const found = kindsOfPile(
      pileOf({ readings: [...good, { sides: [0.9254, 1.1, 1], seenFrom: 'inside' }] }),
    );
    expect(found.suspects.map((s) => [s.reading, s.side])).toEqual([[6, 0]]);
  });

  test('is none within noise', () => {
    const found = kindsOfPile(pileOf({ readings: [...good, outside([0.9, 1.003, 1.1])] }));
    expect(found.suspects).toEqual([]);
    expect(
      kindsOfPile(pileOf({ readings: [...good, outside([0.9, 1.03, 1.1])] })).suspects,
    ).toHaveLength(1);
  });

  test('is a kind of its own once a second reading of the panel agrees, or two sides differ', () => {
    const odd = outside([0.9, 1.0254, 1.1], { tag: '17' });
    expect(kindsOfPile(pileOf({ readings: [...good, odd] })).kinds).toHaveLength(1);
    expect(kindsOfPile(pileOf({ readings: [...good, odd, odd] })).kinds).toHaveLength(2);
    expect(
      kindsOfPile(pileOf({ readings: [...good, outside([0.9, 1.0254, 1.12])] })).kinds,
    ).toHaveLength(2);
  });

  test('and is one of only two is a suspect like the other', () => {
    const found = kindsOfPile(
      pileOf({
        readings: [outside([1, 1, 1.2], { tag: 'a' }), outside([1, 1, 1.22], { tag: 'a' })],
      }),
    );
    expect(found.kinds).toHaveLength(1);
    expect(found.suspects.map((s) => [s.reading, s.side]).sort()).toEqual([
      [0, 2],
      [1, 2],
    ]);
    expect(found.kinds[0]?.sideSds[2]).toBeGreaterThan(0.009);
  });

  test('a row of the file that its readings contradict is a suspect too', () => {
    const many = Array.from({ length: 40 }, () => outside([0.9, 1, 1.1]));
    const rowOff = (off: number) =>
      pileOf({ kinds: [{ id: 'a', sides: [0.9, 1 + off, 1.1] }], readings: many });
    const near = kindsOfPile(rowOff(0.00455));
    expect(kindsOfPile(rowOff(0.003)).suspects).toEqual([]);
    expect(near.suspects).toMatchObject([{ reading: null, kind: 'a', side: 1, measured: 1.00455 }]);
    expect(ids(near)).toEqual(['a']);
  });

  test('a row that nothing was read of is one if a kind in no row is like it but for one side', () => {
    const found = kindsOfPile(
      pileOf({ kinds: [{ id: 'a', sides: [0.9, 1.02, 1.1] }], readings: good }),
    );
    expect(ids(found)).toEqual(['a', '1R']);
    expect(found.suspects).toMatchObject([{ reading: null, kind: 'a', side: 1, measured: 1.02 }]);
    expect(found.suspects[0]?.expected).toBeCloseTo(1, 9);
    const two = kindsOfPile(
      pileOf({ kinds: [{ id: 'a', sides: [0.92, 1.02, 1.1] }], readings: good }),
    );
    expect(two.suspects).toEqual([]);
  });
});

describe('kinds of the file', () => {
  const rows = [
    { id: 'wren', sides: [1.1, 1.1, 1.1], marks: ['W'], good: 7, mass: 9 },
    { id: '1', sides: [0.9, 1, 1.1] },
    { id: '2R', sides: [1, 1.2, 1.4] },
  ];
  test('keep id, order and sides, and say when nobody counted them', () => {
    const found = kindsOfPile(pileOf({ kinds: rows, hubAllowance: 0.01 }));
    expect(
      found.kinds.map(({ id, hand, good, counted, mass }) => ({ id, hand, good, counted, mass })),
    ).toEqual([
      { id: 'wren', hand: null, good: 7, counted: true, mass: 9 },
      { id: '1', hand: 'R', good: 0, counted: false, mass: null },
      { id: '2R', hand: 'R', good: 0, counted: false, mass: null },
    ]);
    expect(found.kinds[1]?.sides).toEqual([0.91, 1.01, 1.11]);
    expect(found.kinds[1]?.sideSds).toEqual([0.001, 0.001, 0.001]);
  });

  test('are refined by readings, in the turn of the file, the row weighing like one reading', () => {
    const found = kindsOfPile(
      pileOf({ kinds: rows, readings: [outside([1.003, 1.1, 0.9]), outside([1.1, 0.9, 1.003])] }),
    );
    expect(found.kinds[1]?.sides.map((s) => s.toFixed(4))).toEqual(['0.9000', '1.0020', '1.1000']);
    expect(found.kinds[1]).toMatchObject({ id: '1', good: 2, counted: true });
  });

  test('are joined by kinds that only readings show, under free numbers; a mirror image takes the letter', () => {
    const found = kindsOfPile(
      pileOf({ kinds: rows, readings: [outside([0.8, 0.8, 0.9]), outside([1, 1.4, 1.2])] }),
    );
    expect(ids(found)).toEqual(['wren', '1', '2R', '2L', '3']);
  });

  test('with fewer panels counted than were tagged are told', () => {
    const readings = ['a', 'b', 'c'].map((tag) => outside([0.9, 1, 1.1], { tag }));
    expect(
      kindsOfPile(
        pileOf({ kinds: [{ id: '1', sides: [0.9, 1, 1.1], good: 1, scrap: 1 }], readings }),
      ).miscounts,
    ).toEqual([{ kind: '1', counted: 2, found: 3 }]);
  });

  test('alike within noise may be one; ten times as far apart they are two', () => {
    const pair = (off: number) =>
      kindsOfPile(
        pileOf({
          kinds: [
            { id: 'a', sides: [0.9, 1, 1.1] },
            { id: 'b', sides: [1, 1.1 + off, 0.9] },
          ],
        }),
      ).maybeOne;
    expect(pair(0.002)).toMatchObject([{ kinds: ['a', 'b'] }]);
    expect(pair(0.002)[0]?.difference).toBeCloseTo(0.002, 9);
    expect(pair(0.02)).toEqual([]);
  });
});

describe('where the face is unknown', () => {
  const unknown = (sides: readonly number[], more: object = {}): object => ({
    sides,
    seenFrom: 'unknown',
    ...more,
  });
  test('a panel with a mirror axis is settled', () => {
    const found = kindsOfPile(
      pileOf({ readings: [outside([0.9, 0.9, 1.1]), unknown([0.9, 1.1, 0.9])] }),
    );
    expect(found.assigned.map((a) => a.kind)).toEqual(['1', '1']);
    expect(found.tooFew).toEqual([]);
  });

  test('a panel of two hands is given to neither and told', () => {
    const found = kindsOfPile(
      pileOf({
        readings: [
          ...Array(3).fill(outside([0.9, 1, 1.1])),
          ...Array(3).fill(outside([0.9, 1.1, 1])),
          unknown([1, 1.1, 0.9]),
        ],
      }),
    );
    expect(found.kinds.map((kind) => [kind.id, kind.good])).toEqual([
      ['1L', 3],
      ['1R', 3],
    ]);
    expect(found.assigned[6]).toMatchObject({ kind: null });
    expect([...(found.assigned[6]?.candidates ?? [])].sort()).toEqual(['1L', '1R']);
    expect(found.tooFew).toMatchObject([{ path: 'pile.readings[6]', why: 'face unknown' }]);
  });

  test('which face a reading was written from decides nothing (seeds 0 to 59)', () => {
    const shapes: readonly (readonly number[])[] = [
      [0.9, 1, 1.1],
      [0.9, 1, 1.3, 0.9, 0.9],
      [0.8, 1.1, 1.3, 1.2, 1, 0.9],
    ];
    const summary = (readings: readonly object[]): string[] =>
      kindsOfPile(pileOf({ readings })).kinds.map(
        ({ id, sides, good }) => `${id} ${sides.map((x) => x.toFixed(4))} ${good}`,
      );
    for (let seed = 0; seed < 60; seed++) {
      const random = seededRandom(seed);
      const rows = shapes.flatMap((shape) =>
        Array.from({ length: 1 + random.below(4) }, () => ({
          sides: shape.map((x) => x + 0.0007 * random.normal()),
          known: random.uniform() < 0.4,
        })),
      );
      const written = (back: boolean): object[] =>
        rows.map(({ sides, known }) =>
          known ? outside(sides) : unknown(back ? [...sides].reverse() : sides),
        );
      expect(summary(written(true))).toEqual(summary(written(false)));
    }
  });

  test('a panel of the one hand known may be the other', () => {
    const found = kindsOfPile(
      pileOf({
        readings: [outside([0.9, 1, 1.1]), outside([0.9, 1, 1.1]), unknown([1.1, 1, 0.9])],
      }),
    );
    expect(found.kinds).toHaveLength(1);
    expect(found.tooFew).toEqual([
      { path: 'pile.readings[2]', kinds: ['1R'], why: 'face unknown' },
    ]);
  });
});

describe("several people's tapes", () => {
  const random = seededRandom(4);
  const read = (bias: number, sides: readonly number[]) =>
    sides.map((x) => x + bias + 0.0005 * random.normal());
  const kinds = [
    [0.9, 1, 1.1],
    [1.2, 1.2, 1.3],
  ] as const;
  const shared = [...Array(12).keys()].flatMap((i) => {
    const sides = kinds[i % 2] as readonly number[];
    return [
      outside(read(0.004, sides), { tag: `s${i}`, by: 'Ada' }),
      outside(read(0, sides), { tag: `s${i}`, by: 'Ben' }),
    ];
  });
  const alone = [...Array(30).keys()].map((i) =>
    outside(read(i % 3 === 0 ? 0.004 : 0, kinds[i % 2] as readonly number[]), {
      tag: `a${i}`,
      by: i % 3 === 0 ? 'Ada' : 'Ben',
    }),
  );

  test('are told apart over shared panels, and taken off', () => {
    const found = kindsOfPile(pileOf({ readingSd: 0.0005, readings: [...shared, ...alone] }));
    const [ada, ben] = found.people;
    expect((ada?.bias as number) - (ben?.bias as number)).toBeCloseTo(0.004, 3);
    expect(ada).toMatchObject({ by: 'Ada', basis: 'panels', applied: true });
    expect(ada?.sd).toBeLessThan(0.0002);
    expect(found.kinds).toHaveLength(2);
    expect(found.maybeTwo).toEqual([]);
  });

  test('are only compared, never taken off, where no panel is shared', () => {
    const readings = [...Array(20).keys()].map((i) =>
      outside(read(i % 2 === 0 ? 0.001 : 0, [0.9, 0.9, 1.1]), {
        tag: `p${i}`,
        by: i % 2 === 0 ? 'Ada' : 'Ben',
      }),
    );
    const found = kindsOfPile(pileOf({ readingSd: 0.001, readings }));
    expect(found.people.map((p) => [p.basis, p.applied])).toEqual([
      ['kinds', false],
      ['kinds', false],
    ]);
    expect((found.people[0]?.bias as number) - (found.people[1]?.bias as number)).toBeCloseTo(
      0.001,
      3,
    );
    expect(kindsOfPile(pileOf({ readings: [outside([1, 1, 1], { by: 'Ada' })] })).people).toEqual([
      { by: 'Ada', readings: 1, bias: 0, sd: null, basis: 'nothing', applied: false },
    ]);
  });

  test('one wild reading of a shared panel does not make a bias', () => {
    const wild = [
      outside([0.9, 1, 1.6], { tag: 'w', by: 'Ada' }),
      outside([0.9, 1, 1.1], { tag: 'w', by: 'Ben' }),
    ];
    const level = [...Array(8).keys()].flatMap((i) =>
      ['Ada', 'Ben'].map((by) => outside(read(0, kinds[0]), { tag: `l${i}`, by })),
    );
    const found = kindsOfPile(pileOf({ readingSd: 0.0005, readings: [...level, ...wild] }));
    for (const person of found.people) expect(Math.abs(person.bias)).toBeLessThan(0.0004);
  });

  test('noise stated too small is overruled by repeats, so that kinds stay whole', () => {
    const noisy = (stated: number) => {
      const r = seededRandom(8);
      const readings = [...Array(40).keys()].map((i) =>
        outside(
          [0.9, 1, 1.1].map((x) => x + 0.003 * r.normal()),
          { tag: `t${i >> 1}` },
        ),
      );
      return kindsOfPile(pileOf({ readingSd: stated, readings }));
    };
    expect(noisy(0.0005).noise.used).toBeGreaterThan(0.002);
    expect(noisy(0.0005).kinds).toHaveLength(1);
    expect(noisy(0.003).noise).toMatchObject({ stated: 0.003, used: 0.003 });
  });

  test('a kind that scatters more than the others do may be two', () => {
    const r = seededRandom(5);
    const heap = (length: number, spread: number, n: number) =>
      Array.from({ length: n }, () =>
        outside([0.9, length, 1.3].map((x) => x + spread * r.normal())),
      );
    const others = [1, 1.05, 1.1, 1.15].flatMap((length) => heap(length, 0.001, 40));
    expect(
      kindsOfPile(pileOf({ readings: [...others, ...heap(1.2, 0.00135, 60)] })).maybeTwo,
    ).toMatchObject([{ kind: '5R' }]);
    expect(
      kindsOfPile(pileOf({ readings: [...others, ...heap(1.2, 0.001, 60)] })).maybeTwo,
    ).toEqual([]);
  });

  test('noise stated too small is overruled by the scatter of kinds that stand alone', () => {
    const heap = heapOf(
      [
        [[1, 1, 1.2], 30],
        [[1.1, 1.3, 1.2], 30],
        [[1.3, 1.3, 1.3], 30],
      ],
      { seed: 3, sd: 0.002, stated: 0.001 },
    );
    const found = kindsOfPile(heap.pile);
    expect(found.kinds).toHaveLength(3);
    expect(found.noise.used).toBeGreaterThan(0.0017);
    expect(found.noise.used).toBeLessThan(0.0024);
  });
});

describe('marks', () => {
  const marked = (mark: string, sides: readonly number[], n: number) =>
    Array.from({ length: n }, () => outside(sides, { mark }));
  test('do not make kinds, nor keep them apart', () => {
    const found = kindsOfPile(
      pileOf({ readings: [...marked('a', [0.9, 1, 1.1], 4), ...marked('b', [0.9, 1, 1.1], 4)] }),
    );
    expect(found.kinds.map((kind) => kind.marks)).toEqual([['a', 'b']]);
    expect(found.mixedMarks).toEqual([]);
  });

  test('on two kinds are told, a single wrong one as a stray', () => {
    const found = kindsOfPile(
      pileOf({
        readings: [
          ...marked('a', [0.9, 1, 1.1], 20),
          ...marked('a', [0.9, 1.1, 1], 20),
          ...marked('b', [1, 1, 1.3], 20),
          ...marked('a', [1, 1, 1.3], 1),
        ],
      }),
    );
    expect(found.mixedMarks).toEqual([
      {
        mark: 'a',
        kinds: [
          { kind: '1L', panels: 20, stray: false },
          { kind: '1R', panels: 20, stray: false },
          { kind: '2', panels: 1, stray: true },
        ],
      },
    ]);
    expect(found.kinds.map((kind) => kind.marks)).toEqual([['a'], ['a'], ['b']]);
  });

  test('tip the scales only where the tape cannot', () => {
    const near = (mark: string, x: number) => outside([1, 1, x], { mark });
    const r = seededRandom(6);
    const readings = [...Array(40).keys()].map((i) =>
      near(i % 2 ? 'long' : 'short', (i % 2 ? 1.204 : 1.2) + 0.001 * r.normal()),
    );
    const odds = (mark: string) =>
      kindsOfPile(pileOf({ readings: [...readings, near(mark, 1.2021)] })).assigned.at(-1);
    expect(odds('long')?.kind).toBe('2');
    expect(odds('short')?.kind).toBe('1');
    expect(
      kindsOfPile(pileOf({ readings: [...readings, near('long', 1.2)] })).assigned.at(-1)?.kind,
    ).toBe('1');
  });
});

test('counts follow tags, conditions and rows that stand for several', () => {
  const found = kindsOfPile(
    pileOf({
      readings: [
        outside([1, 1, 1.2], { tag: 'a', mass: 9 }),
        outside([1, 1, 1.2], { tag: 'a', condition: 'scrap', mass: 10 }),
        outside([1, 1, 1.2], { tag: 'b', condition: 'repair' }),
        outside([1, 1, 1.2], { count: 7 }),
        outside([1, 1, 1.2]),
      ],
    }),
  );
  expect(found.kinds).toMatchObject([{ good: 8, repair: 1, scrap: 1, counted: true, mass: 9.5 }]);
});

test('where each side lies is told for every reading', () => {
  const found = kindsOfPile(
    pileOf({
      kinds: [{ id: 'a', sides: [0.9, 1, 1.1] }],
      readings: [
        outside([1.1, 0.9, 1]),
        { sides: [1, 0.9, 1.1], seenFrom: 'inside' },
        { sides: [0.9, 1.1, 1], seenFrom: 'unknown' },
      ],
    }),
  );
  expect(found.assigned.map((a) => a.liesOn)).toEqual([
    [2, 0, 1],
    [1, 0, 2],
    [0, 2, 1],
  ]);
  expect(found.assigned.map((a) => a.mirrored)).toEqual([false, false, true]);
  // turn: the kind's side that lies on the first side, read anticlockwise from outside.
  expect(found.assigned.map((a) => a.turn)).toEqual([2, 2, 1]);
});

test('a kind that rests on one reading is told', () => {
  expect(kindsOfPile(pileOf({ readings: [outside([1, 1, 1.2])] })).tooFew).toEqual([
    { path: 'kind 1', kinds: ['1'], why: 'one reading' },
  ]);
});

test('a panel between two kinds is not settled', () => {
  const heap = heapOf(
    [
      [[1, 1, 1.2], 20],
      [[1, 1, 1.204], 20],
    ],
    { seed: 2, sd: 0.001 },
  );
  const found = kindsOfPile({
    ...heap.pile,
    readings: [...heap.pile.readings, ...pileOf({ readings: [outside([1, 1, 1.202])] }).readings],
  });
  expect(found.tooFew.map((t) => t.path)).toContain('pile.readings[40]');
});

test('700 readings take no more than a moment, even on a busy machine', () => {
  const heap = heapOf([...nearEqual, [[1.3, 1.35, 1.4], 60], [[1.3, 1.4, 1.35], 60]], {
    seed: 9,
    sd: 0.001,
    inside: 0.2,
  });
  expect(heap.pile.readings).toHaveLength(700);
  const start = performance.now();
  kindsOfPile(heap.pile);
  expect(performance.now() - start).toBeLessThan(3000);
});
