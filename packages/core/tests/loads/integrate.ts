// Pressure laws integrated over a piece of the sphere, apart from the code under test: force and
// moment about the centre for unit velocity pressure and unit radius, wind from +x.

import type { PressureLaw } from '../../src/loads/law.ts';
import { record } from '../outside/data/checked.ts';

/** Force along the wind (drag), upwards (lift) and sideways, and the moment about the centre. */
export interface Integral {
  drag: number;
  lift: number;
  side: number;
  moment: [number, number, number];
}

/** The law over the sphere above z = floor by the midpoint rule in azimuth and Gauss in z. */
export function integrate(law: PressureLaw, floor = 0, rows = 800, columns = 720): Integral {
  const out: Integral = { drag: 0, lift: 0, side: 0, moment: [0, 0, 0] };
  const dz = (1 - floor) / rows;
  const da = (2 * Math.PI) / columns;
  for (let i = 0; i < rows; i++) {
    for (const [offset, weight] of GAUSS) {
      const z = floor + (i + 0.5 + offset / 2) * dz;
      const across = Math.sqrt(1 - z * z);
      for (let j = 0; j < columns; j++) {
        const a = (j + 0.5) * da;
        const n = [across * Math.cos(a), across * Math.sin(a), z] as const;
        const p = law.factor * law.coefficient(...n) * dz * da * weight;
        // Pressure pushes inward; wind blows towards −x. Area of a zone of the sphere is dz da.
        out.drag += p * n[0];
        out.side -= p * n[1];
        out.lift -= p * n[2];
        const f = [-p * n[0], -p * n[1], -p * n[2]] as const;
        out.moment[0] += n[1] * f[2] - n[2] * f[1];
        out.moment[1] += n[2] * f[0] - n[0] * f[2];
        out.moment[2] += n[0] * f[1] - n[1] * f[0];
      }
    }
  }
  return out;
}

const GAUSS = [
  [-1 / Math.sqrt(3), 0.5],
  [1 / Math.sqrt(3), 0.5],
] as const;

/** Whether a value is within a relative tolerance of what is published, and no longer so when what
 * is published is moved by ten times as much: the twin of every check. */
export const pins = (value: number, published: number, relative: number): boolean => {
  const size = Math.max(Math.abs(published), 1e-300);
  const step = relative * size;
  record({
    got: value,
    expected: published,
    error: Math.abs(value - published) / size,
    allowed: relative,
    measure: 'relative',
    count: 1,
  });
  return (
    Math.abs(value - published) <= step &&
    Math.abs(value - (published + 10 * step)) > step &&
    Math.abs(value - (published - 10 * step)) > step
  );
};
