// An order made better step by step: a piece moved, two exchanged, a run turned round, two pieces
// made up as one on the ground, or one taken apart; kept where it costs no more. Only the states from
// the first change on are asked again, up to where the walk comes back to what it was.

import { type Random, seededRandom } from '../../math/random.ts';
import { type Costing, isOpen, stepCost } from './cost.ts';
import { type MakeUp, type Piece, pieceOf } from './pieces.ts';
import { brokenPins, type Pins } from './pins.ts';
import type { OrderSite } from './site.ts';
import { type Step, Walker, type WalkOptions } from './walk.ts';

/** What the search works with. */
export interface ImproveBrief {
  readonly costing: Costing;
  readonly pins: Pins;
  /** What may be made up on the ground; null: nothing. */
  readonly makeUp: MakeUp | null;
  readonly walk: WalkOptions;
  readonly seed: number;
  /** Orders tried. */
  readonly tries: number;
  /** Asked after each; true ends the search with the best so far. */
  readonly shouldStop?: () => boolean;
  readonly onTry?: (tried: number, total: number) => void;
}

/** The best order found. */
export interface Improved {
  readonly order: readonly Piece[];
  readonly steps: readonly Step[];
  readonly total: number;
  readonly tried: number;
}

/** A better order, from one that can be walked; throws where it can't. */
export function improve(site: OrderSite, first: readonly Piece[], brief: ImproveBrief): Improved {
  const walker = new Walker(site, brief.walk);
  first.forEach((piece, at) => {
    const why = walker.put(piece);
    if (why !== null) throw new Error(`piece ${at} of the order to improve ${why}`);
  });
  const cost = (step: Step, isLast: boolean): number =>
    stepCost(brief.costing, step, isOpen(step, isLast));
  const totalOf = (steps: readonly Step[]): number =>
    steps.reduce((sum, step, k) => sum + cost(step, k === steps.length - 1), 0);
  let order: readonly Piece[] = first;
  let steps: readonly Step[] = [...walker.steps];
  let total = totalOf(steps);
  const random = seededRandom(brief.seed);
  let tried = 0;
  for (; tried < brief.tries && !brief.shouldStop?.(); tried++) {
    brief.onTry?.(tried, total);
    const next = changed(site, order, brief, random);
    if (next === null || !keepsWayOut(next) || brokenPins(next, brief.pins).length > 0) continue;
    const now = rewalk(walker, order, steps, next);
    const sum = now === null ? Infinity : totalOf(now);
    if (now !== null && sum <= total + 1e-12) [order, steps, total] = [next, now, sum];
    else restore(walker, steps);
  }
  return { order, steps, total, tried };
}

/** Whether nothing comes after the way out but more of it. */
function keepsWayOut(order: readonly Piece[]): boolean {
  const first = order.findIndex(({ wayOut }) => wayOut);
  return first < 0 || order.slice(first).every(({ wayOut }) => wayOut);
}

function restore(walker: Walker, steps: readonly Step[]): void {
  let same = 0;
  while (same < walker.steps.length && walker.steps[same] === steps[same]) same++;
  walker.backTo(same);
  for (const step of steps.slice(same)) walker.take(step);
}

/** The steps of a changed order; null where it gets stuck. */
function rewalk(
  walker: Walker,
  order: readonly Piece[],
  steps: readonly Step[],
  next: readonly Piece[],
): Step[] | null {
  let from = 0;
  while (from < order.length && order[from] === next[from]) from++;
  let same = 0;
  while (
    same < Math.min(order.length, next.length) - from &&
    order[order.length - 1 - same] === next[next.length - 1 - same]
  )
    same++;
  walker.backTo(from);
  for (let k = from; k < next.length; k++) {
    if (walker.put(next[k] as Piece) !== null) return null;
    const before = order.length - next.length + k;
    if (k < next.length - same - 1) continue;
    const [was, is] = [steps[before], walker.steps[k]];
    if (was === undefined || is === undefined || !isSame(was.after, is.after)) continue;
    for (const step of steps.slice(before + 1)) walker.take(step);
    break;
  }
  return [...walker.steps];
}

const isSame = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((x, i) => x === b[i]);

/** An order changed at random; null where the change is none. */
function changed(
  site: OrderSite,
  order: readonly Piece[],
  { makeUp }: ImproveBrief,
  random: Random,
): Piece[] | null {
  const at = random.below(order.length);
  const piece = order[at] as Piece;
  const by = 1 + random.below(REACH);
  const to = random.uniform() < 0.5 ? at - by : at + by;
  if (to < 0 || to >= order.length) return null;
  const kind = random.uniform();
  if (kind < 0.3) return moved(order, at, to);
  if (kind < 0.45) return exchanged(order, at, to);
  if (kind < 0.55) return turnedRound(order, Math.min(at, to), Math.max(at, to));
  if (makeUp === null || piece.wayOut) return moved(order, at, to);
  if (kind < 0.85 || piece.made !== 'made up') return joined(site, order, at, makeUp, random);
  const parts = piece.places.map((p) => pieceOf(site, [p], 'panel'));
  return [...order.slice(0, at), ...random.shuffle(parts), ...order.slice(at + 1)];
}

/** How far in the order a change reaches. */
const REACH = 8;

/** Most panels made up as one, other than a cap. */
const MOST_JOINED = 6;

function moved(order: readonly Piece[], at: number, to: number): Piece[] {
  const next = [...order];
  const [piece] = next.splice(at, 1);
  next.splice(to, 0, piece as Piece);
  return next;
}

function exchanged(order: readonly Piece[], at: number, to: number): Piece[] {
  const next = [...order];
  [next[at], next[to]] = [next[to] as Piece, next[at] as Piece];
  return next;
}

const turnedRound = (order: readonly Piece[], from: number, to: number): Piece[] => [
  ...order.slice(0, from),
  ...order.slice(from, to + 1).reverse(),
  ...order.slice(to + 1),
];

/** A piece and a neighbour of it made up as one, in the place of the first of them. */
function joined(
  site: OrderSite,
  order: readonly Piece[],
  at: number,
  { mayLift, highest }: MakeUp,
  random: Random,
): Piece[] | null {
  const piece = order[at] as Piece;
  if (piece.outer.length === 0) return null;
  const { place } = piece.outer[random.below(piece.outer.length)] as { place: number };
  const other = order.findIndex(({ places }) => places.includes(place));
  const next = order[other];
  if (next === undefined || !isLoose(piece) || !isLoose(next)) return null;
  const places = [...piece.places, ...next.places];
  if (places.length > MOST_JOINED || Math.max(piece.height, next.height) > highest) return null;
  if (!mayLift(places)) return null;
  const one = pieceOf(site, places, 'made up');
  const [first, last] = [Math.min(at, other), Math.max(at, other)];
  return random.uniform() < 0.5
    ? order.flatMap((old, i) => (i === first ? [one] : i === last ? [] : [old]))
    : order.flatMap((old, i) => (i === last ? [one] : i === first ? [] : [old]));
}

/** Whether a piece may be made up otherwise: no group of the pile, no cap, no way out. */
const isLoose = ({ made, wayOut }: Piece): boolean =>
  !wayOut && (made === 'panel' || made === 'made up');
