// Solids as a picture: seen from the side and a little above, from far away, the nearer triangles over the
// farther ones, each the greyer the more it turns from the light. SVG, one unit a millimetre.

import { cross, dot, norm, subtract, type Vec3 } from '../math/vector.ts';
import { cornersAt, type Mesh, triangleCount } from './mesh.ts';
import { normalOf } from './stl.ts';

/** Ways to the right, up and towards the reader: 20° above the horizon. */
const RIGHT: Vec3 = [0.8, 0.6, 0];
const UP: Vec3 = [0.6 * -0.342, 0.8 * 0.342, 0.9397];
const NEAR: Vec3 = [0.6 * 0.9397, -0.8 * 0.9397, 0.342];
const LIGHT: Vec3 = [0.1, -0.7, Math.SQRT1_2];

/** The text of an SVG file. Triangles that turn away are not drawn. */
export function meshPicture(meshes: readonly Mesh[]): string {
  const faces = meshes.flatMap((mesh) => {
    const own: { far: number; points: (readonly [number, number])[]; grey: number; pen: number }[] =
      [];
    for (let t = 0; t < triangleCount(mesh); t++) {
      const corners = cornersAt(mesh, t);
      const normal = normalOf(corners);
      if (dot(normal, NEAR) <= 0) continue;
      own.push({
        far: corners.reduce((sum, corner) => sum + dot(corner, NEAR), 0),
        points: corners.map((corner) => [dot(corner, RIGHT), -dot(corner, UP)] as const),
        pen: Math.min(0.15, Math.sqrt(doubleArea(corners)) / 60),
        grey: Math.round(150 + 95 * Math.max(0, dot(normal, LIGHT))),
      });
    }
    return own;
  });
  faces.sort((a, b) => a.far - b.far);
  const [left, top, right, bottom] = faces.reduce(
    (box, { points }) => [
      Math.min(box[0], ...points.map(([x]) => x)),
      Math.min(box[1], ...points.map(([, y]) => y)),
      Math.max(box[2], ...points.map(([x]) => x)),
      Math.max(box[3], ...points.map(([, y]) => y)),
    ],
    [Infinity, Infinity, -Infinity, -Infinity] as [number, number, number, number],
  );
  const [width, height] = [right - left + 4, bottom - top + 4];
  const drawn = faces.map(
    ({ points, grey, pen }) =>
      `<path d="M${points.map(([x, y]) => `${short(x - left + 2)} ${short(y - top + 2)}`).join('L')}Z" fill="rgb(${grey},${grey},${grey})" stroke="#15171c" stroke-width="${short(pen)}" stroke-linejoin="round"/>`,
  );
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${short(width)}mm" height="${short(height)}mm" viewBox="0 0 ${short(width)} ${short(height)}">`,
    ...drawn,
    '</svg>',
    '',
  ].join('\n');
}

const doubleArea = ([a, b, c]: readonly [Vec3, Vec3, Vec3]): number =>
  norm(cross(subtract(b, a), subtract(c, a)));

const short = (value: number): string => String(Math.round(value * 100) / 100 + 0);
