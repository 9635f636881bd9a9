// The panels of a shell as wind sees them: vector area, centre, and a few points of each where a
// pressure law is asked. Reckoned once for a shell and used for every law, wind and stage.

import { add, cross, dot, norm, pointAt, scale, subtract, type Vec3 } from '../math/vector.ts';
import type { PlaceId } from '../shell/ids.ts';
import { hubsOf, placeCount, type Shell } from '../shell/shell.ts';
import type { PressureLaw } from './law.ts';

/** Flat arrays over the places of a shell; frame of the shell, metres. */
export interface PanelFaces {
  /** Vector area, outward, stride 3, m². */
  readonly area: Float64Array;
  /** Area, m². */
  readonly size: Float64Array;
  /** Horizontal part of the unit normal: 1 upright, 0 level. */
  readonly upright: Float64Array;
  /** Centre of the area, stride 3, m. */
  readonly centre: Float64Array;
  /** First sample of each place; one longer than the number of places. */
  readonly sampleStart: Int32Array;
  /** Unit directions from the sphere's centre to points of the panels, stride 3. */
  readonly sample: Float64Array;
  /** Part of its panel that a sample stands for; those of a place sum to 1. */
  readonly weight: Float64Array;
}

/** Every place of a shell as wind sees it. Samples are the middles of the sides of a fan of
 * triangles: exact for a pressure that is quadratic over the panel. Throws where a panel has no
 * area or goes through the centre.
 * Source: geometry; three-point rule for triangles, any textbook of finite elements. */
export function facesOf(shell: Shell): PanelFaces {
  const count = placeCount(shell);
  const area = new Float64Array(3 * count);
  const size = new Float64Array(count);
  const upright = new Float64Array(count);
  const centre = new Float64Array(3 * count);
  const sampleStart = new Int32Array(count + 1);
  const sample: number[] = [];
  const weight: number[] = [];
  for (let p = 0; p < count; p++) {
    const triangles = fanOf(shell, p as PlaceId);
    const whole = triangles.reduce<Vec3>((sum, t) => add(sum, t.area), [0, 0, 0]);
    const extent = norm(whole);
    if (!(extent > 0)) throw new Error(`place ${p} has an area of ${extent} m²`);
    let middle: Vec3 = [0, 0, 0];
    for (const { corners, area: part } of triangles) {
      const share = dot(part, whole) / extent ** 2;
      const [a, b, c] = corners;
      middle = add(middle, scale(add(add(a, b), c), share / 3));
      for (const point of [add(a, b), add(b, c), add(c, a)]) {
        const length = norm(point);
        if (!(length > 0)) throw new Error(`place ${p} goes through the sphere’s centre`);
        sample.push(...scale(point, 1 / length));
        weight.push(share / 3);
      }
    }
    area.set(whole, 3 * p);
    size[p] = extent;
    upright[p] = Math.hypot(whole[0], whole[1]) / extent;
    centre.set(middle, 3 * p);
    sampleStart[p + 1] = weight.length;
  }
  return {
    area,
    size,
    upright,
    centre,
    sampleStart,
    sample: Float64Array.from(sample),
    weight: Float64Array.from(weight),
  };
}

interface Triangle {
  readonly corners: readonly [Vec3, Vec3, Vec3];
  readonly area: Vec3;
}

function fanOf(shell: Shell, place: PlaceId): Triangle[] {
  const points = hubsOf(shell, place).map((hub) => pointAt(shell.hubs, hub));
  const a = points[0] as Vec3;
  return points.slice(1, -1).map((b, i) => {
    const c = points[i + 2] as Vec3;
    return { corners: [a, b, c], area: scale(cross(subtract(b, a), subtract(c, a)), 0.5) };
  });
}

/** Mean external pressure coefficient of each panel by a law, its factor in it, for a wind from
 * `windFrom` (radians from the datum, anticlockwise seen from above); positive inward.
 * Source: the law's. */
export function externalCoefficients(
  faces: PanelFaces,
  law: PressureLaw,
  windFrom: number,
): Float64Array {
  const count = faces.sampleStart.length - 1;
  const found = new Float64Array(count);
  const { sample, weight } = faces;
  const [c, s] = [Math.cos(windFrom), Math.sin(windFrom)];
  for (let p = 0; p < count; p++) {
    let sum = 0;
    for (let i = faces.sampleStart[p] as number; i < (faces.sampleStart[p + 1] as number); i++) {
      const [x, y] = [sample[3 * i] as number, sample[3 * i + 1] as number];
      const z = sample[3 * i + 2] as number;
      sum += (weight[i] as number) * law.coefficient(x * c + y * s, y * c - x * s, z);
    }
    found[p] = law.factor * sum;
  }
  return found;
}
