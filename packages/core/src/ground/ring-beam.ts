// What the base ring stands on: a ring beam of straight pieces mitred at the hubs, or a sleeper
// under each hub. Plan lengths: the beam lies level and packing takes up what hubs rise. Each joint
// is cut along the bisector of the two pieces that meet, so that both ends have the same mitre.
//
//          outer length (long points)
//        ╱¯¯¯¯¯¯¯¯¯¯¯¯¯¯¯¯¯¯¯╲         mitre: how far the saw is turned from a square
//       ╱───── hub line ──────╲        cut, half of how far the ring turns there
//      ╱_______________________╲
//          inner length

import { assertNumber } from '../math/doors.ts';
import type { Base, PlanPoint } from './base.ts';

/** Options of `ringBeam`, metres. */
export interface RingBeamOptions {
  /** Width of the beam seen from above. */
  readonly width: number;
  /** How far the beam's middle lies outside the line of the hubs; negative: inside. 0 unless told. */
  readonly outside?: number;
}

/** One piece of the ring beam, from one base hub to the next clockwise. */
export interface BeamPiece {
  /** Numbers of its hubs. */
  readonly from: number;
  readonly to: number;
  /** Lengths along the outer face, the middle and the inner face, metres. */
  readonly outer: number;
  readonly middle: number;
  readonly inner: number;
  /** Angle of the saw from square at each end, radians; positive where the outer face is longer. */
  readonly mitreFrom: number;
  readonly mitreTo: number;
}

/** The cut list of a ring beam, one piece a side of the base ring. RangeError for a width that is no
 * length over 0, and where a piece would have no inner face left: the beam is too wide. */
export function ringBeam(base: Base, options: RingBeamOptions): BeamPiece[] {
  const { width, outside = 0 } = options;
  assertNumber('width', width, 1e-3);
  assertNumber('outside', outside);
  const n = base.hubs.length;
  const mitres = base.hubs.map((_, k) => turnAt(base, k) / 2);
  return base.hubs.map((hub, k) => {
    const next = (k + 1) % n;
    const [from, to] = [mitres[k] as number, mitres[next] as number];
    const gain = Math.tan(from) + Math.tan(to);
    const at = (off: number): number => hub.levelChord + off * gain;
    const piece: BeamPiece = {
      from: hub.number,
      to: next + 1,
      outer: at(outside + width / 2),
      middle: at(outside),
      inner: at(outside - width / 2),
      mitreFrom: from,
      mitreTo: to,
    };
    if (!(Math.min(piece.inner, piece.outer) > 0))
      throw new RangeError(
        `a beam ${width} m wide leaves no piece from hub ${hub.number} to hub ${next + 1}: ${piece.inner} m inside`,
      );
    return piece;
  });
}

/** How far the ring turns at a hub, clockwise, radians, −π to π; 2π/n in a regular ring. */
function turnAt(base: Base, k: number): number {
  const n = base.hubs.length;
  const point = (i: number): PlanPoint => (base.hubs[(i + n) % n] as Base['hubs'][number]).at;
  const [a, b, c] = [point(k - 1), point(k), point(k + 1)];
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]];
  return Math.atan2(uy * vx - ux * vy, ux * vx + uy * vy);
}

/** Pieces that have the same lengths and mitres, to the tenth of a millimetre and of a degree. */
export interface BeamCut {
  readonly piece: BeamPiece;
  /** Numbers of the hubs that the pieces start from. */
  readonly from: readonly number[];
}

/** The pieces gathered by size, in the order of their first hub. A piece and its mirror image are
 * one size where both mitres are equal. */
export function beamCuts(pieces: readonly BeamPiece[]): BeamCut[] {
  const sizes = new Map<string, { piece: BeamPiece; from: number[] }>();
  const tenth = (metres: number): number => Math.round(metres * 1e4);
  const degree = (angle: number): number => Math.round((angle * 1800) / Math.PI);
  for (const piece of pieces) {
    const key = [
      tenth(piece.outer),
      tenth(piece.inner),
      degree(piece.mitreFrom),
      degree(piece.mitreTo),
    ].join();
    const size = sizes.get(key);
    if (size) size.from.push(piece.from);
    else sizes.set(key, { piece, from: [piece.from] });
  }
  return [...sizes.values()];
}

/** Which pieces come from which length of stock. */
export interface StockPlan {
  /** For each length of stock the indices of the pieces cut from it. */
  readonly lengths: readonly (readonly number[])[];
  /** Pieces longer than the stock: to be spliced. */
  readonly tooLong: readonly number[];
  /** No plan takes fewer lengths than this. */
  readonly least: number;
}

/** Cuts lengths from stock, longest first into the first stock that has room (first fit decreasing);
 * each piece loses a kerf. RangeError where stock or kerf is no length. */
export function cutFromStock(pieces: readonly number[], stock: number, kerf = 0.004): StockPlan {
  assertNumber('stock', stock, 1e-3);
  assertNumber('kerf', kerf, 0);
  const room = stock + kerf;
  const order = [...pieces.keys()].sort(
    (a, b) => (pieces[b] as number) - (pieces[a] as number) || a - b,
  );
  const fits = (i: number): boolean => (pieces[i] as number) <= stock;
  const lengths: { left: number; cut: number[] }[] = [];
  for (const i of order.filter(fits)) {
    const need = (pieces[i] as number) + kerf;
    const free = lengths.find(({ left }) => left >= need - 1e-12);
    if (free) {
      free.left -= need;
      free.cut.push(i);
    } else lengths.push({ left: room - need, cut: [i] });
  }
  const used = order.filter(fits).reduce((sum, i) => sum + (pieces[i] as number) + kerf, 0);
  return {
    lengths: lengths.map(({ cut }) => cut),
    tooLong: order.filter((i) => !fits(i)),
    least: Math.ceil(used / room - 1e-9),
  };
}
