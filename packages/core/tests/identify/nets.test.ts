import { Vector3 } from 'three';
import { ConvexHull } from 'three/examples/jsm/math/ConvexHull.js';
import { expect, test } from 'vitest';
import { namedTrial, trialNets } from '../../bench/trials.ts';
import { alikeness, labelsOf } from '../../src/identify/alike.ts';
import { firstSides } from '../../src/identify/corner-model.ts';
import { conditionsOf, fitNet } from '../../src/identify/fit.ts';
import { solidFolds } from '../../src/identify/fold-starts.ts';
import { foldNets } from '../../src/identify/folding.ts';
import { identify } from '../../src/identify/identify.ts';
import { nameNet } from '../../src/identify/name-net.ts';
import { netCode } from '../../src/identify/net-code.ts';
import { sideBelief } from '../../src/identify/side-belief.ts';
import { seededRandom } from '../../src/math/random.ts';
import { divisions } from '../../src/nets/division.ts';
import { type NetShell, netShell, shellOfNet } from '../../src/nets/kinds.ts';
import { movedNet } from '../../src/nets/moved.ts';
import { namedNet } from '../../src/nets/named.ts';
import type { Kind } from '../../src/pile/kind.ts';
import { lowestCode } from '../../src/shell/canonical.ts';
import { checkShell } from '../../src/shell/check.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { makeShell, type Shell } from '../../src/shell/shell.ts';

const kindsOf = (truth: NetShell, sd: number, seed: number): Kind[] => {
  const random = seededRandom(seed);
  return truth.kinds.map(({ sides }, i) => ({
    id: `${i + 1}`,
    marks: [],
    sides: sides.map((side) => side + sd * random.normal()),
    sideSds: sides.map(() => sd),
    hand: null,
    good: 0,
    repair: 0,
    scrap: 0,
    counted: false,
    mass: null,
  }));
};

test('every trial net folds up, unfolds and is the net it was, at a tenth of a millimetre', () => {
  for (const [b, c] of trialNets) {
    const truth = netShell({ solid: 'icosahedron', b, c, division: 'equal chords' }, 2.7);
    const readings = sideBelief(kindsOf(truth, 1e-4, 1), 0);
    const { nets, complete } = foldNets(readings, solidFolds[0] as never, {
      maxTries: 20000,
      spareKinds: 0,
      radius: null,
      periods: readings.sides.map((own) => own.length),
      labels: readings.sides.flat().map((_, s) => s),
      onTry: () => true,
    });
    expect(complete).toBe(true);
    const sides = truth.kinds.map((kind) => kind.sides);
    const alike = alikeness(sides, firstSides(sides), 1e-6);
    const code = (shell: Shell): string => netCode(shell, labelsOf(shell, alike)).code;
    const same = nets.find(({ shell }) => code(shell) === code(truth.shell));
    expect(same, `(${b}, ${c})`).toBeDefined();
    expect(checkShell(same?.shell as Shell)).toMatchObject({ sound: true, closed: true });
  }
});

test('nets with no rotation at all close: hulls of 10, 16 and 24 scattered points, seed 5', () => {
  const random = seededRandom(5);
  for (const count of [10, 16, 24]) {
    const truth = shellOfNet(scatteredNet(count, random), 2.7);
    const kinds = kindsOf(truth, 1e-3, count);
    const { shapes } = identify({ kinds, groups: [] });
    expect(shapes[0]?.shell.kind.length).toBe(2 * count - 4);
    expect(Math.abs((shapes[0]?.radius ?? 0) - 2.7)).toBeLessThan(0.005);
    const sides = truth.kinds.map((kind) => kind.sides);
    const alike = alikeness(sides, firstSides(sides), 1e-6);
    const code = (shell: Shell): string => netCode(shell, labelsOf(shell, alike)).code;
    expect(code(shapes[0]?.shell as Shell)).toBe(code(truth.shell));
  }
});

/** Points pushed apart on the unit sphere, and the hull over them by a general-purpose library. */
function scatteredNet(
  count: number,
  random: ReturnType<typeof seededRandom>,
): ReturnType<typeof namedNet> {
  const draw = (): Vector3 =>
    new Vector3(random.normal(), random.normal(), random.normal()).normalize();
  const points = Array.from({ length: count }, draw);
  for (let round = 0; round < 60; round++)
    for (const p of points) {
      const push = new Vector3();
      for (const q of points)
        if (q !== p) {
          const apart = p.clone().sub(q);
          push.add(apart.multiplyScalar(1 / Math.max(1e-3, apart.length() ** 3)));
        }
      p.add(push.multiplyScalar(0.3 / count)).normalize();
    }
  const hull = new ConvexHull().setFromPoints(points);
  const places = hull.faces.map(({ edge }) =>
    [edge.tail(), edge.head(), edge.next.head()].map((v) => points.indexOf(v?.point as Vector3)),
  );
  return { hubs: Float64Array.from(points.flatMap((p) => [p.x, p.y, p.z])), places };
}

test('the fast code of a net agrees with reading it from every side', () => {
  const { shell } = netShell({ solid: 'icosahedron', b: 2, c: 1, division: 'equal chords' }, 1);
  const labels = shell.kind.length ? Array.from(shell.sideHub, () => 0) : [];
  const slow = (one: Shell): string =>
    lowestCode(
      one,
      labels,
      Array.from(one.sideHub, (_, s) => s as SideId),
    ).code.join();
  const mixed = renumbered(shell, 9);
  const other = netShell({ solid: 'icosahedron', b: 1, c: 2, division: 'equal chords' }, 1).shell;
  expect(netCode(mixed, labels).code).toBe(netCode(shell, labels).code);
  expect(slow(mixed)).toBe(slow(shell));
  expect(netCode(other, labels).code).not.toBe(netCode(shell, labels).code);
  expect(slow(other)).not.toBe(slow(shell));
});

function renumbered(shell: Shell, seed: number): Shell {
  const random = seededRandom(seed);
  const order = random.shuffle(Array.from({ length: shell.kind.length }, (_, p) => p));
  const places = order.map((p) => ({
    hubs: Array.from(shell.sideHub.slice(shell.placeStart[p], shell.placeStart[p + 1])),
    kind: shell.kind[p] as number,
    turn: shell.turn[p] as number,
  }));
  return makeShell({ radius: shell.radius, hubs: shell.hubs, places });
}

test('the classes of a net are the orbits of its rotations: 60 of each side', () => {
  const { shell } = netShell({ solid: 'icosahedron', b: 3, c: 1, division: 'equal chords' }, 1);
  const labels = Array.from(shell.sideHub, () => 0);
  const { leader } = netCode(shell, labels);
  expect(new Set(leader).size).toBe(shell.sideHub.length / 60);
});

test('named nets of every class are named, divisions a tape cannot tell apart together', () => {
  for (const [b, c] of [
    [2, 0],
    [5, 0],
    [2, 2],
    [3, 3],
    [2, 1],
    [1, 2],
    [4, 2],
  ] as const) {
    const { shell } = netShell({ solid: 'icosahedron', b, c, division: 'equal chords' }, 2.7);
    expect(nameNet(shell, 3e-4)?.subdivision).toMatchObject({ solid: 'icosahedron', b, c });
  }
  for (const division of divisions.slice(1)) {
    const { shell } = netShell({ solid: 'icosahedron', b: 5, c: 0, division }, 2.7);
    expect(nameNet(shell, 3e-4)?.subdivision.division).toBe(
      'equal arcs or equal arcs by great circles',
    );
    expect(nameNet(shell, 1e-6)?.subdivision.division).toBe(division);
  }
});

test('a net moved off its rule has no name', () => {
  const net = namedNet({ solid: 'icosahedron', b: 4, c: 0, division: 'equal chords' });
  const moved = movedNet(net, { solid: 'icosahedron', fraction: 0.05, random: seededRandom(1) });
  expect(nameNet(shellOfNet(moved, 2.7).shell, 3e-4)).toBeNull();
});

test('the fitted radius is within 1.96 deviations in 88 to 99 of 100 piles, seeds 1 to 100', () => {
  let inside = 0;
  for (let seed = 1; seed <= 100; seed++) {
    const { kinds } = namedTrial(3, 1, 1e-3, false, seed);
    const truth = netShell({ solid: 'icosahedron', b: 3, c: 1, division: 'equal chords' }, 2.7);
    const own = kindsOf(truth, 1e-3, seed);
    expect(kinds).toHaveLength(own.length);
    const readings = sideBelief(own, 0);
    const fit = fitNet(readings, conditionsOf(truth.shell, firstSides(readings.sides)), 3);
    if (!fit) throw new Error(`seed ${seed} does not fit`);
    if (Math.abs(fit.radius - 2.7) < 1.96 * fit.radiusSd) inside++;
  }
  expect(inside).toBeGreaterThanOrEqual(88);
  expect(inside).toBeLessThanOrEqual(99);
});
