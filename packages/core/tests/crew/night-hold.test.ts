// Every planned evening ends at a stop point, and says what was held back for it.

import { describe, expect, test } from 'vitest';
import { compilePlan } from '../../src/crew/compile.ts';
import { heldAt, heldBack } from '../../src/crew/night-hold.ts';
import { nowPlan } from '../../src/crew/now.ts';
import { type CrewPlan, crewPlan, LOOK } from '../../src/crew/plan.ts';
import type { CrewSettings } from '../../src/crew/schema.ts';
import { type SerialSchedule, searchSchedule } from '../../src/crew/search.ts';
import { type Task, taskOf } from '../../src/crew/task.ts';
import { seededRandom } from '../../src/math/random.ts';
import { halfBall } from './raised.ts';
import { stages, weekend } from './weekend.ts';

/** Stages whose lifts want the same hands as the bolts of those before them. */
function crowded(seed: number): Task[] {
  const random = seededRandom(seed);
  const minutes = (least: number, most: number) => {
    const likely = 60 * Math.round(least + (most - least) * random.uniform());
    return { low: likely, likely, high: likely };
  };
  const tasks: Task[] = [];
  let before: string[] = [];
  for (let s = 1; s <= 10; s++) {
    const lifts = 1 + random.below(3);
    const bolts: string[] = [];
    for (let p = 1; p <= lifts; p++) {
      const id = `lift ${s}.${p}`;
      const after = before;
      tasks.push(taskOf({ id, after, duration: minutes(10, 40), people: 3, commits: true }));
      before = [id];
      bolts.push(`bolts ${s}.${p}`);
      tasks.push(
        taskOf({
          id: `bolts ${s}.${p}`,
          after: [id],
          duration: minutes(60, 180),
          people: 2,
          priority: -1,
          pauses: true,
        }),
      );
    }
    const stopPoint = { allowedGust: 20, closeDown: 900, hands: 2 };
    tasks.push(
      taskOf({ id: `stage ${s}`, after: [...before, ...bolts], duration: 0, people: 0, stopPoint }),
    );
    before = [`stage ${s}`];
  }
  // Work of no stage that takes hands away from all of them.
  for (let i = 0; i < 10; i++)
    tasks.push(taskOf({ id: `yard ${i}`, duration: minutes(60, 240), people: 4, pauses: true }));
  return tasks;
}

const crew = weekend({ noShow: 0 });
const planOf = (tasks: Task[], over: CrewSettings = crew): CrewPlan => {
  const read = crewPlan({ tasks, crew: over, gear: {}, seed: 1, tries: 6 });
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.value;
};
/** The schedule by the estimates alone. */
function unheld(tasks: Task[]): { compiled: CrewPlan['compiled']; schedule: SerialSchedule } {
  const compiled = compilePlan(tasks, crew, {});
  const priority = tasks.map((task) => task.priority);
  const options = { seed: 1, tries: 6, look: LOOK, bound: 0 };
  return {
    compiled,
    schedule: searchSchedule(compiled.serial, compiled.calendar, priority, options),
  };
}

describe('the night rule', () => {
  test('ends every planned evening at a stop point, seeds 1 to 6, where estimates alone do not', () => {
    let caught = 0;
    for (let seed = 1; seed <= 6; seed++) {
      const tasks = crowded(seed);
      const { compiled, schedule } = unheld(tasks);
      if (schedule.between.includes(1)) {
        caught++;
        expect(heldBack(compiled, schedule)).not.toBeNull();
      } else expect(heldBack(compiled, schedule)).toBeNull();
      const plan = planOf(tasks);
      expect(plan.schedule.between).not.toContain(1);
      expect(plan.evenings.map(({ verdict }) => verdict)).not.toContain('between');
    }
    expect(caught).toBeGreaterThan(2);
  });

  test('says what it held back, from when, and the least change that helps', () => {
    const tasks = stages(2, 12, { duration: { low: 2400, likely: 2400, high: 2400 } });
    const plan = planOf(tasks, weekend({ noShow: 0, dates: ['2026-06-12'] }));
    const [evening] = plan.evenings;
    const held = heldAt(plan.compiled, plan.schedule, 0);
    expect(held?.missing).toBeGreaterThan(0);
    expect(evening?.verdict).toBe('nothing stands');
    expect(evening?.words).toMatch(
      /no further panel is begun: 1-12 would not surely be reached by dark, and nothing started is safer/,
    );
    expect(evening?.words).toMatch(
      /Least change that helps: \d+ min more on this day, begun by 07:\d\d/,
    );
  });

  test('holds nothing back where all is done', () => {
    const plan = planOf(stages(1, 3));
    expect(plan.evenings[2]?.words).not.toContain('no further panel');
    expect(heldAt(plan.compiled, plan.schedule, 2)).toBeNull();
  });
});

describe('an evening of a day that sets out from what stands', () => {
  const facts = halfBall();
  const asked = (stage: number, lifts: number) => {
    const here = {
      ...{ date: '2026-06-12', time: '21:50', people: 6, climb: 3, lead: 1 },
      ...{ lightHours: null, gust: 3, stage, lifts },
    };
    const read = nowPlan({ ...facts, here }, { runs: 50, tries: 4 });
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    return read.value.weekend.days[0]?.evening;
  };
  const stop = facts.plan.stages.find(
    ({ stopPoint, number }) => stopPoint && (facts.plan.stages[number]?.lifts.length ?? 0) > 2,
  );
  if (!stop) throw new Error('no stop point before a stage of several lifts');
  test('is that of the stage that is done where no further one is reached', () => {
    expect(asked(stop.number, 0)).toMatchObject({ stage: stop.number, allowedGust: 18 });
  });
  test('is caught between two where lifts of the next are up', () => {
    const evening = asked(stop.number, 1);
    expect(evening?.verdict).toBe('between');
    expect(evening?.words).toContain('take it down to the last');
  });
});
