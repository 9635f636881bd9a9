import { describe, expect, test } from 'vitest';
import { caseTotals } from '../../src/loads/stage-totals.ts';
import { pressureForces, sphereOverturning, totalsOf, windTotals } from '../../src/loads/totals.ts';
import { stageWind, windDirections, windModel } from '../../src/loads/wind-cases.ts';
import { seededRandom } from '../../src/math/random.ts';
import { makeShell, type Shell } from '../../src/shell/shell.ts';
import { all, dome, placesWhere } from './shells.ts';

const modelOf = (shell: Shell, directions = windDirections(7)) =>
  windModel(shell, {
    form: { radius: shell.radius, baseZ: -0.5 * shell.radius },
    code: 'worst of all',
    law: 'worst of all',
    directions,
  });
const shell = dome(4, 3, -0.5);
const model = modelOf(shell);
const stages = {
  whole: all(shell),
  ring: placesWhere(shell, (_x, _y, z) => z < 0.2),
  back: placesWhere(shell, (x) => x < 0.1),
};

/** The shell turned about its axis. */
function turned(of: Shell, angle: number): Shell {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const hubs = of.hubs.slice();
  for (let h = 0; h < hubs.length; h += 3) {
    hubs[h] = (of.hubs[h] as number) * c - (of.hubs[h + 1] as number) * s;
    hubs[h + 1] = (of.hubs[h] as number) * s + (of.hubs[h + 1] as number) * c;
  }
  return remade(of, of.radius, hubs);
}

function remade(of: Shell, radius: number, hubs: Float64Array): Shell {
  const places = all(of).map((p) => ({
    hubs: [...of.sideHub.slice(of.placeStart[p], of.placeStart[p + 1])],
    kind: of.kind[p] as number,
    turn: of.turn[p] as number,
  }));
  return makeShell({ radius, hubs, places });
}

describe.each(Object.entries(stages))('totals of the stage: %s', (_name, placed) => {
  const { cases } = stageWind(model, placed);

  test('are those of the forces on its panels, added up one by one', () => {
    for (const found of cases) {
      const forces = pressureForces(model.faces, placed, found.coefficient, 250);
      const slow = windTotals(totalsOf(model.faces, forces, [0, 0, -1.5]), found.windFrom);
      const quick = caseTotals(model, placed, found);
      for (const key of ['drag', 'side', 'lift', 'overturning'] as const)
        expect(250 * quick[key]).toBeCloseTo(slow[key], 6);
    }
  });

  test('turn with shell and wind together', () => {
    const angle = 0.831;
    const other = modelOf(
      turned(shell, angle),
      model.question.directions.map((d) => d + angle),
    );
    const again = stageWind(other, placed).cases;
    expect(again.map(({ name }) => name)).toEqual(cases.map(({ name }) => name));
    cases.forEach((found, i) => {
      const [a, b] = [caseTotals(model, placed, found), caseTotals(other, placed, again[i]!)];
      for (const key of ['drag', 'side', 'lift', 'overturning'] as const)
        expect(b[key]).toBeCloseTo(a[key], 7);
    });
  });

  test('do not depend on the order of its places, seed 11', () => {
    const again = stageWind(model, seededRandom(11).shuffle(placed)).cases;
    cases.forEach((found, i) => {
      expect(again[i]?.name).toBe(found.name);
      const [a, b] = [found, again[i]!].map((c) => caseTotals(model, placed, c));
      expect(b?.drag).toBeCloseTo(a?.drag as number, 9);
      expect(b?.lift).toBeCloseTo(a?.lift as number, 9);
    });
  });

  test.each([0.05, 20])('grow with the square of a size %d times as large', (factor) => {
    const other = modelOf(
      remade(
        shell,
        3 * factor,
        shell.hubs.map((x) => x * factor),
      ),
    );
    const again = stageWind(other, placed).cases;
    cases.forEach((found, i) => {
      const [a, b] = [caseTotals(model, placed, found), caseTotals(other, placed, again[i]!)];
      expect(b.drag / factor ** 2).toBeCloseTo(a.drag, 6);
      expect(b.overturning / factor ** 3).toBeCloseTo(a.overturning, 6);
    });
  });
});

test('a sphere’s pressures tip it by drag × height of its centre, whatever the law', () => {
  for (const found of stageWind(model, stages.whole).cases) {
    const { drag, overturning } = caseTotals(model, stages.whole, found);
    expect(Math.abs(overturning - sphereOverturning(drag, -1.5))).toBeLessThan(0.005 * drag * 3);
  }
});
