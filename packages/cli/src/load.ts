// From a FILE to the kinds of its pile and all that goes with them.

import { basename } from 'node:path';
import {
  countedHoles,
  defaultTakeoff,
  describeFault,
  type HoleCounts,
  kindsOfPile,
  looksLikeProject,
  type Pile,
  type PileKinds,
  type Project,
  type Read,
  readPileCsv,
  readProject,
  type ShapeQuestion,
  shapeQuestion,
  type TakeoffSettings,
} from '@shellraise/core';
import { badInput } from './ending.ts';
import { readText } from './input.ts';
import type { CommonOptions } from './options.ts';

/** A pile, read and worked up. */
export interface LoadedPile {
  readonly title: string;
  /** The project file as read; null for a spreadsheet. */
  readonly project: Project | null;
  readonly pile: Pile;
  readonly worked: PileKinds;
  readonly kinds: PileKinds['kinds'];
  readonly question: ShapeQuestion;
  readonly hardware: Pile['hardware'];
  readonly takeoff: TakeoffSettings;
  readonly holes: HoleCounts;
}

/** The pile of a project file or of a CSV. Ends the command with every fault where it has any, or
 * where nothing was measured. */
export async function loadPile(
  file: string,
  options: Pick<CommonOptions, 'unit'>,
): Promise<LoadedPile> {
  const text = await readText(file);
  const { title, project, pile, takeoff } = looksLikeProject(file, text)
    ? projectOf(orFaults(file, readProject(text)))
    : csvOf(file, readPileCsv(text, options.unit === undefined ? {} : { unit: options.unit }));
  if (pile.kinds.length + pile.readings.length === 0)
    throw badInput(`${file}: pile: found no kinds and no readings, expected at least one of them`);
  const worked = kindsOfPile(pile);
  const question = shapeQuestion(pile, worked);
  return {
    title: title || basename(file),
    project,
    pile,
    worked,
    kinds: question.kinds,
    question,
    hardware: pile.hardware,
    takeoff: takeoff ?? defaultTakeoff,
    holes: countedHoles(pile, { ...worked, kinds: question.kinds }),
  };
}

/** A spreadsheet holds a pile and nothing else. */
const csvOf = (file: string, read: Read<Pile>) => ({
  title: basename(file),
  project: null,
  pile: orFaults(file, read),
  takeoff: undefined,
});

const projectOf = (project: Project) => ({
  title: project.title,
  project,
  pile: project.pile,
  takeoff: project.takeoff,
});

function orFaults<T>(file: string, read: Read<T>): T {
  if (read.ok) return read.value;
  const { length } = read.faults;
  const head = `${file}: ${length === 1 ? 'one fault' : `${length} faults`}, so nothing of it was used:`;
  const unitless = read.faults.some(({ found }) => found.includes('without a unit'));
  throw badInput(
    head,
    ...read.faults.map((fault) => `  ${describeFault(fault)}`),
    ...(unitless ? ['One unit for all of them: --unit mm, cm, m, in or ft'] : []),
  );
}
