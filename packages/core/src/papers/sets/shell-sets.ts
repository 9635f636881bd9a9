// The sheets of the shell itself: flat plans, kinds, the proof of count, the take-off.

import { coursesOf } from '../../shell/courses.ts';
import type { PlaceId } from '../../shell/ids.ts';
import { hubsOf, placeCount, placesByKind } from '../../shell/shell.ts';
import { countProof } from '../../takeoff/count-proof.ts';
import { defaultTakeoff } from '../../takeoff/schema.ts';
import { accountSheet } from '../account-sheet.ts';
import { flatPlanSheet } from '../flat-plan-sheet.ts';
import { kindCardSheets } from '../kind-cards-sheet.ts';
import { takeOffSheets } from '../take-off-sheet.ts';
import type { SheetJob, SheetMaker } from './job.ts';
import type { PaperQuestion } from './question.ts';

/** What every statement that something can stand must say beside it. */
export const STAND_CAUTION =
  'These shells are counted, not reckoned: that there is a panel for every place does not say that the shell bears wind, snow or people, or stands half-built. Local codes and a licensed engineer decide.';

/** The makers. */
export const shellMakers: readonly SheetMaker[] = [
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
    make: ({ asked: { shell, kinds, lengths, paper, holes, leftOut }, facts }) =>
      kindCardSheets(kinds, facts('Kinds'), {
        ...{ lengths, paper },
        places: placesByKind(shell, kinds.length, leftOut),
        ...(holes && { holes }),
      }),
  },
  {
    name: 'proof-of-count',
    what: 'panels, seams, hubs and bolts by formula and by list',
    make: ({ asked, takeOff, facts }) => {
      const { shell, kinds, holes = [], takeoff = defaultTakeoff, paper } = asked;
      const proof = countProof(shell, kinds, takeOff(), takeoff, holes);
      return [accountSheet(proof, facts('Proof of count'), { paper })];
    },
  },
  {
    name: 'take-off',
    what: 'what to buy and what is in hand',
    make: ({ asked, takeOff, facts }) => {
      const { paper, hardware } = asked;
      const own = facts('Take-off');
      const assumes = `${own.assumes} ${takenFor(asked)}`.trim();
      return takeOffSheets(takeOff(), { ...own, assumes }, { paper, hardware });
    },
  },
];

/** What a take-off takes for granted where there are no settings of it, and of places left open; else
 * empty. */
export const takenFor = ({
  takeoff,
  leftOut,
}: Pick<PaperQuestion, 'takeoff' | 'leftOut'>): string =>
  [
    takeoff === undefined
      ? 'The file has no take-off settings: one plate a hub, two washers a bolt, new nylon-insert nuts and 10 % spare bolts, nuts and washers are taken (common practice, no source).'
      : '',
    openWords(leftOut.length),
  ]
    .filter((words) => words !== '')
    .join(' ');

const openWords = (places: number): string =>
  places === 0
    ? ''
    : `Counted for the whole shell: what belongs to the ${places === 1 ? 'place' : `${places} places`} left open is in the list.`;

/** A4 asked for: the plans are on A3, which any copy shop prints; two A4 side by side. */
function plan({ asked, facts }: SheetJob, fromBelow: boolean, fromCourse?: number) {
  const { shell, numbers, kinds, paper, lengths, painted, leftOut } = asked;
  const name = `Flat plan${fromCourse ? ', upper courses' : ''}${fromBelow ? ', from inside' : ''}`;
  return flatPlanSheet(
    shell,
    numbers,
    kinds,
    { ...facts(name), caution: STAND_CAUTION },
    {
      paper: paper === 'A4' ? 'A3' : paper,
      ...{ lengths, fromBelow, painted, leftOut },
      ...(fromCourse && { fromCourse }),
    },
  );
}

function upper(job: SheetJob, fromBelow: boolean) {
  const from = upperFrom(job.asked);
  return from === null ? [] : [plan(job, fromBelow, from)];
}

/** The course from which a sheet of its own is worth while: the lowest that lies in the upper half
 * on the whole, where a shell goes far below its equator and has many places; else null. */
function upperFrom({ shell }: PaperQuestion): number | null {
  const heights = Array.from(
    { length: shell.hubs.length / 3 },
    (_, h) => shell.hubs[3 * h + 2] ?? 0,
  );
  const places = placeCount(shell);
  if (places < 200 || Math.min(...heights) > -shell.radius / 2) return null;
  const courses = coursesOf(shell);
  const up = courses.counts.map((_, c) => {
    const hubs = Array.from({ length: places }, (_, p) => p)
      .filter((p) => courses.course[p] === c + 1)
      .flatMap((p) => hubsOf(shell, p as PlaceId));
    return hubs.reduce((sum, h) => sum + (heights[h] as number), 0) > 0;
  });
  return up.indexOf(true) + 1 || null;
}
