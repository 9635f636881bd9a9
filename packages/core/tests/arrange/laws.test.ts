// What holds for every shell that any net can stand as, whatever its panels' number of sides.

import { describe, expect, test } from 'vitest';
import { arrangements, standingShell } from '../../src/arrange/arrangements.ts';
import type { WayUp } from '../../src/arrange/ways-up.ts';
import { seededRandom } from '../../src/math/random.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet, mixedNetNames } from '../../src/nets/mixed.ts';
import { movedNet } from '../../src/nets/moved.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Net } from '../../src/nets/net.ts';
import { checkShell } from '../../src/shell/check.ts';
import { flatPlan } from '../../src/shell/flat-plan.ts';
import { isInside, type Point } from '../../src/shell/inside.ts';
import { placeCount, sideCount } from '../../src/shell/shell.ts';
import { takeoffSection } from '../../src/takeoff/schema.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { pileKinds } from '../shell/fixtures.ts';

const SEED = 3;
const named = (solid: 'icosahedron' | 'octahedron' | 'tetrahedron', b: number, c: number): Net =>
  namedNet({ solid, b, c, division: 'equal chords' });
const moved = (b: number, c: number): Net =>
  movedNet(named('icosahedron', b, c), {
    solid: 'icosahedron',
    fraction: 0.06,
    random: seededRandom(SEED),
  });
const nets: readonly (readonly [string, Net])[] = [
  ...mixedNetNames.map((name) => [name, mixedNet(name)] as const),
  ['octahedral (4, 0)', named('octahedron', 4, 0)],
  ['octahedral (2, 1)', named('octahedron', 2, 1)],
  ['tetrahedral (5, 0)', named('tetrahedron', 5, 0)],
  ['tetrahedral (2, 2)', named('tetrahedron', 2, 2)],
  [`moved (3, 0), seed ${SEED}`, moved(3, 0)],
  [`moved (2, 1), seed ${SEED}`, moved(2, 1)],
];

const pointsOf = (flat: Float64Array): Point[] =>
  Array.from(
    { length: flat.length / 2 },
    (_, i): Point => [flat[2 * i] as number, flat[2 * i + 1] as number],
  );

/** Area of an outline, positive where it runs anticlockwise. */
const areaOf = (outline: readonly Point[]): number =>
  outline.reduce((area, [u, v], i) => {
    const next = outline[(i + 1) % outline.length] as Point;
    return area + (u * next[1] - v * next[0]) / 2;
  }, 0);

describe.each(nets)('%s', (_, net) => {
  const whole = shellOfNet(net, 2.7);
  const kinds = pileKinds(whole);
  const list = arrangements(whole.shell, kinds);
  const standing = list.arrangements.map((found) => ({
    found,
    ...standingShell(whole.shell, list.waysUp[found.wayUp] as WayUp, found.cut),
  }));

  test('is a sound ball that stands in at least one way', () => {
    expect(checkShell(whole.shell)).toMatchObject({ sound: true, eulerCharacteristic: 2 });
    expect(list.status).toBe('arranged');
    expect(standing.length).toBeGreaterThan(0);
  });

  test('every shell that stands is sound, in one piece, with one rim', () => {
    for (const { shell, found } of standing) {
      const verdict = checkShell(shell);
      expect(verdict).toMatchObject({ sound: true, eulerCharacteristic: 1, rims: 1 });
      expect(sideCount(shell) - shell.seams.length).toBe(found.openSides);
      const lowest = Math.min(...shell.hubs.filter((_, i) => i % 3 === 2));
      expect(lowest).toBeCloseTo(found.cut.baseZ.min, 1);
    }
  });

  test('every place stands in one course under a number of its own, and needs one panel', () => {
    for (const { shell, courses, found } of standing) {
      expect(new Set(courses.numbers).size).toBe(placeCount(shell));
      expect(courses.counts).toEqual(found.courses);
      expect(found.stock.reduce((sum, row) => sum + row.need, 0)).toBe(placeCount(shell));
    }
  });

  test('seams and hubs are those of the closed form, and bolts are holes times seams', () => {
    const sides = kinds.flatMap((kind) =>
      kind.sides.map((sideLength) => ({ sideLength, holes: 7, thread: 'M8', length: 0.025 })),
    );
    const settings = takeoffSection.parse({ sides, plates: null });
    for (const { shell, found } of standing) {
      const { account, lines, complete, seams } = takeOff(shell, kinds, [], settings);
      const bolted = (sideCount(shell) - found.openSides) / 2;
      expect(account).toMatchObject({ agrees: true, rims: 1, pieces: 1 });
      expect(account.seams.counted).toBe(bolted);
      if (account.allTriangles)
        expect(account.hubs.counted).toBe(1 + (placeCount(shell) + found.openSides) / 2);
      expect(seams.reduce((sum, size) => sum + size.seams, 0)).toBe(bolted);
      expect(complete).toBe(true);
      expect(lines.find((line) => line.item === 'bolt')?.quantity).toBe(7 * bolted);
    }
  });

  test('the flat plan draws every place the right way round, and its number inside it alone', () => {
    for (const { shell } of standing) {
      const plan = flatPlan(shell);
      const outlines = plan.outlines.map(pointsOf);
      expect(plan.outer).toBeNull();
      expect(Math.min(...outlines.map(areaOf))).toBeGreaterThan(0);
      for (let p = 0; p < placeCount(shell); p++) {
        const at = pointsOf(plan.labels)[p] as Point;
        const around = outlines.flatMap((outline, q) => (isInside(outline, at) ? [q] : []));
        expect(around).toEqual([p]);
      }
    }
  });
});
