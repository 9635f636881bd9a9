// The crew book: everything that people read while the shell goes up, in the order in which they need it.

import type { Drawing } from '../drawing.ts';
import { flatPlanSheet, type SheetFacts } from '../flat-plan-sheet.ts';
import { briefingSheets, cautionSheets, roleSheets } from './briefing.ts';
import { closeDownSheets, emergencySheets } from './closing.ts';
import { bookCaution, type CrewBookContent } from './content.ts';
import { courseSheets } from './course-sheets.ts';
import { type BookLook, stageCards } from './stage-cards.ts';

/** Briefing, roles, cautions; the plan from above and from inside; a card for each stage; the courses;
 * close-down; emergency. */
export function crewBook(content: CrewBookContent, facts: SheetFacts, look: BookLook): Drawing[] {
  const { shell, numbers, kinds, leftOut, painted } = content;
  const plans = [false, true].map((fromBelow) =>
    flatPlanSheet(
      shell,
      numbers,
      kinds,
      {
        ...facts,
        sheet: fromBelow ? 'Plan, as seen from inside' : 'Plan, as seen from above',
        caution: bookCaution,
      },
      { ...look, fromBelow, leftOut, painted },
    ),
  );
  return [
    ...briefingSheets(content, facts, look),
    ...roleSheets(content, facts, look),
    ...cautionSheets(content, facts, look),
    ...plans,
    ...stageCards(content, facts, look),
    ...courseSheets(content, facts, look),
    ...closeDownSheets(content, facts, look),
    ...emergencySheets(content, facts, look),
  ];
}
