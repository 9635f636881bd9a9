import { describe, expect, it } from 'vitest';
import { planSides } from '../../src/papers/plan-sides.ts';
import { flatPlan } from '../../src/shell/flat-plan.ts';
import { endHubAt } from '../../src/shell/geometry.ts';
import type { SideId } from '../../src/shell/ids.ts';
import { hubAt, mateOf, sideCount } from '../../src/shell/shell.ts';
import { standing } from './standing.ts';

const icosahedron = (b: number, c: number) =>
  ({ solid: 'icosahedron', b, c, division: 'equal chords' }) as const;
const cases = [
  { name: 'a dome', of: standing(icosahedron(4, 0), -0.25) },
  { name: 'a ball with a hub at the nadir', of: standing(icosahedron(3, 0)) },
  { name: 'an octahedral ball', of: standing({ ...icosahedron(3, 0), solid: 'octahedron' }) },
  {
    name: 'a tetrahedral ball, a place at the nadir',
    of: standing({ ...icosahedron(1, 0), solid: 'tetrahedron' }),
  },
];

describe('the sides of the flat plan', () => {
  it.each(cases)('of $name run from hub to hub, the same way back across the seam', ({ of }) => {
    const plan = flatPlan(of.shell);
    const paths = planSides(of.shell, plan);
    const nadir = plan.outer?.at === 'hub' ? plan.outer.hub : -1;
    const hub = (h: number) => [plan.hubs[2 * h], plan.hubs[2 * h + 1]];
    for (let s = 0 as SideId; s < sideCount(of.shell); s++) {
      const path = paths[s] as (readonly [number, number])[];
      expect(path.length).toBeGreaterThanOrEqual(2);
      if (hubAt(of.shell, s) !== nadir) expect(path[0]).toEqual(hub(hubAt(of.shell, s)));
      if (endHubAt(of.shell, s) !== nadir) expect(path.at(-1)).toEqual(hub(endHubAt(of.shell, s)));
      const mate = mateOf(of.shell, s);
      if (mate === null) continue;
      const back = [...(paths[mate] as (readonly [number, number])[])].reverse();
      expect(back.length).toBe(path.length);
      path.forEach(([u, v], i) => {
        expect(Math.hypot(u - (back[i]?.[0] ?? 1e9), v - (back[i]?.[1] ?? 1e9))).toBeLessThan(1e-9);
      });
    }
  });
});
