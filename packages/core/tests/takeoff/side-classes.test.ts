import { describe, expect, it } from 'vitest';
import type { SideId } from '../../src/shell/ids.ts';
import { mateOf, sideCount } from '../../src/shell/shell.ts';
import { hubSizes } from '../../src/takeoff/hubs.ts';
import { classOfSide, sideClasses } from '../../src/takeoff/side-classes.ts';
import { above, ball } from './ball.ts';

describe('side classes', () => {
  it('number the distinct lengths from the shortest', () => {
    const { shell, kinds } = ball(3);
    expect(sideClasses(shell, kinds).classes.map((one) => one.length.toFixed(3))).toEqual([
      '0.941',
      '1.090',
      '1.114',
    ]);
  });

  it('keep lengths 0.24 % apart as two classes', () => {
    const { shell, kinds } = ball(4);
    const lengths = sideClasses(shell, kinds).classes.map((one) => one.length);
    expect(lengths.map((length) => length.toFixed(4)).slice(1, 3)).toEqual(['0.7952', '0.7972']);
  });

  it('are the same on both sides of every seam, whatever the tape said', () => {
    const { shell, kinds } = ball(3);
    const noisy = kinds.map((kind, k) => ({
      ...kind,
      sides: kind.sides.map((side) => side + (k === 0 ? 0.003 : 0)),
    }));
    const classes = sideClasses(shell, noisy);
    expect(classes.classes.length).toBe(3);
    for (let side = 0 as SideId; side < sideCount(shell); side++) {
      const mate = mateOf(shell, side);
      if (mate !== null)
        expect(classOfSide(shell, classes, side)).toBe(classOfSide(shell, classes, mate));
    }
  });

  it('leave out the kinds that have no place', () => {
    const { shell, kinds } = ball(2);
    const idle = { ...(kinds[0] as (typeof kinds)[0]), id: '9', sides: [0.5, 0.5, 0.5] };
    const classes = sideClasses(shell, [...kinds, idle]);
    expect(classes.classes.length).toBe(2);
    expect(classes.of[2]).toEqual([-1, -1, -1]);
  });
});

describe('hub sizes', () => {
  it('tell five-corner from six-corner hubs on a whole ball', () => {
    expect(hubSizes(ball(4).shell)).toEqual([
      { corners: 6, rim: false, hubs: 150 },
      { corners: 5, rim: false, hubs: 12 },
    ]);
  });

  it('tell rim hubs from inner ones and count only hubs in use', () => {
    const sizes = hubSizes(above(ball(4), 0).shell);
    expect(sizes.reduce((sum, size) => sum + size.hubs, 0)).toBe(91);
    expect(sizes.filter((size) => size.rim).reduce((sum, size) => sum + size.hubs, 0)).toBe(20);
    expect(sizes.filter((size) => size.rim).every((size) => size.corners < 6)).toBe(true);
  });
});
