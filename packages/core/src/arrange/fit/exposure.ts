// How exposed a place is to weather and to being hard to reach: by its height, and by the side that
// the wind blows on. Our own judgement, no source: only which place is worse is taken from it.

/** Part of exposure that the wind's side makes, where its direction is known. */
const BY_WIND = 0.3;

/** Mended panels are used up where exposure is below this, and spared above it. */
export const LOW_ENOUGH = 0.35;

/** Exposure of a place, 0 (at the ground, in the lee) … 1 (at the crown, in the wind). `rise`: how high
 * its middle stands, 0 … 1; `azimuth` of its middle and `windFrom`, radians anticlockwise seen from above
 * from the datum; without wind only height counts. */
export function exposureOf(rise: number, azimuth: number, windFrom: number | undefined): number {
  if (windFrom === undefined) return rise;
  const toWind = (1 + Math.cos(azimuth - windFrom)) / 2;
  return (1 - BY_WIND) * rise + BY_WIND * toWind;
}
