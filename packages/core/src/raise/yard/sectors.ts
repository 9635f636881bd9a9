// Sectors of the yard where nothing may lie, as people say them: `80-120, 300 to 20`.

import { toDegrees, toRadians } from '../../math/angle.ts';
import { type Read, refuse } from '../../measure/fault.ts';

/** Directions from … to, radians clockwise seen from above from the datum. */
export type Sector = readonly [from: number, to: number];

const SECTOR = /^(\d{1,3}(?:\.\d+)?)\s*°?\s*(?:-|–|to)\s*(\d{1,3}(?:\.\d+)?)\s*°?$/i;

/** The sectors of a text, degrees clockwise seen from above from the datum, set apart by commas; one that
 * goes on through the datum runs from the larger number to the smaller. None for an empty text; a fault
 * for anything else, for more than 360°, and for a sector without width. */
export function readSectors(text: string): Read<readonly Sector[]> {
  const parts = text.split(/[,;]/).filter((part) => part.trim() !== '');
  const sectors: Sector[] = [];
  for (const part of parts) {
    const found = SECTOR.exec(part.trim());
    const [from, to] = [Number(found?.[1]), Number(found?.[2])];
    if (!(from <= 360 && to <= 360 && from !== to))
      return refuse('sector', `"${part.trim()}"`, 'two directions of 0 to 360°, such as 80-120');
    sectors.push([toRadians(from), toRadians(to)]);
  }
  return { ok: true, value: sectors };
}

/** Sectors as they are typed, whole degrees. */
export const sectorsText = (sectors: readonly Sector[]): string =>
  sectors.map((ends) => ends.map((end) => Math.round(toDegrees(end))).join('-')).join(', ');
