// Directions on the ground that help people find their bearings: the datum, the door, north. Each
// is an arrow at the base, outside pointing away from the shell, inside lying on the floor. They lie
// over the drawing as SVG in pixels and are moved with every picture.

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
  const [from, to] = inside ? [0.5, 0.92] : [1.05, 1.24];
  const at = (share: number): Vec3 => [
    share * room.wide * Math.cos(azimuth),
    share * room.wide * Math.sin(azimuth),
    room.low,
  ];
  const [tail, tip] = [at(from), at(to)];
  if (!inside && isBehind(tip, pose.eye, radius, room.low)) return null;
  const seen = [tail, tip].map((point) => seenAt(pose, size.width / size.height, point));
  if (seen.some(([, , depth]) => depth < pose.near)) return null;
  const [a, b] = seen.map(([x, y]) => [
    ((1 + x) * size.width) / 2,
    ((1 - y) * size.height) / 2,
  ]) as [[number, number], [number, number]];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const past = 14;
  const beyond = ([x, y]: readonly [number, number]): boolean =>
    x < 0 || y < 0 || x > size.width || y > size.height;
  if (beyond(a) && beyond(b)) return null;
  const text: [number, number] = [
    b[0] + ((b[0] - a[0]) / length) * past,
    b[1] + ((b[1] - a[1]) / length) * past + 5,
  ];
  return { tail: a, tip: b, text: heldIn(text, b[0] - a[0], LETTER * label.length, size) };
}

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
  return [hold(x, left, width - (wide - left)), hold(y, 16, height - 6)];
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
