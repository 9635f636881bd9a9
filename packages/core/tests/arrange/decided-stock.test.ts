import { describe, expect, it } from 'vitest';
import { arrangements, standingShell } from '../../src/arrange/arrangements.ts';
import {
  kindsAfter,
  leftAfter,
  leftOutOf,
  needAfter,
  openingsIn,
  stockAfter,
} from '../../src/arrange/decided-stock.ts';
import type { PlacesDecision } from '../../src/arrange/schema.ts';
import type { WayUp } from '../../src/arrange/ways-up.ts';
import { icosahedral, pileKinds } from '../shell/fixtures.ts';

// Half of a two-frequency ball, with 40 good panels of its first kind and 9 of the other.
const net = icosahedral(2, 0);
const kinds = pileKinds(net).map((kind, k) => ({
  ...kind,
  id: String(k + 1),
  good: k === 0 ? 40 : 9,
  repair: 1,
  scrap: 0,
}));
const list = arrangements(net.shell, kinds);
const [best] = list.arrangements;
if (!best) throw new Error('the ball stands nowhere');
const { stock } = best;
const { shell, courses } = standingShell(net.shell, list.waysUp[best.wayUp] as WayUp, best.cut);
const { numbers } = courses;
const placeOf = (number: string): number => numbers.indexOf(number);
const kindAt = (number: string): number => shell.kind[placeOf(number)] as number;
const placesOf = (kind: number): number => shell.kind.filter((own) => own === kind).length;
const ofKind = (kind: number): string[] => numbers.filter((_, place) => shell.kind[place] === kind);
const [first = '', second = ''] = ofKind(0);
const [other = ''] = ofKind(1);
const decision: PlacesDecision = {
  wayUp: { at: 'hub', kinds: ['1'], orbit: 0 },
  cut: { places: numbers.length, height: 2 },
  repaired: false,
  datumTurn: 0,
};

describe('openings', () => {
  it('are found by the numbers of their places, and left out together, each once', () => {
    const openings = openingsIn(numbers, {
      openings: [
        { use: 'door', places: [second, first] },
        { use: 'gap', places: [first] },
      ],
    });
    expect(openings.map(({ places }) => places.map((p) => numbers[p]))).toEqual([
      [second, first],
      [first],
    ]);
    expect(leftOutOf(openings)).toEqual([placeOf(first), placeOf(second)].sort((a, b) => a - b));
  });

  it('of which a place does not stand are none', () => {
    expect(openingsIn(numbers, { openings: [{ use: 'door', places: [first, '9-99'] }] })).toEqual(
      [],
    );
  });

  it('need no panels', () => {
    const besides = { openings: [{ use: 'door' as const, places: [first, other] }] };
    expect(needAfter(shell, kinds, numbers, besides)).toEqual([placesOf(0) - 1, placesOf(1) - 1]);
  });
});

describe('a panel that broke', () => {
  const spare = { from: null, to: first, kind: '1', turn: 0 };

  it('is scrap, and the spare that stands for it is no longer left', () => {
    const broken = [{ place: first, moves: [spare], lacks: null }];
    const before = leftAfter(shell, kinds, numbers, {});
    const after = leftAfter(shell, kinds, numbers, { broken });
    expect(after).toEqual([(before[0] as number) - 1, before[1]]);
    const [kind] = kindsAfter(shell, kinds, numbers, { broken });
    expect([kind?.good, kind?.scrap]).toEqual([39, 1]);
  });

  it('is of the kind that was moved in, where it is the second one at its place', () => {
    const moved = { from: null, to: first, kind: '2', turn: 0 };
    const broken = [
      { place: first, moves: [moved], lacks: null },
      { place: first, moves: [spare], lacks: null },
    ];
    const after = kindsAfter(shell, kinds, numbers, { broken });
    expect(after.map(({ good }) => good)).toEqual([39, 8]);
    expect(kindAt(first)).toBe(0);
  });

  it('makes a panel of another kind needed where that is moved in', () => {
    const broken = [
      { place: first, moves: [{ from: null, to: first, kind: '2', turn: 0 }], lacks: null },
    ];
    expect(needAfter(shell, kinds, numbers, { broken })).toEqual([
      placesOf(0) - 1,
      placesOf(1) + 1,
    ]);
  });
});

describe('stock against need', () => {
  it('is that of the arrangement where nothing more was decided', () => {
    expect(stockAfter(shell, kinds, [], numbers, decision)).toEqual(stock);
  });

  it('lacks what broke beyond the spares', () => {
    const all = ofKind(0);
    const broken = all
      .slice(0, 41 - placesOf(0))
      .map((place) => ({ place, moves: [], lacks: '1' }));
    const [row] = stockAfter(shell, kinds, [], numbers, { ...decision, broken });
    expect(row?.short).toBe(1);
    const [less] = stockAfter(shell, kinds, [], numbers, { ...decision, broken: broken.slice(1) });
    expect(less?.short).toBe(0);
  });
});

describe('a lesser shell that was decided on', () => {
  it('has its panels: they are not left over', () => {
    const before = leftAfter(shell, kinds, numbers, {});
    const small = {
      name: 'Tool tent',
      what: 'cap',
      wayUp: decision.wayUp,
      cut: decision.cut,
      height: 1,
      floor: 2,
    } as const;
    const seconds = [{ ...small, panels: [{ kind: '1', count: 3 }] }];
    expect(leftAfter(shell, kinds, numbers, { seconds })).toEqual([
      (before[0] as number) - 3,
      before[1],
    ]);
    // Panels that are yet to be got are nobody's to take.
    const many = [{ ...small, panels: [{ kind: '1', count: 900 }] }];
    expect(leftAfter(shell, kinds, numbers, { seconds: many })[0]).toBe(0);
  });
});
