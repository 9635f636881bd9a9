import type { GrownPart } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { panelsOfPart, panelsOfShell } from '../../src/drawing/shell-view/panels.ts';
import { ball } from './notation.ts';

const { shell } = ball(2);

describe('panels to be drawn', () => {
  it('a closed ball has every seam once, joined, and every hub once', () => {
    const panels = panelsOfShell(shell);
    expect(panels.kind.length).toBe(80);
    expect(panels.edges.since.length).toBe(120);
    expect([...panels.edges.joined].every((rank) => rank >= 0)).toBe(true);
    expect(panels.hubs.since.length).toBe(42);
  });

  it('a place left out leaves its three sides open and its panel out', () => {
    const panels = panelsOfShell(shell, { leftOut: new Set([5]) });
    expect(panels.kind.length).toBe(79);
    expect([...panels.edges.joined].filter((rank) => rank < 0).length).toBe(3);
    expect([...panels.place].includes(5)).toBe(false);
  });

  it('lines and hubs appear with the first panel that has them, in the order that was asked for', () => {
    const order = Array.from({ length: 80 }, (_, i) => 79 - i);
    const { place, edges, hubs } = panelsOfShell(shell, { order });
    expect([...place]).toEqual(order);
    const ascending = (ranks: Int32Array): boolean =>
      ranks.every((rank, i) => i === 0 || rank >= (ranks[i - 1] as number));
    expect(ascending(edges.since) && ascending(hubs.since)).toBe(true);
    expect([...edges.since].filter((rank) => rank === 0).length).toBe(3);
    expect([...edges.joined].every((rank, e) => rank > (edges.since[e] as number))).toBe(true);
  });

  it('normals point outwards and are of length one', () => {
    const { normals, corners, start, kind } = panelsOfShell(shell);
    kind.forEach((_, rank) => {
      const normal = normals.subarray(3 * rank, 3 * rank + 3);
      const at = 3 * (start[rank] as number);
      const out = [0, 1, 2].reduce(
        (sum, k) => sum + (normal[k] as number) * (corners[at + k] as number),
        0,
      );
      expect(out).toBeGreaterThan(0);
      expect(Math.hypot(...normal)).toBeCloseTo(1, 12);
    });
  });
});

describe('a part that the engine has grown', () => {
  /** The ball as loose panels, every corner moved by up to `gape` of a side (about 1.6 m). */
  function loose(gape: number): GrownPart {
    const { placeStart, sideHub, hubs, kind, radius } = shell;
    const corners = Float64Array.from({ length: 3 * sideHub.length }, (_, i) => {
      const hub = sideHub[Math.floor(i / 3)] as number;
      return (hubs[3 * hub + (i % 3)] as number) + gape * Math.sin(12.9898 * i);
    });
    return { radius, corners, placeStart, kind };
  }

  it('is welded where its panels gape by a hundredth of a side', () => {
    const { edges, hubs } = panelsOfPart(loose(0.015));
    expect(edges.since.length).toBe(120);
    expect(hubs.since.length).toBe(42);
  });

  it('is not welded where they gape by a tenth', () => {
    expect(panelsOfPart(loose(0.15)).hubs.since.length).toBeGreaterThan(42);
  });
});
