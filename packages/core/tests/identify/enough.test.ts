import { expect, test } from 'vitest';
import { judge, randomTrial } from '../../bench/trials.ts';
import { identify } from '../../src/identify/identify.ts';

test('enough is only said where the truth is first or stands level with it, seeds 5001 to 5100', () => {
  let enough = 0;
  for (let seed = 5001; seed <= 5100; seed++) {
    const trial = randomTrial(seed % 2 === 0 ? 5e-4 : 1e-3, seed);
    const answer = identify({ kinds: trial.kinds, groups: [], readingSd: trial.sd });
    if (!answer.enough) continue;
    enough++;
    const [best] = answer.shapes;
    const verdict = judge(trial, answer);
    expect(verdict.right, `seed ${seed}: ${trial.name}`).toBe(true);
    const first = judge(trial, { ...answer, shapes: answer.shapes.slice(0, 1) });
    const isLevel = verdict.probability > 0.2 * (best?.probability ?? 1);
    expect(first.right || (answer.freedom?.matters === false && isLevel)).toBe(true);
  }
  expect(enough).toBeGreaterThan(30);
});
