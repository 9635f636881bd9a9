// The fit-out of a chosen arrangement: what the file says with what the command line says in its place, the
// door, and what must pass.

import {
  type Carry,
  type DoorTold,
  defaultFitout,
  doorTold,
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

/** The advice for the places left open, null where none is; with the frame it takes seconds. */
export function doorOf(
  { standing, loaded, kinds }: Chosen,
  places: readonly number[],
  withFrame: boolean,
  onProgress?: (part: number) => void,
): DoorTold | null {
  if (places.length === 0) return null;
  const { shell } = standing;
  const masses = placeMasses(shell, kinds, loaded.project?.loads?.panelMass ?? null);
  const frame = {
    parts: frameParts(loaded.project?.parts ?? unknownParts),
    load: {
      massOf: (place: number) => masses(place)?.value ?? null,
      snow: loaded.project?.loads?.groundSnow ?? null,
      section: loaded.project?.fitout?.doorFrame ?? null,
    },
  };
  const windFrom = loaded.project?.wishes?.windFrom ?? null;
  return doorTold({ shell, places, windFrom, frame: withFrame ? frame : null }, onProgress);
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
