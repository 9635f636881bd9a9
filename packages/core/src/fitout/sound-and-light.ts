// Echo and daylight in a shell. Sabine's law for how long sound lasts; the wall as a mirror that gathers
// sound; daylight through clear panels by the mean daylight factor.

import { assertBetween } from '../loads/doors.ts';
import { fromMemory, type Provenance } from '../loads/provenance.ts';

/** Sources of what is reckoned here. */
export const ROOM_SOURCES: readonly Provenance[] = [
  fromMemory('W. C. Sabine: T = 0.161 V / A'),
  fromMemory('mean daylight factor: CIBSE and BRE, D = τ A θ / (S (1 − ρ²))'),
];

/** Seconds for sound to fall by 60 dB: 0.161 V / A, V in cubic metres, A the absorbing area (each
 * surface times its share absorbed), square metres. Holds for even rooms with little absorption: a bare
 * round shell gathers its echo and rings longer at the focus. RangeError for none of either. */
export function sabine(volume: number, absorbing: number): number {
  assertBetween('volume', volume, 0.1, 1e7, 'm³');
  assertBetween('absorbing area', absorbing, 1e-3, 1e6, 'm²');
  return (0.161 * volume) / absorbing;
}

/** Absorbing area to be added so that sound lasts so long, square metres; 0 where it already does. */
export const absorbingWanted = (volume: number, absorbing: number, seconds: number): number =>
  Math.max(0, (0.161 * volume) / seconds - absorbing);

/** Where a round wall of `radius` gathers sound from a source `off` metres from its centre, on the line
 * through both: metres from the centre on the far side (paraxial mirror), by the wall behind the centre
 * as the source sees it. At the centre it comes back to the centre. RangeError for a source outside. */
export function soundFocus(radius: number, off: number): number {
  assertBetween('radius', radius, 0.5, 100, 'm');
  assertBetween('source from the centre', off, 0, radius, 'm');
  // 1/s + 1/s' = 2/R with s = R + off from the far wall.
  const s = radius + off;
  return radius - (radius * s) / (2 * s - radius);
}

/** Share of the wall, seen from the centre, to be covered so that its echo there falls by `drop`
 * decibels: the wall absorbs the share `bare`, the cover `covered`. More than 1: that cover can't do it. */
export function coverForEcho(drop: number, bare: number, covered: number): number {
  assertBetween('drop', drop, 0, 60, 'dB');
  assertBetween('share absorbed by the wall', bare, 0, 0.99);
  assertBetween('share absorbed by the cover', covered, 0, 1);
  if (covered <= bare) return drop === 0 ? 0 : Number.POSITIVE_INFINITY;
  return ((1 - bare) * (1 - 10 ** (-drop / 10))) / (covered - bare);
}

/** Mean daylight factor, a share: τ A θ / (S (1 − ρ²)). `clear` panels' area and `surface` of the whole
 * inside with the floor, square metres; `through`: light that the clear panels let by; `sky`: degrees of
 * sky seen from them, 90 for upright and open, 180 for level; `bright`: mean share that the inside throws
 * back. */
export function daylightFactor(room: {
  readonly clear: number;
  readonly surface: number;
  readonly through: number;
  readonly skyDeg: number;
  readonly bright: number;
}): number {
  const { clear, surface, through, skyDeg, bright } = room;
  assertBetween('inside surface', surface, 0.1, 1e6, 'm²');
  assertBetween('clear panels', clear, 0, surface, 'm²');
  assertBetween('light let through', through, 0, 1);
  assertBetween('sky seen', skyDeg, 0, 180, '°');
  assertBetween('light thrown back', bright, 0, 0.95);
  return (through * clear * skyDeg) / (surface * (1 - bright ** 2)) / 100;
}
