import { expect, it } from 'vitest';
import {
  barLength,
  seenFromAbove,
  stackCorners,
  walkLine,
} from '../../src/sheets/raising/yard-plan.ts';

it('draws the datum up and goes clockwise from it', () => {
  expect(seenFromAbove([5, 0])).toEqual([-0, -5]);
  // A quarter turn clockwise from the datum lies right.
  expect(seenFromAbove([0, -5])[0]).toBe(5);
});

it('lays a stack with its length along the ring', () => {
  const corners = stackCorners({ at: [8, 0], size: [2, 1, 0.5] });
  const [x, y] = [corners.map((c) => c[0]), corners.map((c) => c[1])];
  expect(Math.max(...x) - Math.min(...x)).toBeCloseTo(2, 12);
  expect(Math.max(...y) - Math.min(...y)).toBeCloseTo(1, 12);
});

it('walks round the shell the short way, never nearer than its base', () => {
  const round = { base: 3, ring: 4.5 };
  const line = walkLine([8, 0], [0.1, -2.9], round);
  expect(line[0]).toEqual(seenFromAbove([8, 0]));
  expect(Math.hypot(...(line.at(-1) ?? [0, 0]))).toBeCloseTo(3, 12);
  for (const point of line) expect(Math.hypot(...point)).toBeGreaterThan(2.999);
  // Clockwise, over the right-hand side.
  expect(line.every(([x]) => x > -1e-9)).toBe(true);
});

it('takes a round length for the scale bar', () => {
  expect([24, 19, 9, 3].map(barLength)).toEqual([5, 2, 2, 0.5]);
});
