// The yard as lines to be drawn, seen from above, datum up, clockwise as people walk round it: x to the
// right, y down, metres.

import { baseRing, type Shell, type YardStack } from '@shellraise/core';

/** A point of the drawing. */
export type At = readonly [x: number, y: number];

/** From the shell's frame (x to the datum, y a quarter turn anticlockwise). */
export const seenFromAbove = ([x, y]: readonly [number, number]): At => [-y, -x];

/** The base ring. */
export function basePoints(shell: Shell): At[] {
  const hubs = baseRing(shell)?.hubs ?? [];
  return hubs.map((hub) =>
    seenFromAbove([shell.hubs[3 * hub] as number, shell.hubs[3 * hub + 1] as number]),
  );
}

/** Corners of a stack, its length along the ring. */
export function stackCorners({ at, size }: Pick<YardStack, 'at' | 'size'>): At[] {
  const [x, y] = seenFromAbove(at);
  const far = Math.hypot(x, y) || 1;
  const out: At = [x / far, y / far];
  const along: At = [-out[1], out[0]];
  const [a, b] = [size[0] / 2, size[1] / 2];
  return (
    [
      [-a, -b],
      [a, -b],
      [a, b],
      [-a, b],
    ] as const
  ).map(([u, v]) => [x + u * along[0] + v * out[0], y + u * along[1] + v * out[1]]);
}

/** The walk from a stack to the foot of a place: inwards to a ring round the shell, along it the short way,
 * and in. `centre`: of the place; `ring`: radius of the walk, metres. */
export function walkLine(
  at: readonly [number, number],
  centre: readonly [number, number],
  { base, ring }: { readonly base: number; readonly ring: number },
): At[] {
  const [from, to] = [seenFromAbove(at), seenFromAbove(centre)];
  const begin = Math.atan2(from[1], from[0]);
  const end = Math.hypot(...to) > 1e-6 * base ? Math.atan2(to[1], to[0]) : begin;
  const turn = Math.atan2(Math.sin(end - begin), Math.cos(end - begin));
  const steps = Math.max(1, Math.ceil(Math.abs(turn) / 0.12));
  const on = (angle: number, r: number): At => [r * Math.cos(angle), r * Math.sin(angle)];
  const arc = Array.from({ length: steps + 1 }, (_, i) => on(begin + (turn * i) / steps, ring));
  return [from, ...arc, on(end, base)];
}

/** A round length for a scale bar, about a quarter of what is seen: 1, 2 or 5 times a power of ten. */
export function barLength(seen: number): number {
  const power = 10 ** Math.floor(Math.log10(seen / 4));
  const times = seen / 4 / power;
  return power * (times >= 5 ? 5 : times >= 2 ? 2 : 1);
}
