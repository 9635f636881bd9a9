// three.js 0.187, examples/jsm/loaders/STLLoader: a general-purpose reader of STL. The parts of an icosahedron
// that push together, read back by it, against closed forms: a panel is a frustum of the pyramid over its
// face with the centre as apex (V = h (A + A′ + √(A A′)) / 3) less three prisms, a hub a prism under a
// pentagonal pyramid with five pegs (elementary geometry, textbook).

import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { expect, test } from 'vitest';
import { meshArea, meshVolume } from '../../src/patterns/mesh.ts';
import { bedMesh, snapBeds } from '../../src/patterns/snap-beds.ts';
import { type SnapParts, snapParts } from '../../src/patterns/snap-parts.ts';
import { toStl } from '../../src/patterns/stl.ts';
import { ball } from '../patterns/fixtures.ts';
import { checked } from './data/checked.ts';

const RADIUS = 100;
const WALL = 3;
const PEG = 4;
const edge = RADIUS / Math.sin((2 * Math.PI) / 5);
const height = (Math.sqrt(3) / 12) * (3 + Math.sqrt(5)) * edge;
const sin15 = Math.sin((2 * Math.PI) / 24);

/** Area and girth of a 24-sided prism over its radius. */
const ring = { area: (24 / 2) * sin15, girth: 24 * 2 * Math.sin(Math.PI / 24) };

function partsOf(clearance: number): SnapParts {
  const made = snapParts(ball(1, 2), [], { scale: 20, wall: WALL, clearance, peg: PEG });
  if (!made.ok) throw new Error(made.reason);
  return made;
}

/** As the reader has it: every triangle with corners of its own. */
function read(mesh: Parameters<typeof toStl>[0]) {
  const bytes = toStl(mesh, 'part');
  const { array } = new STLLoader().parse(bytes.buffer as ArrayBuffer).getAttribute('position');
  const points = Float64Array.from(array);
  return { points, triangles: Int32Array.from({ length: points.length / 3 }, (_, i) => i) };
}

test('a panel has the volume and area of its frustum less its sockets', () => {
  const { parts, fit } = partsOf(0);
  const mesh = read((parts[0] as SnapParts['parts'][0]).mesh);
  const share = 1 - WALL / height;
  const face = (Math.sqrt(3) / 4) * edge ** 2;
  const holes = 3 * fit.depth * ring.area * (PEG / 2) ** 2;
  const volume = (WALL * face * (1 + share ** 2 + share)) / 3 - holes;
  // A side leans in by its distance from the middle of the face times what the face shrinks by.
  const slant = Math.hypot(WALL, (edge / (2 * Math.sqrt(3))) * (1 - share));
  const area =
    face * (1 + share ** 2) +
    (3 * edge * (1 + share) * slant) / 2 +
    3 * fit.depth * ring.girth * (PEG / 2);
  checked({ what: 'volume', got: meshVolume(mesh), expected: volume, ratio: 1e-5 });
  checked({ what: 'area', got: meshArea(mesh), expected: area, ratio: 1e-5 });
  expect(Math.abs(meshVolume(mesh) / (volume + holes) - 1)).toBeGreaterThan(1e-4);
});

test('a hub has the volume of its prism, pyramid and pegs', () => {
  const { parts, fit } = partsOf(0.2);
  const hub = parts.find(({ sort }) => sort === 'hub') as SnapParts['parts'][0];
  const mesh = read(hub.mesh);
  // An edge falls off the plane square to its axis by asin(edge / 2 R).
  const falls = edge / (2 * RADIUS);
  const across = fit.rim * Math.sqrt(1 - falls ** 2);
  const base = (5 / 2) * Math.sin((2 * Math.PI) / 5) * across ** 2;
  const straight = 0.7 * fit.depth;
  const tip = fit.depth - straight;
  const r = fit.pegRadius;
  const peg = ring.area * r ** 2 * (straight + (tip * (1 + 0.85 + 0.85 ** 2)) / 3);
  const volume = base * (1.2 + (fit.rim * falls) / 3) + 5 * peg;
  checked({ got: meshVolume(mesh), expected: volume, ratio: 1e-5 });
  expect(Math.abs(meshVolume(mesh) / (volume - peg) - 1)).toBeGreaterThan(1e-4);
});

test('a bed has the volume of all parts on it', () => {
  const { parts } = partsOf(0.2);
  const laid = snapBeds(parts, [220, 220, 250]);
  if (!laid) throw new Error('they fit');
  const got = laid.beds.reduce((sum, bed) => sum + meshVolume(read(bedMesh(parts, bed))), 0);
  const expected = parts.reduce((sum, { mesh, count }) => sum + count * meshVolume(mesh), 0);
  checked({ got, expected, ratio: 1e-5 });
  expect(
    Math.abs(got / (expected + meshVolume((parts[1] as SnapParts['parts'][0]).mesh)) - 1),
  ).toBeGreaterThan(1e-4);
});
