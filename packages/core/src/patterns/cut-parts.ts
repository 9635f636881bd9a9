// The panels of a model as flat parts for a laser or a knife, seen from outside, millimetres at scale. A
// flat sheet has square edges, so where two panels meet in a ridge their inner edges would run into each
// other: with `butt` every side is drawn in until just those touch, with `bevel` the outline is that of
// the outer face and the tilt to sand is engraved. With `slot` panels butt and a clip for each seam goes
// through a slot in either.
//
//     outer  ____\ /____      two sheets of thickness t at dihedral φ touch inside where each
//     inner  ____/ \____      outer edge is drawn in by t · cot(φ/2); in a valley by nothing

import { toDegrees } from '../math/angle.ts';
import { dihedralAngles } from '../shell/angles.ts';
import type { PlaceId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';
import { seamOfSides } from '../shell/symmetry.ts';
import { flatPanel } from './flat-panel.ts';

/** A point of a part, millimetres. */
export type CutPoint = readonly [number, number];

/** How panels are joined. */
export type CutJoint = 'butt' | 'bevel' | 'slot';

/** How parts are made. */
export interface CutPartOptions {
  /** 1 : scale. */
  readonly scale: number;
  /** Of the sheet, millimetres. */
  readonly thickness: number;
  /** Width of what the beam or blade takes away, millimetres. */
  readonly kerf: number;
  readonly joint: CutJoint;
  /** Places that are left out on purpose, by index. */
  readonly leftOut?: readonly number[];
}

/** A part to be cut: paths are where the middle of the beam goes. */
export interface CutPart {
  /** What is engraved in its middle: place number, or the angle of a clip. */
  readonly label: string;
  /** Side → what is engraved along it; empty for nothing. */
  readonly along: readonly string[];
  /** Anticlockwise. */
  readonly outline: readonly CutPoint[];
  /** Clockwise. */
  readonly holes: readonly (readonly CutPoint[])[];
  /** Convex polygons that cover it, for laying it on a sheet. */
  readonly cover: readonly (readonly CutPoint[])[];
}

/** Length of a slot across its side, in thicknesses, and how far inside the edge it begins. */
const SLOT = 3;
const SLOT_FROM = 2;
/** Depth of a clip behind the panels, in thicknesses. */
const CLIP_DEPTH = 4;

/** All parts: a panel for each place, and with `slot` a clip for each seam. Throws RangeError where a
 * panel has no area left at that thickness or no room for its slots. `number`: place → its number. */
export function cutParts(
  shell: Shell,
  number: readonly string[],
  options: CutPartOptions,
): readonly CutPart[] {
  const { thickness, kerf, joint, scale } = options;
  const out = new Set(options.leftOut ?? []);
  const dihedrals = dihedralAngles(shell);
  const seams = seamOfSides(shell);
  const parts: CutPart[] = [];
  const meets = (side: number): number | null => {
    const mate = shell.mate[side] as number;
    if (mate < 0 || out.has(shell.sidePlace[mate] as number)) return null;
    return dihedrals[seams[side] as number] as number;
  };
  for (const p of shell.kind.keys()) {
    if (out.has(p)) continue;
    const first = shell.placeStart[p] as number;
    const face = flatPanel(shell, p as PlaceId, 1000 / scale);
    const angles = face.map((_, i) => meets(first + i));
    const draw = angles.map((angle) => (joint === 'bevel' ? 0 : drawnIn(angle, thickness)));
    const solid = offsetPolygon(
      face,
      draw.map((by) => -by),
    );
    if (!keepsWay(face, solid)) throw tooThick(number[p] as string, thickness, scale);
    const holes =
      joint === 'slot'
        ? face.flatMap((_, i) =>
            angles[i] === null ? [] : [slotIn(face, i, angles[i] as number, thickness, kerf)],
          )
        : [];
    if (!holes.flat().every((point) => within(solid, point, thickness / 2)))
      throw tooThick(number[p] as string, thickness, scale);
    const outline = offsetPolygon(
      solid,
      solid.map(() => kerf / 2),
    );
    parts.push({
      label: number[p] as string,
      along: angles.map((angle) =>
        joint === 'bevel' && angle !== null
          ? `${toDegrees((Math.PI - angle) / 2).toFixed(1)}°`
          : '',
      ),
      outline,
      holes,
      cover: [outline],
    });
  }
  if (joint === 'slot')
    for (let m = 0; m < shell.seams.length / 2; m++)
      if (
        meets(shell.seams[2 * m] as number) !== null &&
        !out.has(shell.sidePlace[shell.seams[2 * m] as number] as number)
      )
        parts.push(clip(dihedrals[m] as number, thickness, kerf));
  return parts;
}

const tooThick = (number: string, thickness: number, scale: number): RangeError =>
  new RangeError(
    `a sheet of ${thickness} mm leaves no room on panel ${number} at 1 : ${scale}; a thinner sheet or a larger scale is needed`,
  );

/** How far a square edge is drawn in; nothing in a valley or at an open side. */
const drawnIn = (angle: number | null, thickness: number): number =>
  angle === null ? 0 : Math.max(0, thickness / Math.tan(angle / 2));

/** A polygon with side i moved outwards by `by[i]`, anticlockwise; corners where the moved lines meet. */
export function offsetPolygon(points: readonly CutPoint[], by: readonly number[]): CutPoint[] {
  const n = points.length;
  const lines = points.map((p, i) => {
    const q = points[(i + 1) % n] as CutPoint;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const normal = [(q[1] - p[1]) / length, (p[0] - q[0]) / length] as const;
    return { normal, reach: normal[0] * p[0] + normal[1] * p[1] + (by[i] as number) };
  });
  return lines.map((line, i) => {
    const before = lines[(i + n - 1) % n] as (typeof lines)[number];
    const [a, b] = before.normal;
    const [c, d] = line.normal;
    const det = a * d - b * c;
    return [(before.reach * d - b * line.reach) / det, (a * line.reach - before.reach * c) / det];
  });
}

const keepsWay = (before: readonly CutPoint[], after: readonly CutPoint[]): boolean =>
  before.every((p, i) => {
    const j = (i + 1) % before.length;
    const [q, u, v] = [before[j], after[i], after[j]] as [CutPoint, CutPoint, CutPoint];
    return (q[0] - p[0]) * (v[0] - u[0]) + (q[1] - p[1]) * (v[1] - u[1]) > 0;
  });

/** Whether a point lies at least `by` inside a convex polygon. */
const within = (points: readonly CutPoint[], [x, y]: CutPoint, by: number): boolean =>
  points.every((p, i) => {
    const q = points[(i + 1) % points.length] as CutPoint;
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    return (q[0] - p[0]) * (y - p[1]) - (q[1] - p[1]) * (x - p[0]) >= by * length;
  });

/** A slot across the middle of a side, as wide as the sheet is thick, clockwise, less the kerf. */
function slotIn(
  face: readonly CutPoint[],
  side: number,
  angle: number,
  thickness: number,
  kerf: number,
): CutPoint[] {
  const [p, q] = [face[side], face[(side + 1) % face.length]] as [CutPoint, CutPoint];
  const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
  const [ux, uy] = [(q[0] - p[0]) / length, (q[1] - p[1]) / length];
  const half = (thickness - kerf) / 2;
  const from = drawnIn(angle, thickness) + SLOT_FROM * thickness + kerf / 2;
  const to = from + SLOT * thickness - kerf;
  const at = (along: number, inward: number): CutPoint => [
    p[0] + ux * (length / 2 + along) - uy * inward,
    p[1] + uy * (length / 2 + along) + ux * inward,
  ];
  return [at(-half, from), at(-half, to), at(half, to), at(half, from)];
}

/** The clip of a seam, in the plane square to it, outward up: two arms behind the panels, a tab on each. */
function clip(angle: number, t: number, kerf: number): CutPart {
  const [sin, cos] = [Math.sin(angle / 2), Math.cos(angle / 2)];
  // From where the inner faces meet: `along` an arm, `out` square to its panel. In a valley the outer
  // edges touch and the inner faces meet that much further back.
  const shift = Math.min(0, t / Math.tan(angle / 2));
  const start = SLOT_FROM * t + Math.max(0, -shift);
  const end = start + SLOT * t + t;
  const right = (along: number, out: number): CutPoint => [
    sin * along + cos * out,
    -cos * along + sin * out,
  ];
  const arm = [
    right(end, -CLIP_DEPTH * t),
    right(end, 0),
    right(end - t, 0),
    right(end - t, t),
    right(start, t),
    right(start, 0),
  ];
  const mirrored = arm.map(([x, y]): CutPoint => [-x, y]).reverse();
  const bottom: CutPoint = [0, (-CLIP_DEPTH * t) / sin];
  const solid = [bottom, ...arm, [0, 0] as const, ...mirrored];
  const cover = [1, -1].map((way) => {
    const low = (x: number, y: number): CutPoint => [way * x, y];
    const [a, b, c] = [right(end, -CLIP_DEPTH * t), right(end, t), right(0, t)];
    const box = [low(...bottom), low(...a), low(...b), low(...c)];
    const grown = way > 0 ? box : box.reverse();
    return offsetPolygon(grown, [kerf, kerf, kerf, kerf]);
  });
  return {
    label: `${toDegrees(angle).toFixed(1)}°`,
    along: [],
    outline: offsetPolygon(
      solid,
      solid.map(() => kerf / 2),
    ),
    holes: [],
    cover,
  };
}
