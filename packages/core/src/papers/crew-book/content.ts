// What the crew book is made from, and the sentences that its sheets share.

import type { RaiseTask } from '../../crew/raise-task.ts';
import type { CrewSettings } from '../../crew/schema.ts';
import type { Kind } from '../../pile/kind.ts';
import type { RaisingPlan, RaisingStage } from '../../raise/plan.ts';
import type { StageWinds } from '../../raise/winds.ts';
import type { Shell } from '../../shell/shell.ts';
import { type LengthsShown, largeFirst } from '../length-text.ts';

/** A shell with its order of work, and who raises it. Places are indices of the shell. */
export interface CrewBookContent {
  readonly shell: Shell;
  /** Place → its number. */
  readonly numbers: readonly string[];
  /** Kind (index) of the shell; sides hub to hub. */
  readonly kinds: readonly Kind[];
  /** Places left open on purpose. */
  readonly leftOut: readonly number[];
  readonly plan: RaisingPlan;
  /** Thread of a seam's bolts; null where nobody knows. */
  readonly threadOf: (seam: number) => string | null;
  readonly winds: readonly StageWinds[];
  /** Work by stage: how many people it takes. */
  readonly tasks: readonly RaiseTask[];
  readonly crew: CrewSettings;
  /** True where the numbers are those painted on the panels. */
  readonly painted: boolean;
}

/** Beside every number of the book that could be taken for leave to go on. */
export const bookCaution =
  'Estimates from what was entered, no design approval: local codes and a licensed engineer or rigger decide on props, lifts, anchors and the wind to work in.';

/** A gust as people read it. m/s. */
export const gustWords = (gust: number, shown: LengthsShown): string =>
  shown === 'metric'
    ? `${gust.toFixed(1)} m/s`
    : `${Math.floor(gust / 0.44704)} mph (${gust.toFixed(1)} m/s)`;

/** A height as people read it. */
export const heightWords = (metres: number, shown: LengthsShown): string =>
  shown === 'metric' ? `${metres.toFixed(2)} m` : largeFirst(metres, shown);

const sorts: Readonly<Record<RaisingStage['sort'], (course: number) => string>> = {
  base: () => 'Base course',
  course: (course) => `Course ${course}`,
  closing: (course) => `Course ${course} closes`,
  cap: () => 'The cap, lifted whole',
  'way out': () => 'The way out is closed',
  'final pass': () => 'Final pass',
};

/** What a stage is called: its sort and course, and which part of it where there are several. */
export function stageTitle(stages: readonly RaisingStage[], stage: RaisingStage): string {
  const alike = stages.filter(({ sort, course }) => sort === stage.sort && course === stage.course);
  const name = sorts[stage.sort](stage.course);
  if (alike.length < 2) return name;
  return `${name}, part ${alike.findIndex(({ number }) => number === stage.number) + 1} of ${alike.length}`;
}

/** Words in a row: `1-03, 1-04 and 2-01`. */
export const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

/** A piece by its places' numbers, three or more neighbours of a course as the first and the last. */
export function pieceWords(places: readonly number[], numbers: readonly string[]): string {
  const runs: string[][] = [];
  for (const number of places.map((place) => numbers[place] ?? '').sort()) {
    const run = runs.at(-1);
    if (run !== undefined && follows(run.at(-1) as string, number)) run.push(number);
    else runs.push([number]);
  }
  return listed(runs.flatMap((run) => (run.length < 3 ? run : [`${run[0]} to ${run.at(-1)}`])));
}

function follows(before: string, number: string): boolean {
  const [course, at] = before.split('-');
  const [other, next] = number.split('-');
  return course === other && Number(next) === Number(at) + 1;
}

/** `1 panel`, `6 panels`. */
export const plural = (n: number, what: string): string => `${n} ${what}${n === 1 ? '' : 's'}`;
