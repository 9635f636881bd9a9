import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../src/math/random.ts';
import { naturalCuts } from '../../src/shell/cuts.ts';
import { type FlatPlan, flatPlan } from '../../src/shell/flat-plan.ts';
import type { HubId, PlaceId, SeamId } from '../../src/shell/ids.ts';
import { crownAtHub, crownAtPlace, crownAtSeam, orientShell } from '../../src/shell/orient.ts';
import { hubCount, placeCount, type Shell } from '../../src/shell/shell.ts';
import { crownUp, cube, cutNear, domeOf, dualOf, icosahedral, octahedral } from './fixtures.ts';

const BALLS: [string, Shell][] = [
  ['icosahedron', icosahedral(1, 0).shell],
  ['two-step', icosahedral(2, 0).shell],
  ['three-step', icosahedral(3, 0).shell],
  ['(2, 1)', icosahedral(2, 1).shell],
  ['(1, 1)', icosahedral(1, 1).shell],
  ['octahedral three-step', octahedral(3, 0).shell],
  ['cube', cube().shell],
  ['dodecahedron', dualOf(icosahedral(1, 0)).shell],
];
const WAYS = BALLS.flatMap(([name, shell]): [string, string, Shell][] => [
  [name, 'hub', orientShell(shell, crownAtHub(shell, 0 as HubId))],
  [name, 'second hub', orientShell(shell, crownAtHub(shell, 7 as HubId))],
  [name, 'seam', orientShell(shell, crownAtSeam(shell, 0 as SeamId))],
  [name, 'place', orientShell(shell, crownAtPlace(shell, 0 as PlaceId))],
  [name, 'last place', orientShell(shell, crownAtPlace(shell, (placeCount(shell) - 1) as PlaceId))],
]);

type Point = [number, number];
const points = (flat: Float64Array): Point[] =>
  Array.from({ length: flat.length / 2 }, (_, i) => [flat[2 * i], flat[2 * i + 1]] as Point);
const area = (outline: readonly Point[]): number =>
  outline.reduce((sum, a, i) => {
    const b = outline[(i + 1) % outline.length] as Point;
    return sum + (a[0] * b[1] - b[0] * a[1]) / 2;
  }, 0);

/** Segments of all outlines, each once. */
function segments(plan: FlatPlan): [Point, Point][] {
  const found = new Map<string, [Point, Point]>();
  const key = (p: Point): string => p.map((x) => Math.round(x * 1e7) + 0).join();
  for (const outline of plan.outlines)
    points(outline).forEach((a, i, all) => {
      const b = all[(i + 1) % all.length] as Point;
      if (key(a) !== key(b)) found.set([key(a), key(b)].sort().join(' '), [a, b]);
    });
  return [...found.values()];
}

const turn = (a: Point, b: Point, c: Point): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

function crossings(plan: FlatPlan): number {
  const all = segments(plan);
  const eps = 1e-9;
  const apart = (x: number, y: number): boolean => (x > eps && y < -eps) || (x < -eps && y > eps);
  let count = 0;
  for (let i = 0; i < all.length; i++)
    for (let j = i + 1; j < all.length; j++) {
      const [a, b] = all[i] as [Point, Point];
      const [c, d] = all[j] as [Point, Point];
      if (apart(turn(a, b, c), turn(a, b, d)) && apart(turn(c, d, a), turn(c, d, b))) count++;
    }
  return count;
}

/** Places that are turned over, and how much their areas together miss what they should cover. */
function overlap(plan: FlatPlan, whole: number): { over: number; missed: number } {
  const areas = plan.outlines.map((outline) => area(points(outline)));
  const sum = areas.reduce((total, a) => total + a, 0);
  return { over: areas.filter((a) => !(a > 0)).length, missed: Math.abs(sum / whole - 1) };
}

describe('the flat plan', () => {
  it.each(WAYS)('of the whole %s ball with a %s as crown has no overlap', (_, __, shell) => {
    const plan = flatPlan(shell);
    expect(plan.outer).not.toBeNull();
    expect(crossings(plan)).toBe(0);
    const { over, missed } = overlap(plan, Math.PI * (Math.PI * shell.radius) ** 2);
    expect(over).toBe(0);
    expect(missed).toBeLessThan(0.01);
  });

  it.each(WAYS)('of each dome of the %s ball with a %s as crown has no overlap', (_, __, shell) => {
    for (const cut of naturalCuts(shell, { ragged: 2 })) {
      const plan = flatPlan(domeOf(shell, cut));
      expect(plan.outer).toBeNull();
      expect(crossings(plan)).toBe(0);
      expect(overlap(plan, 1).over).toBe(0);
    }
  });

  it.each(WAYS)(
    'of a %s ball fitted to a tape has no overlap with a %s as crown (seed 3)',
    (_, __, shell) => {
      const random = seededRandom(3);
      const noisy = { ...shell, hubs: shell.hubs.map((x) => x + 0.002 * random.normal()) };
      const plan = flatPlan(noisy);
      expect(crossings(plan)).toBe(0);
      expect(overlap(plan, 1).over).toBe(0);
    },
  );

  it('is checked by a count that sees two places laid over each other', () => {
    const plan = flatPlan(crownUp(icosahedral(2, 0).shell));
    const shifted = plan.outlines.map((o, p) => (p === 3 ? o.map((x) => x + 0.1) : o));
    expect(crossings({ ...plan, outlines: shifted })).toBeGreaterThan(0);
    const flipped = plan.outlines.map((o, p) => (p === 3 ? o.map((x, i) => (i % 2 ? x : -x)) : o));
    expect(overlap({ ...plan, outlines: flipped }, 1).over).toBe(1);
  });

  it('keeps the distance from the crown along the sphere', () => {
    const shell = crownUp(icosahedral(3, 1).shell);
    const dome = domeOf(shell, cutNear(shell, -0.3));
    const plan = flatPlan(dome);
    for (let h = 0; h < hubCount(dome); h++) {
      const r = Math.hypot(plan.hubs[2 * h] as number, plan.hubs[2 * h + 1] as number);
      expect(r).toBeCloseTo(Math.acos(dome.hubs[3 * h + 2] as number), 9);
    }
  });

  it('has the datum up the page, clockwise from above clockwise on paper, turned over from below', () => {
    const hubs = Float64Array.of(0, 0, 1, 1, 0, 0, 0, -1, 0);
    const shell = { ...octahedral(1, 0).shell, hubs };
    const one = { hubs: [0, 2, 1], kind: 0, turn: 0 };
    const draw = (fromBelow: boolean): number[] => {
      const sheet = flatPlan({ ...shell, ...partOfOne(hubs, one.hubs) }, { fromBelow });
      return [...sheet.hubs].map((x) => Math.round(x * 1e9) / 1e9 + 0);
    };
    const quarter = Math.round((Math.PI / 2) * 1e9) / 1e9;
    // −y lies clockwise of x seen from above: to the right when x is up.
    expect(draw(false)).toEqual([0, 0, 0, quarter, quarter, 0]);
    expect(draw(true)).toEqual([0, 0, 0, quarter, -quarter, 0]);
  });

  it('says what holds the nadir: hub, seam or place', () => {
    const { shell } = icosahedral(2, 0);
    const at = (crown: Parameters<typeof orientShell>[1]): string | undefined =>
      flatPlan(orientShell(shell, crown)).outer?.at;
    const long = [...Array(placeCount(shell)).keys()].find((p) => shell.kind[p] === 1) as PlaceId;
    expect(at(crownAtHub(shell, 0 as HubId))).toBe('hub');
    expect(at(crownAtSeam(shell, 0 as SeamId))).toBe('seam');
    expect(at(crownAtPlace(shell, long))).toBe('place');
  });

  it('puts each number inside its place', () => {
    for (const [, , shell] of WAYS) {
      const plan = flatPlan(shell);
      plan.outlines.forEach((outline, p) => {
        const at: Point = [plan.labels[2 * p] as number, plan.labels[2 * p + 1] as number];
        expect(winding(points(outline), at)).toBeCloseTo(1, 6);
      });
    }
  });

  it('draws domes that end near the equator with straight sides', () => {
    const whole = crownUp(icosahedral(4, 0).shell);
    const plan = flatPlan(domeOf(whole, cutNear(whole, 0)));
    expect(plan.outlines.every((outline) => outline.length === 6)).toBe(true);
  });
});

function partOfOne(hubs: Float64Array, place: readonly number[]): Shell {
  return {
    radius: 1,
    hubs,
    placeStart: Int32Array.of(0, 3),
    sideHub: Int32Array.from(place),
    sidePlace: Int32Array.of(0, 0, 0),
    mate: Int32Array.of(-1, -1, -1),
    seams: new Int32Array(0),
    kind: Int32Array.of(0),
    turn: Int32Array.of(0),
  };
}

/** How often an outline goes round a point. */
function winding(outline: readonly Point[], at: Point): number {
  let sum = 0;
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length] as Point;
    const [ax, ay, bx, by] = [a[0] - at[0], a[1] - at[1], b[0] - at[0], b[1] - at[1]];
    sum += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  });
  return sum / (2 * Math.PI);
}
