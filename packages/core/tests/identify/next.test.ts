import { expect, test } from 'vitest';
import { namedTrial, randomTrial } from '../../bench/trials.ts';
import { starRuns } from '../../src/identify/groups.ts';
import { identify } from '../../src/identify/identify.ts';
import { netBelief } from '../../src/identify/net-belief.ts';
import { readingsBetween } from '../../src/identify/next-between.ts';
import type { Identification, ShapeQuestion } from '../../src/identify/shape.ts';
import { withWhatNext } from '../../src/identify/what-next.ts';

const ask = (question: ShapeQuestion): Identification => identify(question);

test('the look for a hub that comes first among twins settles which it is', () => {
  const { kinds } = namedTrial(4, 0, 5e-4, true, 3);
  const answer = ask({ kinds, groups: [] });
  expect(answer.shapes.length).toBeGreaterThan(1);
  const look = answer.next.find(({ act, about }) => act === 'look' && about === 'shape');
  if (!look) throw new Error('no look');
  expect(look.bits).toBeGreaterThan(0.5);
  for (const { run, shapes } of look.outcomes) {
    if (!run) continue;
    const likely = shapes.slice(0, -1).flatMap((p, i) => (p > 0.01 ? [i] : []));
    const index = run.map((id) => kinds.findIndex((kind) => kind.id === id));
    const own = kinds.map((_, k) => k);
    const has = (i: number): boolean =>
      starRuns(answer.shapes[i]?.shell as never, own).some(
        (all) =>
          all.length === index.length &&
          all.some((_, by) => index.every((k, j) => all[(by + j) % all.length] === k)),
      );
    expect(likely.some(has)).toBe(true);
  }
});

test('every find’s probabilities add up to 1 and bits come within the entropy, seeds 7001 to 7010', () => {
  for (let seed = 7001; seed <= 7010; seed++) {
    const { kinds, sd } = randomTrial(1e-3, seed);
    const { next, shapes } = ask({ kinds, groups: [], readingSd: sd });
    for (const { about, bits, outcomes } of next) {
      if (about === 'shape') expect(bits).toBeLessThanOrEqual(Math.log2(shapes.length + 1));
      for (const one of outcomes)
        expect(one.shapes.reduce((sum, p) => sum + p, 0)).toBeCloseTo(1, 6);
    }
  }
});

test('a reading decides between two shapes where they make a side differ, and not where they agree', () => {
  const { kinds } = namedTrial(3, 0, 5e-4, true, 5);
  const question = { kinds, groups: [], readingSd: 5e-4 };
  const [best] = ask(question).shapes;
  if (!best) throw new Error('nothing found');
  const half = { ...best, probability: 0.5 };
  const longer = best.fittedSides.map((own, k) => own.map((x, i) => x + (k + i === 0 ? 0.006 : 0)));
  const other = { ...half, fittedSides: longer };
  const between = (shapes: readonly (typeof half)[]) =>
    readingsBetween(
      shapes,
      shapes.map((shape) => netBelief(shape, question)),
      question,
    );
  const [first] = between([half, other]);
  expect(first?.kind).toBe(kinds[0]?.id);
  expect(first?.side).toBe(0);
  expect(first?.bits).toBeGreaterThan(0.9);
  const lengths = first?.outcomes.flatMap(({ length }) => length ?? []) ?? [];
  expect(Math.max(...lengths) - Math.min(...lengths)).toBeCloseTo(0.006, 4);
  expect(between([half, half]).every(({ bits }) => bits < 0.01)).toBe(true);
});

test('a kind that nobody counted is to be counted, a counted pile is not', () => {
  const wanted = (counted: boolean): boolean => {
    const { kinds } = namedTrial(3, 0, 5e-4, counted, 4);
    return ask({ kinds, groups: [] }).next.some(({ act }) => act === 'count');
  };
  expect(wanted(false)).toBe(true);
  expect(wanted(true)).toBe(false);
});

test('what next takes at most 150 ms at 320 places', () => {
  const { kinds } = namedTrial(4, 0, 1e-3, false, 2);
  const question = { kinds, groups: [] };
  const found = ask(question);
  const times = Array.from({ length: 7 }, () => {
    const start = process.cpuUsage();
    withWhatNext(question, found);
    return process.cpuUsage(start).user / 1000;
  });
  expect(Math.min(...times)).toBeLessThan(150);
});
