import { describe, expect, it } from 'vitest';
import type { RaisingStage } from '../../src/raise/plan.ts';
import { stageAtWork, stageProgress } from '../../src/raise/recorded-stage.ts';
import { recordState } from '../../src/record/state.ts';
import { phone, placed, plan, seam } from '../record/fixtures.ts';

const site = plan();
/** Two stages of two panels each; the second makes the first seam snug. */
const stages = [
  { number: 1, pieces: [[0], [1]], pass: { finger: [0], snug: [], final: [] } },
  { number: 2, pieces: [[2, 3]], pass: { finger: [1], snug: [0], final: [] } },
] as unknown as RaisingStage[];
const far = (ada: ReturnType<typeof phone>) =>
  stageProgress({ stages }, recordState(ada.log, site));

describe('how far the stages are', () => {
  it('counts panels in place, and seams that are less tight than the stage leaves them', () => {
    const ada = phone('Ada');
    ada.say(placed(site.places[0]!));
    expect(far(ada)).toMatchObject([
      { up: 1, of: 2, waiting: [1], loose: [0], done: false },
      { up: 0, of: 2, waiting: [2, 3], loose: [1, 0] },
    ]);
    ada.say(placed(site.places[1]!));
    ada.say(seam(site.seams[0]!, 'snug'));
    expect(far(ada)).toMatchObject([
      { up: 2, waiting: [], loose: [] },
      { up: 0, loose: [1] },
    ]);
  });

  it('is at the first stage that nobody said is done, whatever stands', () => {
    const ada = phone('Ada');
    const at = (): number | undefined =>
      stageAtWork({ stages }, recordState(ada.log, site))?.number;
    expect(at()).toBe(1);
    ada.say({ kind: 'stage done', stage: 1, done: true });
    expect([at(), far(ada)[0]?.done]).toEqual([2, true]);
    ada.say({ kind: 'stage done', stage: 2, done: true });
    expect(at()).toBeUndefined();
    ada.say({ kind: 'stage done', stage: 1, done: false });
    expect(at()).toBe(1);
  });
});
