// Meshes as binary glTF 2.0 for viewers: true size in metres, y up as the standard has it (Khronos, glTF
// 2.0 Specification, sections 3.4 and 4.4), every triangle with its own flat normal.

import { strToU8 } from 'fflate';
import { cornersAt, triangleCount } from './mesh.ts';
import { normalOf } from './stl.ts';
import type { NamedMesh } from './three-mf.ts';

/** Colours of the meshes, in turn: linear red, green, blue. */
const colours = [
  [0.62, 0.64, 0.68],
  [0.52, 0.04, 0.01],
] as const;

/** The bytes of a GLB file; `metres` is what a millimetre of the meshes stands for. */
export function toGlb(meshes: readonly NamedMesh[], metres: number, title: string): Uint8Array {
  const buffers = meshes.map(({ mesh }) => attributes(mesh, metres));
  const views: object[] = [];
  const accessors: object[] = [];
  let offset = 0;
  const view = (data: Float32Array): number => {
    views.push({ buffer: 0, byteOffset: offset, byteLength: data.byteLength, target: 34962 });
    offset += data.byteLength;
    return views.length - 1;
  };
  buffers.forEach(({ positions, normals }) => {
    const common = { componentType: 5126, count: positions.length / 3, type: 'VEC3' };
    accessors.push({ bufferView: view(positions), ...common, ...boundsOf(positions) });
    accessors.push({ bufferView: view(normals), ...common });
  });
  const json = {
    asset: { version: '2.0', generator: 'Shellraise', extras: { title } },
    scene: 0,
    scenes: [{ nodes: meshes.map((_, i) => i) }],
    nodes: meshes.map(({ name }, i) => ({ name, mesh: i })),
    meshes: meshes.map(({ name }, i) => ({
      name,
      primitives: [
        { attributes: { POSITION: 2 * i, NORMAL: 2 * i + 1 }, material: i % colours.length },
      ],
    })),
    materials: colours.slice(0, meshes.length).map((colour) => ({
      pbrMetallicRoughness: {
        baseColorFactor: [...colour, 1],
        metallicFactor: 0,
        roughnessFactor: 0.9,
      },
    })),
    accessors,
    bufferViews: views,
    buffers: [{ byteLength: offset }],
  };
  return packed(
    strToU8(JSON.stringify(json)),
    buffers.flatMap(({ positions, normals }) => [positions, normals]),
    offset,
  );
}

function attributes(
  mesh: NamedMesh['mesh'],
  metres: number,
): { readonly positions: Float32Array; readonly normals: Float32Array } {
  const count = triangleCount(mesh);
  const positions = new Float32Array(9 * count);
  const normals = new Float32Array(9 * count);
  for (let t = 0; t < count; t++) {
    const corners = cornersAt(mesh, t);
    const [nx, ny, nz] = normalOf(corners);
    corners.forEach(([x, y, z], i) => {
      positions.set([x * metres, z * metres, -y * metres], 9 * t + 3 * i);
      normals.set([nx, nz, -ny], 9 * t + 3 * i);
    });
  }
  return { positions, normals };
}

function boundsOf(positions: Float32Array): { readonly min: number[]; readonly max: number[] } {
  const min = [Infinity, Infinity, Infinity];
  const max = [-Infinity, -Infinity, -Infinity];
  positions.forEach((x, i) => {
    min[i % 3] = Math.min(min[i % 3] as number, x);
    max[i % 3] = Math.max(max[i % 3] as number, x);
  });
  return { min, max };
}

/** Header, JSON filled up with blanks, then the floats; all little-endian. */
function packed(json: Uint8Array, data: readonly Float32Array[], length: number): Uint8Array {
  const jsonLength = Math.ceil(json.length / 4) * 4;
  const bytes = new Uint8Array(28 + jsonLength + length).fill(32);
  const view = new DataView(bytes.buffer);
  const word = (at: number, value: number): void => view.setUint32(at, value, true);
  word(0, 0x46546c67);
  word(4, 2);
  word(8, bytes.length);
  word(12, jsonLength);
  word(16, 0x4e4f534a);
  bytes.set(json, 20);
  word(20 + jsonLength, length);
  word(24 + jsonLength, 0x004e4942);
  let at = 28 + jsonLength;
  for (const floats of data)
    for (const x of floats) {
      view.setFloat32(at, x, true);
      at += 4;
    }
  return bytes;
}
