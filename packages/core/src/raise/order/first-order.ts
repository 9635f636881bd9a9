// A first order of work: rings from the ground up, in each the piece that meets most of what stands,
// of these the nearest onward; the way out last.

import { barredBy } from './entry.ts';
import type { Piece } from './pieces.ts';
import { type Pins, predecessors } from './pins.ts';
import type { OrderSite } from './site.ts';

/** Where the first piece stands and which way round it goes. */
export interface Round {
  /** Azimuth of the start, radians, clockwise from the datum. */
  readonly start: number;
  readonly clockwise: boolean;
}

/** An order of all pieces; where the pins leave nothing that can go in, those that are left come as
 * they are, for a walk to get stuck at. */
export function firstOrder(
  site: OrderSite,
  pieces: readonly Piece[],
  pins: Pins,
  { start, clockwise }: Round,
): Piece[] {
  const placed = new Uint8Array(site.built.length);
  const isPlaced = (p: number): boolean => placed[p] === 1;
  const wanted = predecessors(pins);
  const left = new Set(pieces);
  const order: Piece[] = [];
  let azimuth = start;
  while (left.size > 0) {
    const ready = [...left].filter(
      (piece) =>
        piece.places.every((p) =>
          (wanted.get(p) ?? []).every((q) => isPlaced(q) || piece.places.includes(q)),
        ) && barredBy(site, piece, isPlaced) === null,
    );
    if (ready.length === 0) return [...order, ...left];
    const next = best(site, ready, isPlaced, (piece) => {
      const by = (middle(site, piece) - azimuth) * (clockwise ? 1 : -1);
      return ((by % TURN) + TURN + 1e-9) % TURN;
    });
    azimuth = middle(site, next);
    for (const p of next.places) placed[p] = 1;
    left.delete(next);
    order.push(next);
  }
  return order;
}

const TURN = 2 * Math.PI;

function best(
  site: OrderSite,
  ready: readonly Piece[],
  isPlaced: (place: number) => boolean,
  onward: (piece: Piece) => number,
): Piece {
  const rank = (piece: Piece): readonly number[] => [
    piece.wayOut ? 1 : 0,
    piece.course,
    -piece.outer.filter(({ place }) => isPlaced(place)).length -
      (standsOnSide(site, piece) ? 1 : 0),
    onward(piece),
    piece.places[0] as number,
  ];
  return ready
    .map((piece) => ({ piece, key: rank(piece) }))
    .reduce((a, b) => (isLess(b.key, a.key) ? b : a)).piece;
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (const [i, x] of a.entries()) if (x !== b[i]) return x < (b[i] as number);
  return false;
}

/** Whether two hubs of a panel of it stand on the ground. */
const standsOnSide = (site: OrderSite, piece: Piece): boolean =>
  piece.places.some((p) => (site.hubs[p] ?? []).filter((hub) => site.base[hub]).length >= 2);

/** Azimuth of the middle of a piece. */
function middle(site: OrderSite, { places }: Piece): number {
  let [c, s] = [0, 0];
  for (const p of places) {
    c += Math.cos(site.azimuth[p] as number);
    s += Math.sin(site.azimuth[p] as number);
  }
  return Math.atan2(s, c);
}
