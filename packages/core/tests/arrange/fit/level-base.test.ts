import { describe, expect, it } from 'vitest';
import { arrangements, standingShell } from '../../../src/arrange/arrangements.ts';
import { sawnBase, withoutRagged } from '../../../src/arrange/fit/level-base.ts';
import { partOf } from '../../../src/shell/part.ts';
import { baseRing } from '../../../src/shell/rims.ts';
import { placeCount, type Shell } from '../../../src/shell/shell.ts';
import { icosahedral, pileKinds } from '../../shell/fixtures.ts';

const net = icosahedral(4, 0);
const list = arrangements(net.shell, pileKinds(net));
const standing = (flat: boolean, nth = 0): Shell => {
  const at = list.arrangements.filter(({ cut }) => cut.flat === flat && cut.places.length > 40)[
    nth
  ];
  const way = at && list.waysUp[at.wayUp];
  if (!at || !way) throw new Error('no such shell');
  return standingShell(net.shell, way, at.cut).shell;
};
const ragged = [0, 1, 2, 3].map((n) => standing(false, n));

describe('a shell sawn level', () => {
  it('is none where the base is level', () => {
    expect(sawnBase(standing(true))).toBeNull();
    expect(withoutRagged(standing(true))).toBeNull();
  });

  it('keeps the height above its highest base hub, and each panel that it saws once', () => {
    for (const shell of ragged) {
      const sawn = sawnBase(shell);
      const z = baseRing(shell)?.z;
      if (!sawn || !z) throw new Error('not sawn');
      expect(sawn.z).toBeCloseTo(z.max, 12);
      const top = Math.max(...shell.hubs.filter((_, i) => i % 3 === 2));
      expect(sawn.height).toBeCloseTo(top - z.max, 12);
      expect(sawn.panels.reduce((sum, { count }) => sum + count, 0)).toBe(sawn.sawn.length);
      expect(new Set([...sawn.sawn, ...sawn.leftOut]).size).toBe(
        sawn.sawn.length + sawn.leftOut.length,
      );
    }
  });

  it('stands on a polygon in the plane: its sawn sides span a ring about the axis on the sphere', () => {
    for (const shell of ragged) {
      const sawn = sawnBase(shell);
      if (!sawn) throw new Error('not sawn');
      // A panel is a chord plane: its cut lies inside the sphere's circle at that height.
      const circle = Math.sqrt(1 - sawn.z ** 2);
      expect(sawn.radius.max).toBeLessThanOrEqual(circle + 1e-9);
      expect(sawn.radius.min).toBeGreaterThan(circle * 0.85);
      const around = sawn.panels.reduce(
        (sum, { sides, count }) => sum + (sides[0] as number) * count,
        0,
      );
      expect(around).toBeLessThanOrEqual(2 * Math.PI * circle);
      expect(around).toBeGreaterThan(2 * Math.PI * circle * 0.7);
    }
  });
});

describe('a shell with its lowest places left out', () => {
  it('stands on a level ring, lower than before', () => {
    const level = list.arrangements.filter(({ cut }) => cut.flat);
    const pairs = list.arrangements.flatMap((low) => {
      const over = level.filter((one) => one.wayUp === low.wayUp && one.cut.rise < low.cut.rise);
      return low.cut.flat || over.length === 0 ? [] : [{ low, over }];
    });
    expect(pairs.length).toBeGreaterThan(0);
    for (const { low, over } of pairs) {
      const way = list.waysUp[low.wayUp];
      if (!way) throw new Error('no way up');
      const { shell } = standingShell(net.shell, way, low.cut);
      const lower = withoutRagged(shell);
      if (!lower) throw new Error('nothing level in it');
      expect(lower.height).toBeCloseTo(Math.max(...over.map(({ cut }) => cut.height)), 9);
      const stays = [...Array(placeCount(shell)).keys()].filter((p) => !lower.leftOut.includes(p));
      const ring = baseRing(partOf(shell, stays).shell);
      expect((ring?.z.max ?? 1) - (ring?.z.min ?? 0)).toBeLessThan(0.02);
    }
  });
});
