// Whether a small frame resists every movement by more than next to nothing: the same question as
// `freeMovements(tiedFrame(frame)).length === 0`, answered for frames of some dozens of panels ten
// times sooner. RᵀR − loose, row by row within its envelope (A. Jennings, Matrix Computation for
// Engineers and Scientists, 1977, from memory): it stands where every pivot is above 0.

import { jointsOf } from '../../frame/joints.ts';
import { unknownsOf } from '../../frame/mechanisms.ts';
import type { FrameModel } from '../../frame/model.ts';
import { rigidityRows } from '../../frame/rigidity.ts';
import { LOOSE } from '../../stages/tolerances.ts';

/** Whether a frame has no free movement, or next to free one: none under which the squares of what the
 * ties are strained by sum to `loose` or less (see LOOSE). Fast where its panels come so that
 * neighbours are near each other in the list. */
export function isStiff(model: FrameModel, loose: number = LOOSE): boolean {
  const joints = jointsOf(model);
  const rows = rigidityRows(model, joints);
  const unknown = unknownsOf(model, joints, rows);
  const first = envelopeOf(rows, unknown);
  const n = first.length;
  // Row i of the lower triangle lies at start[i] − first[i] + column.
  const start = new Int32Array(n + 1);
  for (let i = 0; i < n; i++) start[i + 1] = start[i] + i - first[i] + 1;
  const value = new Float64Array(start[n]);
  for (let i = 0; i < n; i++) value[start[i + 1] - 1] = -loose;
  for (let r = 0; r + 1 < rows.start.length; r++)
    for (let a = 3 * rows.start[r]; a < 3 * rows.start[r + 1]; a++) {
      const i = unknown[3 * rows.joint[Math.floor(a / 3)] + (a % 3)];
      if (i < 0) continue;
      for (let b = 3 * rows.start[r]; b < 3 * rows.start[r + 1]; b++) {
        const j = unknown[3 * rows.joint[Math.floor(b / 3)] + (b % 3)];
        if (j < 0 || j > i) continue;
        value[start[i] - first[i] + j] += rows.value[a] * rows.value[b];
      }
    }
  return hasPositivePivots(value, start, first);
}

/** Unknown → the lowest that shares a row with it. */
function envelopeOf(
  rows: { readonly start: Int32Array; readonly joint: Int32Array },
  unknown: Int32Array,
): Int32Array {
  const n = unknown.reduce((most, i) => Math.max(most, i + 1), 0);
  const first = Int32Array.from({ length: n }, (_, i) => i);
  for (let r = 0; r + 1 < rows.start.length; r++) {
    let low = n;
    for (let k = rows.start[r]; k < rows.start[r + 1]; k++) {
      const i = unknown[3 * rows.joint[k]];
      if (i >= 0) low = Math.min(low, i);
    }
    for (let k = rows.start[r]; k < rows.start[r + 1]; k++)
      for (let x = 0; x < 3; x++) {
        const i = unknown[3 * rows.joint[k] + x];
        if (i >= 0) first[i] = Math.min(first[i], low);
      }
  }
  return first;
}

/** L Lᵀ in place; false as soon as a pivot is not above 0. */
function hasPositivePivots(value: Float64Array, start: Int32Array, first: Int32Array): boolean {
  for (let i = 0; i < first.length; i++) {
    const rowI = start[i] - first[i];
    for (let j = first[i]; j < i; j++) {
      const rowJ = start[j] - first[j];
      let sum = value[rowI + j];
      for (let k = Math.max(first[i], first[j]); k < j; k++)
        sum -= value[rowI + k] * value[rowJ + k];
      value[rowI + j] = sum / value[rowJ + j];
    }
    let pivot = value[rowI + i];
    for (let k = first[i]; k < i; k++) pivot -= value[rowI + k] ** 2;
    if (!(pivot > 0)) return false;
    value[rowI + i] = Math.sqrt(pivot);
  }
  return true;
}
