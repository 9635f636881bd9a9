import { describe, expect, it } from 'vitest';
import type { Vec3 } from '../../src/math/vector.ts';
import { bodyOf } from '../../src/passage/body.ts';
import { shapeOfStl } from '../../src/passage/round-body.ts';
import { readStl } from '../../src/passage/stl.ts';

type Facet = readonly [Vec3, Vec3, Vec3];

/** A box from 0 to its sizes, facets anticlockwise from outside. */
function box([a, b, c]: Vec3): Facet[] {
  const p = (i: number): Vec3 => [i & 1 ? a : 0, i & 2 ? b : 0, i & 4 ? c : 0];
  const quads = [
    [0, 2, 3, 1],
    [4, 5, 7, 6],
    [0, 1, 5, 4],
    [2, 6, 7, 3],
    [0, 4, 6, 2],
    [1, 3, 7, 5],
  ];
  return quads.flatMap(([i, j, k, l]): Facet[] => [
    [p(i as number), p(j as number), p(k as number)],
    [p(i as number), p(k as number), p(l as number)],
  ]);
}

const ascii = (facets: readonly Facet[]): Uint8Array =>
  new TextEncoder().encode(
    `solid such\n${facets
      .map(
        (facet) =>
          `facet normal 0 0 0\nouter loop\n${facet.map((p) => `vertex ${p.join(' ')}`).join('\n')}\nendloop\nendfacet`,
      )
      .join('\n')}\nendsolid such\n`,
  );

function binary(facets: readonly Facet[], head = 'solid of a program'): Uint8Array {
  const bytes = new Uint8Array(84 + 50 * facets.length);
  bytes.set(new TextEncoder().encode(head));
  const data = new DataView(bytes.buffer);
  data.setUint32(80, facets.length, true);
  facets.forEach((facet, f) => {
    facet.flat().forEach((x, k) => {
      data.setFloat32(84 + 50 * f + 12 + 4 * k, x, true);
    });
  });
  return bytes;
}

const crate = box([1200, 800, 600]);

const faultOf = (bytes: Uint8Array, unit: 'mm' | 'm' | null = 'mm'): string => {
  const read = readStl(bytes, unit);
  return read.ok ? 'read' : read.faults.map((one) => `${one.path}: ${one.found}`).join('; ');
};

describe('a body from an STL file', () => {
  it.each([
    ['ASCII', ascii(crate)],
    ['binary, though it begins with "solid"', binary(crate)],
  ])('is read, %s, in the unit that is told', (_, bytes) => {
    const read = readStl(bytes, 'mm');
    if (!read.ok) throw new Error('refused');
    expect(read.value.corners).toHaveLength(8);
    expect(read.value.facets).toHaveLength(12);
    expect(read.value.volume).toBeCloseTo(1.2 * 0.8 * 0.6, 6);
    expect(read.value.isConvex).toBe(true);
  });

  it('asks for the unit and never guesses it', () => {
    expect(faultOf(ascii(crate), null)).toBe('unit: none');
    expect(faultOf(ascii(crate), 'm')).toMatch(/^stl: 1\.20e\+3 m across/);
  });

  it('is refused where it is not closed, or a facet is turned round', () => {
    expect(faultOf(ascii(crate.slice(1)))).toMatch(/3 edges that are not shared/);
    const turned = crate.map(([p, q, r], i): Facet => (i === 0 ? [p, r, q] : [p, q, r]));
    expect(faultOf(ascii(turned))).toMatch(/3 edges/);
  });

  it('is refused where it is cut off, no number, or no STL', () => {
    expect(faultOf(binary(crate, 'made').subarray(0, 200))).toMatch(/200 bytes/);
    expect(faultOf(new TextEncoder().encode('solid nothing'))).toMatch(/0 corners/);
    expect(
      faultOf(
        ascii([
          ...crate,
          [
            [Number.NaN, 0, 0],
            [1, 0, 0],
            [0, 1, 0],
          ],
        ]),
      ),
    ).toMatch(/no number/);
  });

  it('has its volume also where all facets are turned inside out', () => {
    const read = readStl(ascii(crate.map(([p, q, r]): Facet => [p, r, q])), 'mm');
    expect(read.ok && read.value.volume).toBeCloseTo(0.576, 6);
  });
});

describe('its shape for passing', () => {
  it('is its own hull where it is convex and plain', () => {
    const read = readStl(ascii(crate), 'mm');
    if (!read.ok) throw new Error('refused');
    const { shape, roughly } = shapeOfStl(read.value);
    expect(roughly).toBe(false);
    expect([...bodyOf(shape).size].map((x) => Number(x.toFixed(6)))).toEqual([1.2, 0.8, 0.6]);
  });

  it('is a hull that holds it, hardly larger, where it has hollows', () => {
    // Two crates on each other, the upper one short: an L.
    const upper = box([400, 800, 600]).map(
      (facet) => facet.map(([x, y, z]): Vec3 => [x, y, z + 600]) as unknown as Facet,
    );
    const read = readStl(ascii([...crate, ...upper]), 'mm');
    if (!read.ok) throw new Error(JSON.stringify(read.faults));
    const { shape, roughly } = shapeOfStl(read.value);
    expect([roughly, read.value.isConvex]).toEqual([true, false]);
    const [x, y, z] = bodyOf(shape).size;
    expect([x, y, z].map((size) => Number(size.toFixed(6)))).toEqual([1.2, 0.8, 1.2]);
    if (shape.form !== 'hull') throw new Error('no hull');
    expect(shape.points.length).toBeLessThan(200);
    // The corner that the L has not is cut off: at (1.2, 1.2) nothing of the hull is.
    const far = Math.max(...shape.points.map(([px, , pz]) => px + pz));
    expect(far).toBeLessThan(2.4 - 0.2);
    expect(far).toBeGreaterThanOrEqual(1.8 - 1e-9);
  });
});
