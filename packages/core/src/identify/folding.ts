// Nets with rotations, from the kinds alone: grows folded nets from every start of a fold, fits
// each one found to the readings, and unfolds those that fit.

import type { Shell } from '../shell/shell.ts';
import { firstSides } from './corner-model.ts';
import { conditionsOf, fitNet, type NetConditions, type NetFit, netConditions } from './fit.ts';
import { type Fold, type FoldedNet, foldedStars } from './fold.ts';
import { foldStarts, foldStartsAt } from './fold-starts.ts';
import { type FoldSearch, foldedNets } from './folded-net.ts';
import { liftNet } from './lift.ts';
import { sidesCode } from './net-code.ts';
import { priorOf, type SideBelief } from './side-belief.ts';

/** A whole net and how it fits the readings. */
export interface FittedNet {
  readonly shell: Shell;
  readonly fit: NetFit;
}

/** How hard to look, and whom to tell. */
export interface FoldingOptions {
  /** Work that one start may take (see FoldSearch). */
  readonly maxTries: number;
  /** Kinds that may stay unused. */
  readonly spareKinds: number;
  /** Radius where it is known, metres; null: every radius is tried. */
  readonly radius: number | null;
  /** The axis that is planted where every radius is tried; the highest of the fold unless told. */
  readonly axis?: number;
  /** Kind → sides after which the panel looks the same again. */
  readonly periods: readonly number[];
  /** Kind-side → label; nets that are the same under these labels count once, the best fitting. */
  readonly labels: ArrayLike<number>;
  /** Called often, with the number of pieces laid and the work done; false stops the search. */
  readonly onTry: (pieces: number, work: number) => boolean;
  /** Asked before each net that was found is unfolded, however much work was spent on finding it; false
   * leaves the rest. */
  readonly goOn?: () => boolean;
  /** Given each net as it is unfolded; false leaves the rest. */
  readonly take?: (net: FittedNet) => boolean;
  /** See FoldSearch. */
  readonly onPart?: NonNullable<FoldSearch['onPart']>;
  /** See FoldSearch. */
  readonly holeSides?: number;
  /** See FoldSearch. */
  readonly mostUses?: number;
  /** Makes a whole of a net with holes, at about this radius (metres). */
  readonly fillHoles?: (net: FoldedNet, radius: number) => FittedNet | null;
}

/** What folding found. */
export interface FoldingOutcome {
  readonly nets: readonly FittedNet[];
  /** False where a start ran out of work or the search was stopped. */
  readonly complete: boolean;
  /** Largest share of the sphere's places that stood together, in places of the whole net. */
  readonly deepest: number;
}

/** Largest misfit of one seam or star, in standard deviations: 7 in a million true ones exceed it. */
const GATE = 4.5;
/** Nets whose misfit exceeds the best by more are less than e⁻¹² as likely. */
const WINDOW = 25;
/** How far κ / κ₀ may be off where the radius is known. */
const KNOWN_REACH = 0.02;

/** All nets with these rotations that the readings allow. */
export function foldNets(
  readings: SideBelief,
  fold: Fold,
  options: FoldingOptions,
): FoldingOutcome {
  const { radius } = options;
  const starts =
    radius === null
      ? foldStarts(readings, fold, GATE, options.axis, options.spareKinds)
      : foldStartsAt(readings, fold, GATE, radius, KNOWN_REACH);
  const found = new Map<string, FoldedNet & { radius: number }>();
  let complete = true;
  let deepest = 0;
  for (const { seed, model, kappaReach } of starts) {
    if (!options.onTry(0, 1)) {
      complete = false;
      break;
    }
    const outcome = foldedNets(model, priorOf(readings, kappaReach), fold, seed, {
      gate: GATE,
      window: WINDOW,
      kappaReach,
      ...(readings.joints && { joints: readings.joints }),
      ...(readings.bothWays && { bothWays: readings.bothWays }),
      ...options,
    });
    complete &&= outcome.complete;
    deepest = Math.max(deepest, outcome.deepest * fold.order);
    for (const net of outcome.nets) {
      const code = codeOf(net, options.labels);
      const known = found.get(code);
      if (!known || net.chi2 < known.chi2)
        found.set(code, { ...net, radius: 1 / Math.sqrt(model.kappa) });
    }
  }
  const whole = (net: FoldedNet & { radius: number }): FittedNet | null =>
    hasHoles(net)
      ? (options.fillHoles?.(net, net.radius) ?? null)
      : unfold(readings, net, net.radius);
  const nets: FittedNet[] = [];
  for (const net of found.values()) {
    // Hundreds may take as long to unfold as they took to find.
    if (options.goOn?.() === false) {
      complete = false;
      break;
    }
    const one = whole(net);
    if (!one) continue;
    nets.push(one);
    if (options.take?.(one) === false) {
      complete = false;
      break;
    }
  }
  return { nets, complete, deepest };
}

/** Fits a folded net, unfolds it, and fits the whole; null where it does not come together. */
function unfold(readings: SideBelief, net: FoldedNet, radius: number): FittedNet | null {
  const first = firstSides(readings.sides);
  const folded = fitNet(readings, foldedConditions(net, first), radius);
  const shell = folded && liftNet(net, folded.sides, folded.radius);
  const fit = shell && fitNet(readings, conditionsOf(shell, first), folded.radius);
  return shell && fit ? { shell, fit } : null;
}

const hasHoles = ({ mate }: FoldedNet): boolean => mate.some((other) => other < 0);

/** Equal for two folded nets that unfold to the same under these labels of kind-sides. */
function codeOf(net: FoldedNet, labelOf: ArrayLike<number>): string {
  if (hasHoles(net)) return JSON.stringify([net.kindSide, net.mate]);
  const labels = net.kindSide.map((own) => labelOf[own] as number);
  return sidesCode({ next: net.next, mate: net.mate, labels, hubAxis: net.hubAxis }).code;
}

/** The conditions of the unfolded net: a star on an axis of order m has its corners m times, and a
 * panel on one looks the same when turned. */
export function foldedConditions(net: FoldedNet, first: ArrayLike<number>): NetConditions {
  const own = (side: number): number => net.kindSide[side] as number;
  const seams = net.mate.map((mate, side): [number, number] => [own(side), own(mate)]);
  net.pieceAxis.forEach((axis, piece) => {
    const kind = net.pieceKind[piece] as number;
    const [start, end] = [first[kind] as number, first[kind + 1] as number];
    const step = (end - start) / axis;
    for (let side = start; side + step < end; side++) seams.push([side, side + step]);
  });
  const previous: number[] = [];
  net.next.forEach((next, side) => {
    previous[next] = side;
  });
  const stars = foldedStars(previous, net.mate).map((star) =>
    Array.from({ length: net.hubAxis[star[0] as number] as number }, () => star.map(own)).flat(),
  );
  return netConditions(seams, stars);
}
