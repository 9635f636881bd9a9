// How long planning and simulating a build takes: `npm run bench -- crew`. Ten thousand runs of a
// thousand tasks on an invented weekend, in one thread: no-shows, gusts, durations and the night rule
// drawn anew in each; the search for better priorities of the same tasks.

import type { Line } from '../../../scripts/bench-line.d.ts';
import { compilePlan } from '../src/crew/compile.ts';
import { type CrewSettings, crewSection } from '../src/crew/schema.ts';
import { searchSchedule } from '../src/crew/search.ts';
import { simulate } from '../src/crew/simulate.ts';
import { type Task, taskOf } from '../src/crew/task.ts';

/** Wanted, seconds: ten thousand runs of a thousand tasks. */
const WANTED = 3;
const DATES = ['2026-06-12', '2026-06-13', '2026-06-14'];

/** Prints what it finds. */
export function main(): readonly Line[] {
  const tasks = build(1000);
  const crew = people(24);
  let start = performance.now();
  const plan = compilePlan(tasks, crew, {});
  console.log(`${tasks.length} tasks, ${crew.people.length} people, ${crew.dates.length} days`);
  console.log(`made ready in ${took(start)} s`);
  start = performance.now();
  const schedule = searchSchedule(
    plan.serial,
    plan.calendar,
    tasks.map(({ priority }) => priority),
    { seed: 1, tries: 500, look: 12, bound: 0 },
  );
  console.log(
    `${schedule.tried} lists tried in ${took(start)} s, done ${(schedule.end / 86_400).toFixed(2)} days in`,
  );
  const cpu = process.cpuUsage().user;
  start = performance.now();
  const answer = simulate(plan, {
    seed: 1,
    runs: 10_000,
    list: schedule.list,
    look: 12,
    paceSd: 0.3,
  });
  const used = (process.cpuUsage().user - cpu) / 1e6;
  console.log(
    `10 000 runs in ${took(start)} s, of which at work ${used.toFixed(2)} s (wanted ${WANTED} or less)`,
  );
  console.log(`done by the last evening in ${(100 * (answer.doneBy.at(-1) ?? 0)).toFixed(1)} %`);
  const what = '10 000 runs of a weekend of 1000 tasks and 24 people';
  return [{ what, found: used, unit: 's', wanted: WANTED }];
}

const took = (start: number): string => ((performance.now() - start) / 1000).toFixed(2);

/** Panels in stages of 25, each stage a stop point; in a stage five panels may be worked on at once. */
function build(count: number): Task[] {
  return Array.from({ length: count }, (_, i) => {
    const [stage, k] = [Math.floor(i / 25), i % 25];
    const last = stage > 0 ? [`${stage - 1}-24`] : [];
    const after =
      k === 24
        ? [19, 20, 21, 22, 23].map((x) => `${stage}-${x}`)
        : k < 5
          ? last
          : [`${stage}-${k - 5}`];
    return taskOf({
      id: `${stage}-${k}`,
      after,
      duration: { low: 200, likely: 320, high: 700 },
      people: 3,
      usefulPeople: 4,
      shared: 0.6,
      climbers: stage > 10 ? 1 : 0,
      atHeight: stage > 10,
      gustLimit: stage > 20 ? 9 : 11.6,
      commits: true,
      stopPoint: k === 24 ? { allowedGust: 20, closeDown: 1800, hands: 2 } : null,
    });
  });
}

function people(count: number): CrewSettings {
  return crewSection.parse({
    site: { latitudeDeg: 51.5, longitudeDeg: -1.2, utcOffsetHours: 1 },
    dates: DATES,
    people: Array.from({ length: count }, (_, i) => ({
      name: `helper ${i + 1}`,
      climbs: i % 3 === 0,
      leads: i % 5 === 0,
      sure: i % 4 === 0,
      shifts: DATES.map((date) => ({ date, from: i % 2 ? '08:00' : '09:30', to: '18:00' })),
    })),
    forecast: DATES.flatMap((date) =>
      Array.from({ length: 24 }, (_, hour) => ({
        at: `${date}T${String(hour).padStart(2, '0')}:00`,
        mean: 4,
        gust: 6 + 3 * Math.sin(hour / 4),
      })),
    ),
  });
}
