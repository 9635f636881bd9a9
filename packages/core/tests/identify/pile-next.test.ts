// What to do at the pile before any shape is known: from the first panels on.

import { expect, test } from 'vitest';
import { nextAtPile, type PileSoFar } from '../../src/identify/pile-next.ts';
import { seededRandom } from '../../src/math/random.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindsOfPile } from '../../src/pile/kinds.ts';
import { pileOf } from '../pile/heap.ts';
import { kindWith, truthOf } from './piles.ts';

const SD = 1e-3;

/** Readings of panels of a net's kinds (by index), each with its own tag. */
function readings(kinds: readonly number[], seed: number, extra: object = {}) {
  const random = seededRandom(seed);
  const truth = truthOf(3, 1);
  return kinds.map((k, i) => {
    const { sides } = truth.kinds[k] as (typeof truth.kinds)[number];
    const read = sides.map((x) => x + SD * random.normal());
    return { tag: `P${i + 1}`, sides: read, seenFrom: 'outside', ...extra };
  });
}

const worked = (pile: object) => kindsOfPile(pileOf({ readingSd: SD, ...pile }));

const nothing: PileSoFar = {
  kinds: [],
  assigned: [],
  suspects: [],
  slips: [],
  maybeOne: [],
  maybeTwo: [],
  tooFew: [],
  people: [],
  miscounts: [],
  noise: { used: SD },
};

test('nothing is asked of a pile of which nobody has measured anything', () => {
  expect(nextAtPile(nothing)).toEqual([]);
});

test('from the first panel on another one is wanted: one with a side that its own meet', () => {
  for (const count of [1, 2, 3]) {
    const pile = worked({ readings: readings([0, 1, 2].slice(0, count), 1) });
    const [first] = nextAtPile(pile);
    expect(first?.why).toMatch(/neighbour|new kind/);
    expect(first?.bits).toBeGreaterThan(5);
    expect(first?.act).toBe('read');
  }
});

test('the panel beside is asked for by the length that its side must have', () => {
  const kinds = [kindWith('1', [1, 1, 1.2], SD), kindWith('2', [1.2, 1.3, 1.3], SD)];
  const lone = { ...nothing, kinds: [...kinds, kindWith('3', [1, 1.3, 1.45], SD)] };
  const [first] = nextAtPile(lone, { allowance: 0.02 });
  expect(first).toMatchObject({ why: 'neighbour', kinds: ['3'], side: 2 });
  expect(first?.lengths[0]).toBeCloseTo(1.43, 9);
  expect(first?.words).toContain('1430 mm');
});

test('where the search stuck comes first, by its own length', () => {
  const kinds = [kindWith('1', [1, 1, 1.2], SD), kindWith('2', [1, 1.2, 1.3], SD)];
  const stuck = [{ kind: '1', side: 2, length: 1.2, panel: 3 }];
  const [first] = nextAtPile({ ...nothing, kinds }, { stuck });
  expect(first).toMatchObject({ why: 'stuck', kinds: ['1'], side: 2 });
});

test('once all kinds were read several times no new panel is asked for', () => {
  const pile = worked({ readings: readings([0, 1, 2, 3, 4, 0, 1, 2, 3, 4, 0, 1, 2, 3, 4], 2) });
  expect(pile.kinds).toHaveLength(5);
  const whys = nextAtPile(pile, { most: 20 }).map(({ why }) => why);
  expect(whys).not.toContain('new kind');
  expect(whys).not.toContain('neighbour');
  expect(whys).not.toContain('one reading');
});

test('of kinds the one that rests on a single reading is to be read again, not the others', () => {
  const pile = worked({ readings: readings([0, 1, 2, 3, 4, 0, 1, 2, 3], 2) });
  const single = nextAtPile(pile, { most: 20 }).filter(({ why }) => why === 'one reading');
  expect(single).toHaveLength(1);
  const row = pile.assigned.find(({ kind }) => kind === single[0]?.kinds[0])?.reading;
  expect(row).toBe(4);
  expect(single[0]?.row).toBe(4);
});

test('the chance of a new kind falls as kinds are met again, and what it tells with it', () => {
  const bits = [
    [0, 1, 2, 3],
    [0, 1, 2, 3, 0, 1],
    [0, 1, 2, 3, 0, 1, 2],
  ].map((kinds) => {
    const next = nextAtPile(worked({ readings: readings(kinds, 3) }), { most: 20 });
    return next.find(({ why }) => why === 'neighbour' || why === 'new kind')?.bits ?? 0;
  });
  expect(bits[0]).toBeGreaterThan(bits[1] as number);
  expect(bits[1]).toBeGreaterThan(bits[2] as number);
});

test('a side that stands off is measured again: as written, and what the others say', () => {
  const rows = readings(
    Array.from({ length: 30 }, (_, i) => i % 5),
    4,
  );
  const wrong = rows[6] as (typeof rows)[number];
  wrong.sides = wrong.sides.map((x, i) => (i === 1 ? x + 0.012 : x));
  const pile = worked({ readings: rows });
  const found = nextAtPile(pile, { most: 20 }).filter(({ row }) => row === 6);
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({ side: 1, act: 'read' });
  const [measured, expected] = (found[0]?.lengths ?? []) as number[];
  expect(measured).toBe(wrong.sides[1]);
  expect(Math.abs((measured as number) - (expected as number) - 0.012)).toBeLessThan(0.004);
  expect(Math.abs((measured as number) - (expected as number) + 0.03)).toBeGreaterThan(0.004);
});

test('two people who share no panel are asked to measure one', () => {
  const pile = worked({
    readings: [
      ...readings([0, 1, 2], 5, { by: 'Ada' }),
      ...readings([3, 4], 6, { by: 'Ben' }).map((row, i) => ({ ...row, tag: `Q${i}` })),
    ],
  });
  const tapes = nextAtPile(pile, { most: 20 }).find(({ why }) => why === 'tapes');
  expect(tapes?.people).toEqual(['Ada', 'Ben']);
});

test('two kinds that may be one: the side that differs most, and more to learn where it is in doubt', () => {
  const pair = (off: number): PileSoFar => ({
    ...nothing,
    kinds: [kindWith('1', [1, 1.1, 1.2], SD), kindWith('2', [1, 1.1, 1.2 + off], SD)],
    maybeOne: [{ kinds: ['1', '2'], difference: off, z: 1 }],
  });
  const bitsAt = (off: number): number =>
    nextAtPile(pair(off), { most: 20 }).find(({ why }) => why === 'maybe one')?.bits ?? 0;
  const found = nextAtPile(pair(0.004), { most: 20 }).find(({ why }) => why === 'maybe one');
  expect(found?.side).toBe(2);
  expect(bitsAt(0.004)).toBeGreaterThan(0.2);
  expect(bitsAt(0.0005)).toBe(0);
  expect(bitsAt(0.01)).toBe(0);
});

test('a face that nobody noted is one bit', () => {
  const pile = worked({
    readings: [...readings([3], 7), ...readings([3], 8, { seenFrom: 'unknown', tag: 'U' })],
  });
  const faces = nextAtPile(pile, { most: 20 }).filter(({ why }) => why === 'face');
  for (const { bits, act } of faces) {
    expect(bits).toBe(1);
    expect(act).toBe('look');
  }
  expect(pile.tooFew.filter(({ why }) => why === 'face unknown')).toHaveLength(faces.length);
});

test('counts are asked for last', () => {
  const kinds: Kind[] = [kindWith('1', [1, 1, 1], SD), kindWith('2', [1, 1, 1.2], SD)];
  const next = nextAtPile({ ...nothing, kinds }, { most: 20 });
  expect(next.at(-1)).toMatchObject({ act: 'count', why: 'uncounted', kinds: ['1', '2'] });
});

test('fast enough for every keystroke: 700 readings', () => {
  const kinds = Array.from({ length: 700 }, (_, i) => i % 5);
  const pile = worked({ readings: readings(kinds, 9) });
  const start = performance.now();
  nextAtPile(pile);
  expect(performance.now() - start).toBeLessThan(50);
});
