// Water on the wall: its permittivity, how thick a film rain makes on a round roof, and that film as a
// layer. A whole film is an upper bound: real walls shed much of it in drops and rills, waxed ones most.

import { GRAVITY } from '../frame/frame-loads.ts';
import { assertBetween } from '../loads/doors.ts';
import { fromMemory } from '../loads/provenance.ts';

import { assertFrequency, type Layer } from './wave.ts';

/** Sources of what is reckoned here. */
export const WATER_SOURCES = [
  fromMemory('permittivity of water: double Debye form of Recommendation ITU-R P.840'),
  fromMemory('film of rain on a round roof: laminar flow, Gibble 1964 and Blevis 1965'),
] as const;

/** Relative permittivity of fresh water, real and imaginary part (positive: loss), at a frequency (Hz)
 * and temperature (°C, 0 to 40). ITU-R P.840 double Debye, from memory. RangeError out of range. */
export function waterPermittivity(
  frequency: number,
  temperatureC: number,
): readonly [number, number] {
  assertFrequency(frequency);
  assertBetween('temperature of water', temperatureC, 0, 40, '°C');
  const f = frequency / 1e9;
  const theta = 300 / (temperatureC + 273.15) - 1;
  const [e0, e1, e2] = [77.66 + 103.3 * theta, 0.0671 * (77.66 + 103.3 * theta), 3.52];
  const first = 20.2 - 146 * theta + 316 * theta ** 2;
  const second = 39.8 * first;
  const debye = (step: number, at: number): readonly [number, number] => {
    const share = step / (1 + (f / at) ** 2);
    return [share, (share * f) / at];
  };
  const [a, b] = [debye(e0 - e1, first), debye(e1 - e2, second)];
  return [a[0] + b[0] + e2, a[1] + b[1]];
}

/** Kinematic viscosity of water at 10 °C, m²/s. */
const WATER_VISCOSITY = 1.307e-6;

/** Thickness, metres, of the whole film that rain of `rate` (metres a second; 1 mm/h is 2.8e-7) makes on
 * a sphere of `radius` (metres): (3 ν R r / 2 g)^(1/3), laminar, near the crown. 0 in no rain. */
export function rainFilm(rate: number, radius: number, viscosity = WATER_VISCOSITY): number {
  assertBetween('rain', rate, 0, 1e-4, 'm/s');
  assertBetween('radius', radius, 0.1, 100, 'm');
  return Math.cbrt((3 * viscosity * rate * radius) / (2 * GRAVITY));
}

/** A film of water as a layer. */
export function waterLayer(thickness: number, frequency: number, temperatureC = 10): Layer {
  const [permittivity, loss] = waterPermittivity(frequency, temperatureC);
  return { thickness, permittivity, lossTangent: loss / permittivity };
}
