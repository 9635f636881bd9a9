import { expect, test } from 'vitest';
import { namedTrial, randomTrial } from '../../bench/trials.ts';
import { starGap } from '../../src/identify/flat-star.ts';
import { identify } from '../../src/identify/identify.ts';
import type { GrassTrial, Identification } from '../../src/identify/shape.ts';
import type { Kind } from '../../src/pile/kind.ts';

type Point = readonly [number, number];

/** The point to the left of the way from the hub to `to` that lies `r` from the hub and `s` from `to`:
 * where two tapes meet. */
function tapesMeet(to: Point, r: number, s: number): Point {
  const d = Math.hypot(...to);
  const along = (r * r - s * s + d * d) / (2 * d);
  const off = Math.sqrt(r * r - along * along);
  return [(along * to[0] - off * to[1]) / d, (along * to[1] + off * to[0]) / d];
}

/** The gap of a star of triangles placed one after the other in the plane, by two tapes each. */
function laidGap(panels: readonly (readonly [number, number, number])[]): number {
  const start: Point = [panels[0]?.[0] as number, 0];
  let end = start;
  for (const [spoke, far, back] of panels) {
    const d = Math.hypot(...end);
    end = tapesMeet([(end[0] / d) * spoke, (end[1] / d) * spoke], back, far);
  }
  // The last spoke is as long as the first where the star closes; on the grass its end is compared
  // at the length of the first.
  const d = Math.hypot(...end);
  return Math.hypot((end[0] / d) * start[0] - start[0], (end[1] / d) * start[0] - start[1]);
}

const sidesFrom = (sides: readonly number[], from: number): [number, number, number] =>
  [0, 1, 2].map((i) => sides[(from + i) % 3]) as [number, number, number];

function starOf(trial: GrassTrial, answer: Identification, kinds: readonly Kind[]) {
  const [best] = answer.shapes;
  return trial.around.map(({ kind, side }) => {
    const k = kinds.findIndex(({ id }) => id === kind);
    return { sides: best?.fittedSides[k] as readonly number[], side };
  });
}

test('the gap is that of triangles laid out in the plane one by one, seeds 6001 to 6012', () => {
  for (let seed = 6001; seed <= 6012; seed++) {
    const { kinds, sd } = randomTrial(5e-4, seed);
    const answer = identify({ kinds, groups: [], readingSd: sd });
    const { trial } = answer;
    if (!trial) throw new Error(`seed ${seed}: no star`);
    const laid = laidGap(
      starOf(trial, answer, kinds).map(({ sides, side }) => sidesFrom(sides, side)),
    );
    expect(Math.abs(trial.gap - laid), `seed ${seed}`).toBeLessThan(1e-6);
    expect(trial.most).toBeGreaterThan(trial.gap);
    expect(trial.words).toMatch(/two people/);
  }
});

test('the star is one that the net has room for and every panel of it is in hand', () => {
  const { kinds } = namedTrial(4, 0, 5e-4, true, 7);
  const few = kinds.map((kind, i) => (i === 0 ? { ...kind, good: 0, repair: 0 } : kind));
  const { trial } = identify({ kinds: few, groups: [] });
  expect(trial?.around.length).toBeGreaterThan(2);
  expect(trial?.around.every(({ kind }) => kind !== few[0]?.id)).toBe(true);
});

test('six equal-sided triangles leave no gap, and five leave the sixth one’s side', () => {
  const panel = { sides: [1, 1, 1], side: 0 };
  expect(starGap(Array.from({ length: 5 }, () => panel))?.gap).toBeCloseTo(1, 9);
  expect(starGap(Array.from({ length: 7 }, () => panel))).toBeNull();
});

test('the gap’s slopes are those of stars with one side longer', () => {
  const panels = [
    { sides: [0.8, 0.7, 0.75], side: 0 },
    { sides: [0.75, 0.7, 0.8], side: 0 },
    { sides: [0.8, 0.72, 0.8], side: 0 },
  ];
  const found = starGap(panels);
  panels.forEach((panel, p) => {
    panel.sides.forEach((_, i) => {
      const moved = panels.map((own, q) =>
        q === p ? { ...own, sides: own.sides.map((x, j) => (j === i ? x + 1e-5 : x)) } : own,
      );
      const by = ((starGap(moved)?.gap ?? 0) - (found?.gap ?? 0)) / 1e-5;
      expect(found?.slopes[p]?.[i]).toBeCloseTo(by, 3);
    });
  });
});
