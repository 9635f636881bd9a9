// The flat plan: the shell seen from above, crown in the middle, base ring outside. Every hub lies
// as far from the middle as it lies from the crown along the sphere, in its own direction
// (azimuthal equal-distance projection), so that nothing overlaps however far the shell reaches
// below its equator.
// Paper: metres, u to the right, v up the page, the crown at 0, 0. The datum (+x) points up the
// page and clockwise seen from above is clockwise on paper; `fromBelow` turns the sheet over, for
// people inside looking up: the datum stays up, clockwise becomes anticlockwise.
// Sides are drawn straight where that is near the truth; far below the equator, where a straight
// line would cross its neighbours, they bend as the great circle through their hubs does. The
// nadir itself is blown up to the circle of radius πR around the drawing.

import { acos, TAU } from '../math/angle.ts';
import { add, dot, normalize, type Vec3 } from '../math/vector.ts';
import { endHubAt, hubPoint, placeCentre } from './geometry.ts';
import type { HubId, PlaceId, SeamId, SideId } from './ids.ts';
import { type Point, pointInside } from './inside.ts';
import { type Nadir, nadirOf } from './nadir.ts';
import {
  hubAt,
  hubCount,
  placeCount,
  previousSide,
  type Shell,
  sideCount,
  sidesOf,
} from './shell.ts';

/** The drawing, metres on paper. */
export interface FlatPlan {
  /** Hub → its point, stride 2. A hub at the nadir is the whole outer circle: its point here is
   * the circle's lowest. */
  readonly hubs: Float64Array;
  /** Place → its outline, stride 2, anticlockwise on paper seen from above (clockwise from below),
   * closed without repeating the first point. An outermost place that holds the nadir is the ring
   * between its sides and the circle, slit once so that it is one outline. */
  readonly outlines: readonly Float64Array[];
  /** Place → a point well inside its outline, for its number, stride 2. */
  readonly labels: Float64Array;
  /** What holds the nadir and is drawn outermost, out to the circle; null where nothing does, as
   * in any dome. */
  readonly outer: Nadir | null;
  /** Radius of the drawing, metres: the farthest point of any outline. */
  readonly radius: number;
}

/** Options of `flatPlan`. */
export interface FlatPlanOptions {
  /** True for the plan as seen from the floor looking up. */
  readonly fromBelow?: boolean;
}

/** A side bends where its middle would else be off by more than this part of its true length. */
const BEND = 0.15;

/** A bent side is drawn in pieces that are off by no more than this part of its true length. */
const SMOOTH = 0.01;

/** Largest step along the outer circle, radians. */
const ARC_STEP = TAU / 48;

/** The flat plan of a shell that stands crown up. */
export function flatPlan(shell: Shell, options: FlatPlanOptions = {}): FlatPlan {
  const outer = nadirOf(shell);
  const circle = Math.PI * shell.radius;
  const paths = Array.from({ length: sideCount(shell) }, (_, s) =>
    sidePath(shell, s as SideId, outer),
  );
  const outlines: Point[][] = [];
  const labels: Point[] = [];
  for (let p = 0; p < placeCount(shell); p++) {
    const place = p as PlaceId;
    const outline = sidesOf(shell, place).flatMap((side) => paths[side] as Point[]);
    const holdsNadir = outer?.at === 'place' && outer.place === place;
    outlines.push(holdsNadir ? keyhole(outline, circle) : outline);
    labels.push(
      holdsNadir
        ? ringLabel(outline, circle)
        : pointInside(outline, project(shell.radius, placeCentre(shell, place))),
    );
  }
  const hubs = Array.from({ length: hubCount(shell) }, (_, h) =>
    outer?.at === 'hub' && outer.hub === h
      ? ([0, -Math.PI * shell.radius] as Point)
      : project(shell.radius, hubPoint(shell, h as HubId)),
  );
  const flip = options.fromBelow ? -1 : 1;
  const flat = (points: readonly Point[]): Float64Array =>
    Float64Array.from(points.flatMap(([u, v]) => [flip * u, v]));
  const radius = outlines.flat().reduce((most, [u, v]) => Math.max(most, Math.hypot(u, v)), 0);
  return { hubs: flat(hubs), outlines: outlines.map(flat), labels: flat(labels), outer, radius };
}

/** Paper point of a direction from the centre: distance from the crown along the sphere, datum
 * up the page. */
function project(radius: number, p: Vec3): Point {
  const across = Math.hypot(p[0], p[1]);
  if (across === 0) return p[2] >= 0 ? [0, 0] : [0, -Math.PI * radius];
  const r = (radius * Math.atan2(across, p[2])) / across;
  return [-p[1] * r, p[0] * r];
}

// --- sides ---

/** The drawn points of a side from its first hub up to, but without, its last. */
function sidePath(shell: Shell, side: SideId, outer: Nadir | null): Point[] {
  const [from, to] = [hubAt(shell, side), endHubAt(shell, side)];
  const a = hubPoint(shell, from);
  const b = hubPoint(shell, to);
  const circle = Math.PI * shell.radius;
  if (outer?.at === 'hub' && outer.hub === from) {
    // The corner at the blown-up hub runs along the circle, from the side before to this side.
    const before = hubPoint(shell, hubAt(shell, previousSide(shell, side)));
    return arc(paperAngle(before), paperAngle(b), circle);
  }
  const start = project(shell.radius, a);
  if (outer?.at === 'hub' && outer.hub === to) return [start];
  if (outer?.at === 'seam' && isSideOf(shell, side, outer.seam))
    return [start, ...arc(paperAngle(a), paperAngle(b), circle)];
  return [start, ...bend(shell.radius, a, b)];
}

const isSideOf = (shell: Shell, side: SideId, seam: SeamId): boolean =>
  shell.seams[2 * seam] === side || shell.seams[2 * seam + 1] === side;

/** Points between the ends of a side where it is drawn bent. Both sides of a seam give the same
 * points, in opposite order. */
function bend(radius: number, a: Vec3, b: Vec3): Point[] {
  const length = radius * acos(dot(normalize(a), normalize(b)));
  const pieces = (p: Vec3, q: Vec3, allowed: number, depth: number): Point[] => {
    const middle = normalize(add(normalize(p), normalize(q)));
    const drawn = project(radius, middle);
    const [start, end] = [project(radius, p), project(radius, q)];
    const off = Math.hypot((start[0] + end[0]) / 2 - drawn[0], (start[1] + end[1]) / 2 - drawn[1]);
    if (off <= allowed || depth === 0) return [];
    const fine = SMOOTH * length;
    return [...pieces(p, middle, fine, depth - 1), drawn, ...pieces(middle, q, fine, depth - 1)];
  };
  return pieces(a, b, BEND * length, 12);
}

/** Anticlockwise angle on paper, from +u, of a point's direction from the axis. */
const paperAngle = (p: Vec3): number => Math.atan2(p[0], -p[1]);

/** Points along the circle anticlockwise from one angle to another, both included; a full turn
 * where they are equal. */
function arc(from: number, to: number, radius: number): Point[] {
  let sweep = (to - from) % TAU;
  if (sweep <= 0) sweep += TAU;
  const steps = Math.ceil(sweep / ARC_STEP);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = from + (sweep * i) / steps;
    return [radius * Math.cos(angle), radius * Math.sin(angle)] as Point;
  });
}

// --- outlines ---

/** The ring between an outline and the circle, as one outline slit at its first point. */
function keyhole(outline: readonly Point[], circle: number): Point[] {
  const first = outline[0] as Point;
  const angle = Math.atan2(first[1], first[0]);
  return [...outline, first, ...arc(angle, angle, circle)];
}

/** A point for the number of the place that holds the nadir: half way from its sides to the
 * circle, opposite the slit. */
function ringLabel(outline: readonly Point[], circle: number): Point {
  const [u, v] = outline[0] as Point;
  const size = -Math.hypot(u, v);
  const r = (reach(outline, u / size, v / size) + circle) / 2;
  return [(u / size) * r, (v / size) * r];
}

/** How far from the middle an outline is last met along a unit direction. */
function reach(outline: readonly Point[], u: number, v: number): number {
  let farthest = 0;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] as Point;
    const [offA, offB] = [a[0] * v - a[1] * u, b[0] * v - b[1] * u];
    if (offA === offB || offA > 0 === offB > 0) return;
    const t = offA / (offA - offB);
    const r = u * (a[0] + t * (b[0] - a[0])) + v * (a[1] + t * (b[1] - a[1]));
    farthest = Math.max(farthest, r);
  });
  return farthest;
}
