import { describe, expect, it } from 'vitest';
import { namedTrial, type Trial } from '../../bench/trials.ts';
import { namedKindsWanted } from '../../src/identify/named-kinds.ts';
import { turned } from '../../src/math/cyclic.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindWith } from './piles.ts';

const SD = 1e-3;
const always = (): boolean => true;

/** The true sides of a kind of a trial. */
function truthOf({ truth, kinds, source }: Trial, kind: Kind): readonly number[] {
  return truth.kinds[source[kinds.indexOf(kind)] as number]?.sides ?? [];
}

const isPanel = (a: readonly number[], b: readonly number[], within: number): boolean =>
  b.some((_, by) => turned(b, by).every((x, i) => Math.abs(x - (a[i] as number)) < within));

describe('kinds that lack to be those of a named net', () => {
  const trials = (
    [
      [5, 0],
      [4, 1],
      [4, 2],
      [6, 0],
    ] as const
  ).map(([b, c]) => namedTrial(b, c, SD, false, 1));

  it('are found, each left out in turn, with 1 mm a reading', () => {
    for (const trial of trials)
      for (const gone of trial.kinds) {
        const wanted = namedKindsWanted(
          trial.kinds.filter((kind) => kind !== gone),
          always,
        );
        const sides = wanted?.kinds.map((kind) => kind.sides) ?? [];
        expect([trial.name, sides.length]).toEqual([trial.name, 1]);
        // A kind that differs by less than readings do from another may stand for it.
        const truths = trial.truth.kinds.map((kind) => kind.sides);
        expect(truths.some((truth) => isPanel(sides[0] as number[], truth, 1.5e-3))).toBe(true);
        expect(isPanel(sides[0] as number[], truthOf(trial, gone), 6e-3)).toBe(true);
      }
  });

  it('are found three at a time', () => {
    const trial = trials[0] as Trial;
    const wanted = namedKindsWanted(trial.kinds.slice(3), always);
    expect(wanted?.kinds.length).toBe(3);
    for (const gone of trial.kinds.slice(0, 3))
      expect(wanted?.kinds.some(({ sides }) => isPanel(sides, truthOf(trial, gone), 2e-3))).toBe(
        true,
      );
  });

  it('are not told where none lacks, where few are there, or where one side is 10 mm off', () => {
    const { kinds } = trials[0] as Trial;
    expect(namedKindsWanted(kinds, always)).toBeNull();
    expect(namedKindsWanted(kinds.slice(0, 3), always)).toBeNull();
    const [first, ...rest] = kinds.slice(1) as [Kind, ...Kind[]];
    const off = first.sides.map((x, i) => (i === 0 ? x + 0.01 : x));
    expect(namedKindsWanted([first, ...rest], always)).not.toBeNull();
    expect(namedKindsWanted([kindWith('off', off, SD), ...rest], always)).toBeNull();
  });

  it('are looked for no further once told to stop', () => {
    let asked = 0;
    const { kinds } = trials[0] as Trial;
    expect(namedKindsWanted(kinds.slice(1), () => ++asked < 3)).toBeNull();
    expect(asked).toBe(3);
  });
});
