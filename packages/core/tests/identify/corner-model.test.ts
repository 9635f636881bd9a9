import { expect, test } from 'vitest';
import { cornerModel, firstSides } from '../../src/identify/corner-model.ts';
import { identify } from '../../src/identify/identify.ts';
import { circumradius } from '../../src/sphere/cyclic.ts';
import { polygonOnSphere } from '../../src/sphere/polygon.ts';
import { kindWith } from './piles.ts';

test('kind-sides are numbered through all kinds', () => {
  expect([
    ...firstSides([
      [1, 1, 1],
      [1, 1, 1, 1],
      [1, 1, 1],
    ]),
  ]).toEqual([0, 3, 7, 10]);
  expect([...firstSides([])]).toEqual([0]);
});

test('each kind-side knows its kind and its neighbours in turning order', () => {
  const model = cornerModel(
    [
      [1, 1.1, 1.2],
      [1, 1.1, 1, 1.2],
    ],
    0.1,
  );
  expect([...(model?.kindOf ?? [])]).toEqual([0, 0, 0, 1, 1, 1, 1]);
  expect([...(model?.after ?? [])]).toEqual([1, 2, 0, 4, 5, 6, 3]);
  expect([...(model?.before ?? [])]).toEqual([2, 0, 1, 6, 3, 4, 5]);
});

test('a small move of all sides and of the radius together moves the corners as the model says', () => {
  const sides = [
    [0.8, 0.9, 1],
    [1, 1.1, 0.9, 1.2],
    [0.7, 0.8, 0.9, 0.8, 0.75],
  ];
  const kappa = 1 / 2.5 ** 2;
  const model = cornerModel(sides, kappa);
  if (!model) throw new Error('no model');
  const worst = (scale: number): number => {
    const by = model.lengths.map((_, s) => scale * Math.cos(7 * s));
    const bend = 0.3 * scale;
    const moved = sides.map((own, k) =>
      own.map((length, i) => length + (by[(model.first[k] as number) + i] as number)),
    );
    return Math.max(
      ...moved.flatMap((own, k) => {
        const polygon = polygonOnSphere(own, 1 / Math.sqrt(kappa * (1 + bend)));
        if (!polygon.ok) throw new Error('a panel left the sphere');
        return polygon.corners.map((corner, i) => {
          const c = (model.first[k] as number) + i;
          const at = model.slopeStart[c] as number;
          const told = own.reduce(
            (sum, _, j) =>
              sum +
              (model.slopes[at + j] as number) * (by[(model.first[k] as number) + j] as number),
            (model.angles[c] as number) + bend * (model.kappaSlopes[c] as number),
          );
          return Math.abs(corner - told);
        });
      }),
    );
  };
  // What is neglected is of second order: a tenth of the move leaves a hundredth of the error.
  expect(worst(1e-3)).toBeLessThan(1e-5);
  expect(worst(1e-3) / worst(1e-4)).toBeGreaterThan(80);
  expect(worst(1e-3) / worst(1e-4)).toBeLessThan(125);
});

test('a panel with no place on the sphere, or all but cut in half by it, has no model', () => {
  const sides = [1.0890419268578804, 1.1155927057835284, 1.1121895927116523];
  const widest = circumradius(sides) as number;
  for (const radius of [widest / 2, widest * (1 - 1e-12), widest, widest * (1 + 1e-9)])
    expect(cornerModel([sides], 1 / radius ** 2)).toBeNull();
  expect(cornerModel([sides], 1 / (1.001 * widest) ** 2)?.slopes.every(Number.isFinite)).toBe(true);
  expect(cornerModel([[1, 1, 2.5]], 0.01)).toBeNull();
  for (const kappa of [Number.NaN, 0, -1]) expect(cornerModel([sides], kappa)).toBeNull();
});

test('one kind that is nearly equilateral makes four, and the search ends: it once never did', () => {
  const sides = [1.1121895927116523, 1.0890419268578804, 1.1155927057835284];
  const { shapes } = identify({ kinds: [kindWith('k1', sides, 1e-3)], groups: [] });
  expect(shapes.map(({ shell }) => shell.kind.length)).toEqual([4]);
  // A tetrahedron of four equal panels is the box of its edges: R² = (a² + b² + c²) / 8.
  const exact = Math.sqrt(sides.reduce((sum, side) => sum + side ** 2, 0) / 8);
  expect(Math.abs((shapes[0]?.radius ?? 0) - exact)).toBeLessThan(1e-9);
  expect(Math.abs((shapes[0]?.radius ?? 0) - exact * (1 + 1e-8))).toBeGreaterThan(1e-9);
});
