// Whether a body is clear of a wall and the ground, and stays so all along a movement: between two poses
// no point goes further than the sweep, so where the clearances at both ends are together more than that
// it is clear all the way; else the movement is halved. No step is passed over.

import { norm, subtract, type Vec3 } from '../math/vector.ts';
import { type Body, heightsIn, placedAt } from './body.ts';
import { isPierced } from './plates.ts';
import { between, type Pose, sweepOf, turned, turnedBack } from './pose.ts';
import { separation } from './separation.ts';
import type { Barrier } from './wall.ts';

/** How high a body may be raised: its lowest point over the ground by hand, or its highest by a hook. */
export type Carried =
  | { readonly by: 'hands'; readonly rise: number }
  | { readonly by: 'hook'; readonly top: number };

/** A body that moves about a wall. */
export interface Scene {
  readonly body: Body;
  readonly barrier: Barrier;
  readonly carried: Carried;
}

/** Grass gives: so far below the floor a body may dip, m. */
export const GROUND_GIVES = 0.02;
/** Clearance below which a body counts as touching, m. */
const TOUCH = 1e-3;

/** Distance from wall and ground, m, from below; 0 where it touches. At least `enough` is not looked
 * into further. */
export function clearance({ body, barrier }: Scene, pose: Pose, enough = Infinity): number {
  const [low] = heightsIn(body, pose.turn);
  let least = Math.min(enough, pose.at[2] + low - barrier.floor + GROUND_GIVES);
  if (least <= 0) return 0;
  const near = barrier.solids
    .map((solid) => ({ solid, off: norm(subtract(solid.middle, pose.at)) - solid.radius }))
    .filter(({ off }) => off - body.reach < least)
    .sort((a, b) => a.off - b.off);
  if (near.length === 0) return least;
  const pieces = placedAt(body, pose);
  const middles = body.spheres.map(({ middle }) => turned(pose.turn, middle));
  for (const { solid, off } of near) {
    if (off - body.reach >= least) break;
    for (let k = 0; k < pieces.length; k++) {
      const m = middles[k] as Vec3;
      const apart = Math.sqrt(
        (m[0] + pose.at[0] - solid.middle[0]) ** 2 +
          (m[1] + pose.at[1] - solid.middle[1]) ** 2 +
          (m[2] + pose.at[2] - solid.middle[2]) ** 2,
      );
      if (apart - solid.radius - body.spheres[k].radius >= least) continue;
      least = Math.min(least, separation(pieces[k], solid.points, least).low);
      if (least < TOUCH) return 0;
    }
  }
  return least;
}

/** Whether a pose is no higher than hands or hook bring it, outside and inside alike. */
function isLow({ body, barrier, carried }: Scene, pose: Pose): boolean {
  const [low, high] = heightsIn(body, pose.turn);
  return carried.by === 'hands'
    ? pose.at[2] + low - barrier.floor <= carried.rise
    : pose.at[2] + high - barrier.floor <= carried.top;
}

/** Whether a body is clear in a pose. */
export const isClear = (scene: Scene, pose: Pose): boolean =>
  isLow(scene, pose) && !isCut(scene, pose) && clearance(scene, pose, 2 * TOUCH) >= TOUCH;

/** Whether a line of the wall goes through the body: told sooner than its clearance. */
function isCut({ body, barrier }: Scene, { turn, at }: Pose): boolean {
  const back = turnedBack(turn);
  return barrier.loops.some((loop) => {
    const seen = loop.map((p) => turned(back, subtract(p, at)));
    return seen.some((p, i) => {
      const next = seen[i + 1 === seen.length ? 0 : i + 1] as Vec3;
      return body.held.plates.some((plate) => isPierced(plate, p, next));
    });
  });
}

/** Whether it is clear all the way between two poses; heights are asked at the poses looked at. */
export function isClearBetween(scene: Scene, a: Pose, b: Pose): boolean {
  return halved(scene, a, b, clearance(scene, a), clearance(scene, b));
}

function halved(scene: Scene, a: Pose, b: Pose, atA: number, atB: number): boolean {
  if (atA < TOUCH || atB < TOUCH) return false;
  const sweep = sweepOf(a, b, scene.body.reach);
  if (sweep < atA + atB) return true;
  const middle = between(a, b, 0.5);
  if (!isLow(scene, middle)) return false;
  const atMiddle = clearance(scene, middle, sweep);
  return halved(scene, a, middle, atA, atMiddle) && halved(scene, middle, b, atMiddle, atB);
}

/** Whether a motion given as poses is clear all the way: what a motion found is held to. */
export const isClearMotion = (scene: Scene, motion: readonly Pose[]): boolean =>
  motion.length > 0 &&
  motion.every((pose, i) =>
    i === 0 ? isClear(scene, pose) : isClearBetween(scene, motion[i - 1], pose),
  );
