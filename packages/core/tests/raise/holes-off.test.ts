import { describe, expect, it } from 'vitest';
import { holesOff } from '../../src/raise/holes-off.ts';
import { plainBrief, planRaising } from '../../src/raise/order/raise.ts';
import { passAfter } from '../../src/raise/plan.ts';
import { cutBall, numbersOf } from '../stages/fixtures.ts';

const shell = cutBall(3, 105);
const numbers = numbersOf(shell);
const made = planRaising(plainBrief(shell), { tries: 0 });
if (!made.ok) throw new Error('no plan');
const plan = made.value;
const question = { shell, numbers, plan, threadOf: () => 'M8' };
const places = (seam: number): number[] =>
  [0, 1].map((k) => shell.sidePlace[shell.seams[2 * seam + k] as number] as number);

describe('what to do when holes will not meet', () => {
  it('names snug seams round the piece, never its own nor one that had its final pass', () => {
    let named = 0;
    for (const stage of plan.stages)
      stage.lifts.forEach((lift, i) => {
        const { slacken } = holesOff(question, stage.number, i);
        const pass = passAfter(plan.stages, stage.number - 1, shell.seams.length / 2);
        for (const seam of slacken) {
          named++;
          expect(pass[seam]).toBe('snug');
          expect(lift.seams).not.toContain(seam);
          expect(places(seam).every((place) => stage.placed.includes(place))).toBe(true);
        }
        expect(new Set(slacken).size).toBe(slacken.length);
      });
    expect(named).toBeGreaterThan(20);
  });

  it('tells the four steps in order, with the widest hole of the bolts there', () => {
    const stage = plan.stages.at(-2);
    if (!stage) throw new Error('no stage');
    const { steps, ream, flags } = holesOff(question, stage.number, 0);
    expect(steps.map((step) => step.split(/[ :]/)[0])).toEqual([
      'Drift',
      'Slacken',
      'Ream',
      'Stop',
    ]);
    expect(ream).toEqual([{ thread: 'M8', hole: 0.01 }]);
    expect(steps[2]).toContain('no wider than 10.0 mm for M8');
    expect(steps[1]).toMatch(/\d-\d\d\/\d-\d\d/);
    expect(flags.every(({ confirmation }) => confirmation !== 'confirmed')).toBe(true);
    const inch = holesOff({ ...question, threadOf: () => '5/16-18' }, stage.number, 0);
    expect(inch.steps[2]).toContain('8.4 mm for 5/16-18');
    const unknown = holesOff({ ...question, threadOf: () => null }, stage.number, 0);
    expect(unknown.steps[2]).toContain('the free fit of the bolt');
  });

  it('is asked of a lift that there is', () => {
    expect(() => holesOff(question, 1, 999)).toThrow('there is no lift 1000 in stage 1');
  });
});
