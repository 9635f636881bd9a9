import { expect, test } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { distance, pointAt } from '../../src/math/vector.ts';
import { kindsOfNet, netShell, shellOfNet } from '../../src/nets/kinds.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { hubAt, kindSide, nextSide } from '../../src/shell/shell.ts';

const chords = (b: number, c: number) =>
  ({ solid: 'icosahedron', b, c, division: 'equal chords' }) as const;
const kinds = (b: number, c: number, tolerance = 1e-9) => {
  const net = namedNet(chords(b, c));
  return kindsOfNet(net.hubs, net.places, tolerance);
};
const rounds = (b: number, c: number): string[] =>
  kinds(b, c).kinds.map((kind) => `${kind.sideClasses.join('')}×${kind.count}`);

test('kinds are rounds of side classes, the smallest first, a left and right pair together', () => {
  expect(rounds(3, 0)).toEqual(['001×60', '122×120']);
  expect(rounds(4, 0)).toEqual(['002×60', '112×60', '134×60', '143×60', '445×60', '555×20']);
});

test('mirror images know each other; a kind alone of its hand has none', () => {
  expect(kinds(4, 0).kinds.map((kind) => kind.mirror)).toEqual([0, 1, 3, 2, 4, 5]);
  expect(kinds(2, 1).kinds.map((kind) => kind.mirror)).toEqual([0, null, 2]);
});

test('(2, 1) and (1, 2) have kinds of opposite hand', () => {
  expect(rounds(2, 1)).toEqual(['001×60', '123×60', '333×20']);
  expect(rounds(1, 2)).toEqual(['001×60', '132×60', '333×20']);
});

test('a coarser tolerance joins near-equal sides into one class', () => {
  expect(kinds(4, 0, 0.0005).sideClasses).toHaveLength(6);
  expect(kinds(4, 0, 0.001).sideClasses).toHaveLength(5);
  expect(kinds(4, 0, 0.001).kinds.map((kind) => kind.count)).toEqual([60, 60, 60, 60, 60, 20]);
});

test('on every side of a shell lies the side of its kind that turn says', () => {
  for (const [b, c] of [
    [4, 0],
    [3, 1],
    [2, 2],
  ] as const) {
    const { shell, kinds: list } = netShell(chords(b, c), 2.7);
    for (let side = 0; side < shell.sideHub.length; side++) {
      const from = pointAt(shell.hubs, hubAt(shell, side as SideId));
      const to = pointAt(shell.hubs, hubAt(shell, nextSide(shell, side as SideId)));
      const kind = list[shell.kind[shell.sidePlace[side] as number] as number];
      const expected = kind?.sides[kindSide(shell, side as SideId)] as number;
      expect(distance(from, to)).toBeCloseTo(expected, 12);
    }
  }
});

test('law, seed 8: the order of places and where each place starts do not matter', () => {
  const random = seededRandom(8);
  const net = namedNet(chords(3, 1));
  const plain = kindsOfNet(net.hubs, net.places, 1e-9);
  const places = random.shuffle(net.places).map((place) => {
    const start = random.below(3);
    return place.map((_, i) => place[(i + start) % 3] as number);
  });
  const mixed = kindsOfNet(net.hubs, places, 1e-9);
  expect(mixed.kinds.map((k) => [k.sideClasses, k.count])).toEqual(
    plain.kinds.map((k) => [k.sideClasses, k.count]),
  );
  places.forEach((_, p) => {
    const kind = mixed.kinds[mixed.kind[p] as number];
    const turn = mixed.turn[p] as number;
    const round = [0, 1, 2].map((i) => kind?.sideClasses[(turn + i) % 3]);
    expect(round).toEqual(mixed.sideClass[p]);
  });
});

test('kinds and counts do not depend on the unit, from 1e-9 to 1e9', () => {
  for (const radius of [1e-9, 1, 1e9]) {
    const { kinds: list } = netShell(chords(5, 0), radius);
    expect(list.map((kind) => kind.count)).toEqual([60, 60, 60, 60, 60, 60, 60, 60, 20]);
    expect(Math.min(...list.flatMap((k) => k.sides)) / radius).toBeCloseTo(0.1981474308, 10);
  }
});

test('a radius that is no length is refused', () => {
  const net = namedNet(chords(1, 0));
  for (const radius of [0, -1, Number.NaN, Infinity])
    expect(() => shellOfNet(net, radius)).toThrow('expected a positive length');
});

test('a tolerance that is no number from 0 is refused', () => {
  const { hubs, places } = namedNet({ solid: 'icosahedron', b: 1, c: 0, division: 'equal chords' });
  for (const tolerance of [Number.NaN, -1])
    expect(() => kindsOfNet(hubs, places, tolerance)).toThrow(`the tolerance is ${tolerance}`);
});
