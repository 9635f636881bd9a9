// Snow by ASCE 7-16, chapter 7. Pressures in Pa on the level plan.

import { assertBetween } from '../doors.ts';
import { numberOf, type Override } from '../numbers.ts';
import {
  commonPractice,
  confirmed,
  fromMemory,
  mergeSources,
  reckonedFrom,
  type Sourced,
  withSources,
} from '../provenance.ts';
import type { SnowCase, SnowPoint } from '../snow/panels.ts';

const DEG = Math.PI / 180;

/** Least slope, degrees, at which snow starts to slide, by thermal factor 1.0, 1.1 and 1.2. */
const SLIDES_FROM = { slippery: [5, 10, 15], rough: [30, 37.5, 45] } as const;

/** Figure 7.4-1, read in a public code base and reckoned again. */
const SLOPE_FIGURE = confirmed('ASCE 7-16, Fig. 7.4-1 (Cs)');

/** Throws RangeError for a ground snow load outside 0 to 20,000 Pa.
 * Source: none, limits catch slips. */
export const assertGroundSnow = (load: number): void =>
  assertBetween('ground snow load', load, 0, 20_000, 'Pa');

/** Flat roof snow load pf, Pa, from the ground snow load pg, Pa.
 * Source: ASCE 7-16, Eq. 7.3-1 (0.7 Ce Ct Is pg). */
export function flatRoofSnow(groundSnow: number, overrides: readonly Override[] = []): Sourced {
  assertGroundSnow(groundSnow);
  const [ce, ct, is] = (['asceSnowExposure', 'asceSnowThermal', 'asceSnowImportance'] as const).map(
    (key) => numberOf(key, overrides),
  ) as [Sourced, Sourced, Sourced];
  return withSources(
    reckonedFrom(0.7 * ce.value * ct.value * is.value * groundSnow, ce, ct, is),
    confirmed('ASCE 7-16, Eq. 7.3-1'),
  );
}

/** Slope factor Cs: 1 to the slope at which snow slides, straight down to 0 at 70°, 0 beyond. The
 * slope at which it slides goes straight between those for thermal factors 1.0, 1.1 and 1.2. Slope
 * in radians; RangeError outside 0 to π.
 * Source: ASCE 7-16, Fig. 7.4-1. */
export function slopeFactor(slope: number, thermal: number, slippery: boolean): number {
  assertBetween('slope', slope, 0, Math.PI, 'rad');
  assertBetween('thermal factor', thermal, 0.85, 1.3);
  const rows = SLIDES_FROM[slippery ? 'slippery' : 'rough'];
  const at = Math.min(2, Math.max(0, (thermal - 1) * 10));
  const below = Math.min(1, Math.floor(at));
  const from =
    (rows[below] as number) * (1 + below - at) + (rows[below + 1] as number) * (at - below);
  return Math.min(1, Math.max(0, (70 - slope / DEG) / (70 - from)));
}

/** The two cases of a dome: even, Cs pf at each slope; and drifted, on the quarter of the plan
 * downwind, fading over 22.5° on either side, nothing elsewhere. The drift is that of a curved roof
 * whose eaves are steeper than 30°: ½ pf at the crown, straight in slope to 2 pf Cs(30°)/Ce at 30°,
 * and beyond 2 pf Cs/Ce down to nothing at 70°. `slippery` where panels are smooth and nothing
 * holds the snow.
 * Source: ASCE 7-16, 7.6.2, 7.6.4 and Fig. 7.4-2, from memory; beyond 30° the slope factor stands
 * for the figure's straight lines (own). */
export function snowCases716(
  groundSnow: number,
  slippery: boolean,
  overrides: readonly Override[] = [],
): SnowCase[] {
  const pf = flatRoofSnow(groundSnow, overrides);
  const ct = numberOf('asceSnowThermal', overrides).value;
  const ce = numberOf('asceSnowExposure', overrides).value;
  const cs = (slope: number): number => slopeFactor(slope, ct, slippery);
  const drift = (slope: number): number => {
    const [crown, knee] = [0.5 * pf.value, (2 * pf.value * cs(30 * DEG)) / ce];
    if (slope < 30 * DEG) return crown + ((knee - crown) * slope) / (30 * DEG);
    return (2 * pf.value * cs(slope)) / ce;
  };
  return [
    {
      name: 'ASCE 7 even snow',
      pressure: ({ slope }) => pf.value * cs(slope),
      sources: mergeSources(pf.sources, [SLOPE_FIGURE]),
    },
    {
      name: 'ASCE 7 drifted snow',
      pressure: (point) => drift(point.slope) * sectorPart(point),
      sources: mergeSources(pf.sources, [
        SLOPE_FIGURE,
        fromMemory('ASCE 7-16, 7.6.2, 7.6.4 and Fig. 7.4-2 (drift on domes)'),
        commonPractice('drift beyond 30° by the slope factor'),
      ]),
    },
  ];
}

/** 1 within 45° of downwind, 0 from 67.5° on, straight in between; 1 at the crown.
 * Source: ASCE 7-16, 7.6.4, from memory. */
function sectorPart({ downwind, across }: Pick<SnowPoint, 'downwind' | 'across'>): number {
  if (downwind === 0 && across === 0) return 1;
  const off = Math.abs(Math.atan2(across, downwind)) / DEG;
  return Math.min(1, Math.max(0, (67.5 - off) / 22.5));
}
