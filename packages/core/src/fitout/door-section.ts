// The section of a door's header and jambs, as the lead names it: solid or hollow, right-angled. What a
// section takes of the stress that the lead allows. Nothing here chooses one.

import type { Section } from '../frame/elements/element.ts';
import { plateSection } from '../frame/mesh.ts';
import { commonPractice, type Provenance } from '../loads/provenance.ts';

/** A bar that header and jambs are made of. */
export interface DoorSection {
  /** Across, in the panels' plane, and from the skin inwards, metres. */
  readonly width: number;
  readonly depth: number;
  /** Of a hollow one, metres; null: solid. */
  readonly wall: number | null;
  /** Young's modulus, pascals. */
  readonly young: number;
  /** Stress that it may bear in use, pascals; null: nobody said. */
  readonly allowable: number | null;
}

/** Supposed where the lead names none: softwood of 45 by 95 mm on edge, of 8 GPa; what it may bear is not
 * supposed. Common practice, no source. */
export const SECTION_SUPPOSED: DoorSection = {
  width: 0.045,
  depth: 0.095,
  wall: null,
  young: 8e9,
  allowable: null,
};

/** The supposed section in words. */
export const SECTION_WORDS = 'a door frame of softwood, 45 by 95 mm on edge, 8 GPa';
/** Its source. */
export const SECTION_SOURCE: Provenance = commonPractice(`${SECTION_WORDS} supposed`);

/** Shear over Young's modulus of a bar whose shear modulus nobody tells: of an even material with a ratio
 * of Poisson of 0.3. Torsion of a door's frame hardly counts. */
export const SHEAR_SHARE = 1 / 2.6;

/** Area, second moments and torsion; y points outwards. A hollow one by the difference of two solid ones,
 * its torsion by Bredt. RangeError for sizes that are none, and a wall that leaves no hollow. */
export function barSection({ width, depth, wall }: DoorSection): Section {
  if (!(width > 0 && depth > 0))
    throw new RangeError(`section is ${width} by ${depth} m, expected both over 0`);
  const whole = plateSection(depth, width);
  if (wall === null) return whole;
  if (!(wall > 0 && 2 * wall < Math.min(width, depth)))
    throw new RangeError(
      `wall is ${wall} m, expected over 0 and under ${Math.min(width, depth) / 2} m`,
    );
  const hollow = plateSection(depth - 2 * wall, width - 2 * wall);
  const [w, d] = [width - wall, depth - wall];
  return {
    area: whole.area - hollow.area,
    iy: whole.iy - hollow.iy,
    iz: whole.iz - hollow.iz,
    torsion: (4 * (w * d) ** 2 * wall) / (2 * (w + d)),
  };
}

/** Section moduli about y (bending in the panels' plane) and z (bending inwards and outwards), metres³. */
export function moduliOf(section: DoorSection): { readonly y: number; readonly z: number } {
  const { iy, iz } = barSection(section);
  return { y: (2 * iy) / section.width, z: (2 * iz) / section.depth };
}

/** What an end of a piece bears: pull in newtons, moments about y and z in newton metres. */
export interface EndForces {
  readonly axial: number;
  readonly y: number;
  readonly z: number;
}

/** The greatest stress at an end, pascals: |N|/A + |My|/Wy + |Mz|/Wz, at a corner of the section (strength
 * of materials). */
export function stressAt(section: DoorSection, { axial, y, z }: EndForces): number {
  const moduli = moduliOf(section);
  return (
    Math.abs(axial) / barSection(section).area + Math.abs(y) / moduli.y + Math.abs(z) / moduli.z
  );
}

/** The push at which a piece between two hubs bends aside, its ends hinged, newtons (Euler). */
export function eulerLoad(section: DoorSection, length: number): number {
  const { iy, iz } = barSection(section);
  return (Math.PI ** 2 * section.young * Math.min(iy, iz)) / length ** 2;
}
