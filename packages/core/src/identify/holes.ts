// A folded net with holes made whole. Each hole is a loop of sides of panels that stand; a panel that
// is missing fills it, its sides those of its neighbours. With it the net is closed and fitted as a
// whole, so that the stars around the hole must close as well: they are what speaks for it.
//
//   loops that are filled: three sides; two, where the panel's third side is glued to itself (a two-fold
//   axis through the seam); one, where the panel's middle lies on a three-fold axis, or its two other
//   sides are glued to each other (the axis through its tip).

import { TAU } from '../math/angle.ts';
import type { Shell } from '../shell/shell.ts';
import { polygonOnSphere } from '../sphere/polygon.ts';
import { firstSides } from './corner-model.ts';
import { conditionsOf, fitNet, type NetFit } from './fit.ts';
import { type FoldedNet, foldedStars, isFoldedSphere } from './fold.ts';
import { foldedConditions } from './folding.ts';
import { liftNet } from './lift.ts';
import type { SideBelief } from './side-belief.ts';

/** A net made whole. */
export interface FilledNet {
  /** Places of the missing kinds bear numbers from that of the readings' kinds on. */
  readonly shell: Shell;
  readonly fit: NetFit;
  /** The readings, followed by the missing kinds, of which nothing was read. */
  readonly readings: SideBelief;
  /** Missing kinds. */
  readonly missing: number;
  /** Whether a hole is filled by several panels around an axis where one would do as well. */
  readonly parted: boolean;
}

/** Deviation of a side of which nothing was read, metres: the hole says what it is. */
const UNREAD_SD = 0.2;
/** Corners around a hub come within this of a full turn or its share, radians, before the fit. */
const ROUGH = 0.35;

/** The net made whole in every way that closes; none where a hole is no triangle. `radius`: about that
 * of the net, metres. */
export function fillHoles(readings: SideBelief, net: FoldedNet, radius: number): FilledNet[] {
  return fillings(readings, net, radius).flatMap(({ net: whole, sides, parted }) => {
    const extended: SideBelief = {
      ...readings,
      sides: [...readings.sides, ...sides],
      variances: [...readings.variances, ...sides.map((own) => own.map(() => UNREAD_SD ** 2))],
    };
    const first = firstSides(extended.sides);
    const folded = fitNet(extended, foldedConditions(whole, first), radius);
    const shell = folded && liftNet(whole, folded.sides, folded.radius);
    const fit = shell && fitNet(extended, conditionsOf(shell, first), folded.radius);
    return fit ? [{ shell, fit, readings: extended, missing: sides.length, parted }] : [];
  });
}

interface Filling {
  readonly net: FoldedNet;
  /** Missing kind → its sides as far as its neighbours tell them, metres. */
  readonly sides: readonly (readonly number[])[];
  readonly parted: boolean;
}

/** A way to put a panel into a hole. */
interface Plug {
  /** Its sides, the first ones those of the loop in turn, metres. */
  readonly sides: readonly number[];
  /** Sides that are left of it when folded. */
  readonly exposed: number;
  readonly axis: number;
  /** Own sides that are glued to each other, or one to itself. */
  readonly glued: readonly [number, number] | null;
}

/** The ways to fill a loop: see above. */
function plugsFor(known: readonly number[], axes: readonly number[]): Plug[] {
  const [a = 0, b = 0] = known;
  if (known.length === 3) return [{ sides: known, exposed: 3, axis: 1, glued: null }];
  if (known.length === 2)
    return [{ sides: [a, b, Math.hypot(a, b)], exposed: 3, axis: 1, glued: [2, 2] }];
  const tips = [...new Set(axes)].map((axis): Plug => {
    const long = a / (2 * Math.sin(Math.PI / axis));
    return { sides: [a, long, long], exposed: 3, axis: 1, glued: [1, 2] };
  });
  return [{ sides: [a, a, a], exposed: 1, axis: 3, glued: null }, ...tips];
}

/** The net with a panel in each hole, in every way that leaves a sphere. */
function fillings(readings: SideBelief, net: FoldedNet, radius: number): Filling[] {
  return holesOf(net).flatMap((loops) => fillingsOf(readings, net, loops, radius));
}

function fillingsOf(
  readings: SideBelief,
  net: FoldedNet,
  loops: readonly (readonly number[])[],
  radius: number,
): Filling[] {
  const lengths = readings.sides.flat();
  const plugs = loops.map((loop) =>
    plugsFor(
      loop.map((side) => lengths[net.kindSide[side] as number] as number),
      net.fold.axes,
    ),
  );
  return combinations(plugs).flatMap((chosen) => {
    const whole = withPlugs(readings, net, loops, chosen, radius);
    const parted = chosen.some(({ glued }) => glued !== null && glued[0] !== glued[1]);
    return whole ? [{ net: whole, sides: chosen.map((plug) => plug.sides), parted }] : [];
  });
}

/** The ways to see open sides as holes: as they lie around what stands; and, where they are three, as one
 * hole in either order, as panels that stand may part a hole's hub. */
function holesOf(net: FoldedNet): number[][][] {
  const open = net.mate.flatMap((other, side) => (other < 0 ? [side] : []));
  const [a, b, c] = open;
  if (open.length === 3)
    return [[[a as number, b as number, c as number]], [[a as number, c as number, b as number]]];
  if (open.length === 2) return [[open]];
  const loops = loopsOf(net);
  return loops?.every((loop) => loop.length <= 3) ? [loops] : [];
}

function combinations<T>(lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>(
    (all, list) => all.flatMap((own) => list.map((one) => [...own, one])),
    [[]],
  );
}

function withPlugs(
  readings: SideBelief,
  net: FoldedNet,
  loops: readonly (readonly number[])[],
  plugs: readonly Plug[],
  radius: number,
): FoldedNet | null {
  const draft = {
    pieceKind: [...net.pieceKind],
    pieceAxis: [...net.pieceAxis],
    kindSide: [...net.kindSide],
    piece: [...net.piece],
    next: [...net.next],
    mate: [...net.mate],
  };
  let kindSide = readings.sides.flat().length;
  plugs.forEach(({ exposed, axis, glued }, h) => {
    const start = draft.mate.length;
    const loop = loops[h] as readonly number[];
    for (let i = 0; i < exposed; i++) {
      draft.kindSide.push(kindSide + i);
      draft.piece.push(draft.pieceKind.length);
      draft.next.push(start + ((i + 1) % exposed));
      draft.mate.push(loop[i] ?? -1);
    }
    loop.forEach((side, i) => {
      draft.mate[side] = start + i;
    });
    if (glued) {
      draft.mate[start + glued[0]] = start + glued[1];
      draft.mate[start + glued[1]] = start + glued[0];
    }
    draft.pieceKind.push(readings.sides.length + h);
    draft.pieceAxis.push(axis);
    kindSide += 3;
  });
  const sides = [...readings.sides, ...plugs.map((plug) => plug.sides)];
  const hubAxis = axesOfHubs(sides, net, draft, radius);
  return hubAxis && { ...net, ...draft, hubAxis };
}

/** The holes as loops of open sides, in the order of the missing panel's own sides, anticlockwise seen
 * from outside; null where a hub has no way round. */
function loopsOf({ mate, next }: FoldedNet): number[][] | null {
  const previous = previousOf(next);
  const open = new Set(mate.flatMap((other, side) => (other < 0 ? [side] : [])));
  const loops: number[][] = [];
  while (open.size > 0) {
    const loop: number[] = [];
    let side = open.values().next().value;
    while (side !== undefined && open.has(side)) {
      loop.push(side);
      open.delete(side);
      side = endAround(side, previous, mate);
    }
    if (side !== loop[0]) return null;
    loops.push(loop);
  }
  return loops;
}

/** The open side that ends at the hub where an open side starts, round all panels between. */
function endAround(side: number, previous: readonly number[], mate: readonly number[]): number {
  let edge = previous[side] as number;
  while ((mate[edge] as number) >= 0) edge = previous[mate[edge] as number] as number;
  return edge;
}

function previousOf(next: readonly number[]): number[] {
  const previous: number[] = [];
  next.forEach((after, side) => {
    previous[after] = side;
  });
  return previous;
}

/** Side → order of the axis through the hub where it starts, by what its corners come to; null where
 * that is no full turn nor a share that the fold still has, or the whole is no sphere. */
function axesOfHubs(
  sides: readonly (readonly number[])[],
  { fold }: FoldedNet,
  draft: Pick<FoldedNet, 'pieceAxis' | 'kindSide' | 'next' | 'mate'>,
  radius: number,
): number[] | null {
  const corners = sides.flatMap((own) => {
    const polygon = polygonOnSphere(own, radius);
    return polygon.ok ? polygon.corners : own.map(() => Number.NaN);
  });
  const previous = previousOf(draft.next);
  const left = axesLeft(fold.axes, draft);
  const hubAxis: number[] = [];
  for (const star of foldedStars(previous, draft.mate)) {
    const angle = star.reduce(
      (sum, side) => sum + (corners[draft.kindSide[side] as number] as number),
      0,
    );
    const axis = [1, ...left].find((one) => Math.abs(angle - TAU / one) < ROUGH);
    if (axis === undefined) return null;
    if (axis > 1) left.splice(left.indexOf(axis), 1);
    for (const side of star) hubAxis[side] = axis;
  }
  const whole = isFoldedSphere(fold.order, previous, draft.mate, hubAxis, draft.pieceAxis);
  return whole && left.length === 0 ? hubAxis : null;
}

/** Axes that run neither through a panel nor through a seam. */
function axesLeft(
  axes: readonly number[],
  { pieceAxis, mate }: Pick<FoldedNet, 'pieceAxis' | 'mate'>,
): number[] {
  const left = [...axes];
  const use = (axis: number): void => {
    const at = left.indexOf(axis);
    if (at >= 0) left.splice(at, 1);
  };
  for (const axis of pieceAxis) if (axis > 1) use(axis);
  mate.forEach((other, side) => {
    if (other === side) use(2);
  });
  return left;
}
