// A small shell with its raising plan and an invented crew, for tests of weekends.

import type { RaiseFacts } from '../../src/crew/raise-task.ts';
import { gearSection } from '../../src/raise/gear.ts';
import { plainBrief, planRaising } from '../../src/raise/order/raise.ts';
import { cutBall, numbersOf } from '../stages/fixtures.ts';
import { weekend } from './weekend.ts';

/** Ladders and a platform, enough for a ball of radius 1. */
export const someGear = gearSection.parse({
  ladders: [{ name: 'stepladder', length: 3, bears: 150, count: 2 }],
  platforms: [{ name: 'trestle', height: 0.6, bears: 200 }],
});

/** What a weekend of a half ball of 40 panels is planned from, 8 kg each, with what a test changes. */
export function halfBall(over: Partial<RaiseFacts> = {}): RaiseFacts {
  const shell = cutBall(2, 40);
  const plan = planRaising(plainBrief(shell), { tries: 40 });
  if (!plan.ok) throw new Error(plan.faults.map(({ found }) => found).join());
  return {
    shell,
    numbers: numbersOf(shell),
    plan: plan.value,
    holes: () => 5,
    massOf: () => ({ value: 8, sources: [] }),
    gear: someGear,
    crew: weekend(),
    winds: plan.value.stages.map(({ number }) => ({
      stage: number,
      stopWork: 11,
      leave: 18,
      unknown: [],
      propsHold: false,
    })),
    anchors: 10,
    ...over,
  };
}
