// The crew book, and the joint pictures in the order of work.

import { type CrewBookContent, crewBook, jointSheets, raiseTasks } from '@shellraise/core';
import type { SheetJob, SheetMaker } from './job.ts';

/** The makers. */
export const bookMakers: readonly SheetMaker[] = [
  {
    name: 'crew-book',
    what: 'briefing, roles, plans, a card for each stage, courses, close-down, emergency',
    make: (job) => crewBook(contentOf(job), job.facts('Crew book'), job),
  },
  {
    name: 'joint-pictures',
    what: 'each panel with its neighbours, side to side, in the order of work',
    make: (job) =>
      jointSheets(
        { ...contentOf(job), bolts: job.raised().question.holes },
        job.facts('Joint pictures'),
        job,
      ),
  },
];

function contentOf({ chosen, kinds, raised }: SheetJob): CrewBookContent {
  const { plan, winds, question, brief, threadOf } = raised();
  return {
    shell: chosen.standing.shell,
    numbers: chosen.numbers.numbers,
    kinds,
    leftOut: brief.openings,
    plan,
    threadOf,
    winds,
    tasks: raiseTasks(question).tasks,
    crew: question.crew,
    painted: chosen.numbers.status === 'frozen',
  };
}
