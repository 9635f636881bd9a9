import { hatchNamed, hatchNames, type Point } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { hatchMarks } from '../../src/drawing/hatch-lines.ts';

const square: readonly Point[] = [
  [10, 10],
  [30, 10],
  [30, 30],
  [10, 30],
];
const triangle: readonly Point[] = [
  [3, 40],
  [31, 44],
  [12, 7],
];

/** Ends of the lines, in pairs. */
const endsOf = (lines: string): Point[] =>
  [...lines.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m): Point => [Number(m[1]), Number(m[2])]);

/** How far outside of the outline a point lies, whichever way round it runs. */
function outside(outline: readonly Point[], [x, y]: Point): number {
  const offs = outline.map((a, i) => {
    const b = outline[(i + 1) % outline.length] as Point;
    return (
      ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) /
      Math.hypot(b[0] - a[0], b[1] - a[1])
    );
  });
  return Math.min(Math.max(...offs), -Math.min(...offs));
}

describe('a hatch drawn line by line', () => {
  it('draws something in every hatch, all of it within the panel', () => {
    for (const name of hatchNames)
      for (const outline of [square, triangle]) {
        const { lines, dots } = hatchMarks(name, outline);
        expect(lines + dots, name).not.toBe('');
        for (const end of endsOf(lines)) expect(outside(outline, end), name).toBeLessThan(0.02);
      }
  });

  it('draws as many level lines as tiles fit, from edge to edge', () => {
    const ends = endsOf(hatchMarks('level', square).lines);
    const { tile } = hatchNamed('level');
    expect(ends.length / 2).toBeGreaterThanOrEqual(Math.floor(20 / tile));
    expect(ends.length / 2).toBeLessThanOrEqual(Math.ceil(20 / tile) + 1);
    for (const [x] of ends) expect([10, 30]).toContain(x);
  });

  it('crosses a grid both ways and turns the other hatches as the pattern does', () => {
    const level = endsOf(hatchMarks('level', square).lines).length;
    expect(endsOf(hatchMarks('grid', square).lines).length).toBeGreaterThan(level);
    const [a, b] = endsOf(hatchMarks('slant-right', square).lines).slice(0, 2) as [Point, Point];
    // y runs down the page: a line that leans right rises to the right.
    expect((b[1] - a[1]) / (b[0] - a[0])).toBeLessThan(0);
  });

  it('begins dashes at whole tiles, so that neighbours run on', () => {
    const { lines, dash } = hatchMarks('level-dashed', square);
    const { tile, drawn } = hatchNamed('level-dashed');
    expect(dash?.[0]).toBeCloseTo(tile * drawn, 9);
    const starts = endsOf(lines).filter((_, i) => i % 2 === 0);
    for (const [x] of starts) expect(Math.abs(x / tile - Math.round(x / tile))).toBeLessThan(0.02);
  });

  it('puts dots inside alone, rings as rings', () => {
    expect(hatchMarks('rings', triangle).rings).toBe(true);
    const { dots } = hatchMarks('dots', triangle);
    const { dots: inTile } = hatchNamed('dots');
    for (const match of dots.matchAll(/M(-?[\d.]+) (-?[\d.]+)a/g)) {
      const centre: Point = [Number(match[1]) + (inTile[0]?.r ?? 0), Number(match[2])];
      expect(outside(triangle, centre)).toBeLessThan(0.02);
    }
  });
});
