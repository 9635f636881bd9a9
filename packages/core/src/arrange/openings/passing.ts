// What must be left out of a shell so that a body may pass through its wall, straight along a line: a
// level one for a door, or one from the sphere's centre for a hatch. Seen along that line the body is an
// outline (a door: a rectangle on the floor); every panel of the near wall that the outline meets is in
// the way.
//
//   axes of the view: u to the left of who walks out, v up, both metres; u = 0 on the line, v = 0 on
//   the floor, or on the line where that has a pitch.

import { TAU } from '../../math/angle.ts';
import { hubPoint, placeCentre } from '../../shell/geometry.ts';
import type { HubId, PlaceId } from '../../shell/ids.ts';
import { hubCount, hubsOf, placeCount, type Shell } from '../../shell/shell.ts';
import { convexParts } from './convex-parts.ts';

/** A point of the view, metres. */
export type ViewPoint = readonly [number, number];

/** Who passes where. */
export interface Passage {
  /** Which way out, radians anticlockwise seen from above from the datum (+x). */
  readonly azimuth: number;
  /** How far the line runs to the left of the axis, metres. */
  readonly aside: number;
  /** Height of the floor, metres in the shell's frame. */
  readonly floor: number;
  /** Anticlockwise, in the view's axes; it may have inward corners, and must not cross itself. */
  readonly outline: readonly ViewPoint[];
  /** How steeply the line rises, radians; it then starts at the sphere's centre, and `aside` and `floor`
   * say nothing. Absent: level. */
  readonly pitch?: number;
}

/** Overlaps of less than this are none, metres: what a panel's edge gives way. */
const TOUCH = 1e-3;

/** The outline of a door: a rectangle on a sill. */
export const doorOutline = (width: number, height: number, sill = 0): readonly ViewPoint[] => [
  [-width / 2, sill],
  [width / 2, sill],
  [width / 2, sill + height],
  [-width / 2, sill + height],
];

/** The outline of a round opening as the polygon of 24 sides that holds it; `middle`: height of its
 * centre above the floor. */
export function roundOutline(diameter: number, middle: number): readonly ViewPoint[] {
  const sides = 24;
  const reach = diameter / 2 / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, i): ViewPoint => {
    const angle = ((i + 0.5) * 2 * Math.PI) / sides;
    return [reach * Math.sin(-angle), middle - reach * Math.cos(angle)];
  }).reverse();
}

/** A wall as seen along many lines: what does not change from one to the next. */
export interface Wall {
  /** Hub → position, metres. */
  readonly hubs: readonly (readonly number[])[];
  /** Place → its hubs, and its middle. */
  readonly places: readonly (readonly number[])[];
  readonly middles: readonly (readonly number[])[];
}

/** The wall of a shell. */
export const wallOf = (shell: Shell): Wall => ({
  hubs: Array.from({ length: hubCount(shell) }, (_, h) => hubPoint(shell, h as HubId)),
  places: Array.from({ length: placeCount(shell) }, (_, p) => hubsOf(shell, p as PlaceId)),
  middles: Array.from({ length: placeCount(shell) }, (_, p) => placeCentre(shell, p as PlaceId)),
});

/** The places that are in the way, ascending. The line starts on the axis, so only the wall on its
 * side counts. */
export const placesInTheWay = (shell: Shell, passage: Passage): number[] =>
  inTheWayOf(wallOf(shell), passage);

/** As `placesInTheWay`. */
export function inTheWayOf({ hubs, places, middles }: Wall, passage: Passage): number[] {
  const seen = hubs.map(viewAlong(passage));
  const ahead = aheadAlong(passage);
  const parts = convexParts(passage.outline).map((part) => ({ part, span: spanOf(part) }));
  return [...places.keys()].filter((p) => {
    if (ahead(middles[p] as readonly number[]) <= 0) return false;
    const corners = (places[p] as readonly number[]).map((hub) => seen[hub] as ViewPoint);
    const own = spanOf(corners);
    return parts.some(({ part, span }) => areNear(own, span) && overlap(corners, part));
  });
}

/** Whether the wall on the line's side goes all round the outline, so that a hole in it can be passed:
 * each of its points lies among the wall's hubs as they are seen. */
export function isWithin({ hubs }: Wall, passage: Passage): boolean {
  const ahead = aheadAlong(passage);
  const wall = hubs.filter((hub) => ahead(hub) > 0).map(viewAlong(passage));
  const [span, own] = [spanOf(wall), spanOf(passage.outline)];
  const isRoughly = own.every(([least, most], axis) => {
    const [low, high] = span[axis] as Span;
    return least >= low - TOUCH && most <= high + TOUCH;
  });
  return isRoughly && passage.outline.every((point) => isAmong(wall, point));
}

type Span = readonly [least: number, most: number];

/** Least and most of each axis. */
const spanOf = (points: readonly ViewPoint[]): readonly [Span, Span] => {
  let [uLow, uHigh, vLow, vHigh] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const [u, v] of points) {
    uLow = Math.min(uLow, u);
    uHigh = Math.max(uHigh, u);
    vLow = Math.min(vLow, v);
    vHigh = Math.max(vHigh, v);
  }
  return [
    [uLow, uHigh],
    [vLow, vHigh],
  ];
};

const areNear = (a: readonly [Span, Span], b: readonly [Span, Span]): boolean =>
  a.every(([low, high], axis) => {
    const [least, most] = b[axis] as Span;
    return high - least > TOUCH && most - low > TOUCH;
  });

/** Whether no line through the point has all others on one side, a touch aside. */
function isAmong(points: readonly ViewPoint[], [u, v]: ViewPoint): boolean {
  const around = points
    .filter(([x, y]) => Math.hypot(x - u, y - v) > TOUCH)
    .map(([x, y]) => Math.atan2(y - v, x - u))
    .sort((a, b) => a - b);
  const gaps = around.map((angle, i) => (around[i + 1] ?? (around[0] as number) + TAU) - angle);
  return Math.max(...gaps) <= Math.PI + LEVEL;
}

/** A floor that is level with the hubs around it counts as among them, radians. */
const LEVEL = 1e-3;

/** From the shell's frame to the view's axes. */
export function viewAlong({
  azimuth,
  aside,
  floor,
  pitch,
}: Passage): (at: readonly number[]) => ViewPoint {
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  if (pitch === undefined) return ([x = 0, y = 0, z = 0]) => [-x * s + y * c - aside, z - floor];
  const [cp, sp] = [Math.cos(pitch), Math.sin(pitch)];
  return ([x = 0, y = 0, z = 0]) => [-x * s + y * c, z * cp - (x * c + y * s) * sp];
}

/** How far along the line a point lies, metres. */
function aheadAlong({ azimuth, pitch = 0 }: Passage): (at: readonly number[]) => number {
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  const [cp, sp] = [Math.cos(pitch), Math.sin(pitch)];
  return ([x = 0, y = 0, z = 0]) => (x * c + y * s) * cp + z * sp;
}

/** Whether two convex outlines overlap by more than a touch, whichever way they run round. */
function overlap(a: readonly ViewPoint[], b: readonly ViewPoint[]): boolean {
  return ![...normalsOf(a), ...normalsOf(b)].some(([nu, nv]) => {
    const along = (list: readonly ViewPoint[]): number[] => list.map(([u, v]) => u * nu + v * nv);
    const [first, second] = [along(a), along(b)];
    return (
      Math.max(...first) - Math.min(...second) <= TOUCH ||
      Math.max(...second) - Math.min(...first) <= TOUCH
    );
  });
}

function normalsOf(outline: readonly ViewPoint[]): ViewPoint[] {
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length] as ViewPoint;
    const [du, dv] = [b[0] - a[0], b[1] - a[1]];
    const length = Math.hypot(du, dv);
    return length < TOUCH ? [] : [[-dv / length, du / length] as const];
  });
}
