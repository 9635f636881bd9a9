// The fit-out of a chosen arrangement: what the file says with what the command line says in its place, the
// door, and what must pass.

import {
  type Carry,
  type CarryAnswer,
  carryThrough,
  type DoorAdvice,
  type DoorFrame,
  defaultFitout,
  doorAdvice,
  doorFrame,
  doorOfPlaces,
  type FitoutBrief,
  type FitoutSettings,
  frameParts,
  type LastPassing,
  lastPassing,
  numberOrder,
  openPlaces,
  placeMasses,
  readFitout,
  unknownParts,
} from '@shellraise/core';
import { orEnd } from './ground-site.ts';
import type { Chosen } from './job.ts';
import { keptOpenings } from './openings.ts';

/** What the file says of the fit-out, with parts of it put in its place. */
export function fitoutSettings(
  file: string,
  { loaded }: Chosen,
  typed: Partial<FitoutSettings> & {
    readonly diameter?: number;
    readonly skylineDeg?: number[];
  } = {},
): FitoutSettings {
  const { diameter, skylineDeg, ...parts } = typed;
  const said = loaded.project?.fitout ?? defaultFitout;
  const dish = diameter === undefined ? said.dish : { ...said.dish, diameter };
  const horizon =
    skylineDeg === undefined ? said.horizon : { ...said.horizon, skylineDeg: [...skylineDeg] };
  return orEnd(file, readFitout({ ...said, ...parts, dish, horizon }));
}

/** What the answers take from elsewhere in the project. */
export const fitoutBrief = (
  { standing, numbers, loaded }: Chosen,
  stepDeg: number,
): FitoutBrief => ({
  shell: standing.shell,
  numbers: numbers.numbers,
  order: numberOrder(standing.shell),
  windFrom: loaded.project?.wishes?.windFrom ?? 0,
  snow: loaded.project?.loads?.groundSnow ?? null,
  stepDeg,
  forecast: loaded.project?.crew?.forecast ?? [],
});

/** Places left open: by the decision that the file keeps, and by the fit-out's door. */
export function openOf(file: string, chosen: Chosen, settings: FitoutSettings): number[] {
  return orEnd(file, openPlaces(chosen.numbers.numbers, keptOpenings(chosen), settings));
}

/** The door with its advice; null where no place is left open. */
export interface ChosenDoor {
  readonly advice: DoorAdvice;
  readonly frame: DoorFrame | null;
  readonly windFrom: number | null;
}

/** The advice for the places left open; with the frame it takes seconds. */
export function doorOf(
  chosen: Chosen,
  open: readonly number[],
  withFrame: boolean,
  onProgress?: (part: number) => void,
): ChosenDoor | null {
  if (open.length === 0) return null;
  const { standing, loaded, kinds } = chosen;
  const { shell } = standing;
  const door = doorOfPlaces(shell, open);
  const windFrom = loaded.project?.wishes?.windFrom ?? null;
  const parts = frameParts(loaded.project?.parts ?? unknownParts);
  const masses = placeMasses(shell, kinds, loaded.project?.loads?.panelMass ?? null);
  return {
    advice: doorAdvice(shell, door, windFrom ?? 0),
    frame: withFrame
      ? doorFrame(
          shell,
          door,
          parts,
          {
            massOf: (place) => masses(place)?.value ?? null,
            snow: loaded.project?.loads?.groundSnow ?? null,
            section: loaded.project?.fitout?.doorFrame ?? null,
          },
          onProgress,
        )
      : null,
    windFrom,
  };
}

/** The latest moment at which a thing passes the shell while it is built. */
export const lastOf = (
  { standing }: Chosen,
  settings: FitoutSettings,
  leftOut: readonly number[],
  thing: Carry,
  onProgress: (part: number) => void,
): LastPassing =>
  lastPassing(
    {
      ...{ shell: standing.shell, leftOut },
      order: numberOrder(standing.shell),
      flange: Math.max(0.005, settings.seams.depth),
    },
    thing,
    { onProgress },
  );

/** Whether a thing passes the places left open, or the shell with so many panels. */
export const carryOf = (
  { standing }: Chosen,
  settings: FitoutSettings,
  leftOut: readonly number[],
  thing: Carry,
  placed: number | null,
  onProgress?: (part: number) => void,
): CarryAnswer =>
  carryThrough(
    {
      ...{ shell: standing.shell, leftOut, placed },
      order: numberOrder(standing.shell),
      flange: Math.max(0.005, settings.seams.depth),
    },
    thing,
    onProgress ? { onProgress } : {},
  );
