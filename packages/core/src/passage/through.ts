// Whether a closed line goes through a flat plate for sure, though each of its points may be off by so
// much: somewhere it runs from one side to the other, and all of it between is within the plate by more.

import { add, scale, subtract, type Vec3 } from '../math/vector.ts';

/** Whether a closed line goes through the plate at a point with a unit normal. `slip`: how far each of its
 * points may be off, m; `isIn`: whether a point near the plane is within the plate by a margin. */
export function isThrough(
  loop: readonly Vec3[],
  slip: readonly number[],
  middle: Vec3,
  normal: Vec3,
  isIn: (p: Vec3, margin: number) => boolean,
): boolean {
  const count = loop.length;
  const height = new Float64Array(count);
  const side = new Int8Array(count);
  let [above, below] = [false, false];
  for (let i = 0; i < count; i++) {
    const p = loop[i] as Vec3;
    const h =
      normal[0] * (p[0] - middle[0]) +
      normal[1] * (p[1] - middle[1]) +
      normal[2] * (p[2] - middle[2]);
    height[i] = h;
    side[i] = h > (slip[i] as number) ? 1 : h < -(slip[i] as number) ? -1 : 0;
    above ||= side[i] > 0;
    below ||= side[i] < 0;
  }
  if (!above || !below) return false;
  for (let start = 0; start < count; start++) {
    const own = side[start] as number;
    if (own === 0) continue;
    let end = start + 1;
    let most = slip[start] as number;
    for (; end < start + count && side[end % count] === 0; end++)
      most = Math.max(most, slip[end % count] as number);
    if (side[end % count] !== -own) continue;
    most = Math.max(most, slip[end % count] as number);
    const first = heightOn(loop, height, start, (start + 1) % count, own * most);
    const last = heightOn(loop, height, end % count, (end - 1) % count, -own * most);
    if (!isIn(first, most) || !isIn(last, most)) continue;
    let isAllIn = true;
    for (let i = start + 1; i < end && isAllIn; i++) isAllIn = isIn(loop[i % count] as Vec3, most);
    if (isAllIn) return true;
  }
  return false;
}

/** The point of a side of the line, from corner i to j, at a height over the plate; corner i where it is
 * nearer than that. */
function heightOn(
  loop: readonly Vec3[],
  height: Float64Array,
  i: number,
  j: number,
  at: number,
): Vec3 {
  const [a, b] = [height[i] as number, height[j] as number];
  const t = Math.max(0, Math.min(1, (a - at) / (a - b)));
  return add(
    loop[i] as Vec3,
    scale(subtract(loop[j] as Vec3, loop[i] as Vec3), Number.isFinite(t) ? t : 0),
  );
}
