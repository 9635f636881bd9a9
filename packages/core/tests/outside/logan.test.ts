// D. L. Logan, A First Course in the Finite Element Method, 4th ed.: space truss of Example 3.8 (the
// book's answers from memory; it rounds direction cosines, so the digits held to are the reference
// notes' own), space frames of Example 5.8 and Problem 5.58 (printed answers as read in the examples
// of a general library, confirmed by the notes' own computation). Inches, pounds or kips.

import { describe, expect, it } from 'vitest';
import type { Structure } from '../../src/frame/structure.ts';
import { beam, clamped, heldIn, loadOn, off, rest, six, truss } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

describe('the space truss of Example 3.8', () => {
  const structure = truss(
    [
      [72, 0, 0],
      [0, 36, 0],
      [0, 36, 72],
      [0, 0, -48],
    ],
    [
      [0, 1],
      [0, 2],
      [0, 3],
    ],
    [0.302, 0.729, 0.187],
    1.2e6,
    [1, 2, 3, heldIn(0, 'y')],
  );
  const found = rest(structure, loadOn(structure, { 0: [0, 0, -1000] }));
  const stress = found.forces.map(([force], b) => force / [0.302, 0.729, 0.187][b]);

  it('moves and is stressed as the notes computed', () => {
    expect(off([found.moved[0], found.moved[2]], [-0.071114, -0.266239])).toBeLessThan(2e-6);
    checked({ got: stress, expected: [-948.191, 1445.368, -2868.543], ofLargest: 2e-7 });
    expect(found.reactions[1]).toBeCloseTo(-223.163, 3);
  });

  it('is within one per cent of the printed answers, which round on the way', () => {
    expect(off([found.moved[0], found.moved[2]], [-0.072, -0.264])).toBeLessThan(0.01);
    checked({ got: stress, expected: [-945, 1440, -2850], ofLargest: 0.01 });
  });
});

describe('the space frame of Example 5.8', () => {
  const section = { area: 10, iy: 100, iz: 100, torsion: 50 };
  const structure: Structure = {
    nodes: Float64Array.of(0, 0, 0, -100, 0, 0, 0, 0, -100, 0, -100, 0),
    elements: [
      beam([1, 0], section, 30000, 10000),
      beam([2, 0], section, 30000, 10000, [0, 1, 0]),
      beam([3, 0], section, 30000, 10000),
    ],
    held: [clamped(1), clamped(2), clamped(3)],
  };
  const found = rest(structure, loadOn(structure, { 0: [0, -50, 0, -1000, 0, 0] }));

  it('moves as printed, and as the notes computed to 6 digits', () => {
    const printed = [7.098e-5, -0.014, -0.002352, -0.003996, 1.78e-5, -0.0001033];
    const own = [7.098258e-5, -0.01399513, -0.002351889, -0.00399609, 1.780069e-5, -0.0001033429];
    six(found.moved, 0).forEach((x, k) => {
      checked({ got: x, expected: printed[k], ratio: 5e-4 });
      checked({ got: x, expected: own[k], ratio: 1e-6 });
    });
  });
});

describe('the bent frame of Problem 5.58', () => {
  const section = { area: 100, iy: 200, iz: 1000, torsion: 100 };
  const structure: Structure = {
    nodes: Float64Array.of(0, 0, 0, 120, 0, 0, 120, 0, -120, 120, -240, -120),
    elements: [
      beam([0, 1], section, 30000, 10000, [0, 1, 0]),
      beam([1, 2], section, 30000, 10000, [0, 1, 0]),
      beam([2, 3], section, 30000, 10000, [1, 0, 0]),
    ],
    held: [clamped(0), clamped(3)],
  };
  const found = rest(structure, loadOn(structure, { 1: [0, -5, 0, -1200, 0, 0], 2: [0, 0, 40] }));

  it('moves as the notes computed, and within 2 % of the printed digits', () => {
    checked({ got: found.moved[7], expected: -0.0622318, ratio: 5e-6 });
    checked({ got: found.moved[14], expected: 1.8217618, ratio: 1e-6 });
    checked({ got: found.moved[7], expected: -0.063, ratio: 0.02 });
    checked({ got: found.moved[14], expected: 1.825, ratio: 0.002 });
  });
});
