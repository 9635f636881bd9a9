// A way out for a rigid body, found by search: first poses in the opening that are clear, then straight
// on and back from them, then two trees of movements that grow until they meet. What is found is held to
// the exact test all along; what is not found is no proof. Seeded.
//
// J. J. Kuffner, S. M. LaValle, RRT-connect, IEEE Int. Conf. Robotics and Automation, 2000.

import { type Random, seededRandom } from '../math/random.ts';
import { add, cross, dot, norm, normalize, scale, subtract, type Vec3 } from '../math/vector.ts';
import { heightsIn } from './body.ts';
import { isClear, isClearBetween, type Scene } from './clear.ts';
import { topOf } from './impossible.ts';
import { anyTurn, between, type Pose, sweepOf, type Turn, turnOf, UPRIGHT } from './pose.ts';
import type { Gap } from './wall.ts';

/** How long to look. */
export interface PassSearchOptions {
  readonly seed?: number;
  /** Poses tried in the openings. */
  readonly crossings?: number;
  /** Clear ones that are followed further. */
  readonly followed?: number;
  /** Movements that one pair of trees may try, and all of them together. */
  readonly movements?: number;
  readonly allMovements?: number;
  /** Where the body stands; where left out it is put where it fits, near the middle. */
  readonly start?: Pose;
  /** Asked after every pose and movement; true ends the search. */
  readonly shouldStop?: () => boolean;
  /** Told now and then which part of the search is done, 0 to 1. */
  readonly onProgress?: (part: number) => void;
}

/** What a search found. */
export interface PassSearch {
  /** Poses from inside to outside, or null. */
  readonly motion: readonly Pose[] | null;
  /** Poses tried in the openings, and how many were clear. */
  readonly crossings: number;
  readonly clear: number;
  readonly movements: number;
  /** Why it ended without a way; empty where it found one. */
  readonly why: string;
}

const DEFAULTS = { seed: 1, crossings: 8000, followed: 12, movements: 800, allMovements: 4000 };

/** Looks for a way from inside to outside. */
export function searchWayOut(scene: Scene, options: PassSearchOptions = {}): PassSearch {
  const of = { ...DEFAULTS, ...options };
  const random = seededRandom(of.seed);
  const none = { motion: null, crossings: 0, clear: 0, movements: 0 };
  const start = options.start ?? startOf(scene, random);
  if (start === null || !isClear(scene, start)) return { ...none, why: 'it fits nowhere inside' };
  const top = topOf(scene);
  const gaps = scene.barrier.gaps.filter(({ corners }) => corners.some((at) => at[2] < top));
  if (gaps.length === 0) return { ...none, why: 'no opening is as low as it can be raised' };
  let [crossings, clear, movements] = [0, 0, 0];
  const isOver = (): boolean =>
    crossings >= of.crossings || clear >= of.followed || movements >= of.allMovements;
  while (!isOver()) {
    if (of.shouldStop?.()) return { motion: null, crossings, clear, movements, why: 'stopped' };
    if (crossings % 64 === 0)
      of.onProgress?.(Math.max(crossings / of.crossings, movements / of.allMovements));
    crossings += 1;
    const { pose, gap } = crossingOf(scene, gaps, random, crossings % 4 === 3);
    if (!isClear(scene, pose)) continue;
    clear += 1;
    const far = outsideOf(scene, pose, gap, random, of.movements);
    movements += far.movements;
    if (far.motion === null) continue;
    const near = insideOf(scene, pose, gap, start, random, of.movements);
    movements += near.movements;
    if (near.motion === null) continue;
    const motion = shortened(scene, [...near.motion, ...far.motion.slice(1)], random);
    return { motion, crossings, clear, movements, why: '' };
  }
  const why =
    clear === 0
      ? `none of ${crossings} poses in the opening is clear`
      : `${clear} clear poses in the opening lead nowhere in ${movements} movements`;
  return { motion: null, crossings, clear, movements, why };
}

/** A clear pose inside, near the axis and low: as it is, lying, or any turn. */
function startOf(scene: Scene, random: Random): Pose | null {
  const { floor, radius } = scene.barrier;
  const turns: Turn[] = [
    UPRIGHT,
    turnOf([0, 0, -1], [0, 1, 0], [1, 0, 0]),
    turnOf([1, 0, 0], [0, 0, 1], [0, -1, 0]),
  ];
  for (let n = 0; n < 400; n++) {
    const turn = turns[n] ?? turns[n % 7] ?? anyTurn(random);
    const spread = n < 3 ? 0 : (radius * n) / 800;
    const at: Vec3 = [
      spread * random.normal(),
      spread * random.normal(),
      floor - heightsIn(scene.body, turn)[0] + OFF_GROUND,
    ];
    const pose = { turn, at };
    if (norm(at) < radius && isClear(scene, pose)) return pose;
  }
  return null;
}

/** Carried so far over the ground, m. */
const OFF_GROUND = 0.05;

/** A pose with the body's middle in or near a gap, now and then in the middle of it; its longest side along the way out, unless `free`. */
function crossingOf(
  scene: Scene,
  gaps: readonly Gap[],
  random: Random,
  free: boolean,
): { readonly pose: Pose; readonly gap: Gap } {
  const gap = gaps[random.below(gaps.length)];
  const inGap = spotIn(gaps, gap, random);
  const turn = free ? anyTurn(random) : outward(scene, gaps, gap, random);
  const [low] = heightsIn(scene.body, turn);
  const { floor } = scene.barrier;
  // On the ground where the gap comes down to it, half of the time.
  const lift = Math.max(0, floor + OFF_GROUND - low - inGap[2]);
  const down = random.uniform() < 0.5 ? floor + OFF_GROUND - low - inGap[2] : lift;
  const at: Vec3 = [
    inGap[0],
    inGap[1],
    inGap[2] + (Math.abs(down) < scene.body.reach ? down : lift),
  ];
  return { pose: { turn, at }, gap };
}

/** A point of a gap: any, or its middle, or that of all that face the same way. */
function spotIn(gaps: readonly Gap[], gap: Gap, random: Random): Vec3 {
  const draw = random.uniform();
  const [a, b, c] = gap.corners;
  if (draw < 0.15) return middleOf([gap]);
  if (draw < 0.3) return middleOf(gaps.filter(({ normal }) => dot(normal, gap.normal) > 0.7));
  const [u, v] = [random.uniform(), random.uniform()];
  const [p, q] = u + v > 1 ? [1 - u, 1 - v] : [u, v];
  return add(a, add(scale(subtract(b, a), p), scale(subtract(c, a), q)));
}

const middleOf = (gaps: readonly Gap[]): Vec3 =>
  scale(
    gaps.flatMap(({ corners }) => corners).reduce((sum, at) => add(sum, at), [0, 0, 0]),
    1 / (3 * gaps.length),
  );

/** A turn with the body's longest side along the gap's normal, level or not, and its next along a side
 * of the gap, an upright or any line in it; now and then another side goes first. */
function outward(scene: Scene, gaps: readonly Gap[], gap: Gap, random: Random): Turn {
  const order = [0, 1, 2].sort((i, j) => scene.body.size[j] - scene.body.size[i]);
  if (random.uniform() < 0.25) order.reverse();
  const mean = gaps
    .filter(({ normal }) => dot(normal, gap.normal) > 0.7)
    .reduce<Vec3>((sum, { normal }) => add(sum, normal), [0, 0, 0]);
  const level: Vec3 = [gap.normal[0], gap.normal[1], 0];
  const ways = [gap.normal, normalize(mean), ...(norm(level) > 0.2 ? [normalize(level)] : [])];
  const tilt = random.uniform() < 0.5 ? 0 : 0.35;
  const shaken = add(ways[random.below(ways.length)], [
    tilt * random.normal(),
    tilt * random.normal(),
    tilt * random.normal(),
  ]);
  const x = normalize(shaken);
  const [a, b, c] = gap.corners;
  const lines = [subtract(b, a), subtract(c, b), subtract(a, c), [0, 0, 1] as Vec3];
  const line =
    random.uniform() < 0.6
      ? lines[random.below(4)]
      : ([random.normal(), random.normal(), random.normal()] as Vec3);
  const aside = subtract(line, scale(x, dot(line, x)));
  if (!(norm(aside) > 1e-6)) return anyTurn(random);
  const y = normalize(aside);
  const axes: Vec3[] = [];
  axes[order[0]] = x;
  axes[order[1]] = y;
  axes[order[2]] = cross(x, y);
  if (dot(cross(axes[0], axes[1]), axes[2]) < 0) axes[order[2]] = scale(axes[order[2]], -1);
  return turnOf(axes[0], axes[1], axes[2]);
}

interface Leg {
  readonly motion: readonly Pose[] | null;
  readonly movements: number;
}

/** From a pose in the opening to where the whole body is outside: straight on, or straight until the
 * wall is behind and then on any way. */
function outsideOf(scene: Scene, from: Pose, gap: Gap, random: Random, most: number): Leg {
  const { barrier, body } = scene;
  const far = barrier.radius + body.reach + 0.05;
  const goal = { turn: from.turn, at: outsideSpot(scene, from, gap, far) };
  let movements = 0;
  let followed = 0;
  for (const way of waysFrom(gap, random)) {
    for (const length of [far, body.reach + 0.2, 0.7 * body.reach]) {
      const end = { ...from, at: add(from.at, scale(way, length)) };
      movements += 1;
      if (!isClear(scene, end) || !isClearBetween(scene, from, end)) continue;
      if (norm(end.at) >= far) return { motion: [from, end], movements };
      if (!isClear(scene, goal) || followed > 1) continue;
      followed += 1;
      const leg = connect(scene, end, goal, random, most, false);
      movements += leg.movements;
      if (leg.motion !== null) return { motion: [from, ...leg.motion], movements };
    }
  }
  const leg = isClear(scene, goal) ? connect(scene, from, goal, random, most, false) : null;
  return { motion: leg?.motion ?? null, movements: movements + (leg?.movements ?? 0) };
}

/** Just off the ground, out from the gap, clear of the sphere. */
function outsideSpot({ barrier, body }: Scene, from: Pose, gap: Gap, far: number): Vec3 {
  const level: Vec3 = [gap.normal[0], gap.normal[1], 0];
  const away = norm(level) > 1e-6 ? normalize(level) : ([1, 0, 0] as Vec3);
  const out = scale(away, far + 0.1);
  return [out[0], out[1], barrier.floor - heightsIn(body, from.turn)[0] + OFF_GROUND];
}

/** From where it stands to a pose in the opening. */
function insideOf(
  scene: Scene,
  to: Pose,
  gap: Gap,
  start: Pose,
  random: Random,
  most: number,
): Leg {
  for (const way of waysFrom(gap, random))
    for (const part of [1, 0.6]) {
      const back = part * (scene.body.reach + 0.1);
      const end = { ...to, at: subtract(to.at, scale(way, back)) };
      if (!isClear(scene, end) || !isClearBetween(scene, end, to)) continue;
      const leg = connect(scene, start, end, random, most, true);
      if (leg.motion !== null) return { motion: [...leg.motion, to], movements: leg.movements + 1 };
    }
  return connect(scene, start, to, random, most, true);
}

/** Straight ways out: square to the gap, level, and some between and aside. */
function waysFrom({ normal }: Gap, random: Random): Vec3[] {
  const level: Vec3 = [normal[0], normal[1], 0];
  const ways = [normal];
  if (norm(level) > 0.2) ways.push(normalize(level), normalize(add(normalize(level), normal)));
  for (let i = 0; i < 6; i++)
    ways.push(
      normalize(add(normal, [0.4 * random.normal(), 0.4 * random.normal(), 0.4 * random.normal()])),
    );
  return ways;
}

interface Node {
  readonly pose: Pose;
  readonly from: number;
}

/** Two trees, one from each pose, that grow towards any pose and then towards each other. */
function connect(
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
    const grown = grow(scene, tree, anyPose(scene, random, inside), stride);
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

/** One stride from the nearest node towards a pose; null where that is not clear. */
function grow(scene: Scene, tree: Node[], towards: Pose, stride: number): Pose | null {
  const from = nearest(tree, towards, scene.body.reach);
  const pose = tree[from].pose;
  const way = sweepOf(pose, towards, scene.body.reach);
  const next = way <= stride ? towards : between(pose, towards, stride / way);
  if (!isClear(scene, next) || !isClearBetween(scene, pose, next)) return null;
  tree.push({ pose: next, from });
  return next;
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

/** The same way with poses left out where going straight is clear. */
function shortened(scene: Scene, motion: readonly Pose[], random: Random): Pose[] {
  const poses = [...motion];
  for (let n = 0; n < 30 && poses.length > 2; n++) {
    const i = random.below(poses.length - 2);
    const j = Math.min(poses.length - 1, i + 2 + random.below(3));
    if (isClearBetween(scene, poses[i], poses[j])) poses.splice(i + 1, j - i - 1);
  }
  return poses;
}
