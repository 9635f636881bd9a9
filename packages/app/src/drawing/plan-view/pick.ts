// What lies under a pointer on the flat plan: a hub or a seam where it is near enough to one, else
// the place around it. Millimetres of the drawing, x right, y down.

import type { Shell } from '@shellraise/core';

/** A point of the drawing. */
export type Spot = readonly [number, number];

/** A thing on the plan, by its index in the shell. A seam is named by the lower of its two sides. */
export type Picked =
  | { readonly type: 'place'; readonly place: number }
  | { readonly type: 'hub'; readonly hub: number }
  | { readonly type: 'seam'; readonly side: number };

/** Where things are drawn. */
export interface PlanPoints {
  /** Place → its outline, stride 2. */
  readonly outlines: readonly Float64Array[];
  /** Place → a point well inside, stride 2. */
  readonly labels: Float64Array;
  /** Hub → its point, stride 2. */
  readonly hubs: Float64Array;
}

/** Hubs and seams take no more of a place than this part of its mean side, so that most of it is
 * left for the place itself. */
const HUB_SHARE = 0.2;
const SEAM_SHARE = 0.09;

/** What is at a spot; `reach` is how near counts as on it. Null where there is nothing. */
export function pickAt(shell: Shell, plan: PlanPoints, spot: Spot, reach: number): Picked | null {
  const side = meanSide(shell, plan);
  const hub = nearestHub(plan, spot);
  if (hub && hub.away <= Math.min(reach, HUB_SHARE * side)) return { type: 'hub', hub: hub.hub };
  const seam = nearestSeam(shell, plan, spot);
  if (seam && seam.away <= Math.min(0.7 * reach, SEAM_SHARE * side))
    return { type: 'seam', side: seam.side };
  return placeAt(plan, spot);
}

/** The nearest thing of one sort to a spot, for a gloved hand: a place, or a hub or seam that is no
 * farther than half a mean side. Null where there is none. */
export function pickNearest(
  shell: Shell,
  plan: PlanPoints,
  spot: Spot,
  sort: Picked['type'],
): Picked | null {
  const reach = meanSide(shell, plan) / 2;
  if (sort === 'hub') {
    const hub = nearestHub(plan, spot);
    return hub && hub.away <= reach ? { type: 'hub', hub: hub.hub } : null;
  }
  if (sort === 'seam') {
    const seam = nearestSeam(shell, plan, spot);
    return seam && seam.away <= reach ? { type: 'seam', side: seam.side } : null;
  }
  return placeAt(plan, spot);
}

function placeAt(plan: PlanPoints, spot: Spot): Picked | null {
  const place = plan.outlines.findIndex((outline) => holds(outline, spot));
  return place < 0 ? null : { type: 'place', place };
}

/** A hub's or label's point. */
export const spotAt = (flat: Float64Array, i: number): Spot => [
  flat[2 * i] as number,
  flat[2 * i + 1] as number,
];

/** Index of the side after this one in its place. */
function sideAfter(shell: Shell, side: number): number {
  const place = shell.sidePlace[side] as number;
  return side + 1 === shell.placeStart[place + 1] ? (shell.placeStart[place] as number) : side + 1;
}

/** The two ends of a side on the drawing. */
export function endsOf(shell: Shell, plan: PlanPoints, side: number): [Spot, Spot] {
  const at = (s: number): Spot => spotAt(plan.hubs, shell.sideHub[s] as number);
  return [at(side), at(sideAfter(shell, side))];
}

function nearestHub(plan: PlanPoints, [x, y]: Spot): { hub: number; away: number } | null {
  let best: { hub: number; away: number } | null = null;
  for (let hub = 0; 2 * hub < plan.hubs.length; hub++) {
    const [hx, hy] = spotAt(plan.hubs, hub);
    const away = Math.hypot(hx - x, hy - y);
    if (!best || away < best.away) best = { hub, away };
  }
  return best;
}

function nearestSeam(shell: Shell, plan: PlanPoints, spot: Spot) {
  let best: { side: number; away: number } | null = null;
  for (let i = 0; i < shell.seams.length; i += 2) {
    const side = shell.seams[i] as number;
    const away = fromSegment(spot, ...endsOf(shell, plan, side));
    if (!best || away < best.away) best = { side, away };
  }
  return best;
}

/** Distance of a point from a straight piece. */
function fromSegment([x, y]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number {
  const [dx, dy] = [bx - ax, by - ay];
  const length2 = dx * dx + dy * dy;
  const along = length2 === 0 ? 0 : ((x - ax) * dx + (y - ay) * dy) / length2;
  const t = Math.min(1, Math.max(0, along));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

function meanSide(shell: Shell, plan: PlanPoints): number {
  const count = shell.sideHub.length;
  let sum = 0;
  for (let side = 0; side < count; side++) {
    const [[ax, ay], [bx, by]] = endsOf(shell, plan, side);
    sum += Math.hypot(ax - bx, ay - by);
  }
  return count === 0 ? 0 : sum / count;
}

/** Whether an outline goes round a point. */
function holds(outline: Float64Array, [x, y]: Spot): boolean {
  let inside = false;
  for (let i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2) {
    const [ax, ay] = [outline[i] as number, outline[i + 1] as number];
    const [bx, by] = [outline[j] as number, outline[j + 1] as number];
    if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside;
  }
  return inside;
}
