// Case 1: part of a sphere. What stands above a level of 0.3 to 0.95 of the diameter, cut along
// seams; kinds that lie wholly below are absent, the counts are those of the part.

import type { Shape } from '../../src/identify/shape.ts';
import { turned } from '../../src/math/cyclic.ts';
import type { Random } from '../../src/math/random.ts';
import { dot, normalize, pointAt, type Vec3 } from '../../src/math/vector.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { type Base, baseOf, onlyFivefold, randomBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, likeness, type Truth, verdictOf } from './judging.ts';
import { pileOf, rowOf, rowsOf } from './rows.ts';

/** Part of a sphere. */
export const part: HardCase = {
  name: 'part',
  about: 'part of a sphere, counts of the part, kinds absent',
  make(random, most) {
    const base = random.uniform() < 0.5 ? oneAxis(random) : manyFold(random, most);
    const share = 0.3 + 0.65 * random.uniform();
    const counts = countsAbove(base.net, crownOf(base.net.shell, random), share);
    const all = rowsOf(base, random, counts);
    const rows = all.filter(({ kind }) => (counts[kind] as number) > 0);
    const absent = all.filter(({ kind }) => counts[kind] === 0);
    const truth: Truth = { net: base.net, rows, sd: base.sd };
    return {
      label: `${base.name}, cut at ${share.toFixed(2)}, ${absent.length} of ${all.length} kinds absent`,
      pile: pileOf({ readingSd: base.sd, kinds: rows.map(rowOf) }),
      radius: base.radius,
      judge: ({ answer, question }) => {
        const like = (shape: Shape) => likeness(shape, question.kinds, truth);
        return verdictOf(
          answer,
          (shape) => like(shape) === 'whole' || (absent.length > 0 && like(shape) === 'part'),
          (shape): Demand[] => [
            [shape.strangers.length === 0, 'no strangers'],
            [
              like(shape) === 'whole' || 2 * placeCount(shape.shell) >= sum(counts),
              'half of the part at least',
            ],
            [absent.length === 0 || wants(shape, truth, absent), 'sides of the missing kinds'],
          ],
        );
      },
    };
  },
};

const manyFold = (random: Random, most: number): Base =>
  randomBase(random, { least: 80, most, solids: ['icosahedron', 'octahedron'] });

/** Few turns bring it onto itself, so that its kinds are many and some lie low down. */
function oneAxis(random: Random): Base {
  const [b, c] = few[random.below(few.length)] as (typeof few)[number];
  const named = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
  const net = onlyFivefold(named, 0.06, random);
  return baseOf(`(${b}, ${c}) of one axis`, net, random);
}

const few = [
  [2, 0],
  [2, 1],
  [3, 0],
] as const;

const sum = (counts: readonly number[]): number => counts.reduce((a, b) => a + b, 0);

/** A direction up: a hub, the middle of a seam or of a place. */
export function crownOf(shell: Shell, random: Random): Vec3 {
  const hubs = hubsOf(shell, random.below(placeCount(shell)) as PlaceId);
  const taken = hubs.slice(0, [1, 2, hubs.length][random.below(3)]);
  const points = taken.map((hub) => pointAt(shell.hubs, hub));
  return normalize(
    [0, 1, 2].map((i) => sum(points.map((p) => p[i] as number))) as [number, number, number],
  );
}

/** Places of each kind with all hubs above the level that cuts off all but `share` of the
 * diameter. */
function countsAbove({ shell, kinds }: NetShell, up: Vec3, share: number): number[] {
  const level = shell.radius * (1 - 2 * share);
  const counts = kinds.map(() => 0);
  for (let p = 0; p < placeCount(shell); p++)
    if (hubsOf(shell, p as PlaceId).every((hub) => dot(pointAt(shell.hubs, hub), up) >= level))
      (counts[shell.kind[p] as number] as number)++;
  return counts;
}

/** Whether each kind that a shape wants is one of the absent ones, its sides within five deviations
 * or 3 mm; a shape that wants none must be an open part. */
function wants(shape: Shape, { sd }: Truth, absent: readonly { truth: readonly number[] }[]) {
  const wanted = shape.added.filter(({ why }) => why === 'wanted');
  if (wanted.length === 0) return false;
  return wanted.every(({ kind }) =>
    absent.some(({ truth }) =>
      truth.some((_, by) =>
        turned(truth, by).every(
          (x, i) =>
            Math.abs(x - (kind.sides[i] ?? 0)) <
            Math.max(5 * (kind.sideSds[i] ?? 0), 3 * sd, 0.003),
        ),
      ),
    ),
  );
}
