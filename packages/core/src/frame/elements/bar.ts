// A bar: one natural strain, its lengthening; its natural force is its pull.

import { distance, normalize, scale, subtract, type Vec3 } from '../../math/vector.ts';
import type { Bar, Natural } from './element.ts';

/** A bar between two points, by its lengthening (metres) and pull (newtons). Throws RangeError where
 * both points are one. */
export function barNatural(bar: Bar, a: Vec3, b: Vec3): Natural {
  const length = barLength(bar, a, b);
  const along = normalize(subtract(b, a));
  return {
    width: 6,
    rows: Float64Array.from([...scale(along, -1), ...along]),
    moduli: Float64Array.of((bar.young * bar.area) / length),
  };
}

/** What a pull in a bar does to its stiffness across: 6 × 6, by rows, for a pull of 1 newton. It is
 * P/L across the bar and nothing along it. */
export function barGeometric(bar: Bar, a: Vec3, b: Vec3): Float64Array {
  const length = barLength(bar, a, b);
  const along = normalize(subtract(b, a));
  const block = new Float64Array(36);
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) {
      const across = ((i === j ? 1 : 0) - along[i] * along[j]) / length;
      block[i * 6 + j] = block[(i + 3) * 6 + j + 3] = across;
      block[i * 6 + j + 3] = block[(i + 3) * 6 + j] = -across;
    }
  return block;
}

function barLength({ nodes }: Bar, a: Vec3, b: Vec3): number {
  const length = distance(a, b);
  if (length > 0) return length;
  throw new RangeError(`nodes ${nodes[0]} and ${nodes[1]} of a bar stand at one point`);
}
