// What goes to those who decide, and to those who come after: permit and insurance pack, dismantling and
// storage pack, and how to write down a shell that still stands elsewhere.

import { defaultLoads } from '../../loads/schema.ts';
import { placeMasses } from '../../loads/weight/weight.ts';
import { pieceModel, pieceOf } from '../../raise/lifts/piece.ts';
import { coursesOf } from '../../shell/courses.ts';
import { placeCount } from '../../shell/shell.ts';
import { elsewhereSheets } from '../elsewhere-sheets.ts';
import { packedPanel, stacksOf } from '../packing.ts';
import { permitSheets } from '../permit-sheets.ts';
import { defaultStorage } from '../storage-section.ts';
import { storageSheets } from '../storage-sheets.ts';
import { SheetFault } from './fault.ts';
import type { SheetJob, SheetMaker } from './job.ts';
import type { PaperQuestion } from './question.ts';

/** The makers. */
export const handOverMakers: readonly SheetMaker[] = [
  {
    name: 'permit',
    what: 'dimensions, loads, method and risks: a draft to check and sign',
    ordered: true,
    make: ({ asked: { shell, leftOut, paper, lengths }, raised, facts }) => {
      const { site, plan, winds, facts: told } = raised();
      const { base, loads, anchors } = site;
      return permitSheets(
        {
          ...{ shell, leftOut, base, loads, plan, winds },
          anchors: anchors.ok ? anchors.value : null,
          massOf: (place) => told.massOf(place)?.value ?? null,
        },
        facts('Permit and insurance'),
        { paper, lengths },
      );
    },
  },
  {
    name: 'storage',
    what: 'taking down, stacks, trips, bolts, and codes for the next owner',
    ordered: true,
    make: (job) => {
      const { shell, numbers, kinds, leftOut, paper, lengths, parts } = job.asked;
      const plan = planOrNone(job);
      const { vehicles, stack } = job.asked.storage ?? defaultStorage;
      const order = plan?.stages.flatMap(({ pieces }) => pieces.flat()) ?? [];
      const limits = {
        ...{ most: stack.panels, mass: stack.mass, height: stack.height },
        depth: parts?.flange.depth ?? null,
      };
      return storageSheets(
        {
          ...{ shell, numbers, kinds, leftOut, plan, vehicles },
          stacks: stacksOf(panelsOf(job.asked, order), limits),
          takeOff: job.takeOff(),
        },
        job.facts('Storage'),
        { paper, lengths },
      );
    },
  },
  {
    name: 'standing-elsewhere',
    what: 'how to number, photograph and measure a shell before it is taken down',
    make: ({ facts, asked: { paper } }) => elsewhereSheets(facts('Standing elsewhere'), { paper }),
  },
];

/** The order of work; none where the project gives no ground to reckon one. */
function planOrNone(job: SheetJob) {
  try {
    return job.raised().plan;
  } catch (error) {
    if (error instanceof SheetFault) return null;
    throw error;
  }
}

/** `order`: places in the order of the raising. */
function panelsOf(
  { shell, numbers, kinds, leftOut, loads = defaultLoads }: PaperQuestion,
  order: readonly number[],
) {
  const { course } = coursesOf(shell);
  const model = pieceModel(shell, numbers, placeMasses(shell, kinds, loads.panelMass));
  return Array.from({ length: placeCount(shell) }, (_, p) => p)
    .filter((p) => !leftOut.includes(p))
    .map((p) =>
      packedPanel(
        pieceOf(model, [p]),
        kinds[shell.kind[p] as number]?.id ?? '',
        course[p] as number,
        order.includes(p) ? order.indexOf(p) : null,
      ),
    );
}
