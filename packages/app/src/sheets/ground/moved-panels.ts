// Panels of a stage with their corners moved along a movement that nothing resists, and with props as
// lines from their hubs to the ground: what the 3D view draws, frame by frame.

import type { Shell } from '@shellraise/core';
import { type Panels, panelsOfShell } from '../../drawing/shell-view/panels.ts';

/** A stage ready to be moved. */
export interface Movable {
  readonly still: Panels;
  /** Of every line's two ends, and of every hub: the corner that it goes with. */
  readonly ends: Int32Array;
  readonly hubs: Int32Array;
}

/** The panels of the places that stand, with what their lines and hubs go with. */
export function movable(shell: Shell, placed: readonly number[]): Movable {
  const still = panelsOfShell(shell, { order: placed });
  const { corners, start, edges, hubs } = still;
  const cornerOf = (rank: number, points: Float64Array, i: number): number => {
    for (let c = start[rank] as number; c < (start[rank + 1] as number); c++)
      if ([0, 1, 2].every((k) => corners[3 * c + k] === points[3 * i + k])) return c;
    return start[rank] as number;
  };
  const ends = new Int32Array(2 * edges.since.length);
  edges.since.forEach((rank, e) => {
    ends[2 * e] = cornerOf(rank, edges.ends, 2 * e);
    ends[2 * e + 1] = cornerOf(rank, edges.ends, 2 * e + 1);
  });
  const at = Int32Array.from(hubs.since, (rank, h) => cornerOf(rank, hubs.points, h));
  return { still, ends, hubs: at };
}

/** Those panels with each corner moved by `amount` (metres at the corner that moves most) along
 * `movement`; props stand from their hubs (points, metres) down to `ground`; `lines`: guys and chains, two points each, metres. */
export function movedPanels(
  { still, ends, hubs }: Movable,
  movement: Float64Array | null,
  amount: number,
  props: readonly (readonly [number, number, number])[] = [],
  ground = 0,
  lines: readonly (readonly number[])[] = [],
): Panels {
  const corners =
    movement === null
      ? still.corners
      : still.corners.map((value, i) => value + amount * (movement[i] as number));
  const pick = (which: Int32Array): Float64Array => {
    const points = new Float64Array(3 * which.length);
    which.forEach((corner, i) => {
      for (let k = 0; k < 3; k++) points[3 * i + k] = corners[3 * corner + k] as number;
    });
    return points;
  };
  const feet = [...props.map(([x, y, z]) => [x, y, z, x, y, ground]), ...lines];
  return {
    ...still,
    corners,
    edges: {
      ends: Float64Array.from([...feet.flat(), ...pick(ends)]),
      since: Int32Array.from([...feet.map(() => 0), ...still.edges.since]),
      joined: Int32Array.from([...feet.map(() => -1), ...still.edges.joined]),
    },
    hubs: { ...still.hubs, points: pick(hubs) },
  };
}
