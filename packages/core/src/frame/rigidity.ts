// The rigidity matrix of a frame whose panels are stiff plates hinged along their seams: each row is
// a length that cannot change (or an angle, where a seam is snug), by the movements of the joints.
// A triangle is stiff by its three sides. A panel with more corners is so by the sides of a fan of
// triangles and one more point off its plane, tied to all corners: a cone over a framework that is
// stiff in its plane is stiff in space (W. Whiteley, Topologie structurale 8 (1983) 53).

import {
  add,
  cross,
  distance,
  dot,
  norm,
  normalize,
  pointAt,
  scale,
  subtract,
  type Vec3,
} from '../math/vector.ts';
import { cornerAt, type Joints } from './joints.ts';
import type { FrameModel } from './model.ts';

/** Rows of the rigidity matrix: row r has the coefficients `value[3k … 3k + 2]` on the movement of
 * joint `joint[k]`, k from start[r]. No unit: a row's coefficients on one joint are a direction. */
export interface RigidityRows {
  /** Joints of the frame, and after them the points off the planes of panels with many corners. */
  readonly joints: number;
  readonly start: Int32Array;
  readonly joint: Int32Array;
  readonly value: Float64Array;
}

/** Which ties count. */
export interface RigidityOptions {
  /** Guys as ties that neither give nor go slack; else they are left out. */
  readonly guysTaut?: boolean;
  /** Snug and final seams as hinges too. */
  readonly allHinged?: boolean;
  /** Props left out. */
  readonly withoutProps?: boolean;
}

type Row = readonly (readonly [joint: number, by: Vec3])[];

/** The rows of a frame: panels, snug seams, props, and guys if asked for. Held hubs are not rows. */
export function rigidityRows(
  model: FrameModel,
  joints: Joints,
  options: RigidityOptions = {},
): RigidityRows {
  const rows = new Map<number, Row>();
  const others: Row[] = [];
  const at = (joint: number): Vec3 => pointAt(model.hubs, joints.hub[joint]);
  let count = joints.hub.length;
  const bar = (a: number, b: number): void => {
    rows.set(Math.min(a, b) * joints.hub.length + Math.max(a, b), barRow(a, at(a), b, at(b)));
  };
  model.panels.forEach((_, p) => {
    const corners = joints.jointOfCorner.subarray(joints.cornerStart[p], joints.cornerStart[p + 1]);
    for (let i = 0; i < corners.length; i++) bar(corners[i], corners[(i + 1) % corners.length]);
    if (corners.length === 3) return;
    for (let i = 2; i + 1 < corners.length; i++) bar(corners[0], corners[i]);
    const apex = apexOf(Array.from(corners, at));
    const joint = count++;
    for (const corner of corners) others.push(barRow(joint, apex, corner, at(corner)));
  });
  for (const seam of model.seams)
    if (seam.pass !== 'finger' && !options.allHinged)
      others.push(foldRow(model, joints, seam.panels, seam.hubs));
  if (!options.withoutProps)
    for (const { hub, along } of model.props)
      for (const joint of jointsAt(joints, hub)) others.push([[joint, normalize(along)]]);
  if (options.guysTaut)
    for (const { hub, anchor } of model.guys)
      for (const joint of jointsAt(joints, hub))
        others.push([[joint, normalize(subtract(at(joint), anchor))]]);
  return flatten(count, [...rows.values(), ...others]);
}

/** The joints that stand at a hub. */
function jointsAt(joints: Joints, hub: number): number[] {
  const list: number[] = [];
  joints.hub.forEach((one, joint) => {
    if (one === hub) list.push(joint);
  });
  return list;
}

function barRow(a: number, pointA: Vec3, b: number, pointB: Vec3): Row {
  const along = normalize(subtract(pointA, pointB));
  return [
    [a, along],
    [b, scale(along, -1)],
  ];
}

/** A point over the middle of a panel, as high as its corners are far. */
function apexOf(corners: readonly Vec3[]): Vec3 {
  const centre = scale(corners.reduce<Vec3>(add, [0, 0, 0]), 1 / corners.length);
  let normal: Vec3 = [0, 0, 0];
  corners.forEach((corner, i) => {
    const next = corners[(i + 1) % corners.length];
    normal = add(normal, cross(subtract(corner, centre), subtract(next, centre)));
  });
  return add(centre, scale(normalize(normal), distance(corners[0], centre)));
}

/** The angle between two panels, times the height of the flatter of the two triangles over the
 * seam, so that its coefficients are of the order of a direction.
 *
 *            c            The angle changes by n₁ u_c / h₁ + n₂ u_d / h₂ less what the ends of
 *          ╱ h₁ ╲         the seam move at the feet of both heights; n₁, n₂ unit normals.
 *        a ─────── b
 *          ╲ h₂ ╱
 *            d
 */
function foldRow(
  model: FrameModel,
  joints: Joints,
  panels: readonly [number, number],
  hubs: readonly [number, number],
): Row {
  const corners = panels.map((panel) =>
    hubs.map((hub) => cornerAt(model, joints.cornerStart, panel, hub)),
  );
  const [a, b] = corners[0].map((corner) => joints.jointOfCorner[corner]);
  const pointA = pointAt(model.hubs, hubs[0]);
  const pointB = pointAt(model.hubs, hubs[1]);
  const seam = subtract(pointB, pointA);
  const length = norm(seam);
  const sides = panels.map((panel) => {
    const far = farthestCorner(model, joints, panel, pointA, seam);
    const arm = subtract(pointAt(model.hubs, joints.hub[far.joint]), pointA);
    const foot = dot(arm, seam) / length ** 2;
    return { joint: far.joint, height: far.height, foot, normal: far.normal };
  });
  const least = Math.min(sides[0].height, sides[1].height);
  const row = new Map<number, Vec3>();
  const put = (joint: number, by: Vec3): void => {
    row.set(joint, add(row.get(joint) ?? [0, 0, 0], by));
  };
  for (const { joint, height, foot, normal } of sides) {
    const by = scale(normal, least / height);
    put(joint, by);
    put(a, scale(by, foot - 1));
    put(b, scale(by, -foot));
  }
  return [...row];
}

/** The corner of a panel farthest from one of its sides, with the normal of the half plane from the
 * side to it, turned so that both panels of a seam open their angle along theirs. */
function farthestCorner(
  model: FrameModel,
  joints: Joints,
  panel: number,
  pointA: Vec3,
  seam: Vec3,
): { readonly joint: number; readonly height: number; readonly normal: Vec3 } {
  const along = normalize(seam);
  let best = { joint: -1, height: 0, normal: [0, 0, 0] as Vec3 };
  model.panels[panel].hubs.forEach((hub, i) => {
    const arm = subtract(pointAt(model.hubs, hub), pointA);
    const out = subtract(arm, scale(along, dot(arm, along)));
    const height = norm(out);
    if (height <= best.height) return;
    const joint = joints.jointOfCorner[joints.cornerStart[panel] + i];
    best = { joint, height, normal: outward(model, panel, out, along) };
  });
  return best;
}

/** Unit normal of a panel to the outside of the shell: its hubs run anticlockwise seen from there. */
function outward(model: FrameModel, panel: number, out: Vec3, along: Vec3): Vec3 {
  const normal = normalize(cross(out, along));
  const points = model.panels[panel].hubs.map((hub) => pointAt(model.hubs, hub));
  const area = points.reduce<Vec3>(
    (sum, point, i) => add(sum, cross(point, points[(i + 1) % points.length])),
    [0, 0, 0],
  );
  return dot(normal, area) >= 0 ? normal : scale(normal, -1);
}

function flatten(joints: number, rows: readonly Row[]): RigidityRows {
  const start = new Int32Array(rows.length + 1);
  rows.forEach((row, r) => {
    start[r + 1] = start[r] + row.length;
  });
  const joint = new Int32Array(start[rows.length]);
  const value = new Float64Array(3 * joint.length);
  // By plain loops: every stage that is asked about comes through here.
  let k = 0;
  for (const row of rows)
    for (const [at, by] of row) {
      joint[k] = at;
      for (let axis = 0; axis < 3; axis++) value[3 * k + axis] = by[axis];
      k++;
    }
  return { joints, start, joint, value };
}
