// A mesh as binary STL: 80 bytes of name, the number of triangles, then normal and corners of each as
// 32-bit floats, little-endian. STL has no unit: printers take millimetres. (The format is common
// knowledge; 3D Systems, Stereolithography Interface Specification, 1988, not seen.)

import { cross, norm, subtract, type Vec3 } from '../math/vector.ts';
import { cornersAt, type Mesh, triangleCount } from './mesh.ts';

/** The bytes of a binary STL file; `name` is cut to plain ASCII of 80 characters. */
export function toStl(mesh: Mesh, name: string): Uint8Array {
  const count = triangleCount(mesh);
  const bytes = new Uint8Array(84 + 50 * count);
  const view = new DataView(bytes.buffer);
  // A file that begins with "solid" is taken for the text form.
  const head = `stl ${name}`.replace(/[^\x20-\x7e]/g, '?').slice(0, 80);
  for (let i = 0; i < 80; i++) bytes[i] = i < head.length ? head.charCodeAt(i) : 32;
  view.setUint32(80, count, true);
  for (let t = 0; t < count; t++) {
    const corners = cornersAt(mesh, t);
    [normalOf(corners), ...corners].flat().forEach((x, i) => {
      view.setFloat32(84 + 50 * t + 4 * i, x, true);
    });
  }
  return bytes;
}

/** Unit normal; zero for a triangle without area. */
export function normalOf([a, b, c]: readonly [Vec3, Vec3, Vec3]): Vec3 {
  const n = cross(subtract(b, a), subtract(c, a));
  const size = norm(n);
  return size > 0 ? [n[0] / size, n[1] / size, n[2] / size] : [0, 0, 0];
}
