// The main job, step by step: pile -> shapes -> what can stand -> one standing shell.

import {
  type Arrangement,
  type Arrangements,
  arrangements,
  type Identification,
  type Shape,
  type Standing,
  standingShell,
  type WayUp,
} from '@shellraise/core';
import { badInput, Ending } from './ending.ts';
import { identification } from './identification.ts';
import { type LoadedPile, loadPile } from './load.ts';
import type { StandOptions } from './options.ts';

/** A shape and what the stock can make of it. */
export interface Stood {
  readonly loaded: LoadedPile;
  readonly found: Identification;
  readonly shape: Shape;
  readonly list: Arrangements;
}

/** One arrangement, standing. */
export interface Chosen extends Stood {
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
    repaired: options.repaired ?? false,
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

/** One of the arrangements, counted from 1. */
export function chooseFrom(stood: Stood, number: number): Chosen {
  const { list, shape } = stood;
  const arrangement = list.arrangements[number - 1];
  if (arrangement === undefined)
    throw badInput(
      `--arrangement: found ${number}, expected 1 to ${list.arrangements.length}, as "shellraise places" lists them`,
    );
  const way = list.waysUp[arrangement.wayUp] as WayUp;
  const standing = standingShell(shape.shell, way, arrangement.cut);
  return { ...stood, arrangement, way, standing };
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
