// D. V. Hutton, Fundamentals of Finite Element Analysis, ch. 3, Example 3.3: a space truss of three
// bars of equal stiffness. Inches, pounds. Data published (a textbook companion of worked programs);
// results from the reference notes' own computation.

import { it } from 'vitest';
import { loadOn, rest, truss } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

it('Hutton’s space truss moves and carries as computed', () => {
  const cosines = [
    [0.8, 0, -0.6],
    [0.8, 0, 0.6],
    [0.8, 0.6, 0],
  ];
  const structure = truss(
    [[0, 0, 0], ...cosines.map((c) => c.map((x) => -x))],
    [
      [1, 0],
      [2, 0],
      [3, 0],
    ],
    0.01,
    3e7,
    [1, 2, 3],
  );
  const found = rest(structure, loadOn(structure, { 0: [0, -5000, 0] }));
  checked({
    got: [...found.moved.slice(0, 3)],
    expected: [0.0173611, -0.0694444, 0],
    ofLargest: 1e-6,
  });
  const forces = found.forces.map(([force]) => force);
  checked({ got: forces, expected: [4166.667, 4166.667, -8333.333], ofLargest: 1e-7 });
});
