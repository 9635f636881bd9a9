import { expect, it } from 'vitest';
import { judge, namedTrial } from '../../bench/trials.ts';
import { identify } from '../../src/identify/identify.ts';

it('eight frequencies, 1,280 places, are not given up as too many (seeds 1 and 2)', () => {
  for (const seed of [1, 2]) {
    const trial = namedTrial(8, 0, 5e-4, false, seed);
    const answer = identify({ kinds: trial.kinds, groups: [] });
    expect([seed, judge(trial, answer).right]).toEqual([seed, true]);
  }
});
