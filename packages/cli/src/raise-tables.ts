// The stages and the tasks of a raising plan as CSV.

import { heldAtLift, heldWords, type Table, tableToCsv, type Weekend } from '@shellraise/core';
import { writtenText } from './commands/papers.ts';
import type { Raised } from './raise-job.ts';
import { writeAll } from './write.ts';

/** Writes the stages, and the tasks where a weekend is planned; the sentence that says so. */
export function writeTables(
  out: string | undefined,
  { plan, winds, chosen }: Raised,
  weekend: Weekend | null,
): string {
  if (out === undefined) return '';
  const windOf = new Map(winds.map((one) => [one.stage, one]));
  const stages: Table = {
    title: 'stages',
    columns: [
      'stage',
      'what',
      'course',
      'lift',
      'places',
      'made',
      'goes in',
      'may go',
      'stop work m/s',
      'left to m/s',
    ],
    rows: plan.stages.flatMap((stage) =>
      stage.lifts.map((lift, i) => [
        stage.number,
        stage.sort,
        stage.course,
        i + 1,
        lift.places.map((p) => chosen.numbers.numbers[p]).join(' '),
        lift.made,
        heldWords(heldAtLift(plan, stage.number, i, 'in')),
        heldWords(heldAtLift(plan, stage.number, i, 'out')),
        windOf.get(stage.number)?.stopWork ?? null,
        windOf.get(stage.number)?.leave ?? null,
      ]),
    ),
  };
  const tasks: Table = {
    title: 'tasks',
    columns: [
      'task',
      'what',
      'stage',
      'start s',
      'finish s',
      'people',
      'climbers',
      'leads',
      'critical',
    ],
    rows: (weekend?.tasks ?? []).map((one) => [
      one.id,
      one.what,
      one.stage,
      one.start,
      one.finish,
      one.people,
      one.climbers,
      one.leads,
      one.critical,
    ]),
  };
  const files = [
    { name: 'raise-stages.csv', text: tableToCsv(stages) },
    ...(weekend ? [{ name: 'raise-tasks.csv', text: tableToCsv(tasks) }] : []),
  ];
  writeAll(out, files);
  return writtenText(out, files);
}
