// The checks that hold for every table of triangulated shells: same counts, sides, panels, angles
// and stars. Each tolerance is one unit of the last printed digit.

import { describe, expect, test } from 'vitest';
import { toDegrees } from '../../../src/math/angle.ts';
import { namedNet } from '../../../src/nets/named.ts';
import { hubCount, placeCount, seamCount } from '../../../src/shell/shell.ts';
import { axialAngle, chordToArc } from '../../../src/sphere/chord.ts';
import { polygonOnSphere } from '../../../src/sphere/polygon.ts';
import { type Facts, factsOf } from './net-facts.ts';
import { eitherHand, oneHand, type TableNet } from './net-table.ts';
import { misfits, type Pair } from './pairs.ts';

const CHORD = 1e-10;
const SIDE_DEGREES = 1e-7;
const PANEL_DEGREES = 1e-6;
const AREA = 1e-9;

/** Declares the tests of a table's nets. */
export function checkNets(nets: readonly TableNet[]): void {
  describe.each(nets.map((table) => [table.name, table] as const))('%s', (_, table) => {
    const facts = factsOf(namedNet(table.spec));
    const fits = (pairs: readonly Pair[], tolerance: number): void => {
      expect(pairs.length).toBeGreaterThan(0);
      expect(misfits(pairs, tolerance)).toEqual([]);
      expect(misfits(pairs, tolerance, 10 * tolerance)).toHaveLength(pairs.length);
    };
    test('counts of hubs, seams and panels', () => {
      const counts = table.counts ?? countsFromSides(table);
      const { shell } = facts;
      expect([hubCount(shell), seamCount(shell), placeCount(shell)]).toEqual(counts);
    });
    test('seams of each side class', () => {
      const counts = facts.kinds.sideClasses.map(({ count }) => count / 2);
      expect(counts).toEqual(table.sides.map(({ count }) => count));
    });
    test('chords; one ten last digits off is refused', () => fits(chords(facts, table), CHORD));
    test('central and axial angles; ten last digits off is refused', () =>
      fits(sideAngles(facts, table), SIDE_DEGREES));
    test('panels by kind and hand', () => {
      expect(panelCounts(facts)).toEqual(tablePanelCounts(table));
    });
    test('kinds with hands as one and apart', () => {
      const rounds = facts.kinds.kinds.map((kind) => eitherHand(kind.sideClasses));
      expect([new Set(rounds).size, rounds.length]).toEqual(table.kinds);
    });
    test('angles of panels; ten last digits off is refused', () =>
      fits(panelAngles(table), PANEL_DEGREES));
    test('areas of panels; ten last digits off is refused', () => fits(areas(table), AREA));
    if (table.folds.length > 0)
      test('dihedral angles at every seam; ten last digits off is refused', () => {
        const counts = table.folds.map(({ key }) => facts.folds.get(key)?.length);
        expect(counts).toEqual(table.folds.map(({ count }) => count));
        expect(facts.folds.size).toBe(table.folds.length);
        fits(foldPairs(facts, table), PANEL_DEGREES);
      });
    if (table.stars.length > 0)
      test('stars round every hub', () => {
        const expected = new Map(table.stars.map(({ key, count }) => [key, count]));
        expect(facts.stars).toEqual(expected);
      });
  });
}

/** Hubs, seams and panels of a whole shell from its seams alone, by Euler. */
function countsFromSides(table: TableNet): number[] {
  const seams = table.sides.reduce((sum, side) => sum + side.count, 0);
  return [seams / 3 + 2, seams, (2 * seams) / 3];
}

const chords = (facts: Facts, table: TableNet): Pair[] =>
  table.sides.map(({ chord }, i) => ({
    what: `side ${i}`,
    actual: facts.kinds.sideClasses[i]?.length ?? Number.NaN,
    expected: chord,
  }));

const sideAngles = (facts: Facts, table: TableNet): Pair[] =>
  table.sides.flatMap(({ central, axial }, i) => {
    const chord = facts.kinds.sideClasses[i]?.length ?? Number.NaN;
    return [
      { what: `central ${i}`, actual: toDegrees(chordToArc(chord, 1)), expected: central },
      { what: `axial ${i}`, actual: toDegrees(axialAngle(chord, 1)), expected: axial },
    ];
  });

const panelCounts = (facts: Facts): Map<string, number> =>
  new Map(facts.kinds.kinds.map((kind) => [oneHand(kind.sideClasses), kind.count]));

function tablePanelCounts(table: TableNet): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { round, count, mirrored } of table.panels) {
    counts.set(oneHand(round), count);
    if (mirrored > 0) counts.set(oneHand([...round].reverse()), mirrored);
  }
  return counts;
}

/** The panel made from the table's own chords: ten digits of them give all printed ones here. */
function panelOf(table: TableNet, round: readonly number[]) {
  const sides = round.map((side) => table.sides[side]?.chord ?? Number.NaN);
  const polygon = polygonOnSphere(sides, 1);
  if (!polygon.ok) throw new Error(`panel ${round}: ${polygon.why.reason}`);
  return polygon;
}

const panelAngles = (table: TableNet): Pair[] =>
  table.panels.flatMap(({ round, opposite }) =>
    opposite.map((expected, i) => ({
      what: `panel ${round} opposite side ${i}`,
      actual: toDegrees(panelOf(table, round).planeCorners[(i + 2) % 3] as number),
      expected,
    })),
  );

const areas = (table: TableNet): Pair[] =>
  table.panels.map(({ round, area }) => ({
    what: `area of ${round}`,
    actual: panelOf(table, round).area,
    expected: area,
  }));

const foldPairs = (facts: Facts, table: TableNet): Pair[] =>
  table.folds.flatMap(({ key, angle }) =>
    (facts.folds.get(key) ?? []).map((actual) => ({ what: key, actual, expected: angle })),
  );
