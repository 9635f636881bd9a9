import { describe, expect, it } from 'vitest';
import { arrangements } from '../../../src/arrange/arrangements.ts';
import { bestSplit, secondShells } from '../../../src/arrange/second/second-shell.ts';
import { seededRandom } from '../../../src/math/random.ts';
import type { Kind } from '../../../src/pile/kind.ts';
import { icosahedral, pileKinds } from '../../shell/fixtures.ts';

const net = icosahedral(3, 0);
const kinds = pileKinds(net);
const needOf = (places: Iterable<number>): number[] => {
  const need = kinds.map(() => 0);
  for (const p of places)
    need[net.shell.kind[p] as number] = (need[net.shell.kind[p] as number] as number) + 1;
  return need;
};

describe('the second shell', () => {
  it('of all panels is the tallest shell there is, with nothing lacking', () => {
    const [cap] = secondShells(
      net.shell,
      kinds,
      kinds.map(({ good }) => good),
    );
    const tallest = Math.max(
      ...arrangements(net.shell, kinds).arrangements.map((a) => a.cut.height),
    );
    expect(cap).toMatchObject({ what: 'cap', lacks: 0, lacking: [] });
    expect(cap?.height).toBeCloseTo(tallest, 9);
  });

  it('needs no more than is left, or as many more as it says (seeds 1 to 10)', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const random = seededRandom(seed);
      const left = kinds.map(({ good }) => random.below(good));
      for (const one of secondShells(net.shell, kinds, left)) {
        const lacks = needOf(one.places).map((n, k) => Math.max(0, n - (left[k] as number)));
        expect(lacks.reduce((a, b) => a + b, 0)).toBe(one.lacks);
        expect(one.lacking).toEqual(
          lacks.flatMap((n, k) => (n > 0 ? [{ kinds: (kinds[k] as Kind).id, panels: n }] : [])),
        );
      }
    }
  });

  it('with a panel more is only told where it is taller than with fewer', () => {
    const random = seededRandom(11);
    const left = kinds.map(({ good }) => random.below(good));
    for (const what of ['cap', 'ring']) {
      const list = secondShells(net.shell, kinds, left).filter((one) => one.what === what);
      for (const one of list)
        for (const other of list)
          if (other.lacks < one.lacks) expect(one.height).toBeGreaterThan(other.height);
    }
  });

  it('may be a ring, whose places are a band round the axis', () => {
    const rings = secondShells(
      net.shell,
      kinds,
      kinds.map(({ good }) => good),
    ).filter(({ what }) => what === 'ring');
    expect(rings.length).toBeGreaterThan(0);
    for (const { places, cut } of rings) {
      expect(places.length).toBeLessThan(cut.places.length);
      expect([...places].every((p) => cut.places.includes(p))).toBe(true);
    }
  });

  it('is none where nothing is left', () => {
    expect(
      secondShells(
        net.shell,
        kinds,
        kinds.map(() => 0),
      ),
    ).toEqual([]);
  });
});

describe('two shells out of one heap', () => {
  it('are the best pair by trying every pair (seeds 1 to 8)', () => {
    const { arrangements: all } = arrangements(net.shell, kinds, { most: 2000 });
    const needs = all.map(({ cut }) => needOf(cut.places));
    for (let seed = 1; seed <= 8; seed++) {
      const random = seededRandom(seed);
      const stock = kinds.map(({ good }) => good - random.below(Math.ceil(good / 2)));
      let best = [0, 0];
      all.forEach((a, i) => {
        all.forEach((b, j) => {
          const enough = stock.every((n, k) => (needs[i]?.[k] ?? 0) + (needs[j]?.[k] ?? 0) <= n);
          const [low, high] = [a.cut.rise, b.cut.rise].sort((x, y) => x - y) as [number, number];
          if (!enough || low < (best[0] as number)) return;
          if (low > (best[0] as number) || high > (best[1] as number)) best = [low, high];
        });
      });
      const split = bestSplit(net.shell, kinds, stock);
      const rises = split?.cuts.map((cut) => cut.rise).sort((x, y) => x - y) ?? [0, 0];
      expect([seed, ...rises.map((x) => x.toFixed(9))]).toEqual([
        seed,
        ...best.map((x) => x.toFixed(9)),
      ]);
    }
  });
});
