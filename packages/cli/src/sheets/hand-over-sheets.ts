// What goes to those who decide, and to those who come after: permit and insurance pack, dismantling and
// storage pack, and how to write down a shell that still stands elsewhere.

import {
  defaultLoads,
  defaultStorage,
  elsewhereSheets,
  type PlaceId,
  packedPanel,
  permitSheets,
  pieceModel,
  pieceOf,
  placeCount,
  placeMasses,
  stacksOf,
  storageSheets,
} from '@shellraise/core';
import { Ending } from '../ending.ts';
import type { SheetJob, SheetMaker } from './job.ts';

/** The makers. */
export const handOverMakers: readonly SheetMaker[] = [
  {
    name: 'permit',
    what: 'dimensions, loads, method and risks: a draft to check and sign',
    make: ({ chosen, raised, facts, paper, lengths, leftOut }) => {
      const { site, plan, winds, question } = raised();
      const { base, loads, anchors } = site.site;
      return permitSheets(
        {
          shell: chosen.standing.shell,
          leftOut,
          base,
          loads,
          anchors: anchors.ok ? anchors.value : null,
          plan,
          winds,
          massOf: (place) => question.massOf(place)?.value ?? null,
        },
        facts('Permit and insurance'),
        { paper, lengths },
      );
    },
  },
  {
    name: 'storage',
    what: 'taking down, stacks, trips, bolts, and codes for the next owner',
    make: (job) => {
      const plan = planOrNone(job);
      const { project } = job.chosen.loaded;
      const { vehicles, stack } = project?.storage ?? defaultStorage;
      return storageSheets(
        {
          shell: job.chosen.standing.shell,
          numbers: job.chosen.numbers.numbers,
          kinds: job.kinds,
          plan,
          stacks: stacksOf(
            panelsOf(job, plan?.stages.flatMap(({ pieces }) => pieces.flat()) ?? []),
            {
              most: stack.panels,
              mass: stack.mass,
              height: stack.height,
              depth: project?.parts?.flange.depth ?? null,
            },
          ),
          leftOut: job.leftOut,
          vehicles,
          takeOff: job.takeOff(),
        },
        job.facts('Storage'),
        { paper: job.paper, lengths: job.lengths },
      );
    },
  },
  {
    name: 'standing-elsewhere',
    what: 'how to number, photograph and measure a shell before it is taken down',
    make: ({ facts, paper }) => elsewhereSheets(facts('Standing elsewhere'), { paper }),
  },
];

/** The order of work; none where the file gives no ground to reckon one. */
function planOrNone(job: SheetJob) {
  try {
    return job.raised().plan;
  } catch (error) {
    if (error instanceof Ending) return null;
    throw error;
  }
}

/** `order`: places in the order of the raising. */
function panelsOf({ chosen, kinds, leftOut }: SheetJob, order: readonly number[]) {
  const { shell, courses } = chosen.standing;
  const { panelMass } = chosen.loaded.project?.loads ?? defaultLoads;
  const massOf = placeMasses(shell, chosen.kinds, panelMass);
  const model = pieceModel(shell, chosen.numbers.numbers, massOf);
  return Array.from({ length: placeCount(shell) }, (_, p) => p)
    .filter((p) => !leftOut.includes(p))
    .map((p) =>
      packedPanel(
        pieceOf(model, [p as PlaceId]),
        kinds[shell.kind[p] as number]?.id ?? '',
        courses.course[p] as number,
        order.includes(p) ? order.indexOf(p) : null,
      ),
    );
}
