// The sheets of the shell itself: flat plans, kinds, the proof of count, the take-off.

import {
  accountSheet,
  flatPlanSheet,
  hubsOf,
  kindCardSheets,
  type PlaceId,
  placeCount,
  placesByKind,
  takeOffSheets,
} from '@shellraise/core';
import { standCaution } from '../commands/places.ts';
import { proofOf, takenFor } from '../commands/takeoff.ts';
import type { Chosen } from '../job.ts';
import type { SheetJob, SheetMaker } from './job.ts';

/** The makers. */
export const shellSheets: readonly SheetMaker[] = [
  {
    name: 'flat-plan',
    what: 'the flat plan, seen from above',
    make: (job) => [plan(job, false)],
  },
  {
    name: 'flat-plan-from-inside',
    what: 'the flat plan, as people inside see it looking up',
    make: (job) => [plan(job, true)],
  },
  {
    name: 'flat-plan-upper',
    what: 'its upper courses, larger',
    make: (job) => upper(job, false),
  },
  {
    name: 'flat-plan-upper-from-inside',
    what: 'its upper courses from inside, larger',
    make: (job) => upper(job, true),
  },
  {
    name: 'kinds',
    what: 'a card for each kind',
    make: ({ kinds, chosen, lengths, paper, facts }) =>
      kindCardSheets(kinds, facts('Kinds'), {
        lengths,
        paper,
        places: placesByKind(chosen.standing.shell, chosen.kinds.length),
        holes: chosen.loaded.holes,
      }),
  },
  {
    name: 'proof-of-count',
    what: 'panels, seams, hubs and bolts by formula and by list',
    make: ({ chosen, takeOff, paper, facts }) => [
      accountSheet(proofOf(chosen, takeOff()), facts('Proof of count'), { paper }),
    ],
  },
  {
    name: 'take-off',
    what: 'what to buy and what is in hand',
    make: ({ chosen, takeOff, paper, facts }) => {
      const own = facts('Take-off');
      return takeOffSheets(
        takeOff(),
        { ...own, assumes: `${own.assumes} ${takenFor(chosen)}`.trim() },
        { paper, hardware: chosen.loaded.hardware },
      );
    },
  },
];

/** A4 asked for: the plans are on A3, which any copy shop prints; two A4 side by side. */
function plan(job: SheetJob, fromBelow: boolean, fromCourse?: number) {
  const { chosen, kinds, lengths, paper, facts } = job;
  const { shell } = chosen.standing;
  const name = `Flat plan${fromCourse ? ', upper courses' : ''}${fromBelow ? ', from inside' : ''}`;
  return flatPlanSheet(
    shell,
    chosen.numbers.numbers,
    kinds,
    { ...facts(name), caution: standCaution },
    {
      paper: paper === 'A4' ? 'A3' : paper,
      lengths,
      fromBelow,
      painted: chosen.numbers.status === 'frozen',
      ...(fromCourse && { fromCourse }),
    },
  );
}

function upper(job: SheetJob, fromBelow: boolean) {
  const from = upperFrom(job.chosen);
  return from === null ? [] : [plan(job, fromBelow, from)];
}

/** The course from which a sheet of its own is worth while: the lowest that lies in the upper half
 * on the whole, where a shell goes far below its equator and has many places; else null. */
function upperFrom({ standing: { shell, courses } }: Chosen): number | null {
  const heights = Array.from(
    { length: shell.hubs.length / 3 },
    (_, h) => shell.hubs[3 * h + 2] ?? 0,
  );
  const places = placeCount(shell);
  if (places < 200 || Math.min(...heights) > -shell.radius / 2) return null;
  const up = courses.counts.map((_, c) => {
    const hubs = Array.from({ length: places }, (_, p) => p)
      .filter((p) => courses.course[p] === c + 1)
      .flatMap((p) => hubsOf(shell, p as PlaceId));
    return hubs.reduce((sum, h) => sum + (heights[h] as number), 0) > 0;
  });
  return up.indexOf(true) + 1 || null;
}
