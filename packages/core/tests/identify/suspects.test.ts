import { expect, test } from 'vitest';
import { firstSides } from '../../src/identify/corner-model.ts';
import { conditionsOf, fitNet } from '../../src/identify/fit.ts';
import { identify } from '../../src/identify/identify.ts';
import { sideBelief } from '../../src/identify/side-belief.ts';
import { type SuspectSide, suspectsOf } from '../../src/identify/suspects.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { RADIUS, readKinds, truthOf } from './piles.ts';

const spoilt = (kinds: readonly Kind[], k: number, i: number, by: number): Kind[] =>
  kinds.map((kind, at) =>
    at === k ? { ...kind, sides: kind.sides.map((s, j) => (j === i ? s + by : s)) } : kind,
  );
const suspects = (truth: NetShell, kinds: readonly Kind[]): SuspectSide[] => {
  const readings = sideBelief(kinds, 0);
  const fit = fitNet(readings, conditionsOf(truth.shell, firstSides(readings.sides)), RADIUS);
  if (!fit) throw new Error('no fit');
  return suspectsOf(readings, readings, fit);
};

test('readings with the errors they are said to have make next to no suspects', () => {
  const truth = truthOf(4, 0);
  let count = 0;
  for (let seed = 1; seed <= 100; seed++)
    count += suspects(truth, readKinds(truth, 1e-3, seed)).length;
  expect(count).toBeLessThanOrEqual(2);
});

test('in the true net the side that is 10 mm off is the worst suspect, seeds 1 to 40', () => {
  const truth = truthOf(4, 0);
  for (let seed = 1; seed <= 40; seed++) {
    const [k, i] = [seed % truth.kinds.length, seed % 3];
    const [worst] = suspects(truth, spoilt(readKinds(truth, 1e-3, seed), k, i, 0.01));
    expect(worst, `seed ${seed}`).toMatchObject({ kind: k, side: i });
  }
});

test('what it should read is right within its own uncertainty, seeds 1 to 200', () => {
  const truth = truthOf(4, 0);
  const length = truth.kinds[2]?.sides[1] as number;
  const offs: number[] = [];
  for (let seed = 1; seed <= 200; seed++) {
    const found = suspects(truth, spoilt(readKinds(truth, 1e-3, seed), 2, 1, 0.01));
    const own = found.find(({ kind, side }) => kind === 2 && side === 1) as SuspectSide;
    // off counts in deviations of measured − expected: the reading's own 1 mm and the rest's.
    const both = Math.abs(own.measured - own.expected) / own.off;
    offs.push((own.expected - length) / Math.sqrt(both ** 2 - 1e-6));
  }
  const mean = offs.reduce((sum, x) => sum + x, 0) / 200;
  const spread = Math.sqrt(offs.reduce((sum, x) => sum + x * x, 0) / 200);
  expect(Math.abs(mean)).toBeLessThan(4 / Math.sqrt(200));
  expect(spread).toBeGreaterThan(0.8);
  expect(spread).toBeLessThan(1.2);
});

test('through the identification: a side 10 mm off is named with what it should be', () => {
  for (const [b, c, k, i] of [
    [4, 0, 4, 2],
    [3, 1, 0, 1],
    [2, 2, 1, 0],
  ] as const) {
    const truth = truthOf(b, c);
    for (const by of [-0.01, 0.01]) {
      const kinds = spoilt(readKinds(truth, 5e-4, 6), k, i, by);
      const [shape] = identify({ kinds, groups: [] }).shapes;
      const [worst] = shape?.suspects ?? [];
      expect(worst, `(${b}, ${c})`).toMatchObject({ kind: `${k + 1}`, side: i });
      expect(worst?.measured).toBe(kinds[k]?.sides[i]);
      const expected = worst?.expected as number;
      expect(Math.abs(expected - (truth.kinds[k]?.sides[i] as number))).toBeLessThan(0.003);
      expect(Math.abs(expected - (worst?.measured as number))).toBeGreaterThan(0.007);
    }
  }
});
