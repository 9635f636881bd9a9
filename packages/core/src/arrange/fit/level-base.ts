// Two ways to stand a shell with a ragged base ring level without new panels: to saw its lowest panels
// off along the level plane through the highest of the base hubs, or to leave the places below a level
// ring out. (The third, infill, is in infill.ts.) The shell stands crown up, metres.

import { distance, type Vec3 } from '../../math/vector.ts';
import { naturalCuts } from '../../shell/cuts.ts';
import { hubPoint, meanSideLength } from '../../shell/geometry.ts';
import type { PlaceId } from '../../shell/ids.ts';
import { cutAtPlane } from '../../shell/plane-cut.ts';
import { baseRing } from '../../shell/rims.ts';
import { hubCount, hubsOf, placeCount, type Shell } from '../../shell/shell.ts';
import { SAME_LEVEL } from '../../shell/tolerances.ts';

/** One size of panel that is sawn off. */
export interface SawnPanel {
  /** Index of its kind. */
  readonly kind: number;
  /** Sides of what stays, anticlockwise seen from outside, the sawn one first, metres. */
  readonly sides: readonly number[];
  readonly count: number;
}

/** A shell sawn level. */
export interface SawnBase {
  /** Height of the plane in the shell's frame. */
  readonly z: number;
  /** From the plane to the topmost hub. */
  readonly height: number;
  /** Distances of the sawn corners and of hubs in the plane from the axis. */
  readonly radius: { readonly min: number; readonly max: number };
  readonly panels: readonly SawnPanel[];
  /** Places that are sawn, and those that lie wholly below and are left out. */
  readonly sawn: readonly number[];
  readonly leftOut: readonly number[];
}

/** The shell sawn off through its highest base hub, the largest pieces first; null where its base hubs are
 * level already (within 0.02 of a side), or it has no rim. */
export function sawnBase(shell: Shell): SawnBase | null {
  const ring = baseRing(shell);
  const level = SAME_LEVEL * meanSideLength(shell);
  if (!ring || ring.z.max - ring.z.min <= level) return null;
  const z = ring.z.max;
  const { crossed, below } = cutAtPlane(shell, z, level);
  const pieces = crossed.map((p) => ({
    kind: shell.kind[p] as number,
    ...pieceAbove(shell, p, z),
  }));
  const heights = Array.from(
    { length: hubCount(shell) },
    (_, h) => shell.hubs[3 * h + 2] as number,
  );
  const onPlane = heights.flatMap((h, i) =>
    Math.abs(h - z) <= level
      ? [[shell.hubs[3 * i] as number, shell.hubs[3 * i + 1] as number]]
      : [],
  );
  const reach = [...pieces.flatMap(({ feet }) => feet), ...onPlane].map(([x = 0, y = 0]) =>
    Math.hypot(x, y),
  );
  return {
    z,
    height: Math.max(...heights) - z,
    radius: { min: Math.min(...reach), max: Math.max(...reach) },
    panels: sizesOf(pieces),
    sawn: crossed,
    leftOut: below,
  };
}

/** What a plane leaves of a panel above it: its sides, the sawn one first, and where that ends. */
function pieceAbove(
  shell: Shell,
  place: PlaceId,
  z: number,
): { readonly sides: number[]; readonly feet: readonly [Vec3, Vec3] } {
  const corners = hubsOf(shell, place).map((hub) => hubPoint(shell, hub));
  const kept: Vec3[] = [];
  const feet: Vec3[] = [];
  let sawnFrom = 0;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length] as Vec3;
    if (a[2] >= z) kept.push(a);
    if (a[2] >= z === b[2] >= z) return;
    const t = (z - a[2]) / (b[2] - a[2]);
    const foot: Vec3 = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), z];
    if (a[2] >= z) sawnFrom = kept.length;
    kept.push(foot);
    feet.push(foot);
  });
  const around = [...kept.slice(sawnFrom), ...kept.slice(0, sawnFrom)];
  const sides = around.map((a, i) => distance(a, around[(i + 1) % around.length] as Vec3));
  // A corner in the plane gives a side of no length.
  return { sides: sides.filter((side) => side > SAME), feet: feet as unknown as [Vec3, Vec3] };
}

/** Sizes nearer than this are one, metres. */
const SAME = 5e-4;

function sizesOf(
  pieces: readonly { readonly kind: number; readonly sides: readonly number[] }[],
): SawnPanel[] {
  const sizes: { kind: number; sides: readonly number[]; count: number }[] = [];
  for (const { kind, sides } of pieces) {
    const known = sizes.find(
      (one) =>
        one.kind === kind &&
        one.sides.length === sides.length &&
        one.sides.every((side, i) => Math.abs(side - (sides[i] as number)) < SAME),
    );
    if (known) known.count++;
    else sizes.push({ kind, sides, count: 1 });
  }
  const around = (sides: readonly number[]): number => sides.reduce((sum, side) => sum + side, 0);
  return sizes.sort((a, b) => around(b.sides) - around(a.sides));
}

/** A shell with its lowest places left out. */
export interface LoweredShell {
  /** Places that are left out, ascending. */
  readonly leftOut: readonly number[];
  /** What stays, from the lowest base hub to the topmost. */
  readonly height: number;
}

/** The tallest part of the shell that stands on a level ring of its own seams; null where its base is level
 * already, or no part does. */
export function withoutRagged(shell: Shell): LoweredShell | null {
  const ring = baseRing(shell);
  if (!ring || ring.z.max - ring.z.min <= SAME_LEVEL * meanSideLength(shell)) return null;
  const cut = naturalCuts(shell).find(({ flat }) => flat);
  if (!cut) return null;
  const stays = new Set(cut.places);
  const leftOut = [...Array(placeCount(shell)).keys()].filter((p) => !stays.has(p));
  return { leftOut, height: cut.height };
}
