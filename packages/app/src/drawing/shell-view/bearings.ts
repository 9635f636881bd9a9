// Directions on the ground that help people find their bearings: the datum, the door, north. Each
// is an arrow: outside at the base, pointing away from the shell; inside at the wall, standing up from
// the floor to eye level, or at the picture's edge where it is out of sight. They lie over the drawing
// as SVG in pixels and are moved with every picture.

import { dot, norm, scale, subtract, type Vec3 } from '@shellraise/core';
import { type Pose, type Room, seenAt } from './pose.ts';

/** One direction. */
export interface Bearing {
  readonly label: string;
  /** Radians, anticlockwise seen from above, from +x. */
  readonly azimuth: number;
  /** Drawn in the accent: the datum. */
  readonly main?: boolean;
}

/** An arrow on the picture: pixels, x right, y down; null where it can't be seen. */
export interface SeenArrow {
  readonly tail: readonly [number, number];
  readonly tip: readonly [number, number];
  /** Where its words stand. */
  readonly text: readonly [number, number];
}

/** How far arrows outside begin and end, in parts of the shell's width. */
const OUTSIDE = { tail: 1.05, tip: 1.22 };

/** A shell's room with what its arrows need. */
export const withBearings = (room: Room): Room => ({
  ...room,
  reach: OUTSIDE.tip * room.reach,
  needed: OUTSIDE.tip * room.wide,
});

/** A picture's size in pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** How a bearing is seen; `radius` is that of the shell's sphere, which hides what lies behind it. */
export function seenArrow(
  { azimuth, label }: Bearing,
  room: Room,
  radius: number,
  pose: Pose,
  size: PictureSize,
  inside: boolean,
): SeenArrow | null {
  const at = (share: number, height: number): Vec3 => [
    share * room.wide * Math.cos(azimuth),
    share * room.wide * Math.sin(azimuth),
    height,
  ];
  const [tail, tip] = inside
    ? [at(AT_WALL, room.low), at(AT_WALL, pose.eye[2])]
    : [at(OUTSIDE.tail, room.low), at(OUTSIDE.tip, room.low)];
  if (!inside && isBehind(tip, pose.eye, radius, room.low)) return null;
  const seen = [tail, tip].map((point) => seenAt(pose, size.width / size.height, point));
  const [a, b] = seen.map(([x, y]) => [
    ((1 + x) * size.width) / 2,
    ((1 - y) * size.height) / 2,
  ]) as [PicturePoint, PicturePoint];
  const before = seen.every(([, , depth]) => depth >= pose.near);
  const beyond = ([x, y]: PicturePoint): boolean =>
    x < 0 || y < 0 || x > size.width || y > size.height;
  if (inside)
    return before && !beyond(b) ? arrow(a, b, label, size) : edgeArrow(tip, pose, label, size);
  return !before || (beyond(a) && beyond(b)) ? null : arrow(a, b, label, size);
}

type PicturePoint = [number, number];

/** Where an arrow stands inside, as a share of the way to the wall. */
const AT_WALL = 0.9;

/** Pixels from the tip to the words. */
const PAST = 14;

/** An arrow with its words beyond the tip. */
function arrow(tail: PicturePoint, tip: PicturePoint, label: string, size: PictureSize): SeenArrow {
  const way: PicturePoint = [tip[0] - tail[0], tip[1] - tail[1]];
  const length = Math.hypot(...way) || 1;
  const text: PicturePoint = [
    tip[0] + (way[0] / length) * PAST,
    tip[1] + (way[1] / length) * PAST + 5,
  ];
  return { tail, tip, text: heldIn(text, way[0], LETTER * label.length, size) };
}

/** Out of sight inside: an arrow near the picture's edge says which way to turn. */
function edgeArrow(point: Vec3, pose: Pose, label: string, size: PictureSize): SeenArrow {
  const way = subtract(point, pose.eye);
  const [x, y] = [dot(way, pose.right), -dot(way, pose.up)];
  const length = Math.hypot(x, y) || 1;
  const room = [size.width / 2 - EDGE, size.height / 2 - EDGE] as const;
  const reach = Math.min(room[0] / Math.abs(x / length), room[1] / Math.abs(y / length));
  const at = (from: number): PicturePoint => [
    size.width / 2 + (from * x) / length,
    size.height / 2 + (from * y) / length,
  ];
  return arrow(at(reach - EDGE), at(reach), label, size);
}

/** Kept free at the picture's edge, and the length of the arrow there: pixels. */
const EDGE = 30;

/** Kept free between words and the picture's edge, pixels. */
const MARGIN = 8;

/** About the width of a letter, pixels. */
const LETTER = 8.5;

/** Keeps words in the picture: those of an arrow to the right begin at their place, to the left they
 * end there. */
function heldIn(
  [x, y]: readonly [number, number],
  dx: number,
  wide: number,
  { width, height }: PictureSize,
): [number, number] {
  const left = dx > 4 ? 0 : dx < -4 ? wide : wide / 2;
  const hold = (value: number, least: number, most: number): number =>
    Math.max(least, Math.min(most, value));
  return [hold(x, MARGIN + left, width - MARGIN - (wide - left)), hold(y, 16, height - 6)];
}

/** Whether the part of the ball above the floor hides a point from the eye. */
function isBehind(point: Vec3, eye: Vec3, radius: number, low: number): boolean {
  const way = subtract(point, eye);
  const length = norm(way);
  const direction = scale(way, 1 / length);
  const along = -dot(eye, direction);
  const clear2 = dot(eye, eye) - along * along;
  if (clear2 >= radius * radius) return false;
  const half = Math.sqrt(radius * radius - clear2);
  return [along - half, along + half].some(
    (depth) => depth > 0 && depth < length && eye[2] + depth * direction[2] >= low,
  );
}

/** Moves the arrows drawn in `svg`: one group a bearing, each with a line, a head and its words. */
export function moveArrows(svg: SVGSVGElement, arrows: readonly (SeenArrow | null)[]): void {
  arrows.forEach((arrow, i) => {
    const group = svg.children[i];
    if (!(group instanceof SVGGElement)) return;
    group.style.visibility = arrow ? 'visible' : 'hidden';
    const [line, head, text] = group.children;
    if (!arrow || !line || !head || !text) return;
    const [[x1, y1], [x2, y2]] = [arrow.tail, arrow.tip];
    line.setAttribute('d', `M${x1} ${y1}L${x2} ${y2}`);
    const turn = (Math.atan2(y2 - y1, x2 - x1) * 180) / Math.PI;
    head.setAttribute('transform', `translate(${x2} ${y2}) rotate(${turn})`);
    text.setAttribute('x', String(arrow.text[0]));
    text.setAttribute('y', String(arrow.text[1]));
    text.setAttribute('text-anchor', x2 - x1 > 4 ? 'start' : x2 - x1 < -4 ? 'end' : 'middle');
  });
}
