// Poses of a body in an opening that may be on its way out, and the straight ways on from one: drawn at
// random, more often as people hold long and flat things. Seeded.

import type { Random } from '../math/random.ts';
import { add, cross, dot, norm, normalize, scale, subtract, type Vec3 } from '../math/vector.ts';
import { heightsIn, matrixOf } from './body.ts';
import type { Scene } from './clear.ts';
import { anyTurn, type Pose, type Turn, turnOf } from './pose.ts';
import { OFF_GROUND } from './trees.ts';
import type { Gap } from './wall.ts';

/** A pose with the body's middle in or near a gap, now and then in the middle of it; its longest side along the way out, unless `free`. */
export function crossingOf(
  scene: Scene,
  gaps: readonly Gap[],
  random: Random,
  free: boolean,
): { readonly pose: Pose; readonly gap: Gap } {
  const gap = gaps[random.below(gaps.length)];
  const inGap = spotIn(gaps, gap, random);
  const aimed = random.uniform() < 0.5 ? aimedFrom(scene, inGap, random) : null;
  const turn = free ? anyTurn(random) : outward(scene, gaps, gap, aimed, random);
  const [low] = heightsIn(scene.body, turn);
  const { floor } = scene.barrier;
  // On the ground where the gap comes down to it, half of the time.
  const lift = Math.max(0, floor + OFF_GROUND - low - inGap[2]);
  const down =
    aimed === null && random.uniform() < 0.5 ? floor + OFF_GROUND - low - inGap[2] : lift;
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

/** The way to a point of a gap from where the body's inner end may be once it is inside, off the ground
 * and no higher than in hands. */
function aimedFrom({ barrier, body }: Scene, inGap: Vec3, random: Random): Vec3 {
  const long = Math.max(...body.size) * (0.5 + 0.5 * random.uniform());
  const height = barrier.floor + OFF_GROUND + AIMED * random.uniform();
  const rise = Math.max(-0.9 * long, Math.min(0.9 * long, inGap[2] - height));
  const level = Math.sqrt(long * long - rise * rise);
  const way = Math.atan2(inGap[1], inGap[0]) + 0.5 * random.normal();
  return [(level * Math.cos(way)) / long, (level * Math.sin(way)) / long, rise / long];
}

/** Heights over the ground that an inner end is aimed from, m. */
const AIMED = 1.5;

/** A turn with the body's longest side along `aimed` or the gap's normal, level or not, and its next along a side
 * of the gap, an upright or any line in it; now and then another side goes first. */
function outward(
  scene: Scene,
  gaps: readonly Gap[],
  gap: Gap,
  aimed: Vec3 | null,
  random: Random,
): Turn {
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
  const x = aimed ?? normalize(shaken);
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

/** Straight ways out: along the body's longest side, which is how a long thing goes through a small
 * opening, square to the gap, level, and some between and aside. */
export function waysFrom({ body }: Scene, { turn }: Pose, { normal }: Gap, random: Random): Vec3[] {
  const level: Vec3 = [normal[0], normal[1], 0];
  const long = matrixOf({ turn })[body.size.indexOf(Math.max(...body.size))];
  const along = dot(long, normal);
  const ways = [...(Math.abs(along) > 0.2 ? [scale(long, Math.sign(along))] : []), normal];
  if (norm(level) > 0.2) ways.push(normalize(level), normalize(add(normalize(level), normal)));
  for (let i = 0; i < 6; i++)
    ways.push(
      normalize(add(normal, [0.4 * random.normal(), 0.4 * random.normal(), 0.4 * random.normal()])),
    );
  return ways;
}
