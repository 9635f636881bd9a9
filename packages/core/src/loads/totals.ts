// Forces on panels and their totals: drag, lift and overturning, to check laws and size anchors by.

import { add, cross, dot, pointAt, subtract, type Vec3 } from '../math/vector.ts';
import type { PanelFaces } from './panels.ts';

/** A load on each place that has a panel: at the centre of its area, N, in the shell's frame. */
export interface PanelForces {
  /** Places loaded. */
  readonly places: Int32Array;
  /** Net pressure, Pa, positive inward, one for each of `places`; 0 where the load is none. */
  readonly pressure: Float64Array;
  /** Force, stride 3, N. */
  readonly force: Float64Array;
}

/** Force and moment of loads about a point. */
export interface Totals {
  /** N. */
  readonly force: Vec3;
  /** N·m, right-handed. */
  readonly moment: Vec3;
}

/** Forces of a pressure on panels: place by place coefficient × velocity pressure (Pa) × area,
 * inward where positive.
 * Source: p = q c, every code's form. */
export function pressureForces(
  faces: PanelFaces,
  places: ArrayLike<number>,
  coefficient: Float64Array,
  velocityPressure: number,
): PanelForces {
  const count = places.length;
  const pressure = new Float64Array(count);
  const force = new Float64Array(3 * count);
  for (let i = 0; i < count; i++) {
    const place = places[i] as number;
    const p = velocityPressure * (coefficient[place] as number);
    pressure[i] = p;
    for (let x = 0; x < 3; x++) force[3 * i + x] = -p * (faces.area[3 * place + x] as number);
  }
  return { places: Int32Array.from(places), pressure, force };
}

/** Sum of forces and of their moments about a point (m, shell's frame).
 * Source: statics. */
export function totalsOf(faces: PanelFaces, loads: PanelForces, about: Vec3): Totals {
  let force: Vec3 = [0, 0, 0];
  let moment: Vec3 = [0, 0, 0];
  loads.places.forEach((place, i) => {
    const f = pointAt(loads.force, i);
    force = add(force, f);
    moment = add(moment, cross(subtract(pointAt(faces.centre, place), about), f));
  });
  return { force, moment };
}

/** Drag (along the wind), side force (to the left of one who faces the wind) and lift (up), N, of a
 * wind from `windFrom`, and the overturning moment: positive where it tips the shell downwind, N·m.
 * Source: statics. */
export function windTotals(
  totals: Totals,
  windFrom: number,
): { drag: number; side: number; lift: number; overturning: number } {
  const towards: Vec3 = [Math.cos(windFrom), Math.sin(windFrom), 0];
  const left: Vec3 = [-Math.sin(windFrom), Math.cos(windFrom), 0];
  return {
    drag: -dot(totals.force, towards),
    side: dot(totals.force, left),
    lift: totals.force[2],
    // A force downwind above the point turns about the axis to the right of one who faces the wind.
    overturning: -dot(totals.moment, left),
  };
}

/** The loads with all forces and pressures times a factor.
 * Source: none, plain arithmetic. */
export const scaledForces = (loads: PanelForces, factor: number): PanelForces => ({
  places: loads.places,
  pressure: loads.pressure.map((p) => p * factor),
  force: loads.force.map((f) => f * factor),
});

/** Loads on the same panels, added up; Error where the places differ.
 * Source: none, plain arithmetic. */
export function addedForces(a: PanelForces, b: PanelForces): PanelForces {
  if (a.places.length !== b.places.length || a.places.some((place, i) => place !== b.places[i]))
    throw new Error('loads on different panels were to be added');
  return {
    places: a.places,
    pressure: a.pressure.map((p, i) => p + (b.pressure[i] as number)),
    force: a.force.map((f, i) => f + (b.force[i] as number)),
  };
}

/** Overturning moment about the middle of the base, N·m, that any pressure law gives a sphere:
 * drag × height of the sphere's centre above the base (its pressures all pass through the centre).
 * Source: own derivation; a check on panels, which are flat and come within half a percent. */
export const sphereOverturning = (drag: number, baseZ: number): number => -drag * baseZ;
