import { describe, expect, test } from 'vitest';
import { firstSides } from '../../src/identify/corner-model.ts';
import { conditionsOf, fitNet, type NetFit, netConditions } from '../../src/identify/fit.ts';
import { layShell } from '../../src/identify/lay.ts';
import type { SideBelief } from '../../src/identify/side-belief.ts';
import { FINEST_SD, priorOf, sideBelief } from '../../src/identify/side-belief.ts';
import { chiSquareTail } from '../../src/math/statistics.ts';
import type { NetShell } from '../../src/nets/kinds.ts';
import { sideLength } from '../../src/shell/geometry.ts';
import type { PlaceId, SideId } from '../../src/shell/ids.ts';
import { partOf } from '../../src/shell/part.ts';
import { kindSide, placeAt, type Shell, sideCount } from '../../src/shell/shell.ts';
import { kindWith, RADIUS, readKinds, readSides, truthOf } from './piles.ts';

const fitOf = ({ shell }: NetShell, readings: SideBelief, start = RADIUS): NetFit => {
  const fit = fitNet(readings, conditionsOf(shell, firstSides(readings.sides)), start);
  if (!fit) throw new Error('no fit');
  return fit;
};
const exact = (truth: NetShell, sd = 1e-3): SideBelief =>
  sideBelief(
    truth.kinds.map(({ sides }, i) => kindWith(`${i}`, sides, sd)),
    0,
  );
const worstSide = (truth: NetShell, fit: NetFit): number =>
  Math.max(
    ...truth.kinds.flatMap(({ sides }, k) =>
      sides.map((side, i) => Math.abs(side - (fit.sides[k]?.[i] as number))),
    ),
  );

test('conditions are each listed once, whatever the numbering, and none of a side with itself', () => {
  const own = netConditions(
    [
      [3, 1],
      [1, 3],
      [2, 2],
      [0, 1],
    ],
    [
      [2, 0, 1],
      [1, 2, 0],
      [0, 0],
    ],
  );
  expect(own).toEqual({
    seams: [
      [0, 1],
      [1, 3],
    ],
    stars: [
      [0, 0],
      [0, 1, 2],
    ],
  });
});

test('open sides and hubs ask for nothing', () => {
  const { shell, kinds } = truthOf(3, 0);
  const first = firstSides(kinds.map(({ sides }) => sides));
  const one = partOf(shell, [0 as PlaceId]).shell;
  expect(conditionsOf(one, first)).toEqual({ seams: [], stars: [] });
  expect(conditionsOf(shell, first).stars).toHaveLength(3);
});

test.each([0.7, 0.9, 1.3, 2])('exact sides give the exact radius from %f times it', (times) => {
  const truth = truthOf(3, 1);
  const fit = fitOf(truth, exact(truth), times * RADIUS);
  expect(Math.abs(fit.radius - RADIUS)).toBeLessThan(1e-9);
  expect(worstSide(truth, fit)).toBeLessThan(1e-9);
  expect(fit.chi2).toBeLessThan(1e-9);
});

test('the fitted sides close: laid on the sphere every side has its length; read ones do not', () => {
  const truth = truthOf(4, 2);
  const readings = readSides(truth, 1e-3, 8);
  const fit = fitOf(truth, readings);
  const misfit = (shell: Shell | null, sides: readonly (readonly number[])[]): number => {
    if (!shell) return Number.POSITIVE_INFINITY;
    let worst = 0;
    for (let s = 0; s < sideCount(shell); s++) {
      const own = sides[shell.kind[placeAt(shell, s as SideId)] as number];
      const length = own?.[kindSide(shell, s as SideId)] as number;
      worst = Math.max(worst, Math.abs(sideLength(shell, s as SideId) - length));
    }
    return worst;
  };
  expect(misfit(layShell(truth.shell, fit.sides, fit.radius), fit.sides)).toBeLessThan(1e-8);
  const read = misfit(layShell(truth.shell, readings.sides, fit.radius), readings.sides);
  expect(read).toBeGreaterThan(1e-4);
});

test('a whole pile read ten times as well is ten times as sure of its radius', () => {
  const truth = truthOf(3, 1);
  const [coarse, fine] = [fitOf(truth, exact(truth, 1e-3)), fitOf(truth, exact(truth, 1e-4))];
  expect(coarse.radiusSd / fine.radiusSd).toBeCloseTo(10, 4);
  expect(coarse.radiusSd).toBeGreaterThan(0);
});

test('size does not matter: all lengths a thousand times, sides and radius a thousand times', () => {
  const truth = truthOf(3, 1);
  const readings = readSides(truth, 1e-3, 2);
  const scaled: SideBelief = {
    sides: readings.sides.map((own) => own.map((x) => 1000 * x)),
    variances: readings.variances.map((own) => own.map((v) => 1e6 * v)),
    sharedVariance: 0,
  };
  const [one, big] = [fitOf(truth, readings), fitOf(truth, scaled, 1000 * RADIUS)];
  expect(big.radius / one.radius).toBeCloseTo(1000, 8);
  expect(big.radiusSd / one.radiusSd).toBeCloseTo(1000, 5);
  expect(big.chi2).toBeCloseTo(one.chi2, 6);
});

describe('over 200 piles at 1 mm, seeds 1 to 200', () => {
  for (const [b, c] of [
    [3, 0],
    [3, 1],
    [4, 0],
  ] as const) {
    const truth = truthOf(b, c);
    const fits = Array.from({ length: 200 }, (_, i) => fitOf(truth, readSides(truth, 1e-3, i + 1)));
    const share = (of: (fit: NetFit) => boolean): number => fits.filter(of).length / 200;

    // A share of 0.95 in 200 has a standard deviation of 0.015; four of them either way.
    test(`(${b}, ${c}): the radius is within 1.96 deviations in 89 to 100 of 100, not within 1`, () => {
      const off = (fit: NetFit): number => Math.abs(fit.radius - RADIUS) / fit.radiusSd;
      const inside = share((fit) => off(fit) < 1.96);
      expect(inside).toBeGreaterThan(0.89);
      expect(inside).toBeLessThan(1);
      expect(share((fit) => off(fit) < 1)).toBeLessThan(0.83);
      expect(share((fit) => off(fit) < 1)).toBeGreaterThan(0.54);
    });

    // The star that fixes the radius counts as a condition and can't be missed: one degree less.
    test(`(${b}, ${c}): the misfit is a chi-square with a degree for each condition but one`, () => {
      const dof = (fits[0] as NetFit).conditions;
      const mean = fits.reduce((sum, { chi2 }) => sum + chi2, 0) / 200;
      expect(Math.abs(mean - dof)).toBeLessThan(4 * Math.sqrt((2 * dof) / 200));
      const tails = fits.map((fit) => chiSquareTail(fit.chi2, dof)).sort((p, q) => p - q);
      // Kolmogorov's bound for 200 at one in a thousand: 1.95 / √200.
      const worst = Math.max(...tails.map((p, i) => Math.abs(p - (i + 0.5) / 200)));
      expect(worst).toBeLessThan(1.95 / Math.sqrt(200));
    });

    test(`(${b}, ${c}): every side is nearer to the truth than its reading, as it says`, () => {
      let [fitted, told, read] = [0, 0, 0];
      fits.forEach((fit, i) => {
        const { sides } = readSides(truth, 1e-3, i + 1);
        let s = 0;
        truth.kinds.forEach((kind, k) => {
          kind.sides.forEach((side, j) => {
            fitted += ((fit.sides[k]?.[j] as number) - side) ** 2;
            read += ((sides[k]?.[j] as number) - side) ** 2;
            told += fit.variances[s++] as number;
          });
        });
      });
      expect(fitted).toBeLessThan(0.8 * read);
      expect(fitted / told).toBeGreaterThan(0.85);
      expect(fitted / told).toBeLessThan(1.15);
    });
  }
});

test('a wrong net of the same kinds fits far worse', () => {
  const truth = truthOf(3, 1);
  const readings = readSides(truth, 1e-3, 5);
  const { shell } = truth;
  const swapped = { ...shell, kind: shell.kind.map((k) => (k === 0 ? 1 : k === 1 ? 0 : k)) };
  const [right, wrong] = [fitOf(truth, readings), fitOf({ ...truth, shell: swapped }, readings)];
  expect(right.evidence).toBeGreaterThan(wrong.evidence + 100);
  expect(chiSquareTail(right.chi2, right.conditions)).toBeGreaterThan(1e-3);
  expect(chiSquareTail(wrong.chi2, wrong.conditions)).toBeLessThan(1e-9);
});

test('an error that all sides share is borne by the radius and not by the misfit', () => {
  const truth = truthOf(3, 1);
  const kinds = readKinds(truth, 2e-4, 4).map((kind) => ({
    ...kind,
    sides: kind.sides.map((side) => side - 0.005),
  }));
  const [told, kept] = [sideBelief(kinds, 0.005), sideBelief(kinds, 0)].map((readings) =>
    fitOf(truth, readings),
  ) as [NetFit, NetFit];
  expect(told.radiusSd).toBeGreaterThan(5 * kept.radiusSd);
  expect(Math.abs(told.radius - RADIUS)).toBeLessThan(4 * told.radiusSd);
  expect(Math.abs(kept.radius - RADIUS)).toBeGreaterThan(4 * kept.radiusSd);
  expect(told.chi2).toBeLessThan(kept.chi2);
});

test('the prior has each side’s own variance, and the shared one between all', () => {
  const { covariance, mean, size } = priorOf(
    sideBelief([kindWith('1', [1, 1, 1], 2e-3)], 3e-3),
    0.5,
  );
  const at = (i: number, j: number): number => covariance[i * size + j] as number;
  expect(size).toBe(4);
  expect(at(0, 0)).toBeCloseTo(13e-6, 15);
  expect(at(0, 2)).toBeCloseTo(9e-6, 15);
  expect(at(3, 3)).toBe(0.25);
  expect([at(3, 0), at(0, 3)]).toEqual([0, 0]);
  expect([...mean]).toEqual([0, 0, 0, 0]);
});

test('no reading is taken to be finer than a twentieth of a millimetre', () => {
  const [coarse, fine] = sideBelief(
    [kindWith('1', [1, 1, 1], 1e-3), kindWith('2', [1, 1, 1], 0)],
    0,
  ).variances;
  expect(coarse).toEqual([1e-6, 1e-6, 1e-6]);
  expect(fine?.[0]).toBeCloseTo(FINEST_SD ** 2, 18);
  expect(FINEST_SD).toBe(5e-5);
});

test('where a panel has no place on the sphere there is no fit', () => {
  const truth = truthOf(3, 0);
  const readings = exact(truth);
  const conditions = conditionsOf(truth.shell, firstSides(readings.sides));
  expect(fitNet(readings, conditions, 0.3)).toBeNull();
});
