// Unfolds a folded net to the whole shell: lays the first piece on the sphere, then every
// neighbour across every side, until all sides meet. New corners that fall on a hub become it. A net
// that is not glued all round unfolds as far as it hangs together.

import { turned } from '../math/cyclic.ts';
import { distance, pointAt, type Vec3 } from '../math/vector.ts';
import { makeShell, type PlaceDraft, type Shell } from '../shell/shell.ts';
import { chordToArc } from '../sphere/chord.ts';
import { placeCorners } from '../sphere/place.ts';
import type { FoldedNet } from './fold.ts';

/** Two corners nearer than this share of the shortest side are one hub: far above the misfit of a
 * fitted net, far below the distance of two hubs. */
const SAME_HUB = 0.1;

/** Pieces glued together, all round or in part. */
export type Glued = Pick<FoldedNet, 'fold' | 'pieceKind' | 'pieceAxis' | 'piece' | 'mate'>;

/** Places in the order in which they were laid, each but the first beside an earlier one. */
export interface Unfolded {
  /** Hubs from the kind's first side on. */
  readonly places: readonly { readonly piece: number; readonly hubs: readonly number[] }[];
  /** Stride 3, metres. */
  readonly hubs: Float64Array;
}

/** The whole shell of a folded net, with these sides (kind → lengths) and radius in metres; null
 * where it does not come together. Every place starts at its kind's first side (turn 0). */
export function liftNet(
  net: FoldedNet,
  sides: readonly (readonly number[])[],
  radius: number,
): Shell | null {
  const unfolded = unfold(net, sides, radius);
  if (!unfolded || unfolded.places.length !== placesOf(net)) return null;
  const { hubs, places } = unfolded;
  const drafts = places.map(({ piece, hubs: own }): PlaceDraft => {
    return { hubs: own, kind: net.pieceKind[piece] as number, turn: 0 };
  });
  return makeShell({ radius, hubs, places: drafts });
}

/** Places of the whole net that the pieces stand for. */
const placesOf = ({ fold, pieceAxis }: Glued): number =>
  pieceAxis.reduce((sum, axis) => sum + fold.order / axis, 0);

/** Everything that hangs together with the first piece, with these sides (kind → lengths) and radius
 * in metres; null where two places come to lie on one side of a seam, or there is no end of them. */
export function unfold(
  net: Glued,
  sides: readonly (readonly number[])[],
  radius: number,
): Unfolded | null {
  const most = placesOf(net);
  const sphere = hubFinder(radius, SAME_HUB * Math.min(...sides.flat()));
  const pieceFirst = firstSidesOf(net);
  const places: { piece: number; hubs: number[] }[] = [];
  const laid = new Set<number>();
  const key = (a: number, b: number): number => a * 0x100000 + b;
  const lay = (piece: number, corners: readonly Vec3[], from: number): boolean => {
    const n = corners.length;
    const hubs = corners.map((_, i) => sphere.hubAt(corners[(i - from + n) % n] as Vec3));
    for (let i = 0; i < n; i++) {
      const k = key(hubs[i] as number, hubs[(i + 1) % n] as number);
      if (laid.has(k) || hubs[i] === hubs[(i + 1) % n]) return false;
      laid.add(k);
    }
    places.push({ piece, hubs });
    return true;
  };
  const first = sides[net.pieceKind[0] as number] as readonly number[];
  const start = placeCorners(
    [radius, 0, 0],
    alongEquator(first[0] as number, radius),
    first,
    radius,
  );
  if (!start.ok || !lay(0, start.corners, 0)) return null;
  for (let p = 0; p < places.length; p++) {
    if (places.length > most) return null;
    const { piece, hubs } = places[p] as { piece: number; hubs: number[] };
    const exposed = hubs.length / (net.pieceAxis[piece] as number);
    for (let i = 0; i < hubs.length; i++) {
      const a = hubs[i] as number;
      const b = hubs[(i + 1) % hubs.length] as number;
      const mate = net.mate[(pieceFirst[piece] as number) + (i % exposed)] as number;
      if (mate < 0 || laid.has(key(b, a))) continue;
      const other = net.piece[mate] as number;
      const own = sides[net.pieceKind[other] as number] as readonly number[];
      const at = mate - (pieceFirst[other] as number);
      const round = turned(own, at);
      const corners = placeCorners(sphere.position(b), sphere.position(a), round, radius);
      if (!corners.ok || !lay(other, corners.corners, at)) return null;
    }
  }
  return { places, hubs: sphere.hubs() };
}

function firstSidesOf(net: Glued): number[] {
  const first: number[] = [];
  net.piece.forEach((piece, side) => {
    first[piece] ??= side;
  });
  return first;
}

function alongEquator(chord: number, radius: number): Vec3 {
  const arc = chordToArc(chord, radius);
  return [radius * Math.cos(arc), radius * Math.sin(arc), 0];
}

/** Hubs by position: a grid of cells no smaller than the tolerance. */
function hubFinder(
  radius: number,
  tolerance: number,
): {
  hubAt: (point: Vec3) => number;
  position: (hub: number) => Vec3;
  hubs: () => Float64Array;
} {
  const cell = Math.max(tolerance, radius / 500);
  const points: number[] = [];
  const grid = new Map<number, number[]>();
  const index = (x: number): number => Math.floor((x + 2 * radius) / cell);
  const keyOf = (i: number, j: number, k: number): number => (i * 4096 + j) * 4096 + k;
  const position = (hub: number): Vec3 => pointAt(points, hub);
  const hubAt = (point: Vec3): number => {
    const [i, j, k] = [index(point[0]), index(point[1]), index(point[2])];
    for (let a = i - 1; a <= i + 1; a++)
      for (let b = j - 1; b <= j + 1; b++)
        for (let c = k - 1; c <= k + 1; c++)
          for (const hub of grid.get(keyOf(a, b, c)) ?? [])
            if (distance(position(hub), point) <= tolerance) return hub;
    const hub = points.length / 3;
    points.push(...point);
    const there = grid.get(keyOf(i, j, k));
    if (there) there.push(hub);
    else grid.set(keyOf(i, j, k), [hub]);
    return hub;
  };
  return { hubAt, position, hubs: () => Float64Array.from(points) };
}
