// Labels for panels, bags, hubs and seams, on the label sheets that suit the paper.

import {
  bagLabelSheets,
  hubLabelSheets,
  kitAnswer,
  type LabelStock,
  labelStock,
  matchMarkSheets,
  panelLabelSheets,
  recordPlan,
} from '@shellraise/core';
import { raisedShell } from '../raised-parts.ts';
import type { SheetJob, SheetMaker } from './job.ts';

/** The makers. */
export const labelMakers: readonly SheetMaker[] = [
  {
    name: 'panel-labels',
    what: 'a label for every panel: number, kind, way up, code',
    make: ({ chosen, kinds, paper, leftOut }) =>
      panelLabelSheets(
        chosen.standing.shell,
        chosen.numbers.numbers,
        kinds,
        chosen.loaded.title,
        stockFor(paper, 'A4 3 x 7', 'Letter 2 x 5'),
        { leftOut },
      ),
  },
  {
    name: 'bag-labels',
    what: 'what goes into each bag, with boxes to tick',
    make: (job) =>
      bagLabelSheets(
        kitAnswer(raisedShell(job.raised())).bags.bags,
        job.chosen.loaded.title,
        stockFor(job.paper, 'A4 plain 2 x 2', 'Letter plain 2 x 2'),
      ),
  },
  {
    name: 'hub-labels',
    what: 'which panels meet at each hub',
    make: (job) =>
      hubLabelSheets(
        planOf(job),
        job.chosen.loaded.title,
        stockFor(job.paper, 'A4 2 x 7', 'Letter 2 x 5'),
        job.leftOut,
      ),
  },
  {
    name: 'match-marks',
    what: 'two labels for every seam, to part it and find it again',
    make: (job) =>
      matchMarkSheets(
        planOf(job),
        job.chosen.loaded.title,
        stockFor(job.paper, 'A4 plain 4 x 10', 'Letter plain 4 x 10'),
        job.leftOut,
      ),
  },
];

/** The names of the standing shell's places, seams and hubs. */
export const planOf = ({
  chosen: { standing, numbers },
}: SheetJob): ReturnType<typeof recordPlan> =>
  recordPlan(standing.shell, { numbers: numbers.numbers, course: standing.courses.course });

/** A3 gets labels on A4. */
const stockFor = (paper: SheetJob['paper'], a4: string, letter: string): LabelStock =>
  labelStock(paper === 'Letter' ? letter : a4);
