// The fewest flat pieces that a shell unfolds to, each within its room: pieces are grown greedily, the
// panel that leaves the least ragged rest first, from several starts and with several weights, and the
// small ones that are left over are then hung on to their neighbours where they fit. The number is
// shown to be the least only where it equals a bound: a piece has no more area than its room, and a
// part of the shell that hangs together by no seam is a piece of its own.

import { distance, type Vec3 } from '../math/vector.ts';
import { meanSideLength, placeCentre } from '../shell/geometry.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { doubleArea, onGrid } from './grid.ts';
import { firstPlace, type Growing, growAcross, type NetGround } from './grow.ts';

/** The pieces of a net. */
export interface NetPieces {
  readonly pieces: readonly Growing[];
  /** No way to cut the shell up gives fewer. */
  readonly least: number;
}

/** How a net is cut up. */
export interface PiecesOptions {
  /** Places that are in the net, by index; absent: all. */
  readonly places?: readonly number[];
  /** Place → the group it must stay in (its course); absent: all are one. */
  readonly groups?: ArrayLike<number>;
  /** Starts that are tried; the more the better and the slower. */
  readonly tries?: number;
}

const TRIES = 12;
/** How many mean sides nearer a panel seems for each neighbour of it that is already in a piece. */
const weights = [0.6, 1.5, 0, 3] as const;

/** The fewest pieces found; null where some panel alone is too large. */
export function netPieces(ground: NetGround, options: PiecesOptions = {}): NetPieces | null {
  const count = ground.panels.length;
  const places = options.places ?? Array.from({ length: count }, (_, p) => p);
  if (places.some((p) => firstPlace(ground, p as PlaceId) === null)) return null;
  const least = leastPieces(ground, places, options.groups);
  const tries = options.tries ?? TRIES;
  const centres = Array.from({ length: count }, (_, p) => placeCentre(ground.shell, p as PlaceId));
  let best: Growing[] | null = null;
  for (let t = 0; t < tries; t++) {
    const start = places[Math.floor((t * places.length) / tries)];
    if (start === undefined) break;
    const weight = weights[t % weights.length] as number;
    const cut = cutUp(ground, centres, places, options.groups, start, weight);
    const pieces = withoutSmall(ground, cut, options.groups);
    if (best === null || pieces.length < best.length) best = pieces;
    if (best.length === least) break;
  }
  return { pieces: best ?? [], least };
}

/** Pieces that no cutting up can do without: by area over that of the room, summed over parts that no
 * seam joins, each at least one. */
function leastPieces(
  { shell, panels, room }: NetGround,
  places: readonly number[],
  groups?: ArrayLike<number>,
): number {
  const inNet = new Set(places);
  const seen = new Set<number>();
  let least = 0;
  for (const start of places) {
    if (seen.has(start)) continue;
    let area = 0;
    const stack = [start];
    seen.add(start);
    for (let p = stack.pop(); p !== undefined; p = stack.pop()) {
      area += doubleArea((panels[p] as readonly [number, number][]).map(([x, y]) => onGrid(x, y)));
      for (const q of neighboursOf(shell, p))
        if (inNet.has(q) && !seen.has(q) && sameGroup(groups, p, q)) {
          seen.add(q);
          stack.push(q);
        }
    }
    least += Math.max(1, Math.ceil(area / 2 / (room[0] * room[1]) - 1e-9));
  }
  return least;
}

const sameGroup = (groups: ArrayLike<number> | undefined, p: number, q: number): boolean =>
  groups === undefined || groups[p] === groups[q];

function neighboursOf(shell: Shell, place: number): number[] {
  const found: number[] = [];
  for (
    let s = shell.placeStart[place] as number;
    s < (shell.placeStart[place + 1] as number);
    s++
  ) {
    const mate = shell.mate[s] as number;
    if (mate >= 0) found.push(shell.sidePlace[mate] as number);
  }
  return found;
}

function cutUp(
  ground: NetGround,
  centres: readonly Vec3[],
  places: readonly number[],
  groups: ArrayLike<number> | undefined,
  start: number,
  weight: number,
): Growing[] {
  const { shell } = ground;
  const free = new Uint8Array(ground.panels.length);
  for (const p of places) free[p] = 1;
  const side = meanSideLength(shell);
  const freeAround = (p: number): number =>
    neighboursOf(shell, p).reduce((sum, q) => sum + (free[q] as number), 0);
  const pieces: Growing[] = [];
  for (let seed: number | undefined = start; seed !== undefined; ) {
    const piece = firstPlace(ground, seed as PlaceId) as Growing;
    free[seed] = 0;
    const at = centres[seed] as Vec3;
    const frontier: number[] = [];
    const offer = (p: number): void => {
      for (let s = shell.placeStart[p] as number; s < (shell.placeStart[p + 1] as number); s++) {
        const mate = shell.mate[s] as number;
        if (mate >= 0) frontier.push(s);
      }
    };
    offer(seed);
    while (frontier.length > 0) {
      let [best, least] = [-1, Infinity];
      for (let i = frontier.length - 1; i >= 0; i--) {
        const s = frontier[i] as number;
        const p = shell.sidePlace[shell.mate[s] as number] as number;
        if (!free[p] || !sameGroup(groups, p, seed)) {
          frontier.splice(i, 1);
          if (best > i) best--;
          continue;
        }
        const score = distance(centres[p] as Vec3, at) / side + weight * freeAround(p);
        if (score < least) [best, least] = [i, score];
      }
      if (best < 0) break;
      const [s] = frontier.splice(best, 1) as [number];
      if (!growAcross(ground, piece, s as SideId)) continue;
      const p = shell.sidePlace[shell.mate[s] as number] as number;
      free[p] = 0;
      offer(p);
    }
    pieces.push(piece);
    seed = nextSeed(places, free, freeAround, groups);
  }
  return pieces;
}

/** The free place with the fewest free neighbours, of equals the first, in the lowest group. */
function nextSeed(
  places: readonly number[],
  free: Uint8Array,
  freeAround: (p: number) => number,
  groups?: ArrayLike<number>,
): number | undefined {
  let best: number | undefined;
  let least = Infinity;
  for (const p of places) {
    if (!free[p]) continue;
    const key = freeAround(p) + 100 * (groups?.[p] ?? 0);
    if (key < least) [best, least] = [p, key];
  }
  return best;
}

/** Pieces of at most this many panels are tried to be hung on to others. */
const SMALL = 24;

/** The pieces without those whose panels all fit on to others. */
function withoutSmall(
  ground: NetGround,
  cut: readonly Growing[],
  groups?: ArrayLike<number>,
): Growing[] {
  let pieces = [...cut];
  for (const small of [...cut].sort((a, b) => a.laid.length - b.laid.length)) {
    if (small.laid.length > SMALL || pieces.length === 1) continue;
    const others = pieces.filter((piece) => piece !== small).map(copyOf);
    const lone = new Set(small.laid.map(({ place }) => place));
    if (hungOn(ground, lone, others, groups)) pieces = others;
  }
  return pieces;
}

function hungOn(
  ground: NetGround,
  lone: Set<PlaceId>,
  others: readonly Growing[],
  groups?: ArrayLike<number>,
): boolean {
  const { shell } = ground;
  const pieceOf = new Map(others.flatMap((piece) => piece.laid.map((l) => [l.place, piece])));
  for (let found = true; found && lone.size > 0; ) {
    found = false;
    for (const place of lone) {
      const sides = shell.placeStart.slice(place, place + 2) as unknown as [number, number];
      for (let s = sides[0]; s < sides[1]; s++) {
        const mate = shell.mate[s] as number;
        const next = shell.sidePlace[mate] as PlaceId | undefined;
        const piece = next === undefined ? undefined : pieceOf.get(next);
        if (!piece || !sameGroup(groups, place, next as number)) continue;
        if (!growAcross(ground, piece, mate as SideId)) continue;
        lone.delete(place);
        pieceOf.set(place, piece);
        found = true;
        break;
      }
    }
  }
  return lone.size === 0;
}

const copyOf = ({ laid, boxes, least, most }: Growing): Growing => ({
  laid: [...laid],
  boxes: [...boxes],
  least: Float64Array.from(least),
  most: Float64Array.from(most),
});
