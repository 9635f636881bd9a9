// A plane wave through flat layers between air and air, by the product of the layers' characteristic
// matrices. Time goes as exp(+jωt), so that a lossy permittivity is ε(1 − j tan δ). Born and Wolf,
// Principles of Optics, 1.6; both polarisations: TE has the electric field along the wall, TM the
// magnetic.

import { assertBetween } from '../loads/doors.ts';

/** Speed of light, m/s, exact. */
export const LIGHT_SPEED = 299_792_458;

/** A layer of a wall. */
export interface Layer {
  /** Metres, 0 or more. */
  readonly thickness: number;
  /** Relative permittivity, real part. */
  readonly permittivity: number;
  readonly lossTangent: number;
}

/** TE: electric field along the wall; TM: magnetic field along the wall. */
export type Polarisation = 'TE' | 'TM';

/** What becomes of a wave of power 1. */
export interface WaveShares {
  readonly transmitted: number;
  readonly reflected: number;
  readonly absorbed: number;
  /** Field let through, real and imaginary part, against the same way through air without the wall. */
  readonly field: readonly [number, number];
}

/** Frequencies that are reckoned with, Hz: below, a shell is small against the wave; above, laminates
 * are no longer even. */
export const FREQUENCIES = { least: 3e7, most: 1e11 } as const;

/** Thickest layer, metres. */
export const MOST_THICKNESS = 0.5;

/** Throws RangeError where a frequency is none that is reckoned with. */
export const assertFrequency = (frequency: number): void =>
  assertBetween('frequency', frequency, FREQUENCIES.least, FREQUENCIES.most, 'Hz');

/** Throws RangeError where a layer has no sense: thickness 0 to 0.5 m, permittivity 1 to 200 (water is
 * 80), loss tangent 0 to 10. */
function assertLayer({ thickness, permittivity, lossTangent }: Layer): void {
  assertBetween('thickness of a layer', thickness, 0, MOST_THICKNESS, 'm');
  assertBetween('permittivity', permittivity, 1, 200);
  assertBetween('loss tangent', lossTangent, 0, 10);
}

/**
 * What flat layers, the outermost first, do to a plane wave of `frequency` (Hz) that meets them at
 * `cosine` of the angle of incidence (1 is square on). No layer: all goes through. At a cosine of 0 the
 * wave grazes: all is reflected. RangeError for a frequency, layer or cosine out of its range.
 */
export function throughLayers(
  layers: readonly Layer[],
  frequency: number,
  cosine: number,
  polarisation: Polarisation,
): WaveShares {
  assertFrequency(frequency);
  assertBetween('cosine of incidence', cosine, 0, 1);
  layers.forEach(assertLayer);
  if (layers.every(({ thickness }) => thickness === 0))
    return { transmitted: 1, reflected: 0, absorbed: 0, field: [1, 0] };
  if (cosine === 0) return { transmitted: 0, reflected: 1, absorbed: 0, field: [0, 0] };
  const wave = (2 * Math.PI * frequency) / LIGHT_SPEED;
  // The matrix so far: m11, m12, m21, m22, each complex.
  let m: Matrix = [1, 0, 0, 0, 0, 0, 1, 0];
  for (const layer of layers) m = times(m, layerMatrix(layer, wave, cosine, polarisation));
  const outer = polarisation === 'TE' ? cosine : 1 / cosine;
  const b: Complex = [m[0] + m[2] * outer, m[1] + m[3] * outer];
  const c: Complex = [m[4] + m[6] * outer, m[5] + m[7] * outer];
  const sum: Complex = [outer * b[0] + c[0], outer * b[1] + c[1]];
  const difference: Complex = [outer * b[0] - c[0], outer * b[1] - c[1]];
  const through = over([2 * outer, 0], sum);
  const back = over(difference, sum);
  const transmitted = through[0] ** 2 + through[1] ** 2;
  const reflected = back[0] ** 2 + back[1] ** 2;
  // Without the wall the wave would have gone as exp(−j k d cos θ).
  const depth = layers.reduce((total, { thickness }) => total + thickness, 0);
  const lag = wave * depth * cosine;
  const field = product(through, [Math.cos(lag), Math.sin(lag)]);
  return { transmitted, reflected, absorbed: Math.max(0, 1 - transmitted - reflected), field };
}

/** Decibels lost where a share of the power is left; Infinity where none is. */
export const lossDb = (share: number): number => -10 * Math.log10(share);

/** Thicknesses up to `most` (metres) at which a wall of one lossless material lets all through at a
 * frequency and cosine of incidence: whole half waves in the material. RangeError as above. */
export function halfWaveThicknesses(
  permittivity: number,
  frequency: number,
  most: number,
  cosine = 1,
): number[] {
  assertFrequency(frequency);
  assertLayer({ thickness: 0, permittivity, lossTangent: 0 });
  assertBetween('cosine of incidence', cosine, 0, 1);
  assertBetween('greatest thickness', most, 0, MOST_THICKNESS, 'm');
  const one = LIGHT_SPEED / (2 * frequency * Math.sqrt(permittivity - 1 + cosine ** 2));
  return Array.from({ length: Math.floor(most / one) }, (_, i) => (i + 1) * one);
}

type Complex = readonly [number, number];
type Matrix = readonly [number, number, number, number, number, number, number, number];

function layerMatrix(
  { thickness, permittivity, lossTangent }: Layer,
  wave: number,
  cosine: number,
  polarisation: Polarisation,
): Matrix {
  const eps: Complex = [permittivity, -permittivity * lossTangent];
  const q = root([eps[0] - 1 + cosine ** 2, eps[1]]);
  const admittance = polarisation === 'TE' ? q : over(eps, q);
  const [re, im] = [wave * thickness * q[0], wave * thickness * q[1]];
  const cosineOf: Complex = [Math.cos(re) * Math.cosh(im), -Math.sin(re) * Math.sinh(im)];
  const sineOf: Complex = [Math.sin(re) * Math.cosh(im), Math.cos(re) * Math.sinh(im)];
  const jSine: Complex = [-sineOf[1], sineOf[0]];
  return [...cosineOf, ...over(jSine, admittance), ...product(jSine, admittance), ...cosineOf];
}

const product = (a: Complex, b: Complex): Complex => [
  a[0] * b[0] - a[1] * b[1],
  a[0] * b[1] + a[1] * b[0],
];

function over(a: Complex, b: Complex): Complex {
  const size = b[0] ** 2 + b[1] ** 2;
  return [(a[0] * b[0] + a[1] * b[1]) / size, (a[1] * b[0] - a[0] * b[1]) / size];
}

/** The root with a real part of 0 or more. */
function root([re, im]: Complex): Complex {
  const size = Math.hypot(re, im);
  const real = Math.sqrt(Math.max(0, (size + re) / 2));
  const other = Math.sqrt(Math.max(0, (size - re) / 2));
  return [real, im < 0 ? -other : other];
}

function times(a: Matrix, b: Matrix): Matrix {
  const at = (m: Matrix, i: number): Complex => [m[2 * i] as number, m[2 * i + 1] as number];
  const cell = (row: number, column: number): Complex => {
    const p = product(at(a, 2 * row), at(b, column));
    const q = product(at(a, 2 * row + 1), at(b, 2 + column));
    return [p[0] + q[0], p[1] + q[1]];
  };
  return [...cell(0, 0), ...cell(0, 1), ...cell(1, 0), ...cell(1, 1)];
}
