import { expect, test } from 'vitest';
import { flatCorner, type StarPanel, starGap } from '../../src/identify/flat-star.ts';
import { identify } from '../../src/identify/identify.ts';
import type { GrassTrial, Shape } from '../../src/identify/shape.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { kindSide } from '../../src/shell/shell.ts';
import { starsOf } from '../../src/shell/stars.ts';
import { readKinds, truthOf } from './piles.ts';

type Point = readonly [number, number];

/** The star laid panel by panel on a sheet, by where circles about two corners cross, and the distance
 * between the two far ends of the last seam: no angle is ever added up. Triangles only. */
function laidGap(panels: readonly StarPanel[]): number {
  const spoke = ({ sides, side }: StarPanel): number => sides[side] as number;
  const first: Point = [spoke(panels[0] as StarPanel), 0];
  const last = panels.reduce((from: Point, { sides, side }) => {
    const back = sides[(side + 2) % 3] as number;
    const across = sides[(side + 1) % 3] as number;
    return crossing(from, back, across);
  }, first);
  return Math.hypot(last[0] - first[0], last[1] - first[1]);
}

/** The point `r` from the origin and `s` from `from`, on its left. */
function crossing([x, y]: Point, r: number, s: number): Point {
  const d = Math.hypot(x, y);
  const along = (d * d + r * r - s * s) / (2 * d);
  const up = Math.sqrt(r * r - along * along);
  return [(along * x - up * y) / d, (along * y + up * x) / d];
}

const starsIn = ({ shell }: Pick<Shape, 'shell'>, sides: readonly (readonly number[])[]) =>
  starsOf(shell)
    .filter((star) => star.closed)
    .map(({ corners }) =>
      corners.map(
        (s): StarPanel => ({
          sides: sides[shell.kind[shell.sidePlace[s] as number] as number] as readonly number[],
          side: kindSide(shell, s),
        }),
      ),
    );

test.each([
  [2, 0],
  [3, 1],
  [4, 2],
] as const)('the gap of every star of (%i, %i) is that of panels laid one by one', (b, c) => {
  const truth = truthOf(b, c);
  const sides = truth.kinds.map((kind) => kind.sides);
  for (const star of starsIn(truth, sides)) {
    const gap = starGap(star)?.gap as number;
    expect(gap).toBeGreaterThan(0);
    expect(Math.abs(gap - laidGap(star))).toBeLessThan(1e-9);
    expect(Math.abs(gap + 1e-8 - laidGap(star))).toBeGreaterThan(1e-9);
  }
});

test('five equilateral triangles of a metre leave a sixth of a turn: a metre of gap', () => {
  const star = Array.from({ length: 5 }, () => ({ sides: [1, 1, 1], side: 0 }));
  expect(starGap(star)?.gap).toBeCloseTo(1, 12);
  expect(starGap(star, 0.02)?.gap).toBeCloseTo(0.98, 12);
});

test('six of them lie flat, and seven do not lie at all: no gap to look at', () => {
  const star = (n: number) => Array.from({ length: n }, () => ({ sides: [1, 1, 1.0001], side: 0 }));
  expect(starGap(star(7))).toBeNull();
  expect(starGap([])).toBeNull();
  expect(flatCorner([1, 1, 3], 0)).toBeNull();
});

test('how the gap goes with a side is what moving that side does', () => {
  const star: StarPanel[] = [
    { sides: [1, 1.1, 1.2], side: 0 },
    { sides: [0.9, 1, 1.05], side: 2 },
    { sides: [1, 1, 1], side: 1 },
  ];
  const laid = starGap(star);
  const step = 1e-6;
  star.forEach((panel, p) => {
    panel.sides.forEach((_, i) => {
      const moved = star.map((one, q) =>
        q === p ? { ...one, sides: one.sides.map((x, j) => (j === i ? x + step : x)) } : one,
      );
      const change = ((starGap(moved)?.gap as number) - (laid?.gap as number)) / step;
      expect(laid?.slopes[p]?.[i]).toBeCloseTo(change, 4);
    });
  });
});

const trialOf = (kinds: readonly Kind[]): { trial: GrassTrial; shape: Shape } => {
  const { trial, shapes } = identify({ kinds, groups: [] });
  return { trial: trial as GrassTrial, shape: shapes[0] as Shape };
};

const countedAs = (kinds: readonly Kind[], good: (k: number) => number): Kind[] =>
  kinds.map((kind, k) => ({ ...kind, good: good(k), counted: true }));

test('the trial is a star of the best shape, and its true gap lies within what is expected', () => {
  for (let seed = 1; seed <= 5; seed++) {
    const truth = truthOf(3, 1);
    const { trial, shape } = trialOf(readKinds(truth, 1e-3, seed));
    const ids = (star: readonly StarPanel[]) =>
      star.map(({ sides, side }) => `${truth.kinds.findIndex((k) => k.sides === sides)} ${side}`);
    const asTrial = trial.around.map(({ kind, side }) => `${Number(kind) - 1} ${side}`);
    const stars = starsIn(
      shape,
      truth.kinds.map((kind) => kind.sides),
    );
    const star = stars.find((one) => {
      const own = ids(one);
      return own.some((_, by) => [...own.slice(by), ...own.slice(0, by)].join() === asTrial.join());
    });
    expect(star).toBeDefined();
    const laid = trial.around.map(({ kind, side }) => ({
      sides: truth.kinds[Number(kind) - 1]?.sides as readonly number[],
      side,
    }));
    expect(Math.abs(trial.gap - laidGap(laid))).toBeLessThan(4 * trial.gapSd);
    expect(trial.most).toBeGreaterThan(trial.gap);
    expect(trial.least).toBeLessThan(trial.gap);
    expect(trial.words).toContain('heavy');
  }
});

test('a side that is 25 mm wrong in every panel of a kind of the star makes a gap beyond the most', () => {
  const truth = truthOf(3, 1);
  const { trial } = trialOf(readKinds(truth, 1e-3, 3));
  const gapWith = (by: number): number => {
    const panels = trial.around.map(({ kind, side }) => {
      const sides = truth.kinds[Number(kind) - 1]?.sides as readonly number[];
      const wrong = kind === trial.around[0]?.kind;
      return { sides: sides.map((x, i) => (wrong && i === 0 ? x + by : x)), side };
    });
    return laidGap(panels);
  };
  const isTold = (gap: number) => gap > trial.most || gap < (trial.least ?? 0);
  expect(isTold(gapWith(0))).toBe(false);
  expect(isTold(gapWith(0.025)) || isTold(gapWith(-0.025))).toBe(true);
});

test('only stars of panels in hand are laid: with four of each kind no star of five of one', () => {
  const kinds = readKinds(truthOf(3, 0), 5e-4, 2);
  const { trial } = trialOf(countedAs(kinds, () => 4));
  const panels = new Map<string, number>();
  for (const { kind } of trial.around) panels.set(kind, (panels.get(kind) ?? 0) + 1);
  expect(Math.max(...panels.values())).toBeLessThan(5);
  const none = identify({ kinds: countedAs(kinds, () => 1), groups: [] });
  expect(none.shapes.length).toBeGreaterThan(0);
  expect(none.trial).toBeNull();
});

test('two squares and two triangles leave a sixth of a turn too', () => {
  const [triangle, square] = [
    [0.8, 0.8, 0.8],
    [0.8, 0.8, 0.8, 0.8],
  ];
  const star = [triangle, square, triangle, square].map((sides) => ({ sides, side: 0 }));
  expect(starGap(star)?.gap).toBeCloseTo(0.8, 12);
});
