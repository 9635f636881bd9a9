// Where the eye stands and what it sees, as plain numbers. Metres, z up, never rolled. Outside it
// walks round the shell and looks at its middle; inside it stands on the floor in the middle and
// turns its head.

import { add, cross, dot, norm, normalize, scale, subtract, type Vec3 } from '@shellraise/core';
import type { Panels } from './panels.ts';

/** How the shell is looked at. Radians; azimuth anticlockwise seen from above, from +x: of the eye
 * outside, of the look inside. */
export interface View {
  readonly azimuth: number;
  readonly elevation: number;
  /** 1: the whole shell fits; larger is nearer. */
  readonly zoom: number;
}

/** The room that the panels take. */
export interface Room {
  readonly centre: Vec3;
  /** Radius about the centre, metres. */
  readonly reach: number;
  /** Lowest and highest, metres. */
  readonly low: number;
  readonly high: number;
  /** Furthest from the axis, metres. */
  readonly wide: number;
  /** Kept in sight about the axis: `wide`, and more where something stands outside, metres. */
  readonly needed: number;
}

/** An eye. */
export interface Pose {
  readonly eye: Vec3;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly forward: Vec3;
  /** Tangent of half the angle of sight, up and down. */
  readonly tangent: number;
  /** Depths between which everything lies, metres. */
  readonly near: number;
  readonly far: number;
}

/** From the side of the datum and a little above. */
export const firstView: View = { azimuth: 0.62, elevation: 0.36, zoom: 1 };
/** Upright among the panels, looking at the datum and up. */
export const firstViewInside: View = { azimuth: 0, elevation: 0.3, zoom: 1 };

const STEEPEST = 1.55;
const LOWEST_INSIDE = -0.5;
const zooms = { outside: { min: 0.6, max: 8 }, inside: { min: 0.7, max: 4 } };
/** Half angles of sight: narrow outside, as a drawing has it; wide inside. */
const HALF_OUTSIDE = (11 * Math.PI) / 180;
const HALF_INSIDE = (42 * Math.PI) / 180;
/** Eyes of someone who stands, metres above the floor. */
const EYE_HEIGHT = 1.6;
/** Left free around the shell, as a share of it. */
const MARGIN = 1.04;

/** The room of these panels; of a ball of radius 1 where there are none. */
export function roomOf({ corners }: Pick<Panels, 'corners'>): Room {
  if (corners.length === 0)
    return { centre: [0, 0, 0], reach: 1, low: -1, high: 1, wide: 1, needed: 1 };
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  let wide = 0;
  for (let i = 0; i < corners.length; i += 3) {
    for (let k = 0; k < 3; k++) {
      low[k] = Math.min(low[k] as number, corners[i + k] as number);
      high[k] = Math.max(high[k] as number, corners[i + k] as number);
    }
    wide = Math.max(wide, Math.hypot(corners[i] as number, corners[i + 1] as number));
  }
  const centre = low.map((x, k) => (x + (high[k] as number)) / 2) as unknown as Vec3;
  let reach = 0;
  for (let i = 0; i < corners.length; i += 3) {
    const corner: Vec3 = [corners[i] as number, corners[i + 1] as number, corners[i + 2] as number];
    reach = Math.max(reach, norm(subtract(corner, centre)));
  }
  return { centre, reach, low: low[2] as number, high: high[2] as number, wide, needed: wide };
}

/** The room of a whole ball. */
export const ballRoom = (radius: number): Room => ({
  centre: [0, 0, 0],
  reach: radius,
  low: -radius,
  high: radius,
  wide: radius,
  needed: radius,
});

/** The eye outside; `aspect` is width over height of the picture. */
export function outsidePose(view: View, room: Room, aspect: number): Pose {
  const tangent = Math.tan(HALF_OUTSIDE) / view.zoom;
  const need = Math.max(halfHeightSeen(view, room), room.needed / aspect);
  const away = (MARGIN * need) / Math.sin(HALF_OUTSIDE);
  const back = towards(view);
  return {
    eye: add(room.centre, scale(back, away)),
    ...axesAlong(scale(back, -1)),
    tangent,
    near: Math.max(away - 1.6 * room.reach, 0.01 * away),
    far: away + 1.6 * room.reach,
  };
}

/** Half the height of the picture that the room needs from this elevation, metres. */
const halfHeightSeen = ({ elevation }: View, { reach, needed, low, high }: Room): number =>
  Math.min(
    reach,
    ((high - low) / 2) * Math.cos(elevation) + needed * Math.abs(Math.sin(elevation)),
  );

/** The eye inside. */
export function insidePose(view: View, room: Room): Pose {
  const height = room.high - room.low;
  const eye: Vec3 = [0, 0, room.low + Math.min(EYE_HEIGHT, 0.4 * height)];
  return {
    eye,
    ...axesAlong(towards(view)),
    tangent: Math.tan(HALF_INSIDE) / view.zoom,
    near: 0.02 * room.reach,
    far: 3 * room.reach,
  };
}

/** The eye of a view. */
export const poseOf = (view: View, room: Room, aspect: number, inside: boolean): Pose =>
  inside ? insidePose(view, room) : outsidePose(view, room, aspect);

/** Where a point is seen: right and up in −1 … 1 over the picture, and its depth in metres
 * (behind the eye: 0 or less). */
export function seenAt(pose: Pose, aspect: number, point: Vec3): Vec3 {
  const from = subtract(point, pose.eye);
  const depth = dot(from, pose.forward);
  const half = depth * pose.tangent;
  return [dot(from, pose.right) / (half * aspect), dot(from, pose.up) / half, depth];
}

/** Direction from the eye through a point of the picture, the inverse of `seenAt`. */
export function rayThrough(pose: Pose, aspect: number, x: number, y: number): Vec3 {
  const sideways = scale(pose.right, x * pose.tangent * aspect);
  return normalize(add(pose.forward, add(sideways, scale(pose.up, y * pose.tangent))));
}

/** The view after a drag by parts of the picture's height: the shell follows the finger. */
export function dragged(view: View, dx: number, dy: number, inside: boolean): View {
  const turn = (inside ? 1.3 : 2.6) / view.zoom ** (inside ? 1 : 0.7);
  return kept(
    {
      ...view,
      azimuth: view.azimuth + (inside ? dx : -dx) * turn,
      elevation: view.elevation + dy * turn,
    },
    inside,
  );
}

/** The view nearer or farther by a factor. */
export const zoomed = (view: View, factor: number, inside: boolean): View =>
  kept({ ...view, zoom: view.zoom * factor }, inside);

const STEP = Math.PI / 24;

/** The view after a key, or null where the key means nothing here. */
export function keyed(view: View, key: string, inside: boolean): View | null {
  const turn = (azimuth: number, elevation: number): View =>
    kept(
      { ...view, azimuth: view.azimuth + azimuth, elevation: view.elevation + elevation },
      inside,
    );
  switch (key) {
    case 'ArrowLeft':
      return turn(inside ? STEP : -STEP, 0);
    case 'ArrowRight':
      return turn(inside ? -STEP : STEP, 0);
    case 'ArrowUp':
      return turn(0, STEP);
    case 'ArrowDown':
      return turn(0, -STEP);
    case '+':
    case '=':
      return zoomed(view, 1.2, inside);
    case '-':
    case '−':
      return zoomed(view, 1 / 1.2, inside);
    case '0':
    case 'Home':
      return inside ? firstViewInside : firstView;
    default:
      return null;
  }
}

/** The first panel that a ray from the eye meets, as its rank; null where it meets none. Only the
 * first `shown` panels are there. */
export function pickedPanel(
  panels: Panels,
  shown: number,
  eye: Vec3,
  direction: Vec3,
): number | null {
  let nearest = Infinity;
  let picked: number | null = null;
  for (let rank = 0; rank < Math.min(shown, panels.kind.length); rank++) {
    const first = panels.start[rank] as number;
    for (let c = first + 1; c + 1 < (panels.start[rank + 1] as number); c++) {
      const [p, q, r] = [first, c, c + 1].map((i) => cornerAt(panels, i)) as [Vec3, Vec3, Vec3];
      const depth = depthAt(p, q, r, eye, direction);
      if (depth === null || depth >= nearest) continue;
      nearest = depth;
      picked = rank;
    }
  }
  return picked;
}

/** Corner of a panel. */
export const cornerAt = ({ corners }: Panels, corner: number): Vec3 => [
  corners[3 * corner] as number,
  corners[3 * corner + 1] as number,
  corners[3 * corner + 2] as number,
];

/** How far along a ray a triangle lies (Möller and Trumbore 1997); null where it misses. */
function depthAt(p: Vec3, q: Vec3, r: Vec3, eye: Vec3, direction: Vec3): number | null {
  const [e, f] = [subtract(q, p), subtract(r, p)];
  const h = cross(direction, f);
  const det = dot(e, h);
  if (Math.abs(det) < 1e-12) return null;
  const s = subtract(eye, p);
  const u = dot(s, h) / det;
  const k = cross(s, e);
  const v = dot(direction, k) / det;
  if (u < 0 || v < 0 || u + v > 1) return null;
  const depth = dot(f, k) / det;
  return depth > 1e-9 ? depth : null;
}

function kept(view: View, inside: boolean): View {
  const { min, max } = zooms[inside ? 'inside' : 'outside'];
  const lowest = inside ? LOWEST_INSIDE : -STEEPEST;
  return {
    azimuth: Math.atan2(Math.sin(view.azimuth), Math.cos(view.azimuth)),
    elevation: Math.min(STEEPEST, Math.max(lowest, view.elevation)),
    zoom: Math.min(max, Math.max(min, view.zoom)),
  };
}

const towards = ({ azimuth, elevation }: View): Vec3 => [
  Math.cos(elevation) * Math.cos(azimuth),
  Math.cos(elevation) * Math.sin(azimuth),
  Math.sin(elevation),
];

function axesAlong(forward: Vec3): Pick<Pose, 'right' | 'up' | 'forward'> {
  const right = normalize(cross(forward, [0, 0, 1]));
  return { right, up: cross(right, forward), forward };
}
