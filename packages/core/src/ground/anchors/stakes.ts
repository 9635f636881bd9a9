// Driven stakes and bars: two values people have measured, and a formula in the diameter and the
// length in the ground.

import { confirmed, fromMemory } from '../../loads/provenance.ts';
import { type Read, refuse } from '../../measure/fault.ts';
import {
  type Capacity,
  elevationOf,
  KILOGRAM_FORCE,
  POUND_FORCE,
  type Pull,
  STEEPEST_GUY,
} from './capacity.ts';
import { type Soil, soilWords } from './soil.ts';

const lawn = confirmed('Anchoring in wet soil, InTents, June 2009: stake 1 in by 36 in in a lawn');
const barFormula = fromMemory('EN 13782 and EN 13814: bars driven into the ground');
const gravelBars = confirmed('A Swiss anchor maker: reinforcing bars 80 cm in firm gravelly soil');

/** Share of the oblique pull that a bar holds straight up: 6.5 to 10 in the bar formula. */
const STRAIGHT = 0.65;

/** Saturated ground holds about half (InTents). */
const SATURATED = 0.5;

/** What a stake 25 mm thick and 0.9 m long, driven most of its length, holds in an average lawn
 * along a guy; 0.65 of it straight up, and half of it in wet ground. Refused save in firm loam and
 * clay. */
export function lawnStake(soil: Soil, pull: Pull): Read<Capacity> {
  if (!soil.firm || (soil.kind !== 'loam' && soil.kind !== 'clay'))
    return refuse(
      'anchor',
      `a stake in ${soilWords(soil)}`,
      'firm loam or clay under grass: no published value, so enter a pull test',
    );
  const straight = pull.way === 'up';
  return {
    ok: true,
    value: {
      pull: 1000 * POUND_FORCE * (soil.wet ? SATURATED : 1) * (straight ? STRAIGHT : 1),
      basis: 'ultimate',
      sources: [lawn, ...(straight ? [barFormula] : [])],
      notes: [
        'Stakes 25 mm by 0.9 m, driven most of their length.',
        ...(soil.wet ? ['Halved for wet ground.'] : []),
        ...(straight ? ['Taken 0.65 times for a straight lift, as bars are.'] : []),
      ],
    },
  };
}

/** What a reinforcing bar 25 to 30 mm thick holds with 80 cm in firm gravelly soil: practice has 200
 * to 300 kg, and some were drawn at 100 kg; 200 kg counts as ultimate. Refused elsewhere. */
export function gravelBar(soil: Soil, pull: Pull): Read<Capacity> {
  if (!soil.firm || soil.kind !== 'gravel')
    return refuse('anchor', `a bar in ${soilWords(soil)}`, 'firm gravelly soil, or a pull test');
  const straight = pull.way === 'up';
  return {
    ok: true,
    value: {
      pull: 200 * KILOGRAM_FORCE * (soil.wet ? SATURATED : 1) * (straight ? STRAIGHT : 1),
      basis: 'ultimate',
      sources: [gravelBars, ...(straight ? [barFormula] : [])],
      notes: [
        'Reinforcing bars 25 to 30 mm thick, 0.8 m in the ground; some were seen to draw at half of this.',
      ],
    },
  };
}

/** The bar formula's coefficients, N for each centimetre of diameter and of length in the ground. */
const coefficients = { cohesiveUp: 6.5, cohesiveOblique: 10, dense: 17 } as const;

/** Design resistance of a bar by its diameter and its length in the ground, metres: 6.5 d l straight
 * up and 10 d l along a guy at 45° or less from the ground in at least stiff cohesive soil, 17 d l
 * in dense sand or gravel (d and l in cm, N). Refused in soft ground, hardpan and paving, for bars
 * that are no bars (10 to 60 mm, 0.3 to 2 m). Between 45° and straight up the lower value holds. */
export function drivenBar(diameter: number, depth: number, soil: Soil, pull: Pull): Read<Capacity> {
  if (!(diameter >= 0.01 && diameter <= 0.06))
    return refuse('anchor.diameter', `${diameter} m`, '0.01 to 0.06 m');
  if (!(depth >= 0.3 && depth <= 2)) return refuse('anchor.depth', `${depth} m`, '0.3 to 2 m');
  if (!soil.firm || soil.kind === 'paved' || soil.kind === 'hardpan')
    return refuse(
      'anchor',
      `a bar in ${soilWords(soil)}`,
      'firm clay, loam, sand or gravel: the formula is for no other, so enter a pull test',
    );
  const dense = soil.kind === 'sand' || soil.kind === 'gravel';
  const oblique = elevationOf(pull) <= STEEPEST_GUY + 1e-9;
  const { cohesiveUp, cohesiveOblique, dense: denseValue } = coefficients;
  const each = dense ? denseValue : oblique ? cohesiveOblique : cohesiveUp;
  const halved = soil.wet && !dense;
  return {
    ok: true,
    value: {
      pull: each * diameter * 100 * depth * 100 * (halved ? SATURATED : 1),
      basis: 'design',
      sources: [barFormula, ...(halved ? [lawn] : [])],
      notes: [
        `Round bars ${Math.round(diameter * 1000)} mm thick, ${Math.round(depth * 1000)} mm in the ground.`,
        ...(halved ? ['Halved for wet ground.'] : []),
      ],
    },
  };
}
