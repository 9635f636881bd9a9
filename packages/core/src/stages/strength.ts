// The gusts at which a seam and a panel first reach their limits, by the frame with its stiffness:
// only where strength of panels or bolts and their number are known. Use is convex in the pressure
// (a norm of forces that go with it), so that the chord from a calm never overrates a gust. The frame
// has a panel's load at its corners: how it bends between its own sides is added, by a plate formula.

import { type FrameAnswer, frameAnswer, prepareFrame } from '../frame/answer.ts';
import type { FrameModel } from '../frame/model.ts';
import type { FrameParts } from '../frame/parts.ts';
import { fromMemory, type Provenance } from '../loads/provenance.ts';
import { distance, norm, pointAt, type Vec3 } from '../math/vector.ts';
import { hubPoint } from '../shell/geometry.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf } from '../shell/shell.ts';
import type { Bearing } from './bearing.ts';
import { caseWords, type Limit, noLimit, pressureOf } from './limits.ts';
import type { StageModel } from './model.ts';
import { MOST_GUST } from './tolerances.ts';

/** How a panel bends between its sides under a pressure. */
export const PANEL_BENDING: Provenance = fromMemory(
  'S. Timoshenko and S. Woinowsky-Krieger, Theory of Plates and Shells: equilateral plate on simple supports, M = (1 + ν) q h² / 54; other panels by their inscribed circle',
);

/** Largest stress, Pa, that a pressure (Pa) makes in a panel between its sides: h is three times the
 * radius of the inscribed circle, taken as twice the area over the perimeter. A square comes out 13 %
 * high. */
export function bendingStress(
  { poisson, bendingThickness }: Pick<FrameParts, 'poisson' | 'bendingThickness'>,
  area: number,
  perimeter: number,
  pressure: number,
): number {
  const height = (3 * 2 * area) / perimeter;
  return ((1 + poisson) * Math.abs(pressure) * height ** 2 * 6) / (54 * bendingThickness ** 2);
}

/** Largest use, and of which seam or panel of the frame. */
interface Worst {
  readonly use: number;
  readonly index: number;
}

/** The limits of seams and panels in a stage that stands, its props among the frame's supports. */
export function strengthLimits(model: StageModel, frame: FrameModel, held: Bearing): Limit[] {
  const { parts, seamBolts } = model.bears;
  const why = {
    seam: 'nobody said what the bolts are, or how many a seam has',
    panel: 'nobody said what the panels are strong',
  };
  const asked = (['seam', 'panel'] as const).filter((what) =>
    what === 'seam' ? parts?.boltProof != null : parts?.strength != null,
  );
  const unknown = (['seam', 'panel'] as const)
    .filter((what) => !asked.includes(what))
    .map((what) => noLimit(what, 'unknown', why[what]));
  if (parts === null || asked.length === 0) return unknown;
  const prepared = prepareFrame(frame, parts);
  const seamIndex = seamsOfShell(model, frame);
  const answer = (c: number, pressure: number): FrameAnswer =>
    frameAnswer(
      prepared,
      {
        pressure: frame.panels.map(
          ({ place }) => pressure * (held.cases[c]?.wind.coefficient[place] ?? 0),
        ),
        masses: frame.panels.map(({ place }) => model.mass[place] ?? null),
      },
      (s) => seamBolts(seamIndex[s] as number),
    );
  const { strength } = parts;
  const sizes = frame.panels.map(({ place }) => sizeOf(model, place));
  const bent = (c: number, pressure: number, index: number): number => {
    const place = frame.panels[index]?.place as number;
    const { area, perimeter } = sizes[index] as ReturnType<typeof sizeOf>;
    const own = pressure * (held.cases[c]?.wind.coefficient[place] ?? 0);
    return strength === null ? 0 : bendingStress(parts, area, perimeter, own) / strength;
  };
  return [
    ...unknown,
    ...asked.map((what) => {
      const found = firstGust(model, held, (c, q) =>
        worstOf(answer(c, q), what, (index) => (what === 'seam' ? 0 : bent(c, q, index))),
      );
      if (found === null) return noLimit(what, 'unknown', why[what]);
      const { gust, index, c } = found;
      const at = what === 'seam' ? seamIndex[index] : frame.panels[index]?.place;
      const wind = held.cases[c]?.wind;
      return {
        what,
        status: 'known' as const,
        gust: gust < MOST_GUST ? gust : null,
        at: gust < MOST_GUST ? (at ?? null) : null,
        from: gust < MOST_GUST && wind ? caseWords(wind) : null,
        why: '',
      };
    }),
  ];
}

function sizeOf(
  { shell, wind }: StageModel,
  place: number,
): { readonly area: number; readonly perimeter: number } {
  const hubs = hubsOf(shell, place as PlaceId).map((hub) => hubPoint(shell, hub));
  return {
    area: norm(pointAt(wind.faces.area, place)),
    perimeter: hubs.reduce(
      (sum, at, i) => sum + distance(at, hubs[(i + 1) % hubs.length] as Vec3),
      0,
    ),
  };
}

/** Seam of the frame → seam of the shell. */
function seamsOfShell({ shell }: StageModel, frame: FrameModel): number[] {
  const known = new Map<string, number>();
  for (let seam = 0; 2 * seam < shell.seams.length; seam++) {
    const [a, b] = [shell.seams[2 * seam], shell.seams[2 * seam + 1]];
    known.set(`${shell.sideHub[a]} ${shell.sideHub[b]}`, seam);
  }
  return frame.seams.map(({ hubs }) => known.get(`${hubs[0]} ${hubs[1]}`) ?? -1);
}

/** The largest use of seams or panels; null where one of them is unknown. */
function worstOf(
  answer: FrameAnswer,
  what: 'seam' | 'panel',
  besides: (index: number) => number,
): Worst | null {
  if (answer.status !== 'stands') return { use: Number.POSITIVE_INFINITY, index: 0 };
  const list = what === 'seam' ? answer.seams : answer.panels;
  let worst: Worst = { use: 0, index: 0 };
  for (const [index, { utilisation }] of list.entries()) {
    if (utilisation === 'unknown') return null;
    const use = utilisation + besides(index);
    if (use > worst.use) worst = { use, index };
  }
  return worst;
}

/** The lowest gust at which use reaches 1 under some case; null where a use is unknown. */
function firstGust(
  { airDensity }: StageModel,
  held: Bearing,
  worst: (c: number, pressure: number) => Worst | null,
): { readonly gust: number; readonly index: number; readonly c: number } | null {
  const most = pressureOf(MOST_GUST, airDensity.value);
  const calm = worst(0, 0);
  if (calm === null) return null;
  let found = { pressure: calm.use >= 1 ? 0 : most, index: calm.index, c: 0 };
  for (let c = 0; c < held.cases.length && found.pressure > 0; c++) {
    const high = worst(c, found.pressure);
    if (high === null || high.use < 1) continue;
    found = { ...belowOne(calm.use, found.pressure, high, (q) => worst(c, q)), c };
  }
  // Back from the pressure, the highest gust may come out a rounding below itself: a limit where none is.
  return {
    gust: found.pressure < most ? Math.sqrt((2 * found.pressure) / airDensity.value) : MOST_GUST,
    index: found.index,
    c: found.c,
  };
}

/** Between a calm and a pressure at which use is over 1: chord by chord up to where it is within a
 * hundredth of 1, from below. */
function belowOne(
  calm: number,
  from: number,
  above: Worst,
  worst: (pressure: number) => Worst | null,
): { readonly pressure: number; readonly index: number } {
  let [low, use] = [0, calm];
  for (let turn = 0; turn < 12 && use < 0.99; turn++) {
    const next = low + ((from - low) * (1 - use)) / (above.use - use);
    const found = worst(next);
    if (found === null || found.use > 1) break;
    [low, use] = [next, found.use];
  }
  return { pressure: low, index: above.index };
}
