// The hatches of the flat drawings on panels in space: where each corner lies in the tiles of its
// panel's hatch. A panel's upward side is up, seen from outside, so that a hatch that leans left
// leans left; near the poles its side towards +x is.

import {
  cross,
  dot,
  type HatchName,
  hatchNamed,
  normalize,
  scale,
  subtract,
  type Vec3,
} from '@shellraise/core';
import { meanEdgeOf, type Panels } from './panels.ts';
import { cornerAt } from './pose.ts';

/** What the shader needs at each corner of the triangles; see there. */
export interface PanelHatching {
  readonly spot: Float32Array;
  readonly ruling: Float32Array;
  readonly dots: Float32Array;
}

/** A mean side is drawn as if it were this long on paper, millimetres: as on a flat plan. */
const SIDE_ON_PAPER = 15;
/** Width of hatch lines there, millimetres. */
const PEN = 0.16;

/** Hatching of triangle corners: `source` has the panel's corner and `ranks` the panel of each. */
export function hatchOnPanels(
  panels: Panels,
  hatches: readonly (HatchName | null)[],
  source: Int32Array,
  ranks: ArrayLike<number>,
): PanelHatching {
  const spot = new Float32Array(2 * source.length);
  const ruling = new Float32Array(4 * source.length);
  const dots = new Float32Array(3 * source.length);
  const paper = SIDE_ON_PAPER / (meanEdgeOf(panels.edges) || 1);
  source.forEach((corner, at) => {
    const rank = ranks[at] as number;
    const name = hatches[rank] ?? null;
    ruling.set([-1, -1, 0, 1], 4 * at);
    if (name === null) return;
    const { tile, angle, lines, crossed, drawn, dots: own } = hatchNamed(name);
    const [u, v] = onPanel(panels, rank, corner).map((x) => (x * paper) / tile) as [number, number];
    // Paper has y down, and the tile is turned clockwise on it.
    const [c, s] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
    spot.set([u * c - v * s, -u * s - v * c], 2 * at);
    const [first = -tile, second = -tile] = lines;
    ruling.set([first / tile, second / tile, crossed ? 1 : 0, drawn], 4 * at);
    const [dot] = own;
    const half = PEN / 2 / tile;
    dots.set([(dot?.r ?? 0) / tile, dot?.ring ? half : 0, half], 3 * at);
  });
  return { spot, ruling, dots };
}

/** A corner on its panel's plane, right and up seen from outside, metres from its first corner. */
function onPanel(panels: Panels, rank: number, corner: number): [number, number] {
  const [nx, ny, nz] = panels.normals.subarray(3 * rank, 3 * rank + 3) as unknown as Vec3;
  const normal: Vec3 = [nx, ny, nz];
  const upwards: Vec3 = Math.abs(nz) > 0.97 ? [1, 0, 0] : [0, 0, 1];
  const up = normalize(subtract(upwards, scale(normal, dot(upwards, normal))));
  const from = cornerAt(panels, panels.start[rank] as number);
  const way = subtract(cornerAt(panels, corner), from);
  return [dot(way, cross(up, normal)), dot(way, up)];
}
