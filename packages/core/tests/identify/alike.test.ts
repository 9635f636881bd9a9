import { expect, test } from 'vitest';
import { type Alikeness, alikeness, labelsOf } from '../../src/identify/alike.ts';
import { firstSides } from '../../src/identify/corner-model.ts';
import { truthOf } from './piles.ts';

const alike = (sides: readonly (readonly number[])[], noise: number): Alikeness =>
  alikeness(sides, firstSides(sides), noise);
const labels = (sides: readonly (readonly number[])[], noise: number): number[] => [
  ...alike(sides, noise).label,
];

test('kinds with alike sides in the same turning order are of one group, wherever they start', () => {
  const { group } = alike(
    [
      [1, 1.2, 1.4],
      [1.401, 1.001, 1.201],
      [1.4, 1.2, 1],
    ],
    0.005,
  );
  expect(group[0]).toBe(group[1]);
  expect(group[2]).not.toBe(group[0]);
});

test('alike sides of alike kinds share a label, others do not', () => {
  const own = labels(
    [
      [1, 1.2, 1.4],
      [1.401, 1.001, 1.201],
      [1.4, 1.2, 1],
    ],
    0.005,
  );
  expect(own.slice(3)).toEqual([own[2], own[0], own[1], ...own.slice(6)]);
  expect(new Set(own).size).toBe(6);
});

test('under less noise than their difference the same kinds stay apart', () => {
  const { group } = alike(
    [
      [1, 1.2, 1.4],
      [1.001, 1.2, 1.4],
    ],
    0.0005,
  );
  expect(new Set(group).size).toBe(2);
});

test('lengths in a chain, each nearer than the noise to the next, are all alike', () => {
  const { turns, group } = alike(
    [
      [1, 1.004, 1.008],
      [1.012, 1.016, 1.02],
    ],
    0.005,
  );
  expect(turns).toEqual([true, true]);
  expect(group[0]).toBe(group[1]);
});

test('a panel turns where its sides repeat: equilateral, square, rectangle, not isosceles', () => {
  const { turns } = alike(
    [
      [1, 1, 1],
      [1, 1, 1.2],
      [1, 1, 1, 1],
      [1, 1.2, 1, 1.2],
      [1, 1, 1.2, 1.2],
    ],
    1e-3,
  );
  expect(turns).toEqual([true, false, true, true, false]);
});

test('sides that a turn lays on each other share a label', () => {
  const own = labels([[1, 1.2, 1, 1.2]], 1e-3);
  expect(own).toEqual([own[0], own[1], own[0], own[1]]);
  expect(own[0]).not.toBe(own[1]);
});

test('each side of a shell has the label of the kind-side that lies on it', () => {
  const { shell, kinds } = truthOf(3, 1);
  const sides = kinds.map((kind) => kind.sides);
  const one = alike(sides, 1e-6);
  const all = labelsOf(shell, one);
  for (const mate of shell.mate) expect(mate).toBeGreaterThanOrEqual(0);
  const lengthOf = (label: number): number => {
    const own = one.label.indexOf(label);
    return sides.flat()[own] as number;
  };
  shell.mate.forEach((mate, s) => {
    const difference = lengthOf(all[s] as number) - lengthOf(all[mate] as number);
    expect(Math.abs(difference)).toBeLessThan(1e-8);
  });
});
