// A door and a thing's way of a standing shell, out of what its project says.

import type { FrameParts } from '../frame/parts.ts';
import type { Shell } from '../shell/shell.ts';
import { numberOrder } from '../stages/series.ts';
import { type Carry, type CarryAnswer, carryThrough } from './carry.ts';
import { type DoorAdvice, doorAdvice, doorOfPlaces } from './door.ts';
import { type DoorFrame, type DoorLoad, doorFrame } from './door-frame.ts';
import type { FitoutSettings } from './schema.ts';

/** A door as it is asked for. */
export interface DoorAsked {
  readonly shell: Shell;
  /** Its places, at least one. */
  readonly places: readonly number[];
  /** Where the wind mostly comes from, radians from the datum; null: not told. */
  readonly windFrom: number | null;
  /** What the frame is reckoned from. Null: it is not reckoned, which takes seconds. */
  readonly frame: { readonly parts: FrameParts; readonly load: DoorLoad } | null;
}

/** A door with its advice. */
export interface DoorTold {
  readonly advice: DoorAdvice;
  readonly frame: DoorFrame | null;
  readonly windFrom: number | null;
}

/** What a door asks for; `onProgress` is told 0 … 1. */
export function doorTold(
  { shell, places, windFrom, frame }: DoorAsked,
  onProgress?: (part: number) => void,
): DoorTold {
  const door = doorOfPlaces(shell, places);
  return {
    advice: doorAdvice(shell, door, windFrom ?? 0),
    frame: frame && doorFrame(shell, door, frame.parts, frame.load, onProgress),
    windFrom,
  };
}

/** How a thing passes the places left open, or the shell with so many panels (`placed`); `onProgress` is
 * told 0 … 1. */
export const carryTold = (
  shell: Shell,
  { seams }: Pick<FitoutSettings, 'seams'>,
  { leftOut, placed }: { readonly leftOut: readonly number[]; readonly placed: number | null },
  thing: Carry,
  onProgress?: (part: number) => void,
): CarryAnswer =>
  carryThrough(
    {
      ...{ shell, leftOut, placed },
      order: numberOrder(shell),
      flange: Math.max(0.005, seams.depth),
    },
    thing,
    onProgress ? { onProgress } : {},
  );
