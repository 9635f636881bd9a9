import { describe, expect, it } from 'vitest';
import { arrangements, standingShell } from '../../../src/arrange/arrangements.ts';
import { infillOf } from '../../../src/arrange/fit/infill.ts';
import { hubPoint } from '../../../src/shell/geometry.ts';
import { baseRing } from '../../../src/shell/rims.ts';
import type { Shell } from '../../../src/shell/shell.ts';
import { icosahedral, pileKinds } from '../../shell/fixtures.ts';

function shells(b: number): { shell: Shell; flat: boolean; rise: number }[] {
  const net = icosahedral(b, 0);
  const list = arrangements(net.shell, pileKinds(net));
  return list.arrangements.map(({ wayUp, cut }) => ({
    shell: standingShell(net.shell, list.waysUp[wayUp] as never, cut).shell,
    flat: cut.flat,
    rise: cut.rise,
  }));
}

describe('the infill of a base ring', () => {
  it('is nothing where the ring is level', () => {
    const level = shells(4).filter(({ flat }) => flat);
    expect(level.length).toBeGreaterThan(0);
    for (const { shell } of level) expect(infillOf(shell)).toEqual([]);
  });

  it('closes the ring: its sides on the ground and the hubs that stand make one loop', () => {
    for (const { shell } of shells(3)) {
      const ring = (baseRing(shell)?.hubs ?? []).map((hub) => hubPoint(shell, hub));
      const ground = Math.min(...ring.map(([, , z]) => z));
      const panels = infillOf(shell);
      const along = panels.reduce((sum, one) => sum + one.count * (one.sides[0] as number), 0);
      // On the ground: straight from foot to foot, or past a lone high hub.
      const isUp = (i: number): boolean => {
        const at = ring[(i + ring.length) % ring.length];
        return at !== undefined && at[2] > ground + 0.02 * 0.4;
      };
      const lone = (i: number): boolean => isUp(i) && !isUp(i - 1) && !isUp(i + 1);
      let asked = 0;
      ring.forEach((a, i) => {
        const j = (i + 1) % ring.length;
        const b = ring[j] as typeof a;
        const c = ring[(i + 2) % ring.length] as typeof a;
        if (lone(j)) asked += Math.hypot(a[0] - c[0], a[1] - c[1], a[2] - c[2]);
        else if (!lone(i) && (isUp(i) || isUp(j))) asked += Math.hypot(a[0] - b[0], a[1] - b[1]);
      });
      expect(Math.abs(along - asked)).toBeLessThan(0.02 * asked + 1e-9);
    }
  });

  it('of hubs that stand high one by one is a triangle each, two of its sides those of the ring', () => {
    const ragged = shells(3).find(({ shell }) =>
      infillOf(shell).some(({ sides }) => sides.length === 3),
    );
    if (!ragged) throw new Error('no ragged shell');
    const ring = (baseRing(ragged.shell)?.hubs ?? []).map((hub) => hubPoint(ragged.shell, hub));
    const lengths = ring.map((a, i) => {
      const b = ring[(i + 1) % ring.length] as typeof a;
      return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    });
    for (const { sides } of infillOf(ragged.shell))
      if (sides.length === 3)
        expect(
          sides.slice(1).filter((side) => lengths.some((l) => Math.abs(l - side) < 1e-3)).length,
        ).toBeGreaterThanOrEqual(1);
  });
});
