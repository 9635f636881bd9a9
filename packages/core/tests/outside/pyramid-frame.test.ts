// A pyramid of four frame members with shear strain: example B, load case 1, of H. P. Gavin's
// open-source frame program (Duke University; output exB.out as committed there). Millimetres,
// newtons. First order: the reference notes' own computation; the printed numbers include the
// stiffness that the pulls add, and differ in the fifth digit.

import { it } from 'vitest';
import type { Structure } from '../../src/frame/structure.ts';
import { beam, clamped, loadOn, rest, six } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

it('the pyramid frame moves as computed, near what is printed', () => {
  const section = { area: 36, iy: 492, iz: 492, torsion: 1000, shearY: 20, shearZ: 20 };
  const structure: Structure = {
    nodes: Float64Array.of(0, 0, 1000, -1200, -900, 0, 1200, -900, 0, 1200, 900, 0, -1200, 900, 0),
    elements: (
      [
        [1, 0],
        [0, 2],
        [0, 3],
        [4, 0],
      ] as const
    ).map((nodes) => beam(nodes, section, 2e5, 79300)),
    held: [1, 2, 3, 4].map(clamped),
  };
  const moved = six(rest(structure, loadOn(structure, { 0: [100, -200, -109.992] })).moved, 0);
  checked({
    got: moved.slice(0, 3),
    expected: [0.01412722, -0.05022766, -0.02237404],
    ofLargest: 2e-7,
  });
  checked({ got: moved.slice(3, 5), expected: [3.587191e-5, 8.139768e-6], ofLargest: 1e-5 });
  checked({ got: moved.slice(0, 3), expected: [0.014127, -0.050229, -0.022374], ofLargest: 5e-5 });
});
