// Reads a body from an STL file, ASCII or binary. An STL says no unit: it is asked, never guessed. The
// surface must be closed: every edge is run along once each way, by two facets; then it has a volume.
// Metres. Formats as the 3D Systems StereoLithography Interface Specification has them, from memory.

import { cross, dot, subtract, type Vec3 } from '../math/vector.ts';
import { type Read, refuse } from '../measure/fault.ts';
import type { LengthUnit } from '../measure/length.ts';

/** Metres in each unit that may be told. */
export const STL_UNITS: Readonly<Record<'mm' | 'cm' | 'm' | 'in' | 'ft', number>> = {
  mm: 0.001,
  cm: 0.01,
  m: 1,
  in: 0.0254,
  ft: 0.3048,
};

/** A closed surface. */
export interface StlBody {
  /** Corners, each once, metres. */
  readonly corners: readonly Vec3[];
  /** Three corners a facet, anticlockwise from outside. */
  readonly facets: readonly (readonly [number, number, number])[];
  /** Cubic metres. */
  readonly volume: number;
  /** Whether it is its own convex hull. */
  readonly isConvex: boolean;
}

/** Facets at most; a body's extent at most, metres. */
const MOST = { facets: 200_000, metres: 60 } as const;

/** Corners nearer than this part of the body's extent are one: single precision of the format. */
const SAME = 2e-6;

/** The body of a file. Faults: no unit, no STL, cut off, a facet that is no number, too many, not closed,
 * inside out in part, larger than `MOST`. */
export function readStl(bytes: Uint8Array, unit: LengthUnit | null): Read<StlBody> {
  if (unit === null || !(unit in STL_UNITS))
    return refuse(
      'unit',
      unit ?? 'none',
      `one of ${Object.keys(STL_UNITS).join(', ')}: an STL file says none`,
    );
  const raw = isBinary(bytes) ? binary(bytes) : ascii(bytes);
  if (!raw.ok) return raw;
  const scale = STL_UNITS[unit as keyof typeof STL_UNITS];
  const flat = raw.value.map((x) => x * scale);
  if (flat.some((x) => !Number.isFinite(x)))
    return refuse('stl', 'a corner that is no number', 'numbers');
  const extent = Math.max(...[0, 1, 2].map((axis) => spanOf(flat, axis)));
  if (!(extent > 0 && extent <= MOST.metres))
    return refuse(
      'stl',
      `${extent.toPrecision(3)} m across`,
      `over 0 to ${MOST.metres} m: is the unit right?`,
    );
  const { corners, facets } = joined(flat, SAME * extent);
  const open = openEdges(facets);
  if (open > 0)
    return refuse(
      'stl',
      `${open} edges that are not shared by two facets turned alike`,
      'a closed surface',
    );
  const volume = facets.reduce(
    (sum, [a, b, c]) => sum + dot(corners[a], cross(corners[b], corners[c])) / 6,
    0,
  );
  if (!(Math.abs(volume) > 1e-12 * extent ** 3)) return refuse('stl', 'no volume', 'a body');
  const outward = volume > 0 ? facets : facets.map(([a, b, c]) => [a, c, b] as const);
  const isConvex = convex(corners, outward, 10 * SAME * extent);
  return { ok: true, value: { corners, facets: outward, volume: Math.abs(volume), isConvex } };
}

function spanOf(flat: readonly number[], axis: number): number {
  let [low, high] = [Infinity, -Infinity];
  for (let i = axis; i < flat.length; i += 3) {
    low = Math.min(low, flat[i] as number);
    high = Math.max(high, flat[i] as number);
  }
  return high - low;
}

/** Whether the length is that which a binary file says it has: some begin with "solid" all the same. */
function isBinary(bytes: Uint8Array): boolean {
  if (bytes.length < 84) return false;
  const count = view(bytes).getUint32(80, true);
  if (bytes.length === 84 + 50 * count) return true;
  return !/^\s*solid\b/.test(text(bytes.subarray(0, 512)));
}

const view = (bytes: Uint8Array): DataView =>
  new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

/** Bytes as Latin text: the words of the format are plain. */
function text(bytes: Uint8Array): string {
  let all = '';
  for (let i = 0; i < bytes.length; i += 4096)
    all += String.fromCharCode(...bytes.subarray(i, i + 4096));
  return all;
}

function binary(bytes: Uint8Array): Read<number[]> {
  const data = view(bytes);
  const count = data.getUint32(80, true);
  if (count < 4 || count > MOST.facets)
    return refuse('stl', `${count} facets`, `4 to ${MOST.facets}`);
  if (bytes.length < 84 + 50 * count)
    return refuse(
      'stl',
      `${bytes.length} bytes`,
      `${84 + 50 * count} for ${count} facets: is the file whole?`,
    );
  const flat: number[] = [];
  for (let f = 0; f < count; f++)
    for (let k = 0; k < 9; k++) flat.push(data.getFloat32(84 + 50 * f + 12 + 4 * k, true));
  return { ok: true, value: flat };
}

function ascii(bytes: Uint8Array): Read<number[]> {
  if (bytes.length > 300 * MOST.facets)
    return refuse('stl', `${bytes.length} bytes`, 'a smaller file');
  const flat: number[] = [];
  for (const [, ...xyz] of text(bytes).matchAll(/vertex\s+(\S+)\s+(\S+)\s+(\S+)/gi))
    flat.push(...xyz.map(Number));
  const count = flat.length / 9;
  if (!Number.isInteger(count) || count < 4)
    return refuse(
      'stl',
      `${flat.length / 3} corners`,
      'an STL file with 4 facets of 3 corners or more',
    );
  if (count > MOST.facets) return refuse('stl', `${count} facets`, `4 to ${MOST.facets}`);
  return { ok: true, value: flat };
}

/** Corners that lie on each other as one, by a grid of cells and their neighbours; facets that fold to a
 * line by it are dropped. */
function joined(flat: readonly number[], near: number): Pick<StlBody, 'corners' | 'facets'> {
  const corners: Vec3[] = [];
  const cells = new Map<string, number>();
  const cell = 4 * near;
  const find = (p: Vec3): number => {
    const at = p.map((x) => Math.floor(x / cell)) as [number, number, number];
    for (let i = 0; i < 27; i++) {
      const key = [
        at[0] + (i % 3) - 1,
        at[1] + (Math.floor(i / 3) % 3) - 1,
        at[2] + Math.floor(i / 9) - 1,
      ];
      const found = cells.get(key.join());
      if (found !== undefined && Math.hypot(...subtract(corners[found], p)) <= near) return found;
    }
    cells.set(at.join(), corners.length);
    return corners.push(p) - 1;
  };
  const facets: [number, number, number][] = [];
  for (let f = 0; f < flat.length / 9; f++) {
    const [a, b, c] = [0, 1, 2].map((k) =>
      find([flat[9 * f + 3 * k], flat[9 * f + 3 * k + 1], flat[9 * f + 3 * k + 2]] as Vec3),
    ) as [number, number, number];
    if (a !== b && b !== c && c !== a) facets.push([a, b, c]);
  }
  return { corners, facets };
}

/** Edges that are not run along as often one way as the other. */
function openEdges(facets: StlBody['facets']): number {
  const turns = new Map<string, number>();
  for (const facet of facets)
    facet.forEach((from, i) => {
      const to = facet[(i + 1) % 3] as number;
      const key = from < to ? `${from} ${to}` : `${to} ${from}`;
      turns.set(key, (turns.get(key) ?? 0) + (from < to ? 1 : -1));
    });
  return [...turns.values()].filter((turn) => turn !== 0).length;
}

/** Whether no corner lies over the plane of any facet; not looked at over a million pairs. */
function convex(corners: readonly Vec3[], facets: StlBody['facets'], off: number): boolean {
  if (corners.length * facets.length > 4e6) return false;
  return facets.every(([a, b, c]) => {
    const normal = cross(subtract(corners[b], corners[a]), subtract(corners[c], corners[a]));
    const size = Math.hypot(...normal);
    if (size === 0) return true;
    const level = dot(normal, corners[a]) / size;
    return corners.every((p) => dot(normal, p) / size <= level + off);
  });
}
