// A. Bedford and W. Fowler, Engineering Mechanics: Statics, 4th ed., Problem 6.64: a space truss of
// four joints off the wall. Metres, kilonewtons. Printed answers as read in the examples of a general
// library; further digits from the reference notes' own computation.

import { it } from 'vitest';
import { loadOn, rest, truss } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

it('the space truss of Bedford and Fowler carries the printed forces', () => {
  const structure = truss(
    [
      [1.1, -0.4, 0],
      [1, 0, 0],
      [0, 0, 0.6],
      [0, 0, -0.4],
      [0, 0.8, 0],
    ],
    [
      [0, 1],
      [0, 2],
      [0, 3],
      [1, 2],
      [1, 3],
      [1, 4],
    ],
    1e-3,
    2e8,
    [2, 3, 4],
  );
  const forces = rest(structure, loadOn(structure, { 0: [10, 60, 20] })).forces.map(([f]) => f);
  const own = [-72.1543, -13.1529, 43.2926, 32.6533, 45.2354, -112.0547];
  checked({ got: forces, expected: own, ofLargest: 1e-6 });
  checked({ got: forces.slice(3), expected: [32.7, 45.2, -112.1], ofLargest: 5e-4 });
});
