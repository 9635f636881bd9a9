// Regular polygons, as any textbook on plane geometry has them: chord 2 r sin(k π/n), bearing of
// the k-th corner 2 π k/n; and two circles of radii a, b about points d apart, whose crossing
// stands (a² − b² + d²)/(2 d) along the line between them (law of cosines).

import { expect, test } from 'vitest';
import { polarPlan } from '../../src/ground/polar.ts';
import { tapePlan } from '../../src/ground/tape-plan.ts';
import { ring } from '../ground/bases.ts';
import { checked } from './data/checked.ts';
import { misfits } from './data/pairs.ts';

const METRES = 1e-9;

test.each([5, 10, 15, 16, 20, 30])(
  'chords, diagonals and tapes of a regular ring of %i hubs agree to 1e-9 m; ten times that is refused',
  (n) => {
    const r = 3.4;
    const plan = tapePlan(ring(n, r));
    const chord = (a: number, b: number): number =>
      2 * r * Math.sin((Math.abs(a - b) * Math.PI) / n);
    const between = (peg: unknown, hub: number): number =>
      peg === 'centre'
        ? r
        : peg === 'datum'
          ? Math.sqrt(
              r * r +
                plan.datum ** 2 -
                2 * r * plan.datum * Math.cos((2 * Math.PI * (hub - 1)) / n),
            )
          : chord(peg as number, hub);
    const tapes = plan.rounds.flatMap(({ pegs, stakes }) =>
      stakes.flatMap(({ hub, lengths }) =>
        lengths.map((actual, i) => ({
          what: `${pegs[i]} to ${hub}`,
          actual,
          expected: between(pegs[i], hub),
        })),
      ),
    );
    const checks = plan.checks.map(({ from, to, length }) => ({
      what: `${from} to ${to}`,
      actual: length,
      expected: between(from, to as number),
    }));
    const pairs = [...tapes, ...checks];
    expect(pairs.length).toBeGreaterThan(2 * n);
    expect(misfits(pairs, METRES)).toEqual([]);
    expect(misfits(pairs, METRES, 10 * METRES)).toHaveLength(pairs.length);
  },
);

test('an instrument at the centre reads 360°/n from hub to hub', () => {
  const pairs = polarPlan(ring(15, 4.1)).map(({ hub, bearing }) => ({
    what: `hub ${hub}`,
    actual: (bearing * 180) / Math.PI,
    expected: 24 * (hub - 1),
  }));
  expect(misfits(pairs, 1e-9)).toEqual([]);
  expect(misfits(pairs, 1e-9, 1e-8)).toHaveLength(15);
});

test('a stake where two tapes cross at γ is off by s √(1 + cos γ)/sin γ at worst, for γ to 90°', () => {
  // Two lines at γ, each known to s: the inverse normal matrix has the eigenvalues
  // s²/(1 ± cos γ), and √(1 + cos γ)/sin γ = 1/√(1 − cos γ). From pegs without error: the centre
  // and, as its distance counts along the line to hub 2 alone, a stake straight from the two.
  const s = 0.002;
  const plan = tapePlan(ring(12, 3), { tapeSd: s, datum: 4 });
  const first = plan.rounds.flatMap(({ pegs, stakes }) =>
    pegs.join() === 'centre,datum' ? stakes : [],
  );
  expect(first.length).toBeGreaterThan(1);
  for (const { hub, lengths, sd, crossing } of first) {
    const gamma = Math.acos(
      (lengths[0] ** 2 + lengths[1] ** 2 - 16) / (2 * lengths[0] * lengths[1]),
    );
    expect(Math.min(crossing, Math.PI - crossing)).toBeCloseTo(Math.min(gamma, Math.PI - gamma), 9);
    // The datum's own distance, s along the datum line, adds to the second tape.
    const c = (Math.cos((2 * Math.PI * (hub - 1)) / 12) * 3 - 4) / lengths[1];
    const [a, b] = [1, 1 + c * c];
    const trace = (a + b) / Math.sin(gamma) ** 2;
    const det = (a * b) / Math.sin(gamma) ** 2;
    const worst = s * Math.sqrt(trace / 2 + Math.sqrt(trace ** 2 / 4 - det));
    checked({ got: sd, expected: worst, within: 1e-9 });
    expect(Math.abs(sd - worst + 1e-8)).toBeGreaterThan(1e-9);
  }
});
