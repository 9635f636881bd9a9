// The opening that a thing goes out by, seen from outside along its way (or from above, where it is
// hoisted out), with the thing on it. x to the right, y down, metres.

import { placeCentre, vectorArea } from '../shell/geometry.ts';
import type { PlaceId } from '../shell/ids.ts';
import type { Shell } from '../shell/shell.ts';

/** A point of the drawing. */
export type ViewAt = readonly [x: number, y: number];

/** What is drawn, the furthest first. */
export interface WayView {
  readonly from: 'outside' | 'above';
  /** Panels that stand, and places that are still open. */
  readonly panels: readonly {
    readonly place: number;
    readonly at: readonly ViewAt[];
    readonly isIn: boolean;
  }[];
  /** The thing on its way: outlines of its parts, from inside to outside. */
  readonly poses: readonly (readonly (readonly ViewAt[])[])[];
  /** Which of the poses is in the opening. */
  readonly through: number;
  /** Ground, y. */
  readonly ground: number;
}

type Vec = readonly [number, number, number];

/** The view. `seen`: hulls of the thing's parts in each pose, stride 3; one pose or more. */
export function wayView(
  shell: Shell,
  placed: readonly number[],
  leftOut: readonly number[],
  seen: readonly (readonly Float64Array[])[],
): WayView {
  const middles = seen.map(middleOf);
  const [first, last] = [middles[0] ?? [0, 0, 0], middles.at(-1) ?? [1, 0, 0]];
  const [dx, dy, dz] = [0, 1, 2].map((k) => (last[k] as number) - (first[k] as number)) as [
    number,
    number,
    number,
  ];
  const level = Math.hypot(dx, dy);
  const isAbove = Math.abs(dz) > level || level < 1e-9;
  const out: Vec = isAbove ? [0, 0, 1] : [dx / level, dy / level, 0];
  const at = ([x, y, z]: Vec): ViewAt => (isAbove ? [-y, -x] : [-out[1] * x + out[0] * y, -z]);
  const isIn = new Set(placed);
  const isLeft = new Set(leftOut);
  const panels = Array.from(shell.kind.keys())
    .filter((place) => !isLeft.has(place))
    .map((place) => ({
      place,
      deep: dot(placeCentre(shell, place as PlaceId), out),
      faces: dot(vectorArea(shell, place as PlaceId), out) > 0,
    }))
    .filter(({ faces }) => faces)
    .sort((a, b) => a.deep - b.deep)
    .map(({ place }) => ({ place, at: cornersOf(shell, place).map(at), isIn: isIn.has(place) }));
  const off = middles.map((middle) => Math.abs(Math.hypot(...middle) - shell.radius));
  return {
    from: isAbove ? 'above' : 'outside',
    panels,
    poses: seen.map((parts) => parts.map((points) => outlineOf(pointsOf(points).map(at)))),
    through: off.indexOf(Math.min(...off)),
    ground: -shell.hubs.reduce((low, z, i) => (i % 3 === 2 ? Math.min(low, z) : low), 0),
  };
}

const dot = (a: Vec | readonly number[], b: Vec): number =>
  (a[0] as number) * b[0] + (a[1] as number) * b[1] + (a[2] as number) * b[2];

const pointsOf = (flat: Float64Array): Vec[] =>
  Array.from({ length: flat.length / 3 }, (_, i) => [
    flat[3 * i] as number,
    flat[3 * i + 1] as number,
    flat[3 * i + 2] as number,
  ]);

function middleOf(parts: readonly Float64Array[]): Vec {
  const all = parts.flatMap(pointsOf);
  return [0, 1, 2].map(
    (k) => all.reduce((sum, point) => sum + (point[k] as number), 0) / all.length,
  ) as unknown as Vec;
}

function cornersOf(shell: Shell, place: number): Vec[] {
  const [from, to] = [shell.placeStart[place] as number, shell.placeStart[place + 1] as number];
  return Array.from({ length: to - from }, (_, i): Vec => {
    const hub = shell.sideHub[from + i] as number;
    return [0, 1, 2].map((k) => shell.hubs[3 * hub + k] as number) as unknown as Vec;
  });
}

/** The convex hull of points, anticlockwise as the axes have it (monotone chain). */
export function outlineOf(points: readonly ViewAt[]): ViewAt[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  const half = (list: readonly ViewAt[]): ViewAt[] => {
    const hull: ViewAt[] = [];
    for (const p of list) {
      while (hull.length > 1 && turn(hull.at(-2) as ViewAt, hull.at(-1) as ViewAt, p) <= 1e-12)
        hull.pop();
      hull.push(p);
    }
    return hull.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turn = (a: ViewAt, b: ViewAt, c: ViewAt): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
