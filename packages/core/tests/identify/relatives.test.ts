// The identification against plain search of every net at exact sides (brute-force.ts), which
// supposes no rotation. The counts are also those of the design: 2V two, 4V four, octahedral 2V three.

import { expect, test } from 'vitest';
import { alikeness, labelsOf } from '../../src/identify/alike.ts';
import { type Candidate, candidatesFor } from '../../src/identify/candidates.ts';
import { firstSides } from '../../src/identify/corner-model.ts';
import { identify } from '../../src/identify/identify.ts';
import { netCode } from '../../src/identify/net-code.ts';
import { relativesOf } from '../../src/identify/relatives.ts';
import { type NetShell, shellOfNet } from '../../src/nets/kinds.ts';
import { type MixedNetName, mixedNet } from '../../src/nets/mixed.ts';
import type { Shell } from '../../src/shell/shell.ts';
import { allNets } from './brute-force.ts';
import { RADIUS, readKinds, readSides, truthOf } from './piles.ts';

/** Labels by exact length, and the code of a shell under them. */
function exactly({ kinds }: NetShell): {
  sides: readonly (readonly number[])[];
  labels: (shell: Shell) => Int32Array;
  code: (shell: Shell) => string;
} {
  const sides = kinds.map((kind) => kind.sides);
  const alike = alikeness(sides, firstSides(sides), 1e-6);
  const labels = (shell: Shell): Int32Array => labelsOf(shell, alike);
  return { sides, labels, code: (shell) => netCode(shell, labels(shell)).code };
}

/** Codes of all nets by plain search, the panel with the most sides first. */
function searched(truth: NetShell): string[] {
  const { sides, labels, code } = exactly(truth);
  return [...allNets(sides, RADIUS, labels).values()].map(code).sort();
}

/** Codes of the shapes that the identification lists near the radius, at 0.2 mm. */
function identified(truth: NetShell): string[] {
  const { code } = exactly(truth);
  const { shapes } = identify({ kinds: readKinds(truth, 2e-4, 3), groups: [] });
  const near = shapes.filter(({ radius }) => Math.abs(radius - RADIUS) < 0.01);
  return near.map(({ shell }) => code(shell)).sort();
}

test.each([
  [2, 0, 'icosahedron', 2],
  [3, 0, 'icosahedron', 1],
  [2, 1, 'icosahedron', 1],
  [2, 2, 'icosahedron', 1],
  [4, 0, 'icosahedron', 4],
  [2, 0, 'octahedron', 3],
  [3, 0, 'octahedron', 1],
  [2, 1, 'octahedron', 1],
  [4, 0, 'octahedron', 4],
  [3, 0, 'tetrahedron', 1],
] as const)('(%i, %i) of the %s: plain search and identification find the same %i', (...row) => {
  const [b, c, solid, count] = row;
  const truth = truthOf(b, c, solid);
  const all = searched(truth);
  expect(all).toHaveLength(count);
  expect(new Set(all).size).toBe(count);
  expect(identified(truth)).toEqual(all);
});

test.each([
  ['cuboctahedron', 2],
  ['icosidodecahedron', 2],
  ['rhombicosidodecahedron', 5],
  ['truncated octahedron', 1],
  ['truncated icosahedron', 1],
] as readonly (readonly [MixedNetName, number])[])(
  'the panels of the %s close into the same %i nets of its radius by plain search',
  (name, count) => {
    const truth = shellOfNet(mixedNet(name), RADIUS);
    const all = searched(truth);
    expect(all).toHaveLength(count);
    expect(identified(truth)).toEqual(all);
  },
);

test('plain search caps the faces of an octahedron in 23 − 2 ways: 2-colourings of them by Pólya', () => {
  // (2, 0) of the tetrahedron: its big panels make an octahedron, on any face of which three small
  // ones may stand; all capped or none leaves a kind out.
  expect(searched(truthOf(2, 0, 'tetrahedron'))).toHaveLength(21);
});

test('a net is among its own relatives, and all of them close at its radius', () => {
  const truth = truthOf(4, 0);
  const readings = readSides(truth, 5e-4, 2);
  const { nets } = candidatesFor(readings, () => true);
  const [net] = [...nets].sort((a, b) => b.fit.evidence - a.fit.evidence);
  if (!net) throw new Error('nothing found');
  const { code, sides } = exactly(truth);
  const labels = alikeness(sides, firstSides(sides), 1e-6).label;
  const relatives: Candidate[] = [];
  const complete = relativesOf(
    net,
    1e-3,
    labels,
    () => true,
    (one) => relatives.push(one) > 0,
  );
  expect(complete).toBe(true);
  expect(new Set(relatives.map(({ shell }) => code(shell))).size).toBe(4);
  expect(relatives.map(({ shell }) => code(shell))).toContain(code(truth.shell));
  for (const { fit } of relatives) expect(Math.abs(fit.radius - RADIUS)).toBeLessThan(0.01);
});

test('a search of relatives that is told to stop finds none', () => {
  const readings = readSides(truthOf(2, 0), 5e-4, 2);
  const [net] = candidatesFor(readings, () => true).nets;
  if (!net) throw new Error('nothing found');
  const labels = readings.sides.flat().map((_, s) => s);
  const none = () => {
    throw new Error('a net');
  };
  expect(relativesOf(net, 1e-3, labels, () => false, none)).toBe(false);
});

test('a search of relatives ends with the first that is enough', () => {
  const [net] = candidatesFor(readSides(truthOf(4, 0), 5e-4, 2), () => true).nets;
  if (!net) throw new Error('nothing found');
  const { sides } = exactly(truthOf(4, 0));
  const labels = alikeness(sides, firstSides(sides), 1e-6).label;
  let given = 0;
  expect(
    relativesOf(
      net,
      1e-3,
      labels,
      () => true,
      () => ++given < 2,
    ),
  ).toBe(false);
  expect(given).toBe(2);
});

test.each([
  [2, 0, 2],
  [4, 0, 4],
  [6, 0, 2],
  [3, 3, 3],
] as const)(
  'under tape noise too all twins of (%i, %i) are listed: all %i, at 0.5, 1 and 1.5 mm, seeds 1 to 6',
  (b, c, count) => {
    const truth = truthOf(b, c);
    const sides = truth.kinds.map((kind) => kind.sides);
    const exact = identify({ kinds: readKinds(truth, 1e-4, 1), groups: [] }).shapes;
    expect(exact).toHaveLength(count);
    for (const sd of [5e-4, 1e-3, 1.5e-3])
      for (let seed = 1; seed <= 6; seed++) {
        // Kinds nearer than the noise may stand for one another, as the judge of the trials has it.
        const alike = alikeness(sides, firstSides(sides), 2.5 * sd);
        const code = (shell: Shell): string => netCode(shell, labelsOf(shell, alike)).code;
        const { shapes } = identify({ kinds: readKinds(truth, sd, seed), groups: [] });
        const listed = new Set(shapes.map(({ shell }) => code(shell)));
        const twins = new Set(exact.map(({ shell }) => code(shell)));
        expect(twins.size).toBe(count);
        for (const twin of twins) expect(listed, `${sd} m, seed ${seed}`).toContain(twin);
      }
  },
);
