import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Drawing, flatItems, type PathItem, type Point } from '../../src/papers/drawing.ts';
import { kindCardSheets } from '../../src/papers/kind-cards-sheet.ts';
import { handTest, handWords, stockWords } from '../../src/papers/kind-words.ts';
import { panelShape, standingSide } from '../../src/papers/panel-shape.ts';
import { toSvg } from '../../src/papers/svg.ts';
import type { Hand, Kind } from '../../src/pile/kind.ts';
import { kindOf } from '../takeoff/ball.ts';
import { outside, overlaps, smallestType } from './sheet-checks.ts';
import { standing } from './standing.ts';
import { readXml } from './xml.ts';

const facts = {
  project: 'Heron Flats shell, 24 ft',
  sheet: '1 Pile, kinds',
  date: '14 May 2026',
  assumes: 'Sides measured hole to hole, ± 1 mm; hub allowance 4 mm.',
};
const handed = (id: string, sides: readonly number[], hand: Hand): Kind =>
  kindOf(id, sides, 3, hand);
const left = handed('3L', [0.9, 1.1, 1.0], 'L');
const right = handed('3R', [1.0, 1.1, 0.9], 'R');
const net = (b: number, c: number) =>
  ({ solid: 'icosahedron', b, c, division: 'equal chords' }) as const;
const odd = [
  kindOf('12', [1.2, 0.9, 1.1, 0.7, 0.8], 4),
  kindOf('13', [1.4, 0.9, 0.56]),
  {
    ...kindOf('a very long name for a kind', [0.6, 0.9, 1.2]),
    marks: ['blue', 'door', 'left of 7'],
  },
  left,
  right,
];
const words = (drawing: Drawing): string[] =>
  flatItems(drawing.items).flatMap((item) => (item.type === 'text' ? [item.text] : []));
const outlinesOf = (drawing: Drawing): PathItem[] =>
  flatItems(drawing.items).filter(
    (item): item is PathItem =>
      item.type === 'path' && item.closed && item.stroke?.weight === 'bold',
  );

describe('the shape of a panel', () => {
  it('closes with the given sides and angles that sum to a polygon’s (seed 9)', () => {
    const side = fc.double({ min: 0.5, max: 1.4, noNaN: true });
    const property = fc.property(fc.array(side, { minLength: 3, maxLength: 7 }), (sides) => {
      const shape = panelShape(sides);
      fc.pre(shape !== null);
      shape.corners.forEach(([x, y], i) => {
        const [u, v] = shape.corners[(i + 1) % sides.length] as readonly [number, number];
        expect(Math.abs(Math.hypot(u - x, v - y) - (sides[i] as number))).toBeLessThan(1e-9);
      });
      const sum = shape.angles.reduce((a, b) => a + b, 0);
      expect(sum).toBeCloseTo((sides.length - 2) * Math.PI, 9);
    });
    fc.assert(property, { seed: 9 });
  });

  it('of a 3-4-5 triangle has its right angle between 3 and 4', () => {
    const shape = panelShape([3, 4, 5]);
    expect(shape?.angles[1]).toBeCloseTo(Math.PI / 2, 12);
    expect(shape?.corners[2]?.[0]).toBeCloseTo(3, 12);
    expect(shape?.corners[2]?.[1]).toBeCloseTo(4, 12);
  });

  it('is nothing where the sides do not meet', () => {
    expect(panelShape([1, 1, 2.5])).toBeNull();
  });
});

describe('the side that a panel stands on', () => {
  it('is the longest where it has a hand, as the test for the hand says', () => {
    expect([left, right].map(standingSide)).toEqual([1, 1]);
  });

  it('is the odd one where two sides are alike, so that it stands upright', () => {
    const kind = kindOf('1', [0.9, 0.9, 1.1]);
    const shape = panelShape(kind.sides, standingSide(kind));
    const [a, b, c] = shape?.corners ?? [];
    expect(standingSide(kind)).toBe(2);
    expect(c?.[1]).toBeCloseTo(a?.[1] as number, 12);
    expect(b?.[0]).toBeCloseTo(((a?.[0] as number) + (c?.[0] as number)) / 2, 12);
    expect(b?.[1]).toBeGreaterThan(a?.[1] as number);
  });

  it('is the first of equal ones, and of polygons with more sides', () => {
    expect(standingSide(kindOf('1', [1, 1, 1]))).toBe(0);
    expect(standingSide(kindOf('1', [1, 1, 1, 1.2]))).toBe(0);
  });
});

describe('the words of a card', () => {
  it('tell left from right by where the shortest side lies, oppositely for mirror images', () => {
    expect(handTest(left)).toMatch(/longest side \(side 2\).*shortest side is on the left\.$/);
    expect(handTest(right)).toMatch(/longest side \(side 2\).*shortest side is on the right\.$/);
  });

  it('hold for the drawn shape, stood on its longest side', () => {
    for (const kind of [left, right]) {
      const turned = [...kind.sides.slice(1), ...kind.sides.slice(0, 1)];
      const shape = panelShape(turned);
      const apex = shape?.corners[2]?.[0] as number;
      const shortOnLeft = apex < 1.1 / 2;
      expect(handTest(kind)?.includes('on the left')).toBe(shortOnLeft);
    }
  });

  it('do not depend on which side is first', () => {
    const turned = handed('3L', [1.1, 1.0, 0.9], 'L');
    expect(handTest(turned)).toMatch(/on the left\.$/);
  });

  it('give no test where there is no hand, and one for polygons by going round', () => {
    expect(handTest(kindOf('1', [1, 1, 1.1]))).toBeNull();
    expect(handTest(handed('5L', [1, 1.1, 1.2, 1.3], 'L'))).toContain('1, 2, 3, 4');
    expect([left, right, kindOf('1', [1, 1, 1])].map(handWords)).toEqual([
      'left hand',
      'right hand',
      'no hand',
    ]);
  });

  it('say what is in stock, or that nobody counted', () => {
    expect(stockWords({ ...left, good: 3, repair: 1, scrap: 2 })).toBe(
      '3 good, 1 to mend, 2 scrap',
    );
    expect(stockWords(kindOf('1', [1, 1, 1]))).toBe('not counted');
  });
});

describe('sheets of kind cards', () => {
  const sets = [
    { name: '(4,0)', kinds: standing(net(4, 0), -0.25).kinds },
    { name: '(3,1)', kinds: standing(net(3, 1), -0.25).kinds },
    { name: '(6,0)', kinds: standing(net(6, 0), 0).kinds },
    { name: 'odd shapes and names', kinds: odd },
  ];

  it.each(sets)('of $name parse, and no words overlap or leave the sheet', ({ kinds }) => {
    const holes = kinds.map((kind) => kind.sides.map((side) => Math.round(side * 9)));
    for (const lengths of ['metric', 'inch'] as const)
      for (const paper of ['A4', 'A3', 'Letter'] as const)
        for (const sheet of kindCardSheets(kinds, facts, { lengths, paper, holes })) {
          expect(readXml(toSvg(sheet)).name).toBe('svg');
          expect(overlaps(sheet)).toEqual([]);
          expect(outside(sheet)).toEqual([]);
          expect(smallestType(sheet)).toBeGreaterThanOrEqual(1.6);
        }
  });

  it('show every kind once, four to an A4 sheet', () => {
    const kinds = standing(net(6, 0), 0).kinds;
    const sheets = kindCardSheets(kinds, facts);
    expect(sheets.length).toBe(Math.ceil(kinds.length / 4));
    for (const kind of kinds)
      expect(sheets.flatMap(words).filter((one) => one === kind.id).length).toBe(1);
    expect(kindCardSheets([], facts)).toEqual([]);
  });

  it('draw the shapes to the scale they state', () => {
    const [sheet] = kindCardSheets([left], facts) as [Drawing];
    const scale = Number(
      words(sheet)
        .find((one) => /^1 : /.test(one))
        ?.slice(4),
    );
    const [outline] = outlinesOf(sheet) as [PathItem];
    const [a, b, c] = outline.points as [Point, Point, Point];
    const drawn = (Math.hypot(b[0] - a[0], b[1] - a[1]) * scale) / 1000;
    expect(Math.abs(drawn - 0.9)).toBeLessThan(1e-6);
    expect(Math.abs(drawn * 1.00002 - 0.9)).toBeGreaterThan(1e-6);
    expect(b[1]).toBeCloseTo(c[1], 9);
    expect(b[0]).toBeLessThan(c[0]);
  });

  it('give each length in both units, the chosen one first', () => {
    const [metric] = kindCardSheets([left], facts) as [Drawing];
    const [inch] = kindCardSheets([left], facts, { lengths: 'inch' }) as [Drawing];
    expect(words(metric)).toContain('1 · 900 mm');
    expect(words(metric)).toContain('35 7/16″');
    expect(words(inch)).toContain('1 · 35 7/16″');
    expect(words(inch)).toContain('900 mm');
  });

  it('draw as many holes as were counted and say how many', () => {
    const [sheet] = kindCardSheets([left], facts, { holes: [[8, null, 0]] }) as [Drawing];
    const small = flatItems(sheet.items).filter(
      (item) => item.type === 'circle' && item.radius < 0.6,
    );
    expect(small.length).toBe(8);
    expect(words(sheet).some((one) => one.endsWith('8 holes'))).toBe(true);
  });

  it('say so where the sides of a kind do not meet', () => {
    const [sheet] = kindCardSheets([kindOf('1', [1, 1, 3])], facts) as [Drawing];
    expect(words(sheet)).toContain('these sides do not meet');
  });
});
