// Where a door, a hatch or a thing's way through may be in a standing shell, and what it costs the frame.

import {
  doorOutline,
  frameParts,
  hatchesFor,
  type Opening,
  openingStiffness,
  openingsFor,
  type PartsKnown,
  type Shell,
  type StiffnessKept,
  unknownParts,
  type ViewPoint,
} from '@shellraise/core';

/** What an opening is asked for, metres: a rectangle on the floor, a circle square to the wall, or a
 * thing's section, its corners across and up from the floor, anticlockwise and about their middle. */
export type OpeningAsked =
  | { readonly as: 'door'; readonly width: number; readonly height: number }
  | { readonly as: 'hatch'; readonly diameter: number }
  | { readonly as: 'thing'; readonly outline: readonly ViewPoint[] };

/** Every spot where such an opening may be in a standing shell. */
export function doors(shell: Shell, asked: OpeningAsked): readonly Opening[] {
  switch (asked.as) {
    case 'door':
      return openingsFor(shell, { outline: doorOutline(asked.width, asked.height) });
    case 'hatch':
      return hatchesFor(shell, { diameter: asked.diameter });
    case 'thing':
      return openingsFor(shell, { outline: asked.outline });
  }
}

/** What is left of a standing shell's stiffness with each of these sets of places left out. */
export function openingsLeave(
  shell: Shell,
  parts: PartsKnown | undefined,
  openings: readonly (readonly number[])[],
): readonly StiffnessKept[] {
  return openings.map(openingStiffness(shell, frameParts(parts ?? unknownParts)));
}
