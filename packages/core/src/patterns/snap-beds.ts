// The parts of a snap model laid on the beds of a printer, and the scales at which it can be made there.
// Millimetres; x right, y up from a bed's lower left corner, z up from it.

import { MICRON, onGrid } from './grid.ts';
import type { Mesh } from './mesh.ts';
import { laidPoint, nest } from './nest.ts';
import { partHeight, type SnapPart } from './snap-parts.ts';
import type { PlacedItem } from './three-mf.ts';

/** What a printer holds. */
export type Bed = readonly [width: number, depth: number, height: number];

/** Beds with every part as often as it counts. */
export interface SnapBeds {
  readonly beds: readonly (readonly PlacedItem[])[];
  /** Area of the parts over that of the beds, 0 to 1. */
  readonly yield: number;
}

/** Between two parts, and between a part and the edge of the bed, at least half of it. */
const GAP = 3;
/** A bed has this many cells on its longer side. */
const CELLS = 250;

/** The turns that are tried. */
const turnsOf = (part: SnapPart): readonly number[] => {
  const [p, q] = part.cover[0] as unknown as [readonly [number, number], readonly [number, number]];
  const lean = (Math.atan2(q[1] - p[1], q[0] - p[0]) * 180) / Math.PI;
  return part.sort === 'hub'
    ? [0]
    : [0, 60, 90, 120, 180, 240, 270, 300].map((turn) => turn - lean);
};

/** The beds; null where some part fits on none (`bedOver` tells by how much). */
export function snapBeds(parts: readonly SnapPart[], bed: Bed): SnapBeds | null {
  if (parts.some((part) => partHeight(part) > bed[2])) return null;
  const all = parts.flatMap((part, index) => Array.from({ length: part.count }, () => index));
  const nested = nest(
    all.map((index) => {
      const part = parts[index] as SnapPart;
      return {
        shapes: part.cover.map((shape) => shape.map(([x, y]) => onGrid(x * MICRON, y * MICRON))),
        turns: turnsOf(part),
        alike: String(index),
      };
    }),
    {
      width: bed[0] * MICRON,
      height: bed[1] * MICRON,
      gap: GAP * MICRON,
      cell: cellOf(bed) * MICRON,
    },
  );
  if (nested === null) return null;
  const beds: PlacedItem[][] = Array.from({ length: nested.sheets }, () => []);
  nested.laid.forEach(({ sheet, turnDeg, x, y }, i) => {
    beds[sheet]?.push({ part: all[i] as number, turnDeg, x: x / MICRON, y: y / MICRON });
  });
  return { beds, yield: nested.yield };
}

const cellOf = ([width, depth]: Bed): number =>
  Math.max(0.5, Math.ceil((Math.max(width, depth) * 1000) / CELLS) / 1000);

/** How often the largest panel is too large for a bed, hubs being no larger at any scale: over 1 it does
 * not fit, and a model that many times smaller does. */
export function bedOver(parts: readonly SnapPart[], bed: Bed): number {
  const margin = GAP + 2 * cellOf(bed);
  return parts
    .filter(({ sort }) => sort === 'panel')
    .reduce((most, part) => {
      const least = turnsOf(part).reduce((best, turnDeg) => {
        const points = part.cover
          .flat()
          .map((p) => laidPoint([p[0] * MICRON, p[1] * MICRON], { sheet: 0, turnDeg, x: 0, y: 0 }));
        const span = (axis: 0 | 1): number => {
          const values = points.map((p) => p[axis] / MICRON);
          return Math.max(...values) - Math.min(...values);
        };
        return Math.min(best, Math.max(span(0) / (bed[0] - margin), span(1) / (bed[1] - margin)));
      }, Infinity);
      return Math.max(most, least);
    }, 0);
}

/** All parts of a bed as one mesh, in place. */
export function bedMesh(parts: readonly SnapPart[], laid: readonly PlacedItem[]): Mesh {
  const meshes = laid.map((one) => placedMesh((parts[one.part] as SnapPart).mesh, one));
  const points = new Float64Array(meshes.reduce((sum, mesh) => sum + mesh.points.length, 0));
  const triangles = new Int32Array(meshes.reduce((sum, mesh) => sum + mesh.triangles.length, 0));
  let [at, on] = [0, 0];
  for (const mesh of meshes) {
    points.set(mesh.points, at);
    triangles.set(
      mesh.triangles.map((i) => i + at / 3),
      on,
    );
    at += mesh.points.length;
    on += mesh.triangles.length;
  }
  return { points, triangles };
}

/** A mesh turned about z and moved. */
export function placedMesh(
  { points, triangles }: Mesh,
  { turnDeg, x, y }: Omit<PlacedItem, 'part'>,
): Mesh {
  const angle = (turnDeg * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const placed = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 3) {
    const [u, v] = [points[i] as number, points[i + 1] as number];
    placed[i] = x + c * u - s * v;
    placed[i + 1] = y + s * u + c * v;
    placed[i + 2] = points[i + 2] as number;
  }
  return { points: placed, triangles };
}
