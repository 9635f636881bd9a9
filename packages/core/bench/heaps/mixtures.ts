// Case 10: other bases and mixtures. Octahedral and tetrahedral nets, flat panels of many sides, nets
// of a single axis, two half balls with a straight course between them, two shells in one heap.

import type { Identification, Shape } from '../../src/identify/shape.ts';
import type { Random } from '../../src/math/random.ts';
import { distance, pointAt } from '../../src/math/vector.ts';
import { mixedNetNames } from '../../src/nets/mixed.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { type Base, baseOf, mixedBase, onlyFivefold, randomBase } from './bases.ts';
import type { HardCase, HardPile } from './heap.ts';
import { type Demand, likeness, sameSet, type Truth, verdictOf, wholeJudge } from './judging.ts';
import { maybeCounts, pileOf, rowOf, rowsOf, type Written, written } from './rows.ts';

/** Other bases and mixtures. */
export const mixtures: HardCase = {
  name: 'mixtures',
  about: 'other solids, many-sided panels, a straight course, two shells in one heap',
  make(random, most) {
    const sort = random.uniform();
    if (sort < 0.3)
      return plain(
        randomBase(random, {
          solids: ['octahedron', 'tetrahedron'],
          least: 8,
          most: Math.min(most, 200),
        }),
        random,
      );
    if (sort < 0.45) return plain(mixedBase(random, mixedNetNames), random);
    if (sort < 0.55) return plain(fivefold(random), random);
    return sort < 0.75 ? elongated(random) : twoShells(random, most);
  },
};

function plain(base: Base, random: Random): HardPile {
  const rows = rowsOf(base, random, maybeCounts(base.net, random));
  return {
    label: `${base.name}, ${rows.length} kinds`,
    pile: pileOf({ readingSd: base.sd, kinds: rows.map(rowOf) }),
    radius: base.radius,
    judge: wholeJudge({ net: base.net, rows, sd: base.sd }),
  };
}

function fivefold(random: Random): Base {
  const [b, c] = (
    [
      [2, 0],
      [1, 1],
      [2, 1],
    ] as const
  )[random.below(3)] ?? [2, 0];
  const named = namedNet({ solid: 'icosahedron', b, c, division: 'equal chords' });
  return baseOf(`(${b}, ${c}) of one axis`, onlyFivefold(named, 0.05, random), random);
}

/** Two halves of a ball, the equator's sides with rectangles between them. */
export function elongated(random: Random): HardPile {
  const [solid, b] = (
    [
      ['icosahedron', 2],
      ['icosahedron', 4],
      ['octahedron', 3],
      ['octahedron', 4],
    ] as const
  )[random.below(4)] ?? ['icosahedron', 2];
  const base = baseOf(
    `${solid} (${b}, 0) with a straight course`,
    namedNet({ solid, b, c: 0, division: 'equal chords' }),
    random,
  );
  const rows = rowsOf(base, random, maybeCounts(base.net, random));
  const height = 0.6 + 0.9 * random.uniform();
  const course = courseRows(base, height, random, rows[0]?.good !== null);
  const panels = course.reduce((sum, { count }) => sum + count, 0);
  const all = random.shuffle([...rows, ...course.map(({ row }) => row)]);
  return {
    label: `${base.name} of ${height.toFixed(2)} m`,
    pile: pileOf({ readingSd: base.sd, kinds: all.map(rowOf) }),
    radius: base.radius,
    judge: wholeJudge({ net: base.net, rows: all, sd: base.sd }, (shape): Demand[] => [
      [
        sameSet(
          shape.explained.filter(({ as }) => as === 'course').map(({ kind }) => kind),
          course.map(({ row }) => row.id),
        ),
        'the panels of the course',
      ],
      [Math.abs((shape.course?.height ?? 0) - height) < 4 * base.sd, 'its height'],
      [shape.course?.panels === panels, `its ${panels} panels`],
    ]),
  };
}

/** A rectangle for each length of the equator's sides. */
function courseRows({ net, sd }: Base, height: number, random: Random, counted: boolean) {
  const { shell } = net;
  const lengths = new Map<string, { length: number; count: number }>();
  for (let m = 0; m < shell.seams.length; m += 2) {
    const [a, b] = [shell.seams[m], shell.seams[m + 1]].map((side) =>
      pointAt(shell.hubs, shell.sideHub[side as number] as number),
    ) as [readonly [number, number, number], readonly [number, number, number]];
    if (Math.abs(a[2]) > 1e-9 || Math.abs(b[2]) > 1e-9) continue;
    const length = distance(a, b);
    const known = lengths.get(length.toFixed(6));
    if (known) known.count++;
    else lengths.set(length.toFixed(6), { length, count: 1 });
  }
  return [...lengths.values()].map(({ length, count }, i) => {
    const truth = [length, height, length, height];
    const sides = truth.map((x) => written(x + sd * random.normal()));
    const row: Written = {
      id: `r${i + 1}`,
      sides,
      truth,
      kind: -1,
      from: 0,
      good: counted ? count : null,
    };
    return { row, count };
  });
}

/** The kinds of two balls of different size in one heap. */
function twoShells(random: Random, most: number): HardPile {
  const wish = {
    least: 60,
    most: Math.min(most, 260),
    solids: ['icosahedron', 'octahedron'] as const,
  };
  const first = randomBase(random, wish);
  const second = randomBase(random, wish);
  const truths = [
    { base: first, letter: 'a' },
    { base: second, letter: 'b' },
  ].map(
    ({ base, letter }): Truth => ({
      net: base.net,
      rows: rowsOf(base, random, maybeCounts(base.net, random), letter),
      sd: base.sd,
    }),
  ) as [Truth, Truth];
  const all = random.shuffle(truths.flatMap(({ rows }) => rows));
  return {
    label: `${first.name} R ${first.radius.toFixed(2)} and ${second.name} R ${second.radius.toFixed(2)}`,
    pile: pileOf({ readingSd: Math.max(first.sd, second.sd), kinds: all.map(rowOf) }),
    radius: null,
    judge: ({ answer, question }) => {
      const which = (from: Identification, kinds: readonly Kind[]): number =>
        truths.findIndex((truth) =>
          from.shapes.some(
            (shape) => isOf(truth, shape, kinds) && likeness(shape, kinds, truth) === 'whole',
          ),
        );
      return verdictOf(
        answer,
        (shape) => truths.some((truth) => likeness(shape, question.kinds, truth) === 'whole'),
        (): Demand[] => {
          const own = which(answer, question.kinds);
          const other = answer.besides ? which(answer.besides, question.kinds) : -1;
          return [[other >= 0 && other !== own, 'the other shell']];
        },
      );
    },
  };
}

/** Whether all panels of a shape are rows of this truth. */
const isOf = ({ rows }: Truth, { shell }: Shape, kinds: readonly Kind[]): boolean => {
  const ids = new Set(rows.map(({ id }) => id));
  return shell.kind.every((k) => ids.has(kinds[k]?.id ?? ''));
};
