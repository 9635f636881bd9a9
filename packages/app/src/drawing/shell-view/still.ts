// The 3D drawing standing still, as items of a sheet: for paper, for small pictures side by side,
// and where the browser has no WebGL. Panels are drawn from the furthest to the nearest, each with
// the heavier lines that are its own. Millimetres on the sheet, x right, y down.

import {
  dot,
  type Fill,
  type Item,
  inkColours,
  type LineWeight,
  type PathItem,
  subtract,
  type Vec3,
} from '@shellraise/core';
import type { Panels } from './panels.ts';
import { cornerAt, type Pose, seenAt } from './pose.ts';

/** How it is drawn. */
export interface StillOptions {
  /** Millimetres. */
  readonly width: number;
  readonly height: number;
  readonly fillOf: (rank: number) => Fill;
  readonly shown?: number;
  /** Rank of the selected panel. */
  readonly selected?: number | null;
  /** Panels in the accent, by rank. */
  readonly marked?: (rank: number) => boolean;
  readonly inside?: boolean;
  /** Weight of a seam that is nothing special. */
  readonly seam?: LineWeight;
}

type Point = readonly [number, number];

const plain: Fill = { tint: inkColours.paper, hatch: null };
/** No fill would let through what lies behind. */
const opaque = (fill: Fill): Fill => (fill.tint === null ? { ...fill, tint: plain.tint } : fill);

/** The items of the drawing. */
export function stillItems(panels: Panels, pose: Pose, options: StillOptions): Item[] {
  const { width, height, inside = false, seam = 'thin' } = options;
  const shown = Math.min(options.shown ?? Infinity, panels.kind.length);
  const aspect = width / height;
  const at = (point: Vec3): { paper: Point; depth: number } => {
    const [x, y, depth] = seenAt(pose, aspect, point);
    return { paper: [((1 + x) * width) / 2, ((1 - y) * height) / 2], depth };
  };
  const heavier = linesByPanel(panels, shown, pose);
  const faces = Array.from({ length: shown }, (_, rank) => {
    const corners = cornersOf(panels, rank).map(at);
    const depth = corners.reduce((sum, one) => sum + one.depth, 0) / corners.length;
    return { rank, corners, depth };
  }).filter(({ corners }) => corners.every(({ depth }) => depth > pose.near));
  return faces
    .sort((a, b) => b.depth - a.depth || a.rank - b.rank)
    .flatMap(({ rank, corners }) => {
      const outer = facesEye(panels, rank, pose);
      const marked = rank === options.selected || (options.marked?.(rank) ?? false);
      const face: PathItem = {
        type: 'path',
        points: corners.map(({ paper }) => paper),
        closed: true,
        stroke: marked
          ? { weight: 'medium', ink: 'accent' }
          : { weight: outer === inside ? 'hair' : seam },
        fill: outer === inside ? plain : opaque(options.fillOf(rank)),
      };
      const lines = (heavier.get(rank) ?? []).map(
        ({ from, to, weight }): PathItem => ({
          type: 'path',
          points: [at(from).paper, at(to).paper],
          closed: false,
          stroke: { weight },
        }),
      );
      return [face, ...lines];
    });
}

interface HeavyLine {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly weight: LineWeight;
}

/** Rank → its open sides, and its sides on the outline of what is seen. */
function linesByPanel(panels: Panels, shown: number, pose: Pose): Map<number, HeavyLine[]> {
  const { ends, since, joined } = panels.edges;
  const lines = new Map<number, HeavyLine[]>();
  since.forEach((first, e) => {
    if (first >= shown) return;
    const second = joined[e] as number;
    const open = second < 0 || second >= shown;
    const [a, b] = [facesEye(panels, first, pose), !open && facesEye(panels, second, pose)];
    if (!open && a === b) return;
    const owner = open || a ? first : second;
    const from: Vec3 = [
      ends[6 * e] as number,
      ends[6 * e + 1] as number,
      ends[6 * e + 2] as number,
    ];
    const to: Vec3 = [
      ends[6 * e + 3] as number,
      ends[6 * e + 4] as number,
      ends[6 * e + 5] as number,
    ];
    const weight = open ? (second < 0 ? 'bold' : 'medium') : 'light';
    lines.set(owner, [...(lines.get(owner) ?? []), { from, to, weight }]);
  });
  return lines;
}

function cornersOf(panels: Panels, rank: number): Vec3[] {
  const corners: Vec3[] = [];
  for (let c = panels.start[rank] as number; c < (panels.start[rank + 1] as number); c++)
    corners.push(cornerAt(panels, c));
  return corners;
}

/** Whether a panel's outer face is towards the eye. */
export function facesEye(panels: Panels, rank: number, pose: Pose): boolean {
  const normal = panels.normals.subarray(3 * rank, 3 * rank + 3) as unknown as Vec3;
  const corner = cornerAt(panels, panels.start[rank] as number);
  return dot(normal, subtract(pose.eye, corner)) > 0;
}
