// Keeping the shell: the calendar of inspections, snow, coats; and the round after a storm as a walk over
// the flat plan, each place with its turn in the walk.

import type { UpkeepAnswer } from '../fitout/keeping-answer.ts';
import { SNOW_WORDS, UPKEEP_SOURCES } from '../fitout/upkeep.ts';
import type { Shell } from '../shell/shell.ts';
import type { Drawing } from './drawing.ts';
import {
  datumItems,
  type FitoutSheetOptions,
  laidPlan,
  placeItems,
  placeWords,
  run,
} from './fitout-plan.ts';
import { cautionOf, type SheetFacts } from './flat-plan-sheet.ts';
import { groundSheets, plainRow, sourceNotes } from './ground-plan.ts';
import { lengthFirst } from './length-text.ts';
import { pageOf } from './page.ts';
import { wrapText } from './text-width.ts';

const caution =
  'Spans are common practice, no maker’s word. What is found cracked, loose or moved is looked at by somebody who knows before anybody goes in again.';

/** Width in which what is looked at is wrapped, millimetres. */
const LOOK_AT = 66;

/** The sheets; one at least. `leftOut`: places left open on purpose. */
export function upkeepSheets(
  drawn: {
    readonly shell: Shell;
    readonly leftOut: readonly number[];
    readonly upkeep: UpkeepAnswer;
  },
  facts: SheetFacts,
  options: FitoutSheetOptions = {},
): Drawing[] {
  const { shell, upkeep } = drawn;
  const shown = options.lengths ?? 'metric';
  const out = new Set(drawn.leftOut);
  const walk = upkeep.round.filter((place) => !out.has(place));
  const turn = new Map(walk.map((place, i) => [place, i + 1] as const));
  const plan = laidPlan(shell);
  return groundSheets(pageOf(options.paper ?? 'A3', 'across'), {
    heading: 'Upkeep',
    remark: `Calendar, and the round after a storm: ${walk.length} panels, from the side the wind came from`,
    facts,
    lengths: shown === 'metric' ? 'mm' : 'inches',
    caution: cautionOf(facts, caution),
    notes: [
      ...upkeep.snow.map(
        ({ snow, clear, leave }) =>
          `Snow, ${snow}: clear it at ${lengthFirst(clear, shown)} on the level, nobody inside from ${lengthFirst(leave, shown)}.`,
      ),
      upkeep.snow.length > 0 ? SNOW_WORDS : 'No snow load is entered, so no depth is reckoned.',
      upkeep.repaint.length > 0 ? `Coats due: ${upkeep.repaint.join(', ')}.` : '',
      'The number in a panel is its turn in the round; the line is the walk.',
      ...sourceNotes(UPKEEP_SOURCES),
    ].filter((words) => words !== ''),
    points: plan.box,
    plan: (placing) => [
      ...placeItems(shell, plan, placing, (place) =>
        out.has(place) ? { tint: null, hatch: 'slant-left' } : null,
      ),
      run(
        walk.flatMap((place) => {
          const at = plan.labels[place];
          return at === undefined ? [] : [placing.at(at)];
        }),
        { weight: 'light', ink: 'accent' },
      ),
      ...placeWords(
        plan,
        placing,
        (place) => (turn.has(place) ? String(turn.get(place)) : null),
        2.2,
      ),
      ...datumItems(plan, placing),
    ],
    columns: [
      { name: 'day', share: 0.2, align: 'start' },
      {
        name: upkeep.calendar.length > 0 ? 'look at' : 'the day it stands is not entered',
        share: 0.8,
        align: 'start',
      },
    ],
    rows: upkeep.calendar.flatMap(({ date, what }) =>
      what
        .flatMap((words) => wrapText(words, 2.8, LOOK_AT))
        .map((words, i) => plainRow([i === 0 ? date : '', words])),
    ),
  });
}
