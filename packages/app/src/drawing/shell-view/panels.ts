// What the 3D view draws: flat panels in the order in which they appear, the lines between them and
// the hubs, as flat arrays. Metres, z up, x towards the datum. A panel's rank is its place in that
// order; a line or hub appears with the first panel that has it.

import type { GrownPart, Shell } from '@shellraise/core';

/** Panels to be drawn. */
export interface Panels {
  /** Metres. */
  readonly radius: number;
  /** Corners of all panels, stride 3; those of a panel anticlockwise seen from outside. */
  readonly corners: Float64Array;
  /** First corner of each panel; one longer than the number of panels. */
  readonly start: Int32Array;
  /** Panel → index of its kind. */
  readonly kind: Int32Array;
  /** Panel → its place in the shell. */
  readonly place: Int32Array;
  /** Unit outward normals, stride 3. */
  readonly normals: Float64Array;
  readonly edges: Edges;
  /** Points, stride 3, and the rank of the first panel at each. */
  readonly hubs: { readonly points: Float64Array; readonly since: Int32Array };
}

/** Lines where panels end, sorted by the first panel that has them. */
export interface Edges {
  /** Both ends, stride 6. */
  readonly ends: Float64Array;
  /** Rank of the first panel. */
  readonly since: Int32Array;
  /** Rank of the second panel, −1 where the side is open. */
  readonly joined: Int32Array;
}

interface Soup extends Pick<Panels, 'radius' | 'corners' | 'start' | 'kind' | 'place'> {
  /** Corner → its hub. */
  readonly hubOf: ArrayLike<number>;
  readonly hubCount: number;
}

/** How a shell's panels are drawn. */
export interface ShellPanelsOptions {
  /** Places in the order in which they appear; all of them in their own order where not given. */
  readonly order?: readonly number[];
  /** Places that are not there. */
  readonly leftOut?: ReadonlySet<number>;
}

/** The panels of a shell. */
export function panelsOfShell(shell: Shell, options: ShellPanelsOptions = {}): Panels {
  const { placeStart, sideHub, hubs } = shell;
  const all = options.order ?? Array.from(shell.kind, (_, place) => place);
  const place = Int32Array.from(all.filter((p) => !options.leftOut?.has(p)));
  const corners: number[] = [];
  const hubOf: number[] = [];
  const start = [0];
  for (const p of place) {
    for (let side = placeStart[p] as number; side < (placeStart[p + 1] as number); side++) {
      const hub = sideHub[side] as number;
      hubOf.push(hub);
      corners.push(...hubs.subarray(3 * hub, 3 * hub + 3));
    }
    start.push(hubOf.length);
  }
  return assembled({
    radius: shell.radius,
    corners: Float64Array.from(corners),
    start: Int32Array.from(start),
    kind: place.map((p) => shell.kind[p] as number),
    place,
    hubOf,
    hubCount: hubs.length / 3,
  });
}

/** Corners of a growing part that lie closer than this share of a side are one hub: its panels gape
 * by what readings are off, a hundredth at most. */
const WELD = 0.06;

/** The panels of a part that the engine has grown; they gape a little and are welded to be drawn. */
export function panelsOfPart(part: GrownPart): Panels {
  const { corners, placeStart: start, kind, radius } = part;
  const { hubOf, hubCount } = welded(corners, WELD * meanSide(corners, start));
  const place = kind.map((_, panel) => panel);
  return assembled({ radius, corners, start, kind, place, hubOf, hubCount });
}

function assembled(soup: Soup): Panels {
  const { radius, corners, start, kind, place } = soup;
  return {
    radius,
    corners,
    start,
    kind,
    place,
    normals: normalsOf(soup),
    edges: edgesOf(soup),
    hubs: hubsSince(soup),
  };
}

function edgesOf({ start, corners, hubOf, hubCount }: Soup): Edges {
  const known = new Map<number, number>();
  const ends: number[] = [];
  const since: number[] = [];
  const joined: number[] = [];
  for (let rank = 0; rank + 1 < start.length; rank++) {
    const [first, last] = [start[rank] as number, start[rank + 1] as number];
    for (let c = first; c < last; c++) {
      const d = c + 1 === last ? first : c + 1;
      const [a, b] = [hubOf[c] as number, hubOf[d] as number];
      const key = Math.min(a, b) * hubCount + Math.max(a, b);
      const edge = known.get(key);
      if (edge === undefined) {
        known.set(key, since.length);
        ends.push(...corners.subarray(3 * c, 3 * c + 3), ...corners.subarray(3 * d, 3 * d + 3));
        since.push(rank);
        joined.push(-1);
      } else joined[edge] = rank;
    }
  }
  return {
    ends: Float64Array.from(ends),
    since: Int32Array.from(since),
    joined: Int32Array.from(joined),
  };
}

function hubsSince({ start, corners, hubOf, hubCount }: Soup): Panels['hubs'] {
  const seen = new Uint8Array(hubCount);
  const points: number[] = [];
  const since: number[] = [];
  for (let rank = 0; rank + 1 < start.length; rank++)
    for (let c = start[rank] as number; c < (start[rank + 1] as number); c++) {
      const hub = hubOf[c] as number;
      if (seen[hub]) continue;
      seen[hub] = 1;
      points.push(...corners.subarray(3 * c, 3 * c + 3));
      since.push(rank);
    }
  return { points: Float64Array.from(points), since: Int32Array.from(since) };
}

/** Normals of the mean planes (Newell). */
function normalsOf({ start, corners }: Soup): Float64Array {
  const normals = new Float64Array(3 * (start.length - 1));
  for (let rank = 0; rank + 1 < start.length; rank++) {
    const [first, last] = [start[rank] as number, start[rank + 1] as number];
    const sum = [0, 0, 0];
    for (let c = first; c < last; c++) {
      const d = c + 1 === last ? first : c + 1;
      for (let k = 0; k < 3; k++) {
        const [i, j] = [(k + 1) % 3, (k + 2) % 3];
        const [ci, cj] = [corners[3 * c + i] as number, corners[3 * c + j] as number];
        const [di, dj] = [corners[3 * d + i] as number, corners[3 * d + j] as number];
        sum[k] = (sum[k] as number) + (ci - di) * (cj + dj);
      }
    }
    const size = Math.hypot(...sum) || 1;
    for (let k = 0; k < 3; k++) normals[3 * rank + k] = (sum[k] as number) / size;
  }
  return normals;
}

function meanSide(corners: Float64Array, start: Int32Array): number {
  let sum = 0;
  for (let rank = 0; rank + 1 < start.length; rank++) {
    const [first, last] = [start[rank] as number, start[rank + 1] as number];
    for (let c = first; c < last; c++) sum += apart(corners, c, c + 1 === last ? first : c + 1);
  }
  return corners.length === 0 ? 0 : sum / (corners.length / 3);
}

const apart = (points: Float64Array, i: number, j: number): number =>
  Math.hypot(
    ...[0, 1, 2].map((k) => (points[3 * i + k] as number) - (points[3 * j + k] as number)),
  );

/** Corner → hub, where corners within `reach` of a hub's first corner are one hub. */
function welded(corners: Float64Array, reach: number): { hubOf: number[]; hubCount: number } {
  const cells = new Map<string, number[]>();
  const hubOf: number[] = [];
  let hubCount = 0;
  const cell = (c: number, k: number): number => Math.floor((corners[3 * c + k] as number) / reach);
  for (let c = 0; c < corners.length / 3; c++) {
    const [x, y, z] = [cell(c, 0), cell(c, 1), cell(c, 2)];
    const near = around(x, y, z).flatMap((key) => cells.get(key) ?? []);
    const other = near.find((one) => apart(corners, one, c) <= reach);
    if (other !== undefined) {
      hubOf.push(hubOf[other] as number);
      continue;
    }
    const key = `${x} ${y} ${z}`;
    cells.set(key, [...(cells.get(key) ?? []), c]);
    hubOf.push(hubCount);
    hubCount += 1;
  }
  return { hubOf, hubCount };
}

const steps = [-1, 0, 1];

const around = (x: number, y: number, z: number): string[] =>
  steps.flatMap((i) => steps.flatMap((j) => steps.map((k) => `${x + i} ${y + j} ${z + k}`)));

/** Mean length of lines, metres; 0 where there are none. */
export function meanEdgeOf({ ends, since }: Edges): number {
  let sum = 0;
  for (let e = 0; e < since.length; e++) sum += apart(ends, 2 * e, 2 * e + 1);
  return since.length === 0 ? 0 : sum / since.length;
}
