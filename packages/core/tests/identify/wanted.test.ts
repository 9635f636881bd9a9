import { describe, expect, it } from 'vitest';
import { namedTrial } from '../../bench/trials.ts';
import { identify } from '../../src/identify/identify.ts';
import { kindsOfShape } from '../../src/identify/shape.ts';
import { turned } from '../../src/math/cyclic.ts';

/** Whether two lists of sides are one panel's, in some turn or turned over. */
const isPanel = (a: readonly number[], b: readonly number[], within: number): boolean =>
  [b, [...b].reverse()].some((other) =>
    other.some((_, by) =>
      turned(other, by).every((x, i) => Math.abs(x - (a[i] as number)) < within),
    ),
  );

/** Nets with each of their kinds missing in turn. */
const piles = (
  [
    [2, 1],
    [3, 1],
    [4, 0],
  ] as const
).flatMap(([b, c]) =>
  [1, 2].flatMap((seed) => {
    const trial = namedTrial(b, c, 5e-4, true, seed);
    return trial.kinds.map((gone) => ({
      trial,
      gone,
      kinds: trial.kinds.filter((kind) => kind !== gone),
    }));
  }),
);

describe('a pile without one of its kinds', () => {
  const answers = piles.map((pile) => ({
    ...pile,
    answer: identify({ kinds: pile.kinds, groups: [] }),
  }));
  const named = answers.filter(({ answer }) => (answer.shapes[0]?.added.length ?? 0) > 0);

  it('is whole with the sides that the missing kind must have, for three quarters of the kinds', () => {
    expect(named.length).toBeGreaterThanOrEqual(0.75 * answers.length);
  });

  it('is never given sides that the missing kind does not have (seeds 1 and 2)', () => {
    for (const { answer, gone, trial } of named) {
      const [best] = answer.shapes;
      const sides = best?.added[0]?.kind.sides ?? [];
      expect([trial.name, isPanel(sides, gone.sides, 0.006)]).toEqual([trial.name, true]);
      expect(best?.shell.kind.length).toBe(trial.truth.shell.kind.length);
    }
  });

  it('numbers the wanted kind after its own, with none in stock', () => {
    for (const { answer, kinds } of named)
      for (const shape of answer.shapes) {
        const all = kindsOfShape(shape, kinds);
        expect(all.at(kinds.length)).toMatchObject({ id: 'wanted 1', good: 0, counted: true });
        expect(shape.shell.kind).toContain(kinds.length);
        expect(Math.max(...shape.shell.kind)).toBe(kinds.length);
        expect(shape.fittedSides.length).toBe(all.length);
      }
  });

  it('is never certain of a shell that is not the right one', () => {
    for (const { answer, trial } of answers) {
      const [best, ...others] = answer.shapes;
      if (!best || others.length > 0 || best.probability < 0.9) continue;
      expect([trial.name, best.shell.kind.length]).toEqual([
        trial.name,
        trial.truth.shell.kind.length,
      ]);
    }
  });
});
