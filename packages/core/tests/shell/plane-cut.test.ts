import { describe, expect, it } from 'vitest';
import { checkShell } from '../../src/shell/check.ts';
import { partOf } from '../../src/shell/part.ts';
import { cutAtPlane } from '../../src/shell/plane-cut.ts';
import { crownUp, icosahedral } from './fixtures.ts';

describe('cutAtPlane', () => {
  const shell = crownUp(icosahedral(4, 0).shell);

  it('at the flat equator keeps the upper half and crosses nothing', () => {
    const cut = cutAtPlane(shell, 0);
    expect([cut.kept.length, cut.crossed.length, cut.below.length]).toEqual([160, 0, 160]);
  });

  it('between rings of hubs names the places that it would cut through', () => {
    const cut = cutAtPlane(shell, 0.1);
    expect(cut.kept.length + cut.crossed.length + cut.below.length).toBe(320);
    expect(cut.crossed).toHaveLength(40);
    for (const p of cut.crossed) {
      const z = [0, 1, 2].map(
        (i) => shell.hubs[3 * (shell.sideHub[3 * p + i] as number) + 2] as number,
      );
      expect(Math.min(...z)).toBeLessThan(0.1);
      expect(Math.max(...z)).toBeGreaterThan(0.1);
    }
  });

  it('keeps a part that is a shell of its own', () => {
    expect(checkShell(partOf(shell, cutAtPlane(shell, 0.1).kept).shell).sound).toBe(true);
  });
});

it('a plane at no height is refused, and a tolerance below 0', () => {
  const shell = crownUp(icosahedral(1, 0).shell);
  expect(() => cutAtPlane(shell, Number.NaN)).toThrow('z is NaN');
  expect(() => cutAtPlane(shell, 0, -0.1)).toThrow('tolerance is -0.1');
});
