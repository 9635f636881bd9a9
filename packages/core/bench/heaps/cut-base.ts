// Case 2: the lowest panels were cut by the ground. The plane cuts each panel that it meets into
// what stands above it: a triangle or a trapezium with one side in the plane.

import type { Shape } from '../../src/identify/shape.ts';
import { lowestTurn, turned } from '../../src/math/cyclic.ts';
import type { Random } from '../../src/math/random.ts';
import { add, distance, dot, pointAt, scale, type Vec3 } from '../../src/math/vector.ts';
import type { PlaceId } from '../../src/shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../../src/shell/shell.ts';
import { randomBase } from './bases.ts';
import type { HardCase } from './heap.ts';
import { type Demand, sameSet, type Truth, wholeJudge } from './judging.ts';
import { crownOf } from './part.ts';
import { pileOf, rowOf, rowsOf, type Written, written } from './rows.ts';

/** Cut base. */
export const cutBase: HardCase = {
  name: 'cut-base',
  about: 'lowest panels cut by the ground plane',
  make(random, most) {
    const base = randomBase(random, { least: 80, most: Math.min(most, 320), moved: 0.15 });
    const { shell } = base.net;
    const cut = goodCut(shell, random);
    const counts = base.net.kinds.map(
      (_, k) => cut.whole.filter((p) => shell.kind[p] === k).length,
    );
    const rows = rowsOf(base, random, counts).filter(({ kind }) => (counts[kind] as number) > 0);
    const cutRows = random.shuffle(cut.kinds).map(({ sides, inPlane, count }, i): CutRow => {
      const from = random.below(sides.length);
      const truth = turned(sides, from);
      return {
        id: `c${i + 1}`,
        sides: truth.map((x) => written(x + base.sd * random.normal())),
        truth,
        kind: -1,
        from,
        good: count,
        inPlane: (inPlane - from + sides.length) % sides.length,
      };
    });
    const all: Written[] = random.shuffle<Written>([...rows, ...cutRows]);
    const truth: Truth = { net: base.net, rows: all, sd: base.sd };
    const absent = rows.length < base.net.kinds.length;
    return {
      label: `${base.name}, plane at ${(cut.level / shell.radius).toFixed(2)} R, ${rows.length} whole kinds, ${cutRows.length} cut`,
      pile: pileOf({ readingSd: base.sd, kinds: all.map(rowOf) }),
      radius: base.radius,
      judge: wholeJudge(
        truth,
        (shape) => demandsOf(shape, cut, cutRows, base.sd),
        absent ? ['whole', 'part'] : ['whole'],
      ),
    };
  },
};

function demandsOf(shape: Shape, cut: Cut, rows: readonly CutRow[], sd: number): Demand[] {
  const told = shape.explained.filter((one) => one.as === 'cut');
  const sides = new Map(told.map((one) => [one.kind, one.cutSide]));
  const plane = shape.cut;
  const off = plane ? Math.abs(plane.height - cut.level) : 0;
  const heightSd = Math.max(plane?.heightSd ?? 0, 0.0005);
  const floor = plane ? Math.abs(plane.baseRadius - cut.baseRadius) : 0;
  const ids = rows.map(({ id }) => id);
  const named = told.map(({ kind }) => kind);
  return [
    [sameSet(named, ids), `cut kinds ${ids.join(', ')}, not ${named.join(', ')}`],
    [rows.every((row) => isBase(row, sides.get(row.id), sd)), 'base sides'],
    [plane !== null, 'plane'],
    [off < 3 * heightSd, `plane within 3 sd (${(1000 * off).toFixed(1)} mm off)`],
    [floor < Math.max(6 * heightSd, 0.01), 'base radius'],
  ];
}

/** Whether a side is the one in the plane, or one that readings can't tell from it: the panel turned so
 * that it lies there differs by less than its readings do. */
function isBase({ truth, inPlane }: CutRow, side: number | undefined, sd: number): boolean {
  if (side === undefined) return false;
  const by = (inPlane - side + truth.length) % truth.length;
  return turned(truth, by).every((x, i) => Math.abs(x - (truth[i] as number)) < 3 * sd);
}

interface CutRow extends Written {
  /** Side in the plane. */
  readonly inPlane: number;
}

/** Sides of a cut panel's shortest piece, metres: below it nobody would have kept the panel. */
const SHORTEST = 0.09;

interface CutKind {
  readonly sides: number[];
  readonly inPlane: number;
  count: number;
}

interface Cut {
  readonly level: number;
  readonly whole: readonly number[];
  readonly kinds: readonly CutKind[];
  readonly baseRadius: number;
}

/** A plane that leaves no slivers and at most sixteen sorts of cut panels. */
function goodCut(shell: Shell, random: Random): Cut {
  for (let tries = 0; tries < 400; tries++) {
    const up = tries < 300 ? crownOf(shell, random) : ([0, 0, 1] as const);
    const level = shell.radius * (0.4 - 1.1 * random.uniform());
    const cut = cutOf(shell, up, level);
    if (!cut || cut.kinds.length === 0 || cut.kinds.length > 16) continue;
    if (cut.kinds.every(({ sides }) => Math.min(...sides) > SHORTEST)) return cut;
  }
  throw new Error('no plane cuts this shell without slivers');
}

function cutOf(shell: Shell, up: Vec3, level: number): Cut | null {
  const whole: number[] = [];
  const kinds = new Map<string, CutKind>();
  const base: number[] = [];
  for (let p = 0; p < placeCount(shell); p++) {
    const points = hubsOf(shell, p as PlaceId).map((hub) => pointAt(shell.hubs, hub));
    const heights = points.map((point) => dot(point, up) - level);
    if (heights.some((h) => Math.abs(h) < 1e-9)) return null;
    if (heights.every((h) => h > 0)) whole.push(p);
    if (heights.every((h) => h > 0) || heights.every((h) => h < 0)) continue;
    const { corners, inPlane } = above(points, heights);
    base.push(...[0, 1].map((i) => fromAxis(corners[(inPlane + i) % corners.length] as Vec3, up)));
    const sides = corners.map((a, i) => distance(a, corners[(i + 1) % corners.length] as Vec3));
    const start = lowestTurn(sides.map((x) => Math.round(x * 1e6)));
    const key = turned(sides, start)
      .map((x) => Math.round(x * 1e6))
      .join();
    const known = kinds.get(key);
    if (known) known.count++;
    else
      kinds.set(key, {
        sides: turned(sides, start),
        inPlane: (inPlane - start + sides.length) % sides.length,
        count: 1,
      });
  }
  const baseRadius = base.reduce((sum, r) => sum + r, 0) / base.length;
  return { level, whole, kinds: [...kinds.values()], baseRadius };
}

const fromAxis = (point: Vec3, up: Vec3): number => distance(point, scale(up, dot(point, up)));

/** The part of a panel above the plane, and its side in the plane. */
function above(points: readonly Vec3[], heights: readonly number[]) {
  const corners: Vec3[] = [];
  let inPlane = 0;
  points.forEach((point, i) => {
    const j = (i + 1) % points.length;
    const [a, b] = [heights[i] as number, heights[j] as number];
    if (a > 0) corners.push(point);
    if (a > 0 === b > 0) return;
    corners.push(add(scale(point, b / (b - a)), scale(points[j] as Vec3, a / (a - b))));
    if (a > 0) inPlane = corners.length - 1;
  });
  return { corners, inPlane: inPlane % corners.length };
}
