// Self-weight of panels and a person on the shell: forces straight down.

import { norm, pointAt } from '../../math/vector.ts';
import type { Kind } from '../../pile/kind.ts';
import type { Shell } from '../../shell/shell.ts';
import { assertBetween } from '../doors.ts';
import { numberOf, type Override } from '../numbers.ts';
import { facesOf, type PanelFaces } from '../panels.ts';
import { mergeSources, type Provenance, reckonedFrom, type Sourced } from '../provenance.ts';
import type { PanelForces } from '../totals.ts';

/** The heaviest panel taken, kg: heavier ones no crew lifts. */
const MOST_MASS = 500;

/** Weights of panels, and the places of which nobody knows it. */
export interface Weights {
  readonly loads: PanelForces;
  /** Places whose mass is unknown: they are in `loads` with no weight. */
  readonly unknown: readonly number[];
  /** Sum of the known masses, kg. */
  readonly mass: number;
}

/** Weight of each panel at the centre of its area. `massOf` tells a place's mass in kg with its
 * source, bolts and flanges in it, or null where it is unknown; a place with unknown mass is named,
 * never guessed. RangeError for a mass outside 0 to 500 kg.
 * Source: weight = mass × gravity. */
export function selfWeight(
  places: ArrayLike<number>,
  massOf: (place: number) => Sourced | null,
  overrides: readonly Override[] = [],
): Sourced<Weights> {
  const gravity = numberOf('gravity', overrides);
  const force = new Float64Array(3 * places.length);
  const unknown: number[] = [];
  const sources: (readonly Provenance[])[] = [gravity.sources];
  let mass = 0;
  for (let i = 0; i < places.length; i++) {
    const own = massOf(places[i] as number);
    if (own === null) {
      unknown.push(places[i] as number);
      continue;
    }
    assertBetween(`mass of the panel at place ${places[i]}`, own.value, 0, MOST_MASS, 'kg');
    mass += own.value;
    force[3 * i + 2] = -own.value * gravity.value;
    sources.push(own.sources);
  }
  const loads = {
    places: Int32Array.from(places),
    pressure: new Float64Array(places.length),
    force,
  };
  return { value: { loads, unknown, mass }, sources: mergeSources(...sources) };
}

/** Mass of each place from the mass of a square metre (kg/m²) and the panel's area.
 * Source: mass = area × mass of a square metre. */
export function massByArea(faces: PanelFaces, perSquareMetre: Sourced): (place: number) => Sourced {
  assertBetween('mass of a square metre', perSquareMetre.value, 0.1, 200, 'kg/m²');
  return (place) =>
    reckonedFrom(norm(pointAt(faces.area, place)) * perSquareMetre.value, perSquareMetre);
}

/** Mass of each place of a shell: its kind's as weighed, else by the mass of a square metre (kg/m²,
 * null: unknown) and its area, else null.
 * Source: mass = area × mass of a square metre. */
export function placeMasses(
  shell: Shell,
  kinds: readonly Pick<Kind, 'mass'>[],
  perSquareMetre: number | null,
): (place: number) => Sourced | null {
  const byArea =
    perSquareMetre === null
      ? () => null
      : massByArea(facesOf(shell), { value: perSquareMetre, sources: [PER_AREA] });
  return (place) => {
    const mass = kinds[shell.kind[place] as number]?.mass ?? null;
    return mass === null ? byArea(place) : { value: mass, sources: [WEIGHED] };
  };
}

const WEIGHED: Provenance = { text: 'mass of its kind, as weighed', confirmation: 'entered' };
const PER_AREA: Provenance = { text: 'mass of a square metre of panel', confirmation: 'entered' };

/** A person on the shell, N straight down at one place or hub; 0 where nobody may go up. The worst
 * place is for the one who asks to find.
 * Source: ASCE 7-16, Table 4.3-1 (300 lb), from memory; EN 1991-1-1 has 1 kN on roofs. */
export function personLoad(onShell: boolean, overrides: readonly Override[] = []): Sourced {
  return onShell ? numberOf('personLoad', overrides) : { value: 0, sources: [] };
}
