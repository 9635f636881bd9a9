import { loadsSection } from '../../../src/loads/schema.ts';
import { gearSection } from '../../../src/raise/gear.ts';
import { plainBrief, planRaising } from '../../../src/raise/order/raise.ts';
import type { RaisedShell } from '../../../src/raise/raised/raised.ts';
import { coursesOf } from '../../../src/shell/courses.ts';
import { nothingKnown, stageModel } from '../../../src/stages/model.ts';
import { takeoffSection } from '../../../src/takeoff/schema.ts';
import { above, ball } from '../../takeoff/ball.ts';

const { shell, kinds } = above(ball(3), 0.1);
const { numbers, course, position } = coursesOf(shell);
const door = [...course.keys()].filter((p) => course[p] === 1 && position[p] <= 2);
const made = planRaising({ ...plainBrief(shell), openings: door }, { tries: 0 });
if (!made.ok) throw new Error(JSON.stringify(made.faults));
const loads = loadsSection.parse({ wind: { as: 'gust', speed: 20 } });
const massOf = () => ({ value: 9, sources: [] });
const model = stageModel(shell, numbers, { loads, massOf, bears: nothingKnown, directions: 4 });
if (!model.ok) throw new Error(JSON.stringify(model.faults));

const bolt = { thread: '5/16-18', length: 0.0254 };

/** A small shell with its plan, and gear of which every answer has something to tell. */
export const raised: RaisedShell = {
  shell,
  numbers,
  plan: made.value,
  kinds,
  takeoff: takeoffSection.parse({
    sides: [0.941262, 1.08958, 1.113511].map((sideLength, i) => ({
      sideLength,
      holes: 8 + i,
      ...bolt,
    })),
    plates: { bolt },
  }),
  holes: [],
  hardware: [{ item: 'bolt', count: 100, state: 'new', ...bolt }],
  gear: gearSection.parse({
    ladders: [{ name: 'stepladder', length: 3 }],
    inside: [{ name: 'crate', shape: { form: 'box', size: [0.4, 0.4, 0.6] }, mass: 20 }],
    powerTools: [{ name: 'driver', wattHoursPerBolt: 0.25 }],
    batteries: [{ name: 'pack', wattHours: 90, count: 2 }],
    cardAbove: 1,
  }),
  loads,
  massOf,
  flange: 0.05,
  model: model.value,
};
