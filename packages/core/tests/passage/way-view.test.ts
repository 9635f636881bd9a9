import { namedNet, shellOfNet } from '@shellraise/core';
import { expect, it } from 'vitest';
import { outlineOf, wayView } from '../../src/passage/way-view.ts';

const net = namedNet({ solid: 'icosahedron', b: 2, c: 0, division: 'equal chords' });
const { shell } = shellOfNet(net, 2);

const boxAt = (x: number, y: number, z: number): Float64Array[] => [
  Float64Array.from(
    [-1, 1].flatMap((a) =>
      [-1, 1].flatMap((b) => [-1, 1].flatMap((c) => [x + a * 0.1, y + b * 0.2, z + c * 0.3])),
    ),
  ),
];

it('looks at the opening from outside, along the way', () => {
  const places = [...shell.kind.keys()];
  const way = [boxAt(0, 0, 0), boxAt(2, 0, 0), boxAt(4, 0, 0)];
  const view = wayView(shell, places.slice(1), [], way);
  expect(view.from).toBe('outside');
  expect(view.through).toBe(1);
  // Seen along x: 0.4 wide, 0.6 high.
  const [x, y] = [0, 1].map((k) => view.poses[1]?.[0]?.map((at) => at[k] as number) ?? []);
  expect(Math.max(...(x ?? [])) - Math.min(...(x ?? []))).toBeCloseTo(0.4, 9);
  expect(Math.max(...(y ?? [])) - Math.min(...(y ?? []))).toBeCloseTo(0.6, 9);
  // About half of the panels face it, the nearest drawn last.
  expect(view.panels.length).toBeLessThan(places.length * 0.7);
  expect(view.panels.length).toBeGreaterThan(places.length * 0.3);
  expect(view.panels.filter(({ isIn }) => !isIn).length).toBeLessThanOrEqual(1);
});

it('looks from above where it is hoisted out', () => {
  const view = wayView(shell, [], [], [boxAt(0, 0, 0), boxAt(0.2, 0, 3)]);
  expect(view.from).toBe('above');
  expect(view.panels.every(({ isIn }) => !isIn)).toBe(true);
});

it('draws the hull of points without those inside or on its sides', () => {
  const square = [
    [0, 0],
    [2, 0],
    [2, 2],
    [0, 2],
    [1, 1],
    [1, 0],
  ] as const;
  expect(outlineOf(square)).toHaveLength(4);
});
