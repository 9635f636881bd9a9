import { expect, it } from 'vitest';
import { type CutPoint, cutParts, offsetPolygon } from '../../src/patterns/cut-parts.ts';
import { cutSheets } from '../../src/patterns/cut-sheets.ts';
import { convexOverlap, type GridPoint } from '../../src/patterns/grid.ts';
import { dome, numbersOf } from './fixtures.ts';

const shell = dome(3);
const options = { scale: 20, thickness: 3, kerf: 0.2, joint: 'butt' } as const;
const grid = (points: readonly CutPoint[]): GridPoint[] =>
  points.map(([x, y]) => [Math.round(x * 1000), Math.round(y * 1000)]);

it('lays every part on a sheet, none on another, and tells the yield', () => {
  const parts = cutParts(shell, numbersOf(shell), options);
  const laid = cutSheets(parts, { width: 600, height: 400, gap: 2 });
  if (!laid) throw new Error('they fit');
  let count = 0;
  for (const { lines, width, height } of laid.sheets) {
    const shapes = lines.map(({ points }) => grid(points));
    count += shapes.length;
    shapes.forEach((a, i) => {
      for (const [x, y] of a)
        expect(x >= 0 && x <= width * 1e3 && y >= 0 && y <= height * 1e3).toBe(true);
      const wide = offsetPolygon(a, [900, 900, 900]).map(
        ([x, y]): GridPoint => [Math.round(x), Math.round(y)],
      );
      for (let j = 0; j < i; j++) expect(convexOverlap(wide, shapes[j] as GridPoint[])).toBe(false);
      // A part on a copy of itself is found out.
      expect(convexOverlap(wide, a)).toBe(true);
    });
  }
  expect(count).toBe(parts.length);
  expect(laid.yield).toBeGreaterThan(0.5);
});

it('refuses a sheet thicker than a panel bears, and one too small for a part', () => {
  expect(() => cutParts(shell, numbersOf(shell), { ...options, thickness: 200 })).toThrow(
    /a sheet of 200 mm leaves no room on panel/,
  );
  const parts = cutParts(shell, numbersOf(shell), options);
  expect(cutSheets(parts, { width: 30, height: 30, gap: 2 })).toBe(null);
});
