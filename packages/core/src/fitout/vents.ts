// Air and wet: vents low and high by the rise of warm air, hours in which the wall drips inside, and the
// rain that arrives at the base.

import { GRAVITY } from '../frame/frame-loads.ts';
import { assertBetween } from '../loads/doors.ts';
import { fromMemory, type Provenance } from '../loads/provenance.ts';
import { dewPoint } from './weather.ts';

/** Sources of what is reckoned here. */
export const AIR_SOURCES: readonly Provenance[] = [
  fromMemory('rise of warm air through two openings: ASHRAE Handbook of Fundamentals, Ventilation'),
];

/** Share of an opening's area that air flows through: sharp edges, from memory. */
const DISCHARGE = 0.65;

/** The area of one opening that acts as a low and a high one behind each other, square metres. */
export const openingsInTurn = (low: number, high: number): number =>
  low === 0 || high === 0 ? 0 : 1 / Math.hypot(1 / low, 1 / high);

/** Air that rises through a low and a high opening (areas in square metres), cubic metres a second: C A
 * √(2 g h ΔT / T), h the metres between them, T the air outside in kelvin. No wind. */
export function stackFlow(vents: {
  readonly low: number;
  readonly high: number;
  readonly between: number;
  readonly warmer: number;
  readonly outsideC: number;
}): number {
  const { low, high, between, warmer, outsideC } = vents;
  assertBetween('low opening', low, 0, 50, 'm²');
  assertBetween('high opening', high, 0, 50, 'm²');
  assertBetween('height between openings', between, 0, 50, 'm');
  assertBetween('warmer inside', warmer, 0, 60, 'K');
  assertBetween('temperature outside', outsideC, -45, 60, '°C');
  const drive = (2 * GRAVITY * between * warmer) / (outsideC + 273.15);
  return DISCHARGE * openingsInTurn(low, high) * Math.sqrt(drive);
}

/** Area of each of two like openings, low and high, for so many changes of the air an hour, m²; Infinity
 * where no warmth or height drives it. */
export function ventArea(room: {
  readonly volume: number;
  readonly changesPerHour: number;
  readonly between: number;
  readonly warmer: number;
  readonly outsideC: number;
}): number {
  assertBetween('volume', room.volume, 0.1, 1e6, 'm³');
  assertBetween('changes of air', room.changesPerHour, 0, 100, 'an hour');
  const one = stackFlow({ ...room, low: 1, high: 1 });
  return (room.volume * room.changesPerHour) / 3600 / one;
}

/** A reading or a row of a climate table: outside and inside, °C and 0 to 1; how many hours it stands
 * for. */
export interface AirReading {
  readonly outsideC: number;
  readonly insideC: number;
  readonly insideHumidity: number;
  readonly hours: number;
}

/** Hours in which the wall drips inside, of those told. The wall inside is at the outside temperature
 * plus `share` of the difference: about 0.3 for one thin skin without insulation (film inside 0.13, film
 * outside 0.04 m²K/W: 0.24, from memory), less under a clear sky: `skyBelow` kelvin of it. */
export function condensation(
  readings: readonly AirReading[],
  share = 0.24,
  skyBelow = 2,
): { readonly hours: number; readonly of: number; readonly worst: number } {
  assertBetween('share of the warmth in the wall', share, 0, 1);
  assertBetween('wall below the air under a clear sky', skyBelow, 0, 15, 'K');
  let [hours, of, worst] = [0, 0, Number.POSITIVE_INFINITY];
  for (const one of readings) {
    assertBetween('hours of a reading', one.hours, 0, 8784, 'h');
    const wall = one.outsideC - skyBelow + share * (one.insideC - one.outsideC);
    const over = wall - dewPoint(one.insideC, one.insideHumidity);
    of += one.hours;
    if (over <= 0) hours += one.hours;
    worst = Math.min(worst, over);
  }
  return { hours, of, worst };
}

/** Rain that comes down at the base: litres a second in all and for each metre of its ring. `rainMmHour`
 * on the plan area of a round shell of `radius` metres, `ring` metres round. */
export function baseDrain(
  radius: number,
  ring: number,
  rainMmHour: number,
): { readonly all: number; readonly perMetre: number } {
  assertBetween('rain', rainMmHour, 0, 400, 'mm/h');
  assertBetween('radius', radius, 0.1, 100, 'm');
  assertBetween('ring', ring, 0.1, 1000, 'm');
  const all = (Math.PI * radius ** 2 * rainMmHour) / 3600;
  return { all, perMetre: all / ring };
}
