// The largest part of a sphere that the kinds close into where they close into no whole one: every kind
// has a place, every hub inside closes, and what lies beyond the open rim is not in the pile. Looked for
// with the rotations about one axis, each kind once for each of them: shells of little symmetry, whose
// lowest kinds stayed on some other field.

import { pointAt } from '../math/vector.ts';
import { makeShell, type PlaceDraft, placeCount, type Shell } from '../shell/shell.ts';
import { fansOf } from '../shell/stars.ts';
import { fitsWell } from './candidates.ts';
import { firstSides } from './corner-model.ts';
import { conditionsOf, fitNet, type NetConditions, type NetFit, netConditions } from './fit.ts';
import type { FoldedNet } from './fold.ts';
import { type GrowOptions, growParts, type IslandSeed } from './grow-part.ts';
import { layShell } from './lay.ts';
import { unfold } from './lift.ts';
import { looseSeeds, poleSeeds } from './part-starts.ts';
import type { SideBelief } from './side-belief.ts';

/** A part with an open rim, fitted. */
export interface OpenPart {
  /** Places carry the index of their kind. */
  readonly shell: Shell;
  readonly fit: NetFit;
}

/** Conditions that the readings did not have to keep, for each kind, at least: else it says nothing. */
const TELLING = 1.4;
/** Islands kept side by side where the axis is planted, and where it is not; those that are fitted. */
const WIDTH = { pole: 16, loose: 24 };
const MOST_FITTED = 6;
/** Parts less likely than the best by more than this (natural logarithm) are none. */
const FAINT = 6;
/** Work that is given to it, in tries of the folding search (see FoldSearch): about a second. */
const MOST_WORK = 30_000;

/** What it is to fit a part, in tries. */
const FITTED = 100;

/** The parts that use every kind, the likeliest first; none where none was found in the work allowed.
 * `orders`: of the axis, the likeliest first. `onWork` is told the work done; false stops. */
export function openParts(
  readings: SideBelief,
  orders: readonly number[],
  onWork: (work: number) => boolean,
): OpenPart[] {
  let left = MOST_WORK;
  const watched = (work: number): boolean => {
    left -= work;
    return onWork(work) && left > 0;
  };
  for (const order of orders) {
    const seeds = poleSeeds(readings, order);
    const parts = bestOf(readings, seeds, order, { width: WIDTH.pole, onWork: watched });
    if (parts.length > 0) return parts;
  }
  const [order] = orders;
  if (order === undefined) return [];
  for (const seed of looseSeeds(readings)) {
    const parts = bestOf(readings, [seed], order, { width: WIDTH.loose, onWork: watched });
    if (parts.length > 0) return parts;
  }
  return [];
}

/** The likeliest parts that grow from some seeds. */
function bestOf(
  readings: SideBelief,
  seeds: readonly IslandSeed[],
  order: number,
  options: GrowOptions,
): OpenPart[] {
  const fold = { name: `${order}-fold`, order, axes: [order, order] };
  const grown = seeds
    .flatMap((seed) => growParts(readings, fold, [seed], options))
    .filter(({ unlaid }) => unlaid.length === 0)
    .sort((a, b) => b.score - a.score);
  const least = (grown[0]?.score ?? 0) - FAINT;
  const parts = grown
    .filter(({ score }) => score >= least)
    .slice(0, MOST_FITTED)
    .flatMap(({ net, radius }) =>
      options.onWork(FITTED) ? (partOf(readings, net, radius) ?? []) : [],
    )
    .filter(({ fit }) => fit.conditions >= TELLING * readings.sides.length)
    .sort((a, b) => b.fit.evidence - a.fit.evidence);
  const most = parts[0]?.fit.evidence ?? 0;
  return parts.filter(({ fit }) => fit.evidence >= most - FAINT);
}

function partOf(readings: SideBelief, net: FoldedNet, radius: number): OpenPart | null {
  const folded = fitNet(readings, openConditions(net, readings), radius);
  const unfolded = folded && unfold(net, folded.sides, folded.radius);
  if (!folded || !unfolded) return null;
  const places = unfolded.places.map(({ piece, hubs }): PlaceDraft => {
    return { hubs, kind: net.pieceKind[piece] as number, turn: 0 };
  });
  const shell = parted(makeShell({ radius: folded.radius, hubs: unfolded.hubs, places }));
  const fit = fitNet(readings, conditionsOf(shell, firstSides(readings.sides)), folded.radius);
  const laid = fit && layShell(shell, fit.sides, fit.radius);
  if (!fit || !laid || placeCount(laid) === 0) return null;
  return fitsWell({ shell: laid, fit }) ? { shell: laid, fit } : null;
}

/** The shell with one hub for each run of corners where several touch in a point on the rim. */
function parted(shell: Shell): Shell {
  const sideHub = shell.sideHub.slice();
  const hubs = [...shell.hubs];
  for (const runs of fansOf(shell))
    for (const { hub, corners } of runs.slice(1)) {
      for (const side of corners) sideHub[side] = hubs.length / 3;
      hubs.push(...pointAt(shell.hubs, hub));
    }
  return { ...shell, sideHub, hubs: Float64Array.from(hubs) };
}

/** What the panels that stand ask of each other; hubs on the rim ask for nothing. */
function openConditions(net: FoldedNet, { sides }: SideBelief): NetConditions {
  const first = firstSides(sides);
  const own = (side: number): number => net.kindSide[side] as number;
  const seams = net.mate.flatMap((mate, side): [number, number][] =>
    mate < 0 ? [] : [[own(side), own(mate)]],
  );
  net.pieceAxis.forEach((axis, piece) => {
    const kind = net.pieceKind[piece] as number;
    const [start, end] = [first[kind] as number, first[kind + 1] as number];
    const step = (end - start) / axis;
    for (let side = start; side + step < end; side++) seams.push([side, side + step]);
  });
  return netConditions(seams, closedStars(net));
}

/** The corners (kind-sides) around each hub that closes, as often as its axis has them. */
function closedStars(net: FoldedNet): number[][] {
  const previous: number[] = [];
  net.next.forEach((next, side) => {
    previous[next] = side;
  });
  const seen = new Set<number>();
  const stars: number[][] = [];
  for (let side = 0; side < net.mate.length; side++) {
    if (seen.has(side)) continue;
    const star: number[] = [];
    let corner = side;
    do {
      star.push(corner);
      corner = net.mate[previous[corner] as number] as number;
    } while (corner >= 0 && corner !== side);
    if (corner < 0) continue;
    for (const one of star) seen.add(one);
    const around = star.map((one) => net.kindSide[one] as number);
    stars.push(Array.from({ length: net.hubAxis[side] as number }, () => around).flat());
  }
  return stars;
}
