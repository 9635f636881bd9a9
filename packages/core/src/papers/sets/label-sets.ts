// Labels for panels, bags, hubs and seams, on the label sheets that suit the paper.

import { kitAnswer } from '../../raise/raised/kit.ts';
import { type RecordPlan, recordPlan } from '../../record/names.ts';
import { coursesOf } from '../../shell/courses.ts';
import { bagLabelSheets, hubLabelSheets, matchMarkSheets } from '../bag-labels.ts';
import { type LabelStock, labelStock } from '../label-stock.ts';
import { panelLabelSheets } from '../panel-labels.ts';
import type { SheetMaker } from './job.ts';
import type { PaperQuestion } from './question.ts';

/** The makers. */
export const labelMakers: readonly SheetMaker[] = [
  {
    name: 'panel-labels',
    what: 'a label for every panel: number, kind, way up, code',
    make: ({ asked: { shell, numbers, kinds, title, paper, leftOut } }) =>
      panelLabelSheets(shell, numbers, kinds, title, stockFor(paper, 'A4 3 x 7', 'Letter 2 x 5'), {
        leftOut,
      }),
  },
  {
    name: 'bag-labels',
    what: 'what goes into each bag, with boxes to tick',
    ordered: true,
    make: ({ asked: { title, paper }, raised }) =>
      bagLabelSheets(
        kitAnswer(raised().shell).bags.bags,
        title,
        stockFor(paper, 'A4 plain 2 x 2', 'Letter plain 2 x 2'),
      ),
  },
  {
    name: 'hub-labels',
    what: 'which panels meet at each hub',
    make: ({ asked }) =>
      hubLabelSheets(
        planNames(asked),
        asked.title,
        stockFor(asked.paper, 'A4 2 x 7', 'Letter 2 x 5'),
        asked.leftOut,
      ),
  },
  {
    name: 'match-marks',
    what: 'two labels for every seam, to part it and find it again',
    make: ({ asked }) =>
      matchMarkSheets(
        planNames(asked),
        asked.title,
        stockFor(asked.paper, 'A4 plain 4 x 10', 'Letter plain 4 x 10'),
        asked.leftOut,
      ),
  },
];

/** The names of a standing shell's places, seams and hubs. */
export const planNames = ({
  shell,
  numbers,
}: Pick<PaperQuestion, 'shell' | 'numbers'>): RecordPlan =>
  recordPlan(shell, { numbers, course: coursesOf(shell).course });

/** A3 gets labels on A4. */
const stockFor = (paper: PaperQuestion['paper'], a4: string, letter: string): LabelStock =>
  labelStock(paper === 'Letter' ? letter : a4);
