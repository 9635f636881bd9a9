// Two trees of movements, one from each of two poses, that grow until they meet. Seeded.
//
// J. J. Kuffner, S. M. LaValle, RRT-connect, IEEE Int. Conf. Robotics and Automation, 2000.

import type { Random } from '../math/random.ts';
import { add, scale, type Vec3 } from '../math/vector.ts';
import { heightsIn, matrixOf } from './body.ts';
import { isClear, isClearBetween, type Scene } from './clear.ts';
import { anyTurn, between, type Pose, sweepOf, type Turn, unitTurn } from './pose.ts';

/** Carried so far over the ground, m. */
export const OFF_GROUND = 0.05;

/** Part of a way, and the movements tried for it. */
export interface Leg {
  readonly motion: readonly Pose[] | null;
  readonly movements: number;
}

interface Node {
  readonly pose: Pose;
  readonly from: number;
}

/** Two trees, one from each pose, that grow towards any pose and then towards each other. */
export function connect(
  scene: Scene,
  a: Pose,
  b: Pose,
  random: Random,
  most: number,
  inside: boolean,
): Leg {
  if (isClearBetween(scene, a, b)) return { motion: [a, b], movements: 1 };
  const trees: [Node[], Node[]] = [[{ pose: a, from: -1 }], [{ pose: b, from: -1 }]];
  const stride = Math.max(0.3, scene.body.reach / 2);
  for (let n = 1; n <= most; n++) {
    const own = n % 2;
    const [tree, other] = [trees[own], trees[1 - own]];
    const towards =
      n % 4 < 2 ? anyPose(scene, random, inside) : slidFrom(scene, tree, random, stride);
    const grown = grow(scene, tree, towards, stride);
    if (grown === null) continue;
    const reached = pursue(scene, other, grown, stride);
    if (reached === null) continue;
    const [here, there] = [backFrom(tree, tree.length - 1), backFrom(other, reached)];
    const [first, second] = own === 0 ? [here, there] : [there, here];
    return { motion: [...first.reverse(), ...second.slice(1)], movements: n };
  }
  return { motion: null, movements: most };
}

/** Any turn, anywhere that it may be raised to: among the shell's places, or outside them. */
function anyPose({ barrier, body, carried }: Scene, random: Random, inside: boolean): Pose {
  const turn = anyTurn(random);
  const [low, high] = heightsIn(body, turn);
  const lowest = barrier.floor - low;
  const most = carried.by === 'hands' ? lowest + carried.rise : barrier.floor + carried.top - high;
  const way = 2 * Math.PI * random.uniform();
  const spread = inside
    ? barrier.radius * Math.sqrt(random.uniform())
    : barrier.radius * 0.8 + (body.reach + 0.5) * random.uniform();
  const top = Math.max(lowest, Math.min(most, barrier.radius + body.reach));
  const z = lowest + random.uniform() * (top - lowest);
  return { turn, at: [spread * Math.cos(way), spread * Math.sin(way), z] };
}

/** On from a node along the body's longest side, turned and shifted a little: how a long thing is
 * threaded. Not into the ground, nor higher than it can be raised. */
function slidFrom(
  { body, barrier, carried }: Scene,
  tree: readonly Node[],
  random: Random,
  stride: number,
): Pose {
  const { pose } = tree[random.below(tree.length)];
  const long = matrixOf(pose)[body.size.indexOf(Math.max(...body.size))];
  const turn = unitTurn(pose.turn.map((x) => x + THREADING * random.normal()) as unknown as Turn);
  const [low, high] = heightsIn(body, turn);
  const way = scale(long, stride * (2 * random.uniform() - 1));
  const [x, y, z] = add(pose.at, way).map(
    (c) => c + THREADING * random.normal(),
  ) as unknown as Vec3;
  const lowest = barrier.floor + OFF_GROUND - low;
  const most =
    carried.by === 'hands'
      ? barrier.floor + carried.rise - low
      : barrier.floor + carried.top - high;
  return { turn, at: [x, y, Math.max(lowest, Math.min(most, z))] };
}

/** Spread of a threading movement: half of the turn, radians, and of the shift, m. */
const THREADING = 0.07;

/** One stride from the nearest node towards a pose, or the half or quarter of one where a whole is not
 * clear; null where none is. */
function grow(scene: Scene, tree: Node[], towards: Pose, stride: number): Pose | null {
  const from = nearest(tree, towards, scene.body.reach);
  const pose = tree[from].pose;
  const way = sweepOf(pose, towards, scene.body.reach);
  for (const part of [1, 0.5, 0.25]) {
    const far = part * stride;
    const next = way <= far ? towards : between(pose, towards, far / way);
    if (isClear(scene, next) && isClearBetween(scene, pose, next)) {
      tree.push({ pose: next, from });
      return next;
    }
  }
  return null;
}

/** Strides towards a pose until it is reached (its node) or the way is not clear (null). */
function pursue(scene: Scene, tree: Node[], towards: Pose, stride: number): number | null {
  for (let steps = 0; steps < 60; steps++) {
    const got = grow(scene, tree, towards, stride);
    if (got === null) return null;
    if (got === towards) return tree.length - 1;
  }
  return null;
}

function nearest(tree: readonly Node[], towards: Pose, reach: number): number {
  let best = 0;
  let least = Infinity;
  tree.forEach(({ pose }, i) => {
    const way = sweepOf(pose, towards, reach);
    if (way < least) {
      least = way;
      best = i;
    }
  });
  return best;
}

function backFrom(tree: readonly Node[], node: number): Pose[] {
  const poses: Pose[] = [];
  for (let at = node; at >= 0; at = tree[at].from) poses.push(tree[at].pose);
  return poses;
}
