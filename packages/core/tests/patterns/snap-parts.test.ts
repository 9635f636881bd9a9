import { describe, expect, it } from 'vitest';
import {
  add,
  cross,
  dot,
  normalize,
  pointAt,
  scale as scaled,
  subtract,
  type Vec3,
} from '../../src/math/vector.ts';
import { shellOfNet } from '../../src/nets/kinds.ts';
import { mixedNet } from '../../src/nets/mixed.ts';
import { type FlatPanel, framedPanel } from '../../src/patterns/flat-panel.ts';
import { convexOverlap, type GridPoint, onGrid } from '../../src/patterns/grid.ts';
import { meshBox, meshFaults, meshVolume } from '../../src/patterns/mesh.ts';
import { bedMesh, bedOver, placedMesh, snapBeds } from '../../src/patterns/snap-beds.ts';
import type { SnapOptions } from '../../src/patterns/snap-fit.ts';
import { hubHeight, hubRays } from '../../src/patterns/snap-hub.ts';
import { type SnapFaces, snapFaces } from '../../src/patterns/snap-panel.ts';
import { type SnapPart, type SnapParts, snapParts } from '../../src/patterns/snap-parts.ts';
import type { FacePoint } from '../../src/patterns/solid-faces.ts';
import { dihedralAngles } from '../../src/shell/angles.ts';
import { endHubAt, hubPoint, placeNormal } from '../../src/shell/geometry.ts';
import type { HubId, PlaceId, SideId } from '../../src/shell/ids.ts';
import { hubsOf, type Shell } from '../../src/shell/shell.ts';
import { fansOf, type Star } from '../../src/shell/stars.ts';
import { ball, dome } from './fixtures.ts';

const options: SnapOptions = { scale: 20, wall: 3, clearance: 0.2, peg: 4 };
const partsOf = (shell: Shell, more: Partial<SnapOptions> = {}): SnapParts => {
  const made = snapParts(shell, [], { ...options, ...more });
  if (!made.ok) throw new Error(made.reason);
  return made;
};

describe('the parts of a snap model', () => {
  it.each([
    ['an icosahedron', ball(1), 40, []],
    ['a dome', dome(3), 15, []],
    ['a dome with a door that touches another in a hub', dome(4), 10, [100, 101, 107, 60]],
    ['hexagons and pentagons', shellOfNet(mixedNet('truncated icosahedron'), 2.7).shell, 20, []],
  ])('of %s are closed, oriented, manifold and lie flat', (_, shell, scale, leftOut) => {
    const { parts } = partsOf(shell, { scale, leftOut });
    for (const { mesh } of parts) {
      expect(meshFaults(mesh)).toEqual({ edges: 0, points: 0, flat: 0 });
      expect(meshVolume(mesh)).toBeGreaterThan(0);
      expect(meshBox(mesh).least[2]).toBeCloseTo(0, 9);
    }
    const count = (sort: SnapPart['sort']): number =>
      parts.filter((part) => part.sort === sort).reduce((sum, part) => sum + part.count, 0);
    expect(count('panel')).toBe(shell.kind.length - leftOut.length);
    expect(count('hub')).toBeGreaterThanOrEqual(shell.hubs.length / 3 - 1);
  });

  it('are one for each kind and each class of hub', () => {
    const told = partsOf(ball(2), { scale: 15 }).parts.map(({ name, count }) => [name, count]);
    expect(told).toEqual([
      ['panel 1', 60],
      ['panel 2', 20],
      ['hub 1', 12],
      ['hub 2', 30],
    ]);
  });

  it('meet: the bevels of two panels and the fold between them make a half turn', () => {
    const shell = dome(3);
    const { parts } = partsOf(shell, { scale: 15 });
    const dihedrals = dihedralAngles(shell);
    const bevels = new Map(
      parts.filter(({ sort }) => sort === 'panel').map((part) => [part.at[0], bevelsOf(part)]),
    );
    let seen = 0;
    for (let m = 0; m < shell.seams.length / 2; m++) {
      const [a, b] = [0, 1].map((i) => bevelAt(shell, bevels, shell.seams[2 * m + i] as number));
      const off = (a as number) + (b as number) + (dihedrals[m] as number) - Math.PI;
      expect(Math.abs(off)).toBeLessThan(1e-9);
      expect(Math.abs(off + 1e-8)).toBeGreaterThan(1e-9);
      seen++;
    }
    expect(seen).toBeGreaterThan(100);
  });

  it('lets every peg stand in the middle of its socket, square to the panel', () => {
    const shell = dome(3);
    const scale = 15;
    const { parts, fit } = partsOf(shell, { scale });
    let pegs = 0;
    for (const { sort, at, mesh } of parts) {
      if (sort === 'panel') continue;
      const hub = at[0] as number;
      const star = fansOf(shell)[hub]?.[0] as Star;
      const { rays } = hubRays(shell, star);
      const z = normalize(hubPoint(shell, hub as HubId));
      const ends = endHubAt(shell, star.corners[0] as SideId);
      const way = normalize(subtract(hubPoint(shell, ends), hubPoint(shell, hub as HubId)));
      const y = normalize(cross(z, way));
      const x = cross(y, z);
      const top = hubHeight({ rays, closed: star.closed }, fit);
      const world = (p: Vec3): Vec3 => {
        const up = p[2] - top + (shell.radius * 1000) / scale - fit.sink;
        return [0, 1, 2].map(
          (i) => p[0] * (x[i] as number) + p[1] * (y[i] as number) + up * (z[i] as number),
        ) as unknown as Vec3;
      };
      star.corners.forEach((side, k) => {
        const place = shell.sidePlace[side] as PlaceId;
        const corner = side - (shell.placeStart[place] as number);
        const { sockets } = snapFaces(framedPanel(shell, place, 1000 / scale), fit) as SnapFaces;
        // After the rim above and below, apex and foot come three rings a peg.
        const from = 2 * rays.length + 2 + 72 * k;
        for (const ring of [0, 2]) {
          const points = Array.from({ length: 24 }, (_, j) =>
            pointAt(mesh.points, from + 24 * ring + j),
          );
          const middle = points.reduce<Vec3>((sum, p) => add(sum, scaled(p, 1 / 24)), [0, 0, 0]);
          const [u, v] = inPanel(shell, place, world(middle), 1000 / scale);
          const [s, t] = sockets[corner] as FacePoint;
          expect(Math.hypot(u - s, v - t)).toBeLessThan(1e-9);
        }
        pegs++;
      });
    }
    expect(pegs).toBeGreaterThan(20);
  });

  it('refuses walls, pegs and clearances that are none, and tells where pegs have no room', () => {
    for (const [more, told] of [
      [{ wall: 1.5 }, /^wall: 1.5 mm, expected 1.6 mm or more/],
      [{ wall: 200 }, /^wall: 200 mm, expected less than [\d.]+ mm/],
      [{ clearance: -0.1 }, /^clearance: -0.1 mm, expected from 0/],
      [{ peg: 0 }, /^peg: 0 mm, expected more than 0/],
    ] as const)
      expect(() => snapParts(ball(1), [], { ...options, ...more })).toThrow(told);
    expect(snapParts(ball(4), [], { ...options, scale: 60 })).toMatchObject({
      ok: false,
      reason: 'no room for pegs',
    });
  });
});

describe('the beds of a snap model', () => {
  const { parts } = partsOf(dome(3), { scale: 15 });
  const bed = [220, 220, 250] as const;
  const laid = snapBeds(parts, bed);
  if (!laid) throw new Error('they fit');

  it('hold every part as often as it counts, within the bed, closed and apart', () => {
    const counts = parts.map((_, i) => laid.beds.flat().filter(({ part }) => part === i).length);
    expect(counts).toEqual(parts.map(({ count }) => count));
    for (const one of laid.beds) {
      const mesh = bedMesh(parts, one);
      const { least, most } = meshBox(mesh);
      expect(Math.min(...least)).toBeGreaterThan(-1e-9);
      expect(most.every((x, i) => x <= (bed[i] as number))).toBe(true);
      expect(meshFaults(mesh)).toEqual({ edges: 0, points: 0, flat: 0 });
      const shapes = one.map((at) =>
        (parts[at.part] as SnapPart).cover.map(
          (shape) =>
            placedMesh(
              {
                points: Float64Array.from(shape.flatMap(([x, y]) => [x, y, 0])),
                triangles: new Int32Array(),
              },
              at,
            ).points,
        ),
      );
      const grid = shapes.map((part) =>
        part.map((points) =>
          Array.from(
            { length: points.length / 3 },
            (_, i): GridPoint =>
              onGrid((points[3 * i] as number) * 1000, (points[3 * i + 1] as number) * 1000),
          ),
        ),
      );
      grid.forEach((a, i) => {
        for (const b of grid.slice(0, i))
          expect(a.some((p) => b.some((q) => convexOverlap(p, q)))).toBe(false);
        expect(a.some((p) => convexOverlap(p, p))).toBe(true);
      });
    }
  });

  it('say by how much a bed is too small, and that many times smaller fits', () => {
    const small = [60, 60, 60] as const;
    expect(snapBeds(parts, small)).toBe(null);
    const over = bedOver(parts, small);
    expect(over).toBeGreaterThan(1);
    const slim = partsOf(dome(3), { scale: 15 * over, peg: 2 });
    expect(snapBeds(slim.parts, small)).not.toBe(null);
  });
});

/** Side → the tilt of its edge from square, read off the solid: how the outer corners lie over the inner. */
function bevelsOf({ mesh, cover }: SnapPart): number[] {
  const n = (cover[0] as FlatPanel).length;
  const outer = Array.from({ length: n }, (_, i) => pointAt(mesh.points, i));
  const inner = Array.from({ length: n }, (_, i) => pointAt(mesh.points, n + i));
  return outer.map((p, i) => {
    const q = outer[(i + 1) % n] as Vec3;
    // Seen from the bed: outward of a side is to the left of its way, y being turned over.
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]);
    const low = inner[i] as Vec3;
    const inward = ((q[1] - p[1]) * (low[0] - p[0]) - (q[0] - p[0]) * (low[1] - p[1])) / length;
    return Math.atan2(inward, low[2] - p[2]);
  });
}

/** The bevel at a side, by the panel of its kind. */
function bevelAt(
  shell: Shell,
  bevels: ReadonlyMap<number | undefined, number[]>,
  side: number,
): number {
  const place = shell.sidePlace[side] as number;
  const kind = shell.kind[place] as number;
  const first = shell.kind.indexOf(kind);
  const own = bevels.get(first) as number[];
  const n = own.length;
  const at = side - (shell.placeStart[place] as number) + (shell.turn[place] as number);
  return own[(at - (shell.turn[first] as number) + n) % n] as number;
}

/** A point in the axes of a place's panel, as `framedPanel` has them. */
function inPanel(shell: Shell, place: PlaceId, point: Vec3, unit: number): FacePoint {
  const [from, to] = hubsOf(shell, place).map((hub) => hubPoint(shell, hub)) as [Vec3, Vec3];
  const right = normalize(subtract(to, from));
  const up = cross(placeNormal(shell, place), right);
  const way = subtract(point, scaled(from, unit));
  return [dot(way, right), dot(way, up)];
}
