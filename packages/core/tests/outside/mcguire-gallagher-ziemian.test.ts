// W. McGuire, R. H. Gallagher, R. D. Ziemian, Matrix Structural Analysis, 2nd ed., Example 4.12: a
// bracket on a beam of two spans held at both ends. Millimetres, newtons. Values as used in the tests
// of a general library; not recomputed by the reference notes, whose stiff stub is here a very thick
// short member.

import { it } from 'vitest';
import type { Structure } from '../../src/frame/structure.ts';
import { beam, clamped, loadOn, rest } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

it('the bracketed beam moves and is held as printed', () => {
  const [young, shear] = [2e5, 2e5 / 2.6];
  const stub = { area: 1e6, iy: 1e10, iz: 1e10, torsion: 1e10 };
  const structure: Structure = {
    nodes: Float64Array.of(0, 0, 0, 8000, 0, 0, 13000, 0, 0, 8000, 0, 40),
    elements: [
      beam([0, 1], { area: 6000, iy: 200e6, iz: 200e6, torsion: 300e3 }, young, shear, [0, 1, 0]),
      beam([1, 2], { area: 4000, iy: 50e6, iz: 50e6, torsion: 100e3 }, young, shear, [0, 1, 0]),
      beam([3, 1], stub, young, shear, [0, 1, 0]),
    ],
    held: [clamped(0), clamped(2)],
  };
  const { moved, reactions } = rest(structure, loadOn(structure, { 3: [0, -1000, 0] }));
  checked({ got: moved[7], expected: -0.545, ratio: 2e-3 });
  checked({ got: moved[11], expected: -2.63e-5, ratio: 2e-3 });
  checked({ got: reactions[5], expected: 1783365, ratio: 1e-4 });
  checked({ got: reactions[17], expected: -1414997.8, ratio: 1e-4 });
  checked({ got: Math.abs(reactions[3]), expected: 26087, ratio: 1e-3 });
  checked({ got: Math.abs(reactions[15]), expected: 13913, ratio: 1e-3 });
});
