// A way out for a rigid body, found by search: first poses in the opening that are clear, then straight
// on and back from them, then two trees of movements that grow until they meet. What is found is held to
// the exact test all along; what is not found is no proof. Seeded.

import { type Random, seededRandom } from '../math/random.ts';
import { add, norm, normalize, scale, subtract, type Vec3 } from '../math/vector.ts';
import { heightsIn } from './body.ts';
import { isClear, isClearBetween, type Scene } from './clear.ts';
import { topOf } from './impossible.ts';
import { crossingOf, waysFrom } from './opening-poses.ts';
import { anyTurn, type Pose, type Turn, turnOf, UPRIGHT } from './pose.ts';
import { connect, type Leg, OFF_GROUND } from './trees.ts';
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

const DEFAULTS = { seed: 1, crossings: 8000, followed: 200, movements: 800, allMovements: 4000 };

/** Movements of the trees beyond a straight way through. */
const FIRST = 100;

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
    // At first only straight through and on from there, as most things go; then any way.
    const isFirst = clear <= of.followed / 2;
    const most = isFirst ? Math.min(FIRST, of.movements) : of.movements;
    const far = outsideOf(scene, pose, gap, random, most, isFirst);
    movements += far.movements;
    if (far.motion === null) continue;
    const near = insideOf(scene, pose, gap, start, random, most, isFirst);
    movements += near.movements;
    if (near.motion === null) continue;
    const motion = shortened(scene, [...near.motion, ...far.motion.slice(1)], random);
    return { motion, crossings, clear, movements, why: '' };
  }
  const why =
    clear === 0
      ? `none of ${crossings} ways to hold it in the opening is clear of the wall`
      : `of ${clear} ways to hold it in the opening none leads on (${movements} movements tried)`;
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

/** From a pose in the opening to where the whole body is outside: straight on, or straight until the
 * wall is behind and then on any way. */
function outsideOf(
  scene: Scene,
  from: Pose,
  gap: Gap,
  random: Random,
  most: number,
  straight: boolean,
): Leg {
  const { barrier, body } = scene;
  const far = barrier.radius + body.reach + 0.05;
  const goal = { turn: from.turn, at: outsideSpot(scene, from, gap, far) };
  let movements = 0;
  let followed = 0;
  for (const way of waysFrom(scene, from, gap, random)) {
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
  if (straight) return { motion: null, movements };
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
  straight: boolean,
): Leg {
  let movements = 0;
  for (const way of waysFrom(scene, to, gap, random))
    for (const part of straight ? [1] : [1, 0.6]) {
      const back = part * (scene.body.reach + 0.1);
      const end = { ...to, at: subtract(to.at, scale(way, back)) };
      movements += 1;
      if (!isClear(scene, end) || !isClearBetween(scene, end, to)) continue;
      const leg = connect(scene, start, end, random, most, true);
      movements += leg.movements;
      if (leg.motion !== null) return { motion: [...leg.motion, to], movements };
      if (straight) return { motion: null, movements };
    }
  if (straight) return { motion: null, movements };
  const leg = connect(scene, start, to, random, most, true);
  return { ...leg, movements: movements + leg.movements };
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
