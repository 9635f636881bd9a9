// What closes a ragged base ring down to the ground: between two hubs that stand, the hubs that do not
// are brought down by a triangle, or, where there are several in a row, by upright panels between
// their feet.
//
//        b               b ——— c
//      /   \           / |     | \
//    a ————— d        a ——f ——— g —— d      a, d stand on the ground; f, g: feet below b, c

import { distance, type Vec3 } from '../../math/vector.ts';
import { hubPoint, meanSideLength } from '../../shell/geometry.ts';
import { baseRing } from '../../shell/rims.ts';
import type { Shell } from '../../shell/shell.ts';
import { SAME_LEVEL } from '../../shell/tolerances.ts';

/** One size of infill panel. */
export interface InfillPanel {
  /** Sides in turn, anticlockwise seen from outside, the one on the ground first, metres. */
  readonly sides: readonly number[];
  readonly count: number;
}

/** The infill of a shell that stands crown up on a ragged base ring, the smallest first; none where
 * all base hubs are level (within 0.02 of a side). None for a closed shell as well. */
export function infillOf(shell: Shell): InfillPanel[] {
  const ring = (baseRing(shell)?.hubs ?? []).map((hub) => hubPoint(shell, hub));
  if (ring.length === 0) return [];
  const ground = Math.min(...ring.map(([, , z]) => z));
  const level = SAME_LEVEL * meanSideLength(shell);
  const first = ring.findIndex(([, , z]) => z <= ground + level);
  const turned = [...ring.slice(first), ...ring.slice(0, first), ring[first] as Vec3];
  const panels: Vec3[][] = [];
  let chain: Vec3[] = [];
  for (const hub of turned) {
    chain.push(hub);
    if (hub[2] > ground + level) continue;
    panels.push(...panelsUnder(chain, ground));
    chain = [hub];
  }
  return sizesOf(panels);
}

/** Panels that bring a run of hubs down, its ends standing on the ground; each from the corner where
 * its side on the ground starts. */
function panelsUnder(chain: readonly Vec3[], ground: number): Vec3[][] {
  const foot = ([x, y]: Vec3): Vec3 => [x, y, ground];
  if (chain.length < 3) return [];
  if (chain.length === 3) return [[...chain.slice(0, 1), ...chain.slice(2), ...chain.slice(1, 2)]];
  return chain.slice(1).map((right, i) => {
    const left = chain[i] as Vec3;
    if (i === 0) return [left, foot(right), right];
    if (i === chain.length - 2) return [foot(left), right, left];
    return [foot(left), foot(right), right, left];
  });
}

/** Sizes nearer than this are one, metres. */
const SAME = 5e-4;

function sizesOf(panels: readonly (readonly Vec3[])[]): InfillPanel[] {
  const sizes: { sides: number[]; count: number }[] = [];
  for (const corners of panels) {
    const sides = corners.map((corner, i) =>
      distance(corner, corners[(i + 1) % corners.length] as Vec3),
    );
    const known = sizes.find(
      (one) =>
        one.sides.length === sides.length &&
        one.sides.every((side, i) => Math.abs(side - (sides[i] as number)) < SAME),
    );
    if (known) known.count++;
    else sizes.push({ sides, count: 1 });
  }
  return sizes.sort((a, b) => (a.sides[0] as number) - (b.sides[0] as number));
}
