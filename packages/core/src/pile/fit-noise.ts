// Kinds and noise fitted together: a noise taken too small tears kinds apart, one taken too large
// runs them into each other.

import { type FittedKinds, fitKinds } from './fit-kinds.ts';
import { itemOf } from './mixture.ts';
import { noiseFactor, type ReadingNoise } from './noise.ts';
import type { Panel, PanelReading } from './panels.ts';
import type { KindRow } from './schema.ts';
import { NOISE_DOF, NOISE_STEP } from './tolerances.ts';

/** Fitted kinds, one part for each number of sides, from the fewest. */
export type Parts = readonly FittedKinds[];

/** The kinds at the noise that they bear out, from a first guess on. Were the noise taken too small,
 * every kind would fall apart into several; so kinds that stand alone may raise it, and where none
 * does, a larger noise is taken as long as it accounts better (BIC) for what was read. */
export function fitToNoise(
  fit: (sd: number) => Parts,
  start: ReadingNoise,
): { parts: Parts; noise: ReadingNoise } {
  let [parts, noise] = [fit(start.used), start];
  for (let pass = 0; pass < NOISE_PASSES; pass++) {
    const kinds = parts.flatMap((part) => part.kinds);
    const factor = noiseFactor(kinds, noise.used);
    const readings = kinds.reduce((sum, kind) => sum + kind.readings, 0);
    if (factor === 1 || (factor === null && readings < NOISE_DOF)) break;
    const used = noise.used * (factor ?? NOISE_STEP);
    const next = fit(used);
    if (factor === null && accountOf(next, used) <= accountOf(parts, noise.used)) break;
    [parts, noise] = [next, { ...noise, found: start.found ?? used, used }];
  }
  return { parts, noise };
}

const NOISE_PASSES = 6;

/** How well the parts account for the readings at this noise: the log likelihood less the BIC. */
function accountOf(parts: Parts, sd: number): number {
  return parts.reduce((sum, { kinds, items, mixture }) => {
    const readings = items.flatMap((item) => item.readings);
    const sides = readings.length * (kinds[0]?.sides.length ?? 0);
    const free = kinds.reduce((n, kind) => n + kind.freeSides + 1, 0);
    const bic = (free / 2) * Math.log(Math.max(2, readings.length));
    return sum + mixture.total - bic - sides * Math.log(sd);
  }, 0);
}

/** The kinds of all panels and rows at a noise of one side, metres; each reading as `correct` has it. */
export function fitParts(
  panels: readonly Panel[],
  rows: readonly KindRow[],
  sd: number,
  correct: (reading: PanelReading) => readonly number[],
): Parts {
  const sizes = new Set([...panels.map((p) => p.sideCount), ...rows.map((k) => k.sides.length)]);
  return [...sizes]
    .sort((a, b) => a - b)
    .map((size) =>
      fitKinds(
        panels.filter((panel) => panel.sideCount === size).map((panel) => itemOf(panel, correct)),
        rows.filter((row) => row.sides.length === size),
        sd,
      ),
    );
}
