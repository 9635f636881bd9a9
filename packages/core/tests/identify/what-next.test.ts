import { expect, test } from 'vitest';
import { identify } from '../../src/identify/identify.ts';
import { sum } from '../../src/identify/information.ts';
import { netBelief, sharpenedBy, tapeAt } from '../../src/identify/net-belief.ts';
import { SEAM_PLAY } from '../../src/identify/play.ts';
import type { Identification, NextReading, Shape } from '../../src/identify/shape.ts';
import { withWhatNext } from '../../src/identify/what-next.ts';
import { seededRandom } from '../../src/math/random.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { movedNet } from '../../src/nets/moved.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { RADIUS, readKinds, truthOf } from './piles.ts';

const ask = (kinds: readonly Kind[]): Identification => identify({ kinds, groups: [] });

const counted = (kinds: readonly Kind[], good: readonly number[]): Kind[] =>
  kinds.map((kind, k) => ({ ...kind, good: good[k] as number, counted: true }));

const countsOf = ({ kinds }: ReturnType<typeof truthOf>) => kinds.map(({ count }) => count);

test('every outcome gives each shape and none of them a probability; together 1', () => {
  for (const [b, c] of [
    [2, 0],
    [4, 0],
    [3, 1],
  ] as const) {
    const { next, shapes } = ask(readKinds(truthOf(b, c), 1e-3, 2));
    for (const { outcomes, bits, words } of next) {
      expect(bits).toBeGreaterThan(0);
      expect(words).not.toContain('undefined');
      for (const { shapes: odds } of outcomes) {
        expect(odds).toHaveLength(shapes.length + 1);
        expect(sum(odds)).toBeCloseTo(1, 6);
      }
      const found = outcomes.flatMap(({ probability }) => probability ?? []);
      if (found.length > 0) expect(sum(found)).toBeCloseTo(1, 6);
    }
  }
});

test('what one finds leaves the shapes on average as probable as they are', () => {
  const { next, shapes } = ask(readKinds(truthOf(4, 0), 5e-4, 3));
  const looks = next.filter(({ act, about }) => act === 'look' && about === 'shape');
  expect(looks.length).toBeGreaterThan(0);
  for (const { outcomes } of looks)
    shapes.forEach(({ probability }, i) => {
      const after = sum(outcomes.map((o) => (o.probability as number) * (o.shapes[i] as number)));
      expect(after).toBeCloseTo(probability, 6);
    });
});

test('twins of the same panels are told by a look, for no reading of a side tells them', () => {
  const { next, shapes, enough, freedom } = ask(readKinds(truthOf(2, 0), 5e-4, 1));
  expect(shapes).toHaveLength(2);
  const [first] = next;
  expect(first?.act).toBe('look');
  expect(first?.bits).toBeGreaterThan(0.9);
  expect(next.some(({ act, about }) => act === 'read' && about === 'shape')).toBe(false);
  const settled = first?.outcomes.find(({ run }) => run);
  const group = { around: settled?.run as string[], closed: true, count: 1 };
  const told = identify({ kinds: readKinds(truthOf(2, 0), 5e-4, 1), groups: [group] });
  expect(told.shapes[0]?.probability).toBeGreaterThan(0.9);
  // Whichever it is, the same panels make it.
  expect(freedom?.matters).toBe(false);
  expect(enough).toBe(true);
});

test('what is free is told: two nets that differ around ten of 42 hubs, and what is settled', () => {
  const { freedom } = ask(readKinds(truthOf(2, 0), 5e-4, 1));
  const [net] = freedom?.free ?? [];
  expect(net).toMatchObject({ what: 'net', shapes: [0, 1], hubs: 10, atLeast: false });
  expect(net?.words).toContain('2 nets of the same panels');
  expect(freedom?.settled.some((words) => words.includes('80 panels of 2 kinds'))).toBe(true);
  expect(freedom?.settled.some((words) => words.includes('32 of 42 hubs'))).toBe(true);
});

test('kinds that stand for one another are told with what that costs', () => {
  const random = seededRandom(1);
  const named = namedNet({ solid: 'icosahedron', b: 2, c: 2, division: 'equal chords' });
  const net = movedNet(named, { solid: 'icosahedron', fraction: 0.001, random });
  const { freedom, shapes } = ask(readKinds(shellOfNet(net, RADIUS), 1e-3, 1));
  const kinds = freedom?.free.filter(({ what }) => what === 'kinds') ?? [];
  expect(kinds.length).toBe(shapes[0]?.interchangeable.length);
  expect(kinds.length).toBeGreaterThan(0);
  for (const one of kinds) expect(one.matters).toBe(one.what === 'kinds' && one.cost > SEAM_PLAY);
});

test('a side that is 15 mm wrong is the first to be measured again', () => {
  for (const seed of [1, 2, 3]) {
    const kinds = readKinds(truthOf(3, 1), 5e-4, seed);
    const wrong = kinds[2] as Kind;
    const sides = wrong.sides.map((x, i) => (i === 1 ? x + 0.015 : x));
    const pile = kinds.map((kind) => (kind === wrong ? { ...wrong, sides } : kind));
    const { next, enough } = ask(pile);
    expect(enough).toBe(false);
    const [first] = next as [NextReading];
    expect([first.act, first.about, first.kind, first.side]).toEqual(['read', 'shape', '3', 1]);
    const lengths = first.outcomes.map(({ length }) => length as number);
    const near = (x: number) => lengths.some((length) => Math.abs(length - x) < 0.002);
    expect(near(truthOf(3, 1).kinds[2]?.sides[1] as number)).toBe(true);
    expect(near(sides[1] as number)).toBe(true);
  }
});

test('where nobody counted, counting is asked for with what the shape takes; where all did, not', () => {
  const truth = truthOf(3, 0);
  const kinds = readKinds(truth, 5e-4, 1);
  const count = ask(kinds).next.find(({ act }) => act === 'count');
  expect(count?.words).toContain('60');
  expect(ask(counted(kinds, countsOf(truth))).next.some(({ act }) => act === 'count')).toBe(false);
});

test('enough is measured where one net of fine readings stands alone; not where readings are rough', () => {
  const truth = truthOf(3, 1);
  const fine = ask(counted(readKinds(truth, 3e-4, 4), countsOf(truth)));
  expect(fine.enough).toBe(true);
  expect(fine.next).toEqual([]);
  const rough = ask(counted(readKinds(truth, 4e-3, 4), countsOf(truth)));
  expect(rough.enough).toBe(false);
  expect(rough.next.length).toBeGreaterThan(0);
});

test('where nothing closes, the panel that is missing is asked for', () => {
  const truth = truthOf(3, 1);
  const kinds = readKinds(truth, 5e-4, 1).slice(0, 3);
  const { next, shapes, enough } = ask(kinds);
  expect(shapes).toEqual([]);
  expect(enough).toBe(false);
  expect(next[0]?.act).toBe('read');
  expect(next[0]?.words).toContain('look for');
});

const bestNet = (kinds: readonly Kind[]) => {
  const question = { kinds, groups: [] };
  const [shape] = identify(question).shapes as [Shape];
  return { shape, net: netBelief(shape, question) as NonNullable<ReturnType<typeof netBelief>> };
};

test('the belief of a shape is that of its fit: the same deviation of the radius', () => {
  const { shape, net } = bestNet(readKinds(truthOf(3, 1), 1e-3, 7));
  const { size, covariance } = net.belief;
  const sd = (shape.radius / 2) * Math.sqrt(covariance[size * size - 1] as number);
  expect(Math.abs(sd - shape.radiusSd)).toBeLessThan(1e-3 * shape.radiusSd);
  expect(Math.abs(1.01 * sd - shape.radiusSd)).toBeGreaterThan(1e-3 * shape.radiusSd);
});

test('a reading sharpens as the fit with that reading is sharper', () => {
  const sd = 1e-3;
  const kinds = readKinds(truthOf(3, 1), sd, 7);
  const { shape, net } = bestNet(kinds);
  const { after } = sharpenedBy(net, 1, 2, sd ** 2);
  const read = kinds.map((kind, k) => ({
    ...kind,
    sideSds: kind.sideSds.map((own, i) => (k === 1 && i === 2 ? own / Math.SQRT2 : own)),
  }));
  const { shape: sharper } = bestNet(read);
  expect(Math.sqrt(after.radius)).toBeCloseTo(sharper.radiusSd, 6);
  expect(sharper.radiusSd).toBeLessThan(shape.radiusSd);
});

test('what the tape would show has the truth within its deviations: chi-square of 300 sides, seeds 1–5', () => {
  let [chi2, sides] = [0, 0];
  for (let seed = 1; seed <= 5; seed++) {
    const truth = truthOf(4, 2);
    const { net } = bestNet(readKinds(truth, 1e-3, seed));
    truth.kinds.forEach((kind, k) => {
      kind.sides.forEach((x, side) => {
        const { mean, variance } = tapeAt(net, k, side) as { mean: number; variance: number };
        chi2 += (x - mean) ** 2 / variance;
        sides++;
      });
    });
  }
  expect(chi2 / sides).toBeGreaterThan(0.6);
  expect(chi2 / sides).toBeLessThan(1.5);
});

test('nothing is added to an answer twice: what is asked stays the same', () => {
  const kinds = readKinds(truthOf(4, 0), 1e-3, 2);
  const question = { kinds, groups: [] };
  const once = identify(question);
  expect(withWhatNext(question, { ...once, next: [] })).toEqual(once);
});
