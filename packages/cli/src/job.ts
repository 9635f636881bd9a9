// The main job, step by step: pile -> shapes -> what can stand -> one standing shell.

import { readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import {
  type Arrangement,
  type Arrangements,
  arrangements,
  decisionFor,
  familiesOf,
  findDecided,
  type Identification,
  type Kind,
  labelsOf,
  occursIn,
  type Shape,
  type Shell,
  type Standing,
  standingShell,
  type WayUp,
  writeProject,
} from '@shellraise/core';
import { badInput, Ending } from './ending.ts';
import { identification } from './identification.ts';
import { type LoadedPile, loadPile } from './load.ts';
import type { StandOptions } from './options.ts';
import { writeAll } from './write.ts';

/** A shape and what the stock can make of it. */
export interface Stood {
  readonly loaded: LoadedPile;
  readonly found: Identification;
  readonly shape: Shape;
  readonly list: Arrangements;
}

/** One arrangement, standing. */
export interface Chosen extends Stood {
  /** Its number in the list, from 1. */
  readonly number: number;
  readonly arrangement: Arrangement;
  readonly way: WayUp;
  readonly standing: Standing;
}

/** Reads the file, finds the shapes, and sets the chosen one against the stock. Ends the command
 * where nothing closes. */
export async function stand(file: string, options: StandOptions): Promise<Stood> {
  const loaded = await loadPile(file, options);
  const found = await identification(loaded.question);
  const shape = chooseShape(found, options.shape);
  const list = arrangements(shape.shell, loaded.kinds, {
    interchangeable: shape.interchangeable,
    repaired: options.repaired ?? loaded.project?.places?.repaired ?? false,
  });
  if (list.status !== 'arranged')
    throw new Ending(1, [`This shape can't be arranged: ${list.reason}.`]);
  if (list.arrangements.length === 0)
    throw new Ending(1, ['This shape has no sound cut at the ground: nothing can stand.']);
  return { loaded, found, shape, list };
}

/** As `stand`, with one of the arrangements stood up and numbered. */
export async function choose(file: string, options: StandOptions): Promise<Chosen> {
  return chooseFrom(await stand(file, options), options.arrangement);
}

/** One of the arrangements, counted from 1; without a number the one that the project file keeps,
 * else the first. */
export function chooseFrom(stood: Stood, asked?: number): Chosen {
  const { list, shape } = stood;
  const kept = asked === undefined ? keptIn(stood) : null;
  const number = asked ?? kept?.number ?? 1;
  const arrangement = list.arrangements[number - 1];
  if (arrangement === undefined)
    throw badInput(
      `--arrangement: found ${number}, expected 1 to ${list.arrangements.length}, as "shellraise places" lists them`,
    );
  const way = list.waysUp[arrangement.wayUp] as WayUp;
  const standing = standingShell(shape.shell, way, arrangement.cut, kept?.datumTurn ?? 0);
  return { ...stood, number, arrangement, way, standing };
}

/** The arrangement that the project file keeps, found again in the list; null where it keeps none.
 * Ends the command where the kept one is no longer there. */
function keptIn({ loaded, shape, list }: Stood): { number: number; datumTurn: number } | null {
  const decision = loaded.project?.places;
  if (!decision) return null;
  const options = { interchangeable: shape.interchangeable };
  const decided = findDecided(shape.shell, loaded.kinds, decision, options);
  if (!decided.found)
    throw new Ending(1, [
      `The arrangement that the file keeps ("places") is no longer there: ${decided.reason}.`,
      'Choose anew: shellraise places FILE --arrangement 1 --keep, or another number or shape.',
    ]);
  const { crown } = decided.way;
  const at = list.arrangements.findIndex((one) => {
    const own = (list.waysUp[one.wayUp] as WayUp).crown;
    const { places, height } = decided.arrangement.cut;
    return (
      own.side === crown.side &&
      own.at === crown.at &&
      one.cut.height === height &&
      one.cut.places.length === places.length
    );
  });
  if (at < 0) throw new Ending(1, ['The arrangement that the file keeps is not in the list.']);
  return { number: at + 1, datumTurn: decision.datumTurn };
}

/** The kinds with their sides as the whole net fits them: mirror images alike, and both sides of a
 * seam of one length. */
export const fittedKinds = ({ loaded, shape }: Stood): readonly Kind[] =>
  loaded.kinds.map((kind, k) => ({ ...kind, sides: shape.fittedSides[k] ?? kind.sides }));

/** Numbers of all shapes in which the chosen shell is the same: then what tells them apart does not
 * matter for it. */
export function shapesWith({ found, shape, loaded, standing }: Chosen): number[] {
  const families = familiesOf(loaded.kinds, shape.interchangeable);
  const labelled = (shell: Shell) => labelsOf(shell, loaded.kinds, families).labels;
  return found.shapes.flatMap((other, i) =>
    occursIn(standing.shell, labelled(standing.shell), other.shell, labelled(other.shell))
      ? [i + 1]
      : [],
  );
}

/** Writes the chosen arrangement into the project file, the former file beside it as .previous. */
export function keep(file: string, chosen: Chosen, repaired: boolean): void {
  const { project } = chosen.loaded;
  if (!project)
    throw badInput(`${file}: found a spreadsheet, expected a project file to keep a decision in`);
  const places = decisionFor(chosen.list, chosen.arrangement, repaired);
  const name = basename(file);
  writeAll(dirname(file), [
    { name: `${name}.previous`, text: readFileSync(file, 'utf8') },
    { name, text: writeProject({ ...project, places }) },
  ]);
}

function chooseShape(found: Identification, number: number): Shape {
  if (found.shapes.length === 0)
    throw new Ending(1, [
      'These kinds close into no shell that was found:',
      ...found.reasons.map((reason) => `- ${reason}`),
    ]);
  const shape = found.shapes[number - 1];
  if (shape === undefined)
    throw badInput(
      `--shape: found ${number}, expected 1 to ${found.shapes.length}, as "shellraise shape" lists them`,
    );
  return shape;
}
