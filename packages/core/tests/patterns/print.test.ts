import { strFromU8, unzipSync } from 'fflate';
import { STLLoader } from 'three/examples/jsm/loaders/STLLoader.js';
import { describe, expect, it } from 'vitest';
import { toGlb } from '../../src/patterns/glb.ts';
import { type Mesh, meshArea, meshBox, meshFaults, meshVolume } from '../../src/patterns/mesh.ts';
import { PERSON, personMesh } from '../../src/patterns/person-mesh.ts';
import { shellMesh } from '../../src/patterns/shell-mesh.ts';
import { toStl } from '../../src/patterns/stl.ts';
import { toThreeMf } from '../../src/patterns/three-mf.ts';
import { ball, dome } from './fixtures.ts';

const whole = { edges: 0, points: 0, flat: 0 };

/** The icosahedron of circumradius 1: its edge, volume, area and distance of a face (closed forms). */
const edge = 1 / Math.sin((2 * Math.PI) / 5);
const solid = {
  volume: (5 / 12) * (3 + Math.sqrt(5)) * edge ** 3,
  area: 5 * Math.sqrt(3) * edge ** 2,
  face: (Math.sqrt(3) / 12) * (3 + Math.sqrt(5)) * edge,
};

describe('the shell as a solid', () => {
  it('has the volume and area of an icosahedron less a smaller one', () => {
    const mesh = shellMesh(ball(1, 2), { scale: 20, wall: 2 });
    const k = 1 - 2 / (100 * solid.face);
    expect(meshVolume(mesh) / (solid.volume * 1e6 * (1 - k ** 3))).toBeCloseTo(1, 9);
    expect(meshArea(mesh) / (solid.area * 1e4 * (1 + k ** 2))).toBeCloseTo(1, 9);
    // A wall a hundredth thicker is another volume.
    const other = shellMesh(ball(1, 2), { scale: 20, wall: 2.02 });
    expect(meshVolume(other) / meshVolume(mesh)).toBeGreaterThan(1.009);
  });

  it.each([
    ['a ball', ball(2), []],
    ['a dome', dome(3), []],
    ['a dome with a door', dome(3), [3, 4, 9]],
    ['a dome with two holes that touch in a hub', dome(4), [100, 101, 107, 60]],
  ])('is closed, oriented and manifold for %s', (_, shell, leftOut) => {
    expect(meshFaults(shellMesh(shell, { scale: 20, wall: 1.6, leftOut }))).toEqual(whole);
  });

  it('is found out where a triangle is missing or turned', () => {
    const mesh = shellMesh(ball(1), { scale: 20, wall: 2 });
    const less: Mesh = { ...mesh, triangles: mesh.triangles.slice(3) };
    expect(meshFaults(less).edges).toBeGreaterThan(0);
    const [a, b, c, ...rest] = mesh.triangles as unknown as number[];
    const turned = { ...mesh, triangles: Int32Array.from([b, a, c, ...rest] as number[]) };
    expect(meshFaults(turned).edges).toBeGreaterThan(0);
  });

  it('stands on a flat foot where the base ring is flat', () => {
    const mesh = shellMesh(dome(2), { scale: 20, wall: 2 });
    const low = meshBox(mesh).least[2];
    const foot = Array.from(mesh.points).filter((z, i) => i % 3 === 2 && z < low + 1e-6).length;
    expect(foot).toBe(20);
  });

  it('refuses a wall as thick as the shell is deep', () => {
    expect(() => shellMesh(ball(1, 2), { scale: 20, wall: 90 })).toThrow(/a wall of 90 mm/);
  });
});

describe('the person', () => {
  it('is closed, and as tall as asked for', () => {
    const mesh = personMesh((PERSON * 1000) / 20);
    expect(meshFaults(mesh)).toEqual(whole);
    expect(meshVolume(mesh)).toBeGreaterThan(0);
    expect(meshBox(mesh).most[2]).toBeCloseTo(87.5, 9);
  });
});

describe('the files of a solid', () => {
  const mesh = shellMesh(dome(3), { scale: 20, wall: 1.6 });

  it('are the same each time', () => {
    for (const make of [
      () => toStl(mesh, 'shell'),
      () => toThreeMf([{ name: 'shell', mesh }], 'Shell'),
      () => toGlb([{ name: 'shell', mesh }], 0.02, 'Shell'),
    ])
      expect(make()).toEqual(make());
  });

  it('hold the same solid when an independent reader opens the STL', () => {
    const bytes = toStl(mesh, 'solid ünnamed');
    const position = new STLLoader().parse(bytes.buffer as ArrayBuffer).getAttribute('position');
    const points = Float64Array.from(position.array);
    const read = { points, triangles: Int32Array.from({ length: points.length / 3 }, (_, i) => i) };
    expect(position.count).toBe(mesh.triangles.length);
    expect(meshVolume(read) / meshVolume(mesh)).toBeCloseTo(1, 5);
    expect(meshArea(read) / meshArea(mesh)).toBeCloseTo(1, 5);
  });

  it('hold the same closed solid in the 3MF', () => {
    const files = unzipSync(toThreeMf([{ name: 'a <shell>', mesh }], 'T & Q'));
    const model = strFromU8(files['3D/3dmodel.model'] as Uint8Array);
    const numbers = (tag: string): number[] =>
      [...model.matchAll(new RegExp(`<${tag} ([^/]*)/>`, 'g'))].flatMap(([, list]) =>
        [...(list as string).matchAll(/"([^"]*)"/g)].map(([, value]) => Number(value)),
      );
    const read = {
      points: Float64Array.from(numbers('vertex')),
      triangles: Int32Array.from(numbers('triangle')),
    };
    expect(meshFaults(read)).toEqual(whole);
    expect(meshVolume(read) / meshVolume(mesh)).toBeCloseTo(1, 5);
    expect(model).toContain('name="a &lt;shell&gt;"');
    expect(Object.keys(files)).toEqual(['[Content_Types].xml', '_rels/.rels', '3D/3dmodel.model']);
  });
});
