// A flat facet of a shell: the membrane of constant strain, and a plate that bends as Kirchhoff's
// theory wants at its corners and along its sides (J.-L. Batoz, K.-J. Bathe, L.-W. Ho, Int. J. Numer.
// Methods Eng. 15 (1980) 1771). The rotation about the normal, of which a plate knows nothing, is
// tied softly to the turning of the membrane, so that it is no free unknown where all facets at a
// node lie in one plane (after T. J. R. Hughes and F. Brezzi, Comput. Methods Appl. Mech. Eng. 72
// (1989) 105).
//
// Natural strains: εx, εy, γ; three times the curvatures κx, κy, 2κxy, at the middles of the sides
// 1–2, 2–3, 3–1; three times rotation about the normal at a corner less the membrane's turning.

import type { Vec3 } from '../../math/vector.ts';
import type { Facet, Natural } from './element.ts';
import { type FlatTriangle, flatTriangle, membraneRows, planeStress } from './triangle.ts';

/** Part of the shear stiffness that ties the rotation about the normal: small enough not to stiffen
 * the membrane, large enough to stand out from rounding. Own choice, no source. */
const NORMAL_TIE = 1e-3;

const WIDTH = 18;

/** A facet between three points by its natural strains. */
export function facetNatural(
  { nodes, thickness, young, poisson, bendingThickness = thickness }: Facet,
  points: readonly [Vec3, Vec3, Vec3],
): Natural {
  const flat = flatTriangle(nodes, points);
  const rows = new Float64Array(15 * WIDTH);
  const moduli = new Float64Array(15 * 15);
  const stress = planeStress(young, poisson);
  membraneRows(flat).forEach((x, k) => {
    const corner = Math.floor((k % 9) / 3);
    rows[Math.floor(k / 9) * WIDTH + 6 * corner + (k % 3)] = x;
  });
  putBlock(moduli, 0, stress, flat.area * thickness);
  for (let middle = 0; middle < 3; middle++) {
    plateRowsInto(rows, 3 + 3 * middle, flat, middle);
    putBlock(moduli, 3 + 3 * middle, stress, (flat.area * bendingThickness ** 3) / 36);
  }
  for (let corner = 0; corner < 3; corner++) {
    normalRowInto(rows, 12 + corner, flat, corner);
    moduli[(12 + corner) * 16] = (NORMAL_TIE * stress[8] * thickness * flat.area) / 3;
  }
  return { width: WIDTH, rows, moduli };
}

function putBlock(moduli: Float64Array, at: number, block: Float64Array, times: number): void {
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) moduli[(at + i) * 15 + at + j] = times * block[3 * i + j];
}

/** Curvatures at the middle of a side. The slopes βx = −∂w/∂x and βy = −∂w/∂y run as quadratics
 * through corners and middles; at a middle the slope across the side is the mean of its ends, and
 * that along it follows from the cubic of w along the side.
 *
 *            3                 middles: 0 on side 1–2, 1 on 2–3, 2 on 3–1; shape functions
 *          2   1               corners L (2 L − 1), middles 4 L L'
 *        1   0   2
 */
function plateRowsInto(rows: Float64Array, row: number, flat: FlatTriangle, middle: number): void {
  const area = [0, 0, 0];
  area[middle] = area[(middle + 1) % 3] = 0.5;
  for (let corner = 0; corner < 3; corner++) {
    const slope = 4 * area[corner] - 1;
    addSlopes(rows, row, flat, slope * flat.dx[corner], slope * flat.dy[corner], corner);
  }
  for (let side = 0; side < 3; side++) {
    const i = side;
    const j = (side + 1) % 3;
    const gx = 4 * (area[i] * flat.dx[j] + area[j] * flat.dx[i]);
    const gy = 4 * (area[i] * flat.dy[j] + area[j] * flat.dy[i]);
    addMiddle(rows, row, flat, gx, gy, i, j);
  }
}

/** Adds (κx, κy, 2κxy) = (∂βx/∂x, ∂βy/∂y, ∂βx/∂y + ∂βy/∂x) of a corner's slopes, whose shape
 * function has the gradient (gx, gy). Rotations θ about x and y: βx = θy, βy = −θx. */
function addSlopes(
  rows: Float64Array,
  row: number,
  { axes: [ex, ey] }: FlatTriangle,
  gx: number,
  gy: number,
  corner: number,
): void {
  for (let k = 0; k < 3; k++) {
    const at = row * WIDTH + 6 * corner + 3 + k;
    rows[at] += gx * ey[k];
    rows[at + WIDTH] -= gy * ex[k];
    rows[at + 2 * WIDTH] += gy * ey[k] - gx * ex[k];
  }
}

/** The same of the middle of the side from corner i to j: β = n (n · mean β) + s βs, where s points
 * along the side, n across, and βs = −3/(2 l) (wj − wi) − (βs,i + βs,j)/4. */
function addMiddle(
  rows: Float64Array,
  row: number,
  flat: FlatTriangle,
  gx: number,
  gy: number,
  i: number,
  j: number,
): void {
  const { axes, x, y } = flat;
  const length = Math.hypot(x[j] - x[i], y[j] - y[i]);
  const sx = (x[j] - x[i]) / length;
  const sy = (y[j] - y[i]) / length;
  const curvatures = (bx: number, by: number): [number, number, number] => [
    gx * bx,
    gy * by,
    gy * bx + gx * by,
  ];
  const byDeflection = curvatures(sx, sy);
  for (const [corner, sign] of [
    [i, 1],
    [j, -1],
  ])
    for (let r = 0; r < 3; r++)
      for (let k = 0; k < 3; k++)
        rows[(row + r) * WIDTH + 6 * corner + k] +=
          ((sign * 3) / (2 * length)) * byDeflection[r] * axes[2][k];
  // β at a corner enters by the matrix n nᵀ/2 − s sᵀ/4.
  const xx = (sy * sy) / 2 - (sx * sx) / 4;
  const xy = (-sx * sy) / 2 - (sx * sy) / 4;
  const yy = (sx * sx) / 2 - (sy * sy) / 4;
  const byX = curvatures(xx, xy);
  const byY = curvatures(xy, yy);
  for (const corner of [i, j])
    for (let r = 0; r < 3; r++)
      for (let k = 0; k < 3; k++)
        rows[(row + r) * WIDTH + 6 * corner + 3 + k] += byX[r] * axes[1][k] - byY[r] * axes[0][k];
}

/** Rotation about the normal at a corner less the turning of the membrane, ½ (∂v/∂x − ∂u/∂y). */
function normalRowInto(rows: Float64Array, row: number, flat: FlatTriangle, corner: number): void {
  const { axes, dx, dy } = flat;
  for (let k = 0; k < 3; k++) {
    rows[row * WIDTH + 6 * corner + 3 + k] += axes[2][k];
    for (let other = 0; other < 3; other++)
      rows[row * WIDTH + 6 * other + k] -= (dx[other] * axes[1][k] - dy[other] * axes[0][k]) / 2;
  }
}
