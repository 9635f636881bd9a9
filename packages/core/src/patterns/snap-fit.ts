// Where panels and hubs of a snap model meet: sizes that all its parts share, so that every panel of a
// kind fits every place of it. Millimetres at scale.
//
//   panel  ▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁▁   The edges of a panel lie in planes through the sphere's centre: two panels
//           ╲___┌┐____┌┐___╱   meet at the true dihedral. A hub lies behind its star: facets parallel to
//          ╱▔▔▔▔││ hub││▔▔▔╲   the panels, one peg square to each. A panel is pushed on from outside along
//         ╱_______________╲    its own normal, on all its pegs at once.

import { acos } from '../math/angle.ts';
import type { PlaceId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { type FlatPanel, framedPanel } from './flat-panel.ts';
import type { FacePoint } from './solid-faces.ts';

/** How a snap model is made. */
export interface SnapOptions {
  /** 1 : scale. */
  readonly scale: number;
  /** Thickness of a panel, millimetres. */
  readonly wall: number;
  /** Between a peg and its socket all round, and between two panels, millimetres; 0 or more. */
  readonly clearance: number;
  /** Diameter of a peg, millimetres. */
  readonly peg: number;
  /** Places that are left out on purpose, by index. */
  readonly leftOut?: readonly number[];
}

/** Sizes that all parts of a model share, millimetres. */
export interface SnapFit {
  readonly wall: number;
  readonly clearance: number;
  /** Radius of a peg. */
  readonly pegRadius: number;
  /** Depth of a socket and height of a peg. */
  readonly depth: number;
  /** From a hub's point to the top of the hub part, towards the centre. */
  readonly sink: number;
  /** From the top of the hub part along a panel to the middle of its peg. */
  readonly reach: number;
  /** From the top of the hub part along a seam to its rim. */
  readonly rim: number;
}

/** Least skin of a panel over a socket, and least depth of one, millimetres: our own judgement for
 * printers that lay beads of 0.4 mm. */
const SKIN = 0.8;
const SHALLOW = 0.8;

/** Least wall around a socket or a peg, millimetres: our own judgement. */
export const AROUND_SOCKET = 1;

/** The thinnest panel that holds a socket, millimetres. */
export const LEAST_SNAP_WALL = SKIN + SHALLOW;

/** The sizes for the places of a shell that are made. RangeError, naming what it is about, for a wall,
 * peg or clearance that is none, and for a wall as thick as the shell is deep. */
export function snapFit(shell: Shell, places: readonly PlaceId[], options: SnapOptions): SnapFit {
  const { scale, wall, clearance, peg } = options;
  assertSizes(options);
  const pegRadius = peg / 2;
  let [slope, reach] = [1, 0];
  const angles: number[] = [];
  for (const place of places) {
    const { corners, foot, height } = framedPanel(shell, place, 1000 / scale);
    if (!(height > wall))
      throw new RangeError(`wall: ${wall} mm, expected less than ${height.toFixed(2)} mm`);
    corners.forEach(([x, y], i) => {
      const angle = cornerAngle(corners, i);
      angles.push(angle);
      slope = Math.min(slope, height / Math.hypot(x - foot[0], y - foot[1], height));
      reach = Math.max(reach, (pegRadius + clearance + AROUND_SOCKET) / Math.sin(angle / 2));
    });
  }
  const toRim = reach + pegRadius + AROUND_SOCKET;
  return {
    wall,
    clearance,
    pegRadius,
    depth: wall - SKIN,
    sink: (wall + clearance) / slope,
    reach,
    rim: angles.reduce((most, angle) => Math.max(most, toRim / Math.cos(angle / 2)), 0),
  };
}

function assertSizes({ wall, clearance, peg }: SnapOptions): void {
  if (!(wall >= LEAST_SNAP_WALL && wall < Infinity))
    throw new RangeError(`wall: ${wall} mm, expected ${LEAST_SNAP_WALL} mm or more`);
  if (!(clearance >= 0 && clearance < wall))
    throw new RangeError(`clearance: ${clearance} mm, expected from 0 to less than ${wall} mm`);
  if (!(peg > 0 && peg < Infinity)) throw new RangeError(`peg: ${peg} mm, expected more than 0 mm`);
}

/** Inside angle of a polygon at a corner, radians. */
export function cornerAngle(corners: FlatPanel, i: number): number {
  const [to, back] = waysFrom(corners, i);
  return acos(to[0] * back[0] + to[1] * back[1]);
}

/** Unit vectors from a corner to the next and to the one before. */
export function waysFrom(corners: FlatPanel, i: number): readonly [FacePoint, FacePoint] {
  const n = corners.length;
  const at = corners[i] as FacePoint;
  const to = (j: number): FacePoint => {
    const [x, y] = corners[j] as FacePoint;
    const length = Math.hypot(x - at[0], y - at[1]);
    return [(x - at[0]) / length, (y - at[1]) / length];
  };
  return [to((i + 1) % n), to((i + n - 1) % n)];
}
