// The part that the search has standing, as panels to be drawn. While it grows, a cap: the pieces
// laid on the sphere one against the other, and all of them turned about the axis that the first
// was put on. Where the search ends without a net, everything that hangs together, all round.
//
// Sides and radius are those that the search believes at that moment, so seams that close a ring
// gape by as much as readings do.

import { TAU } from '../math/angle.ts';
import { turned } from '../math/cyclic.ts';
import {
  add,
  cross,
  distance,
  dot,
  normalize,
  pointAt,
  rotateAbout,
  scale,
  subtract,
  type Vec3,
} from '../math/vector.ts';
import { chordToArc } from '../sphere/chord.ts';
import { placeCorners } from '../sphere/place.ts';
import type { WorkingKinds } from './canonical-kinds.ts';
import type { FoldedNet, FoldSeed } from './fold.ts';
import { type Unfolded, unfold } from './lift.ts';
import type { GrownPart, Stuck } from './shape.ts';

/** Pieces that stand together, with what is believed of them. */
export interface FoldedPart
  extends Pick<FoldedNet, 'fold' | 'pieceKind' | 'pieceAxis' | 'kindSide' | 'piece' | 'mate'> {
  readonly seed: FoldSeed;
  /** Kind → its first kind-side. */
  readonly first: Int32Array;
  /** Kind-side → length, metres. */
  readonly lengths: Float64Array;
  /** Metres. */
  readonly radius: number;
  /** Open side at which nothing fitted; null where that was not seen. */
  readonly stuckAt: number | null;
}

/** One panel of a part, laid on the sphere. */
export interface LaidPanel {
  readonly piece: number;
  /** From the kind's first side on, metres. */
  readonly corners: readonly Vec3[];
}

/** The part as a cap: each piece with its copies about the pole, in the order in which the pieces
 * hang together. A piece that can't be laid is left out with what hangs on it. */
export function capOf(part: FoldedPart): LaidPanel[] {
  const laid = layPieces(part);
  const [x, y, z] = poleAxes(part, laid[0]?.corners ?? []);
  const turns = part.seed.through === 'nothing' ? 1 : (part.fold.axes[0] as number);
  return laid.flatMap(({ piece, corners }) => {
    const upright = corners.map((c): Vec3 => [dot(c, x), dot(c, y), dot(c, z)]);
    const copies = piece === 0 && part.seed.through === 'panel' ? 1 : turns;
    return Array.from({ length: copies }, (_, copy) => ({
      piece,
      corners: upright.map((corner) => rotateAbout(corner, [0, 0, 1], (copy * TAU) / turns)),
    }));
  });
}

/** Everything that hangs together, all round; null where it does not come round to itself as it is
 * glued: the search asks each hub whether it can close, not what stands there already. */
export function unfoldedPart(part: FoldedPart): LaidPanel[] | null {
  const unfolded = unfold(part, kindSidesOf(part), part.radius);
  if (!unfolded || !comesRound(part, unfolded)) return null;
  const raw = unfolded.places.map(({ piece, hubs }) => ({
    piece,
    corners: hubs.map((hub) => pointAt(unfolded.hubs, hub)),
  }));
  const [x, y, z] = poleAxes(part, raw[0]?.corners ?? []);
  const panels = raw.map(({ piece, corners }) => ({
    piece,
    corners: corners.map((c): Vec3 => [dot(c, x), dot(c, y), dot(c, z)]),
  }));
  return overlaps(panels) ? null : panels;
}

/** Whether across every side lies the side that it is glued to, and nothing where the part stuck. */
function comesRound(part: FoldedPart, { places }: Unfolded): boolean {
  const start = firstSidesOf(part);
  const key = (a: number, b: number): number => a * 0x100000 + b;
  const sideAt = new Map<number, number>();
  const across: (readonly [side: number, key: number])[] = [];
  for (const { piece, hubs } of places) {
    const exposed = hubs.length / (part.pieceAxis[piece] as number);
    hubs.forEach((a, i) => {
      const side = (start[piece] as number) + (i % exposed);
      const b = next(hubs, i);
      sideAt.set(key(a, b), side);
      across.push([side, key(b, a)]);
    });
  }
  return across.every(([side, there]) => {
    const mate = part.mate[side] as number;
    if (mate >= 0) return sideAt.get(there) === mate;
    return side !== part.stuckAt || !sideAt.has(there);
  });
}

const kindSidesOf = ({ first, lengths }: FoldedPart): number[][] =>
  Array.from({ length: first.length - 1 }, (_, k) =>
    Array.from(lengths.subarray(first[k], first[k + 1])),
  );

/** Two panels may run into each other by this share of the shortest side: far more than readings
 * let a cap gape, far less than a panel. */
const MAY_CROSS = 0.05;

/** Whether two panels lie one over the other. */
function overlaps(panels: readonly LaidPanel[]): boolean {
  const shapes = panels.map(({ corners }) => {
    const centre = normalize(corners.reduce(add));
    const edges = corners.map((a, i) => normalize(cross(a, next(corners, i))));
    const reach = Math.max(...corners.map((corner) => distance(normalize(corner), centre)));
    return { corners: corners.map(normalize), centre, edges, reach };
  });
  const sides = shapes.flatMap(({ corners }) =>
    corners.map((a, i) => distance(a, next(corners, i))),
  );
  const slack = MAY_CROSS * Math.min(...sides);
  type Shape = (typeof shapes)[number];
  const apart = (a: Shape, b: Shape): boolean =>
    a.edges.some((edge) => b.corners.every((corner) => dot(edge, corner) < slack));
  return shapes.some((a, i) =>
    shapes
      .slice(0, i)
      .some(
        (b) => distance(a.centre, b.centre) < a.reach + b.reach && !apart(a, b) && !apart(b, a),
      ),
  );
}

const next = <T>(list: readonly T[], i: number): T => list[(i + 1) % list.length] as T;

/** The panels of a part as plain arrays, kinds and corners as in the list that the kinds came from. */
export function grownPart(
  { radius, pieceKind }: FoldedPart,
  panels: readonly LaidPanel[],
  { source, offset }: WorkingKinds,
): GrownPart {
  const corners = panels.flatMap(({ piece, corners: own }) =>
    turned(own, own.length - (offset[pieceKind[piece] as number] as number)),
  );
  const placeStart = new Int32Array(panels.length + 1);
  panels.forEach(({ corners: own }, p) => {
    placeStart[p + 1] = (placeStart[p] as number) + own.length;
  });
  return {
    radius,
    corners: Float64Array.from(corners.flat()),
    placeStart,
    kind: Int32Array.from(panels, ({ piece }) => source[pieceKind[piece] as number] as number),
  };
}

/** The side at which a part stuck, told as in the list that the kinds came from; none where that
 * was not seen. */
export function stuckOf(
  part: FoldedPart,
  panels: readonly LaidPanel[],
  { kinds, offset }: WorkingKinds,
): Stuck[] {
  const { stuckAt, pieceKind, first } = part;
  if (stuckAt === null) return [];
  const piece = part.piece[stuckAt] as number;
  const k = pieceKind[piece] as number;
  const { id, sides } = kinds[k] as WorkingKinds['kinds'][number];
  const own = (part.kindSide[stuckAt] as number) - (first[k] as number);
  const side = (own + (offset[k] as number)) % sides.length;
  const panel = panels.findIndex((one) => one.piece === piece);
  return panel < 0 ? [] : [{ kind: id, side, length: sides[own] as number, panel }];
}

/** The pieces in the order in which they hang together. */
function layPieces(part: FoldedPart): LaidPanel[] {
  const { radius, piece: pieceOf, mate } = part;
  const start = firstSidesOf(part);
  const sides = kindSidesOf(part);
  const sidesOf = (piece: number): number[] => sides[part.pieceKind[piece] as number] as number[];
  const laid: LaidPanel[] = [];
  const known = new Set<number>();
  const lay = (piece: number, from: Vec3, to: Vec3, at: number): void => {
    if (known.has(piece)) return;
    const placed = placeCorners(from, to, turned(sidesOf(piece), at), radius);
    if (!placed.ok) return;
    known.add(piece);
    laid.push({ piece, corners: turned(placed.corners, placed.corners.length - at) });
  };
  const arc = chordToArc(sidesOf(0)[0] as number, radius);
  lay(0, [radius, 0, 0], [radius * Math.cos(arc), radius * Math.sin(arc), 0], 0);
  for (let i = 0; i < laid.length; i++) {
    const { piece, corners } = laid[i] as LaidPanel;
    for (let side = start[piece] as number; pieceOf[side] === piece; side++) {
      const across = mate[side] as number;
      if (across < 0) continue;
      const at = side - (start[piece] as number);
      const [a, b] = [corners[at], corners[(at + 1) % corners.length]] as [Vec3, Vec3];
      const other = pieceOf[across] as number;
      lay(other, b, a, across - (start[other] as number));
    }
  }
  return laid;
}

function firstSidesOf({ piece }: FoldedPart): number[] {
  const first: number[] = [];
  piece.forEach((own, side) => {
    first[own] ??= side;
  });
  return first;
}

/** The frame with the first piece's axis up: through its corner or its middle; its next corner lies
 * towards x. */
function poleAxes(part: FoldedPart, corners: readonly Vec3[]): readonly [Vec3, Vec3, Vec3] {
  const at = part.seed.kindSide - (part.first[part.pieceKind[0] as number] as number);
  const [a, b, c] = turned(corners, at) as [Vec3, Vec3, Vec3];
  const through = part.seed.through === 'hub' ? a : cross(subtract(b, a), subtract(c, b));
  const z = normalize(through);
  const x = normalize(subtract(b, scale(z, dot(b, z))));
  return [x, cross(z, x), z];
}
