// Proof that a body can't pass, told at once. On its way out a point of it, its heart, must cross the
// closed surface of shell, ground and gaps (half-way down the flanges), and not through the wall, so it must at some
// time be in a gap. Where a ball about the heart is nowhere in the gaps clear of the wall it can't. What lies below
// the base ring counts as closed.

import { add, norm, scale, subtract, type Vec3 } from '../math/vector.ts';
import { GROUND_GIVES, type Scene } from './clear.ts';
import { separation } from './separation.ts';
import type { Barrier, Triangle } from './wall.ts';

/** Why a body can't pass. */
export interface Impossible {
  readonly by: 'closed' | 'height' | 'ball' | 'disc' | 'crossing';
  readonly why: string;
}

/** A cell in which nothing moves further than this and that is not shut is a way through, maybe, m. */
export const SMALL = 4e-3;
/** Cells of the ball's search: more are never needed in practice, so many end it without an answer. */
const BALL_CELLS = 50_000;

/** Whether there is nothing to pass through, nothing as low as it can be raised, or no room for the
 * largest ball that it holds: told at once. Null where none is shown. */
export function plainlyImpossible(scene: Scene): Impossible | null {
  const { barrier, body } = scene;
  if (barrier.gaps.length === 0) return { by: 'closed', why: 'no place is open' };
  const closing = reachable(scene);
  if (closing.length === 0)
    return { by: 'height', why: 'no open place is as low as it can be raised' };
  const { ball } = body.held;
  if (ball > 0 && !ballFits(barrier, closing, ball))
    return {
      by: 'ball',
      why: `it holds a ball of ${(2 * ball).toFixed(2)} m, which no open place lets through`,
    };
  return null;
}

/** How high any point of a body can come, in the shell's frame. */
export const topOf = ({ barrier, body, carried }: Scene): number =>
  barrier.floor + (carried.by === 'hands' ? carried.rise + 2 * body.reach : carried.top);

/** Triangles that close the wall and that a point of the body can come to. */
export function reachable(scene: Scene): Triangle[] {
  const top = topOf(scene);
  return scene.barrier.closing.filter((corners) => corners.some((at) => at[2] < top));
}

/** Whether a ball's middle may be somewhere in the gaps: false is proof that it is not. */
function ballFits(barrier: Barrier, closing: readonly Triangle[], radius: number): boolean {
  const stack = [...closing];
  for (let looked = 0; stack.length > 0; looked++) {
    const corners = stack.pop() as Triangle;
    const [middle, spread] = circleOf(corners);
    const off = distanceOf(barrier, middle, radius + spread);
    if (off + spread < radius) continue;
    if (off >= radius || spread < SMALL / 2 || looked > BALL_CELLS) return true;
    stack.push(...quarters(corners));
  }
  return false;
}

/** Middle of a triangle and the distance of its furthest corner from it, m. */
export function circleOf(corners: Triangle): readonly [Vec3, number] {
  const middle = scale(add(add(corners[0], corners[1]), corners[2]), 1 / 3);
  return [middle, Math.max(...corners.map((at) => norm(subtract(at, middle))))];
}

/** A triangle in four by the middles of its sides. */
export function quarters([a, b, c]: Triangle): Triangle[] {
  const half = (p: Vec3, q: Vec3): Vec3 => scale(add(p, q), 0.5);
  const [ab, bc, ca] = [half(a, b), half(b, c), half(c, a)];
  return [
    [a, ab, ca],
    [ab, b, bc],
    [ca, bc, c],
    [ab, bc, ca],
  ];
}

/** Distance of a point from wall and ground, from above; more than `enough` is not looked into. */
export function distanceOf({ solids, floor }: Barrier, at: Vec3, enough: number): number {
  const point = Float64Array.from(at);
  let least = Math.min(enough, at[2] - floor + GROUND_GIVES);
  for (const { points, middle, radius } of solids)
    if (norm(subtract(middle, at)) - radius < least)
      least = Math.min(least, separation(point, points, least).high);
  return Math.max(0, least);
}
