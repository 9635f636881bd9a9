// What goes to those who decide, and to those who come after: permit and insurance pack, dismantling and
// storage pack, and how to write down a shell that still stands elsewhere.

import {
  defaultLoads,
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
  type Vehicle,
} from '@shellraise/core';
import { Ending } from '../ending.ts';
import type { SheetJob, SheetMaker } from './job.ts';

/** Two to reckon with where nobody names one: common practice, no source. */
const VEHICLES: readonly Vehicle[] = [
  {
    name: 'a small trailer (common practice, no source)',
    ...{ length: 2.5, width: 1.3, height: 1.6, payload: 500 },
  },
  {
    name: 'a large van (common practice, no source)',
    ...{ length: 4, width: 1.7, height: 1.8, payload: 1200 },
  },
];

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
    make: (job) =>
      storageSheets(
        {
          shell: job.chosen.standing.shell,
          numbers: job.chosen.numbers.numbers,
          kinds: job.kinds,
          plan: planOrNone(job),
          stacks: stacksOf(panelsOf(job), {
            depth: job.chosen.loaded.project?.parts?.flange.depth ?? null,
          }),
          leftOut: job.leftOut,
          vehicles: VEHICLES,
          takeOff: job.takeOff(),
        },
        job.facts('Storage'),
        { paper: job.paper, lengths: job.lengths },
      ),
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

function panelsOf({ chosen, kinds, leftOut }: SheetJob) {
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
      ),
    );
}
