// The noise of one reading as the pile itself shows it: panels read more than once differ by noise
// alone. The stated noise is overruled only where enough repeats show clearly more; were it left
// too small, every kind would fall apart into several.

import { turned } from '../math/cyclic.ts';
import type { Panel, PanelReading } from './panels.ts';
import { fromOtherFace, nearestTurn } from './polygon.ts';
import { LONE_Z, NOISE_DOF, NOISE_Z } from './tolerances.ts';

/** Noise of one side of one reading, metres. */
export interface ReadingNoise {
  /** As the file states it. */
  readonly stated: number;
  /** As repeated readings of one panel show it (robust), else as the scatter of kinds does where it
   * is clearly more than stated; null where neither is known. */
  readonly found: number | null;
  /** What the pile was worked up with. */
  readonly used: number;
}

/** One kind as it shows the noise: its sides and what its readings scatter. */
export interface Scattered {
  readonly sides: readonly number[];
  readonly scatter: { readonly chiSquare: number; readonly freedom: number };
}

/** Noise over the assumed one as kinds that stand alone show it, where that is clear; 1 where they
 * bear the assumption out; null where too few stand alone. A kind stands alone when no other is so
 * near that noise may have torn the two from each other. `sd` is the noise assumed, metres. */
export function noiseFactor(kinds: readonly Scattered[], sd: number): number | null {
  const alone = kinds.filter((a, k) =>
    kinds.every((b, j) => j === k || a.sides.length !== b.sides.length || farApart(a, b, sd)),
  );
  const freedom = alone.reduce((sum, kind) => sum + kind.scatter.freedom, 0);
  if (freedom < NOISE_DOF) return null;
  const factor = Math.sqrt(alone.reduce((sum, kind) => sum + kind.scatter.chiSquare, 0) / freedom);
  return factor > 1 + NOISE_Z / Math.sqrt(2 * freedom) ? factor : 1;
}

function farApart(a: Scattered, b: Scattered, sd: number): boolean {
  const { turn } = nearestTurn(a.sides, b.sides);
  return turned(a.sides, turn).some((x, i) => Math.abs(x - (b.sides[i] as number)) > LONE_Z * sd);
}

/** The noise of the readings, each corrected by `correct`. */
export function readingNoise(
  panels: readonly Panel[],
  stated: number,
  correct: (reading: PanelReading) => readonly number[],
): ReadingNoise {
  const off = panels.flatMap((panel) => repeatResiduals(panel, correct));
  if (off.length < NOISE_DOF) return { stated, found: null, used: stated };
  const sizes = off.map(Math.abs).sort((a, b) => a - b);
  // Median of |normal| is 0.6745 standard deviations.
  const found = (sizes[Math.floor(sizes.length / 2)] as number) / 0.6745;
  const clear = found > stated * (1 + NOISE_Z * spreadOfMedian(off.length));
  return { stated, found, used: clear ? found : stated };
}

/** Relative standard deviation of the median of n absolute normal values: 1.167 / √n. */
const spreadOfMedian = (n: number): number => 1.167 / Math.sqrt(n);

/** Differences of repeats from the first reading of a panel, each scaled to one reading's noise. */
function repeatResiduals(
  panel: Panel,
  correct: (reading: PanelReading) => readonly number[],
): number[] {
  const [first, ...rest] = panel.readings;
  if (!first) return [];
  const base = correct(first);
  return rest.flatMap((reading) => {
    const sides = correct(reading);
    const straight = nearestTurn(sides, base);
    const back = nearestTurn(fromOtherFace(sides), base);
    const mirrored = (!reading.faceKnown || !first.faceKnown) && back.cost < straight.cost;
    const aligned = mirrored
      ? turned(fromOtherFace(sides), back.turn)
      : turned(sides, straight.turn);
    return aligned.map((x, i) => (x - (base[i] as number)) / Math.SQRT2);
  });
}
