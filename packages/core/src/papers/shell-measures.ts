// Measures of a shell as it stands: width, height, floor, skin, panels, mass.

import type { Base } from '../ground/base.ts';
import { facesOf } from '../loads/panels.ts';
import { norm, pointAt } from '../math/vector.ts';
import type { PlaceId, SideId } from '../shell/ids.ts';
import { hubsOf, placeAt, placeCount, type Shell, seamCount } from '../shell/shell.ts';

/** What is measured. */
export interface MeasuredShell {
  readonly shell: Shell;
  /** Places left out on purpose, by index. */
  readonly leftOut: readonly number[];
  readonly base: Base;
  /** Mass of the panel at a place, kg; null where unknown. */
  readonly massOf: (place: number) => number | null;
}

/** Measures of a shell as it stands, metres, square metres, kilograms. */
export interface ShellMeasures {
  readonly width: number;
  readonly height: number;
  /** Across the base ring, hub to hub, the widest; floor within it. */
  readonly base: number;
  readonly floor: number;
  readonly skin: number;
  readonly panels: number;
  /** Seams of two panels that stand. */
  readonly seams: number;
  /** Of the panels whose mass is known, and how many are not. */
  readonly mass: number;
  readonly unweighed: number;
}

/** The measures; width is the greatest across, whichever way. */
export function shellMeasures({ shell, base, leftOut, massOf }: MeasuredShell): ShellMeasures {
  const out = new Set(leftOut);
  const places = Array.from({ length: placeCount(shell) }, (_, p) => p).filter((p) => !out.has(p));
  const faces = facesOf(shell);
  const hubs = [...new Set(places.flatMap((p) => hubsOf(shell, p as PlaceId)))].map((h) =>
    pointAt(shell.hubs, h),
  );
  const across = (points: readonly (readonly [number, number, ...number[]])[]): number =>
    Math.max(0, ...points.flatMap((a) => points.map((b) => Math.hypot(a[0] - b[0], a[1] - b[1]))));
  const heights = hubs.map(([, , z]) => z);
  const ring = base.hubs.map(({ at }) => at);
  const masses = places.map(massOf);
  return {
    width: across(hubs),
    height: Math.max(...heights) - Math.min(...heights),
    base: across(ring),
    floor: Math.abs(
      ring.reduce((sum, [x, y], i) => {
        const [u, v] = ring[(i + 1) % ring.length] as readonly [number, number];
        return sum + x * v - u * y;
      }, 0) / 2,
    ),
    skin: places.reduce((sum, p) => sum + norm(pointAt(faces.area, p)), 0),
    panels: places.length,
    seams: Array.from({ length: seamCount(shell) }, (_, m) => m).filter((m) =>
      [0, 1].every((end) => !out.has(placeAt(shell, shell.seams[2 * m + end] as SideId))),
    ).length,
    mass: masses.reduce((sum: number, mass) => sum + (mass ?? 0), 0),
    unweighed: masses.filter((mass) => mass === null).length,
  };
}
