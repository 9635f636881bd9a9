// Where a half-measured panel's corners lie on the screen. Sides that are not measured yet are
// taken as the mean of the others, or as the longest where that does not close. Pixels, y down.

import { panelShape } from '@shellraise/core';

/** A point on the screen. */
export type Point = readonly [number, number];

/** A size on the screen. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room around an outline. */
export interface Margin {
  readonly across: number;
  readonly above: number;
  readonly below: number;
}

/** The outline in a box, and whether it is true as far as it is measured. */
export interface Outline {
  readonly points: readonly Point[];
  readonly meets: boolean;
}

/** Corner i is where side i starts. `bottom`: the side that lies level underneath. */
export function outlineOf(
  sides: readonly (number | null)[],
  size: Size,
  margin: Margin,
  bottom = 0,
): Outline {
  const known = sides.filter((side) => side !== null);
  const guesses =
    known.length === 0
      ? [1]
      : [known.reduce((a, b) => a + b, 0) / known.length, Math.max(...known)];
  for (const guess of guesses) {
    const shape = panelShape(
      sides.map((side) => side ?? guess),
      bottom,
    );
    if (shape) return { points: fitted(shape.corners, size, margin), meets: true };
  }
  const plain = panelShape(
    sides.map(() => 1),
    bottom,
  );
  return { points: fitted(plain?.corners ?? [], size, margin), meets: false };
}

function fitted(corners: readonly Point[], size: Size, margin: Margin): Point[] {
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const [left, right, low, high] = [
    Math.min(...xs),
    Math.max(...xs),
    Math.min(...ys),
    Math.max(...ys),
  ];
  const room = {
    width: size.width - 2 * margin.across,
    height: size.height - margin.above - margin.below,
  };
  const k = Math.min(room.width / (right - left), room.height / (high - low));
  const x0 = size.width / 2 - (k * (left + right)) / 2;
  const y0 = margin.above + room.height / 2 + (k * (low + high)) / 2;
  return corners.map(([x, y]) => [round(x0 + k * x), round(y0 - k * y)]);
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** The mean of the corners. */
export function middleOf(points: readonly Point[]): Point {
  const n = Math.max(1, points.length);
  return [
    points.reduce((sum, [x]) => sum + x, 0) / n,
    points.reduce((sum, [, y]) => sum + y, 0) / n,
  ];
}

/** Unit vectors along a side and out of the panel, its middle and its length. */
export function sideFrame([a, b]: readonly [Point, Point], centre: Point) {
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const along: Point = [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
  const normal: Point = [-along[1], along[0]];
  const outward = normal[0] * (middle[0] - centre[0]) + normal[1] * (middle[1] - centre[1]) > 0;
  const out: Point = outward ? normal : [-normal[0], -normal[1]];
  return { length, along, middle, out };
}

/** Each side with its ends. */
export const sidesOfOutline = (points: readonly Point[]): readonly (readonly [Point, Point])[] =>
  points.map((from, i) => [from, points[(i + 1) % points.length] as Point]);

/** How far a point is from the nearest side. */
export const clearance = (points: readonly Point[], centre: Point): number =>
  Math.min(
    ...sidesOfOutline(points).map((ends) => {
      const { middle, out } = sideFrame(ends, centre);
      return Math.abs((middle[0] - centre[0]) * out[0] + (middle[1] - centre[1]) * out[1]);
    }),
  );

/** The outline moved inwards by a distance, as a flange lies along its edge. */
export function inset(points: readonly Point[], by: number): Point[] {
  const n = points.length;
  return points.map((p, i) => {
    const u = unit(p, points[(i + n - 1) % n] as Point);
    const v = unit(p, points[(i + 1) % n] as Point);
    const half = Math.acos(Math.max(-1, Math.min(1, u[0] * v[0] + u[1] * v[1]))) / 2;
    const [bx, by2] = [u[0] + v[0], u[1] + v[1]];
    const size = Math.hypot(bx, by2) || 1;
    const d = by / Math.max(0.2, Math.sin(half));
    return [round(p[0] + (bx / size) * d), round(p[1] + (by2 / size) * d)];
  });
}

function unit(p: Point, q: Point): Point {
  const d = Math.hypot(q[0] - p[0], q[1] - p[1]) || 1;
  return [(q[0] - p[0]) / d, (q[1] - p[1]) / d];
}

/** Path data of an outline. */
export const outlinePath = (points: readonly Point[]): string =>
  `M${points.map(([x, y]) => `${x} ${y}`).join('L')}Z`;
