// The main job, step by step: pile -> shapes -> what can stand -> one standing shell.

import { readFileSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import {
  type Arrangement,
  type Arrangements,
  arrangements,
  decisionFor,
  defaultRaising,
  findDecided,
  frozenOf,
  type Identification,
  type Kind,
  numbersOf,
  type PlaceNumbers,
  type PlacesDecision,
  type Project,
  type Shape,
  type Standing,
  shapesHolding,
  standingShell,
  stockOfShape,
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
  /** The kinds that the shape's places go by: the pile's, then those it needs besides. */
  readonly kinds: readonly Kind[];
  readonly list: Arrangements;
}

/** One arrangement, standing. */
export interface Chosen extends Stood {
  /** Its number in the list, from 1. */
  readonly number: number;
  readonly arrangement: Arrangement;
  readonly way: WayUp;
  /** The datum turned on by this, radians. */
  readonly datumTurn: number;
  readonly standing: Standing;
  /** Its place numbers: as painted, where the file keeps them. */
  readonly numbers: PlaceNumbers;
}

/** Reads the file, finds the shapes, and sets the chosen one against the stock. Ends the command
 * where nothing closes. */
export async function stand(file: string, options: StandOptions): Promise<Stood> {
  const loaded = await loadPile(file, options);
  const found = await identification(loaded.question);
  const shape = chooseShape(found, options.shape);
  if (!shape.closed)
    throw new Ending(1, [
      'This is a part of a sphere with an open rim: panels are missing that close it, so nothing is stood up yet.',
      '"shellraise shape" says what is missing.',
    ]);
  const kinds = stockOfShape(shape, loaded.kinds);
  const list = arrangements(shape.shell, kinds, {
    interchangeable: shape.interchangeable,
    repaired: options.repaired ?? loaded.project?.places?.repaired ?? false,
    leaned: isLeaned(loaded.project?.places),
  });
  if (list.status !== 'arranged')
    throw new Ending(1, [`This shape cannot be arranged: ${list.reason}.`]);
  if (list.arrangements.length === 0)
    throw new Ending(1, ['This shape has no sound cut at the ground: nothing can stand.']);
  return { loaded, found, shape, kinds, list };
}

/** Whether the lead decided on a way up off the crowns: those are then listed as well. */
const isLeaned = (places: PlacesDecision | undefined): boolean => places?.wayUp.lean !== undefined;

/** As `stand`, with one of the arrangements stood up and numbered: as painted, unless that is to be
 * forgotten. */
export async function choose(
  file: string,
  options: StandOptions & { readonly unfreeze?: boolean },
): Promise<Chosen> {
  return chooseFrom(await stand(file, options), options.arrangement, options.unfreeze);
}

/** One of the arrangements, counted from 1; without a number the one that the project file keeps,
 * else the first. */
function chooseFrom(stood: Stood, asked?: number, unfreeze = false): Chosen {
  const { list, shape } = stood;
  const kept = asked === undefined ? keptIn(stood) : null;
  const number = asked ?? kept?.number ?? 1;
  const arrangement = list.arrangements[number - 1];
  if (arrangement === undefined)
    throw badInput(
      `--arrangement: found ${number}, expected 1 to ${list.arrangements.length}, as "shellraise places" lists them`,
    );
  const way = list.waysUp[arrangement.wayUp] as WayUp;
  const datumTurn = kept?.datumTurn ?? 0;
  const standing = standingShell(shape.shell, way, arrangement.cut, datumTurn);
  const { kinds } = stood;
  const { project } = stood.loaded;
  const frozen = unfreeze ? undefined : project?.places?.frozen;
  const { interchangeable } = shape;
  const numbers = numbersOf(shape.shell, kinds, way, standing, frozen, { interchangeable });
  return { ...stood, number, arrangement, way, datumTurn, standing, numbers };
}

/** The arrangement that the project file keeps, found again in the list; null where it keeps none.
 * Ends the command where the kept one is no longer there. */
function keptIn({
  loaded,
  shape,
  kinds,
  list,
}: Stood): { number: number; datumTurn: number } | null {
  const decision = loaded.project?.places;
  if (!decision) return null;
  const options = { interchangeable: shape.interchangeable };
  const decided = findDecided(shape.shell, kinds, decision, options);
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
      isNear(own.lean?.by, crown.lean?.by) &&
      isNear(own.lean?.towards, crown.lean?.towards) &&
      isNear(one.cut.height, height) &&
      one.cut.places.length === places.length
    );
  });
  if (at < 0) throw new Ending(1, ['The arrangement that the file keeps is not in the list.']);
  return { number: at + 1, datumTurn: decision.datumTurn };
}

/** Whether two numbers, radians or metres, are one but for rounding and a net fitted anew. */
const isNear = (a = 0, b = 0): boolean => Math.abs(a - b) < 1e-3;

/** The kinds with their sides as the whole net fits them: mirror images alike, and both sides of a
 * seam of one length. */
export const fittedKinds = ({ kinds, shape }: Stood): readonly Kind[] =>
  kinds.map((kind, k) => ({ ...kind, sides: shape.fittedSides[k] ?? kind.sides }));

/** Numbers of all shapes in which the chosen shell is the same: then what tells them apart does not
 * matter for it. */
export const shapesWith = ({ found, shape, kinds, standing }: Chosen): number[] =>
  shapesHolding(standing.shell, found.shapes, found.shapes.indexOf(shape), kinds).map((i) => i + 1);

/** What to do with the numbers when a decision is kept. */
export interface Keeping {
  readonly repaired: boolean;
  readonly freeze: boolean;
  readonly unfreeze: boolean;
}

/** Writes the chosen arrangement into the project file, the former file beside it as .previous.
 * Numbers that are frozen stay so; to freeze others in their stead needs `unfreeze` as well. */
export function keep(file: string, chosen: Chosen, { repaired, freeze, unfreeze }: Keeping): void {
  const { list, arrangement, datumTurn } = chosen;
  const project = projectOf(file, chosen);
  const decision = decisionFor(list, arrangement, repaired, datumTurn);
  const painted = unfreeze ? undefined : project.places?.frozen;
  if (freeze && painted && !bearsPainted(chosen))
    throw badInput(
      `${file}: places.frozen: found numbers that are frozen already, and this shell has others.`,
      'To forget those and freeze these: --unfreeze --freeze. To keep those: --keep alone.',
    );
  const frozen = painted ?? (freeze ? frozenOf(decision) : undefined);
  write(file, { ...project, places: { ...decision, ...(frozen && { frozen }) } });
}

/** Writes an order of lifts, each the numbers of its places, into the project file as the lead's own. */
export function keepOrder(file: string, chosen: Chosen, order: string[][]): void {
  const project = projectOf(file, chosen);
  write(file, { ...project, raising: { ...(project.raising ?? defaultRaising), order } });
}

/** Writes the project file without its frozen numbers; false where there are none. */
export function unfreeze(file: string, chosen: Chosen): boolean {
  const project = projectOf(file, chosen);
  if (!project.places?.frozen) return false;
  const { frozen: _, ...places } = project.places;
  write(file, { ...project, places });
  return true;
}

/** Whether the shell stands on the very places whose numbers are frozen. */
const bearsPainted = ({ numbers }: Chosen): boolean =>
  numbers.status === 'frozen' && numbers.idle.length === 0 && !numbers.painted.includes(0);

function projectOf(file: string, { loaded: { project } }: Chosen): Project {
  if (!project)
    throw badInput(`${file}: found a spreadsheet, expected a project file to keep a decision in`);
  return project;
}

function write(file: string, project: Project): void {
  const name = basename(file);
  writeAll(dirname(file), [
    { name: `${name}.previous`, text: readFileSync(file, 'utf8') },
    { name, text: writeProject(project) },
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
