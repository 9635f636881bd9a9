// R. Levy and W. R. Spillers, Analysis of Geometrically Nonlinear Structures, 2nd ed., Kluwer 2003:
// the plane three-bar truss of p. 32 and the star dome of 24 bars (sect. 2.4.2; the dome of Y. Hangai
// and S. Kawamata 1972/73). Inches and pounds as printed. Data and printed answers as read in the
// examples of two general finite-element libraries; confirmed by the reference notes' own
// computation. Bar forces of the dome: the notes' own.

import { describe, expect, it } from 'vitest';
import { starDome } from '../frame/star-dome.ts';
import { heldIn, loadOn, off, rest, six, truss } from '../frame/trusses.ts';
import { checked } from './data/checked.ts';

describe('the three-bar truss', () => {
  const points = [
    [10, 20],
    [0, 20],
    [0, 10],
    [10, 0],
  ];
  const bars = [
    [0, 1],
    [0, 2],
    [0, 3],
  ] as const;
  const structure = truss(points, bars, 0.657, 3e7, [1, 2, 3, heldIn(0, 'z')]);
  const found = rest(structure, loadOn(structure, { 0: [-10000, -5000] }));

  it('moves as printed, to 8 digits', () => {
    const wanted = [-0.0033325938, -0.001591621];
    checked({ got: six(found.moved, 0).slice(0, 2), expected: wanted, ofLargest: 2e-8 });
    expect(
      off(
        six(found.moved, 0).map((x) => x * (1 + 2e-7)),
        wanted,
      ),
    ).toBeGreaterThan(2e-8);
  });

  it('carries the printed forces', () => {
    const forces = found.forces.map(([force]) => force);
    checked({ got: forces, expected: [-6568.5425, -4852.8137, -1568.5425], ofLargest: 1e-8 });
  });
});

describe('the star dome', () => {
  const dome = starDome();
  const found = rest(dome, loadOn(dome, { 0: [0, 0, -220.46] }));

  it('sinks at the crown by 0.20641184 in, to 8 digits', () => {
    checked({ got: found.moved[2], expected: -0.20641184, ratio: 2e-8 });
    expect(Math.abs((found.moved[2] * (1 + 2e-7)) / -0.20641184 - 1)).toBeGreaterThan(2e-8);
  });

  it('carries the forces of the notes', () => {
    const force = (a: number, b: number): number =>
      found.forces[
        dome.elements.findIndex(({ nodes }) => nodes[0] === a - 1 && nodes[1] === b - 1)
      ][0];
    checked({ got: [force(1, 2), force(1, 4)], expected: [-460.7626, -460.7557], ofLargest: 2e-7 });
    checked({ got: [force(6, 12), force(2, 3)], expected: [-93.3966, 351.1128], ofLargest: 3e-7 });
  });

  it('rests on the ground with the whole load', () => {
    let up = 0;
    for (let node = 7; node < 13; node++) up += found.reactions[6 * node + 2];
    expect(up).toBeCloseTo(220.46, 9);
    expect(found.leftOver).toBeLessThan(1e-12);
  });
});
