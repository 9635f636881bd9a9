// An invented weekend: three days in June, eight people, a shell of some stages with stop points.

import { type CrewSettings, crewSection } from '../../src/crew/schema.ts';
import { type Task, taskOf } from '../../src/crew/task.ts';

/** Friday to Sunday. */
export const DATES = ['2026-06-12', '2026-06-13', '2026-06-14'] as const;

const everyDay = (from = '08:00', to = '18:00') => DATES.map((date) => ({ date, from, to }));

/** Settings as they stand in a project, with what a test changes. */
export const weekend = (over: Partial<Record<keyof CrewSettings, unknown>> = {}): CrewSettings =>
  crewSection.parse({
    site: { latitudeDeg: 51.5, longitudeDeg: -1.2, utcOffsetHours: 1 },
    dates: DATES,
    people: [
      { name: 'Ada', leads: true, climbs: true, sure: true, shifts: everyDay() },
      { name: 'Bram', climbs: true, sure: true, shifts: everyDay() },
      { name: 'Cleo', climbs: true, shifts: everyDay() },
      { name: 'Dov', leads: true, sure: true, shifts: everyDay() },
      ...['Esme', 'Finn', 'Gita', 'Hugo'].map((name) => ({
        name,
        shifts: everyDay('09:00', '17:00'),
      })),
    ],
    breaks: [{ from: '12:30', to: '13:15' }],
    ...over,
  });

/** Stages one after the other, each of some panels of a quarter of an hour, the last a stop point. */
export function stages(count: number, panels: number, over: Partial<Task> = {}): Task[] {
  return Array.from({ length: count }, (_, s) =>
    Array.from({ length: panels }, (_, p) =>
      taskOf({
        id: `${s + 1}-${p + 1}`,
        after: p > 0 ? [`${s + 1}-${p}`] : s > 0 ? [`${s}-${panels}`] : [],
        duration: { low: 600, likely: 900, high: 1500 },
        people: 3,
        climbers: s > 0 ? 1 : 0,
        atHeight: s > 0,
        gustLimit: 11.6,
        commits: true,
        stopPoint: p === panels - 1 ? { allowedGust: 20, closeDown: 1800, hands: 2 } : null,
        ...over,
      }),
    ),
  ).flat();
}
