import { flatItems, type PathItem } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { panelsOfShell } from '../../src/drawing/shell-view/panels.ts';
import { firstView, outsidePose, roomOf } from '../../src/drawing/shell-view/pose.ts';
import { facesEye, stillItems } from '../../src/drawing/shell-view/still.ts';
import { ball } from './notation.ts';

const { shell } = ball(2);
const fillOf = () => ({ tint: null, hatch: null }) as const;
const paths = (panels: ReturnType<typeof panelsOfShell>, shown = Infinity): PathItem[] => {
  const pose = outsidePose(firstView, roomOf(panels), 1);
  const items = stillItems(panels, pose, { width: 100, height: 100, fillOf, shown });
  return flatItems(items).filter((item) => item.type === 'path');
};

describe('the drawing that stands still', () => {
  it('draws every panel that is there as a closed outline on the sheet', () => {
    const faces = paths(panelsOfShell(shell)).filter(({ closed }) => closed);
    expect(faces.length).toBe(80);
    for (const [x, y] of faces.flatMap(({ points }) => points)) {
      expect(x >= 0 && x <= 100 && y >= 0 && y <= 100).toBe(true);
    }
    expect(paths(panelsOfShell(shell), 7).filter(({ closed }) => closed).length).toBe(7);
  });

  it('covers what lies behind: panels that face the eye come last and are never see-through', () => {
    const panels = panelsOfShell(shell);
    const pose = outsidePose(firstView, roomOf(panels), 1);
    const facing = [...panels.kind.keys()].filter((rank) => facesEye(panels, rank, pose)).length;
    const faces = paths(panels).filter(({ closed }) => closed);
    const weights = faces.map(({ stroke }) => stroke?.weight);
    expect(weights.slice(-facing).every((weight) => weight === 'thin')).toBe(true);
    expect(weights.slice(0, -facing).every((weight) => weight === 'hair')).toBe(true);
    expect(faces.every(({ fill }) => typeof fill?.tint === 'string')).toBe(true);
  });

  it('draws the outline of a ball as one ring, and open sides bold', () => {
    const lines = paths(panelsOfShell(shell)).filter(({ closed }) => !closed);
    const ends = new Map<string, number>();
    for (const { points } of lines)
      for (const point of points) {
        const key = point.map((x) => x.toFixed(6)).join();
        ends.set(key, (ends.get(key) ?? 0) + 1);
      }
    expect(lines.length).toBeGreaterThan(5);
    expect([...ends.values()].every((count) => count === 2)).toBe(true);
    const open = paths(panelsOfShell(shell, { leftOut: new Set([0]) }));
    expect(open.filter(({ stroke }) => stroke?.weight === 'bold').length).toBe(3);
  });
});
