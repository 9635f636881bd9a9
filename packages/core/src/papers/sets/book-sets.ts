// The crew book with the pages of the fit-out that crews work by, and the joint pictures in the order of work.

import { raiseTasks } from '../../crew/raise-tasks.ts';
import { crewBook } from '../crew-book/book.ts';
import type { CrewBookContent } from '../crew-book/content.ts';
import { jointSheets } from '../crew-book/joint-sheets.ts';
import { fitoutPages } from './fitout-sets.ts';
import type { SheetJob, SheetMaker } from './job.ts';

/** The makers. */
export const bookMakers: readonly SheetMaker[] = [
  {
    name: 'crew-book',
    what: 'briefing, roles, plans, a card for each stage, courses, close-down, emergency, door, seal',
    ordered: true,
    make: (job) => [
      ...crewBook(contentOf(job), job.facts('Crew book'), job.asked),
      ...fitoutPages(job, ['door', 'ways-in', 'seal-plan']),
    ],
  },
  {
    name: 'joint-pictures',
    what: 'each panel with its neighbours, side to side, in the order of work',
    ordered: true,
    make: (job) =>
      jointSheets(
        { ...contentOf(job), bolts: job.raised().facts.holes },
        job.facts('Joint pictures'),
        job.asked,
      ),
  },
];

function contentOf({ asked, raised }: SheetJob): CrewBookContent {
  const { shell, numbers, kinds, leftOut, painted } = asked;
  const { plan, winds, facts, threadOf } = raised();
  const { tasks } = raiseTasks(facts);
  return {
    ...{ shell, numbers, kinds, leftOut, painted, plan, threadOf, winds, tasks },
    crew: facts.crew,
  };
}
