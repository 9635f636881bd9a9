import { describe, expect, it } from 'vitest';
import { panelToMake } from '../../../src/arrange/make/make-panel.ts';
import { distance } from '../../../src/math/vector.ts';
import { netShell } from '../../../src/nets/kinds.ts';
import { endHubAt, hubPoint } from '../../../src/shell/geometry.ts';
import type { HubId, SideId } from '../../../src/shell/ids.ts';
import { kindSide, mateOf, nextSide, sideCount } from '../../../src/shell/shell.ts';
import { dihedral } from '../../../src/sphere/dihedral.ts';

const radius = 2.7;
const net = netShell({ solid: 'icosahedron', b: 3, c: 0, division: 'equal chords' }, radius);
const made = net.kinds.map((kind) => {
  const panel = panelToMake(kind, radius, { allowance: 0.004, holes: [3, 4, null] });
  if (panel === null) throw new Error('no panel');
  return panel;
});

describe('a panel to be made', () => {
  it('has the sides of its kind between its corners, and angles that add up', () => {
    made.forEach(({ corners, sides, angles }) => {
      sides.forEach(({ length }, i) => {
        const [a, b] = [corners[i], corners[(i + 1) % corners.length]] as [
          readonly number[],
          readonly number[],
        ];
        const off = Math.hypot((b[0] ?? 0) - (a[0] ?? 0), (b[1] ?? 0) - (a[1] ?? 0)) - length;
        expect(Math.abs(off)).toBeLessThan(1e-12);
      });
      expect(angles.reduce((sum, angle) => sum + angle, 0)).toBeCloseTo(Math.PI, 12);
    });
  });

  it('has flanges that fill the angle between it and each neighbour in the net', () => {
    const { shell } = net;
    for (let s = 0; s < sideCount(shell); s++) {
      const side = s as SideId;
      const mate = mateOf(shell, side);
      if (mate === null) throw new Error('a whole ball has no open side');
      const at = (hub: number) => hubPoint(shell, hub as HubId);
      const apex = (one: SideId) => at(endHubAt(shell, nextSide(shell, one)));
      const between = dihedral(
        at(shell.sideHub[s] as number),
        at(endHubAt(shell, side)),
        apex(side),
        apex(mate),
      );
      const own = (one: SideId) => {
        const kind = shell.kind[shell.sidePlace[one] as number] as number;
        return made[kind]?.sides[kindSide(shell, one)]?.flangeAngle ?? Number.NaN;
      };
      expect(own(side) + own(mate)).toBeCloseTo(between, 9);
    }
  });

  it('leans its sawn edges by what the flange lacks of a right angle: half the bend of the seam on a regular ball', () => {
    const one = netShell({ solid: 'icosahedron', b: 1, c: 0, division: 'equal chords' }, 1);
    const panel = panelToMake(one.kinds[0] as (typeof one.kinds)[0], 1, { allowance: 0 });
    // The regular icosahedron's dihedral is 138.1897° (H. S. M. Coxeter, Regular Polytopes, from memory).
    for (const { bevel } of panel?.sides ?? [])
      expect((bevel * 180) / Math.PI).toBeCloseTo((180 - 138.1897) / 2, 3);
  });

  it('has its holes on the line that was measured, evenly, none where nobody counted', () => {
    for (const { sides, corners } of made) {
      expect(sides.map(({ holeAt }) => holeAt.length)).toEqual([3, 4, 0]);
      const [side] = sides;
      const [corner] = corners;
      if (!side || !corner) throw new Error('no side');
      const far = side.holeAt.map(([x, y]) => Math.hypot(x - corner[0], y - corner[1]));
      const space = (side.length - 0.004) / 3;
      far.forEach((metres, n) => {
        expect(metres).toBeCloseTo(0.002 + (n + 0.5) * space, 12);
      });
      expect(side.measured).toBeCloseTo(side.length - 0.004, 12);
      const [a, b] = side.line;
      expect(distance([...a, 0], [...b, 0])).toBeCloseTo(side.length - 0.004, 12);
    }
    const unknown = panelToMake(net.kinds[0] as (typeof net.kinds)[0], radius, { allowance: null });
    expect(unknown?.sides[0]?.measured).toBeNull();
  });

  it('is none where its sides are no panel, or do not fit on the sphere', () => {
    expect(panelToMake({ sides: [1, 1, 3] }, radius, { allowance: 0 })).toBeNull();
    expect(panelToMake({ sides: [5, 5, 5] }, radius, { allowance: 0 })).toBeNull();
  });
});
