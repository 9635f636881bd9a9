import { describe, expect, it } from 'vitest';
import type { SideId } from '../../src/shell/ids.ts';
import { partOf } from '../../src/shell/part.ts';
import { hubAt, previousSide, type Shell } from '../../src/shell/shell.ts';
import { fansOf, starsOf } from '../../src/shell/stars.ts';
import { crownUp, cube, cutNear, domeOf, icosahedral } from './fixtures.ts';

const sizes = (shell: Shell): number[] =>
  starsOf(shell)
    .map((star) => star.corners.length)
    .sort();

describe('stars', () => {
  it('are closed runs of five and six corners around the hubs of a two-step ball', () => {
    const { shell } = icosahedral(2, 0);
    expect(starsOf(shell).every((star) => star.closed)).toBe(true);
    expect(sizes(shell)).toEqual([...Array(12).fill(5), ...Array(30).fill(6)]);
  });

  it('list corners that all start at the hub, each bolted to the one before along its own side', () => {
    const { shell } = icosahedral(2, 1);
    for (const star of starsOf(shell))
      star.corners.forEach((corner, i) => {
        expect(hubAt(shell, corner)).toBe(star.hub);
        const before = star.corners.at(i - 1) as SideId;
        expect(shell.mate[previousSide(shell, before)]).toBe(corner);
      });
  });

  it('run anticlockwise seen from outside', () => {
    const shell = crownUp(cube().shell);
    const star = starsOf(shell)[0];
    const ends = star?.corners.map((c) => {
      const hub = shell.sideHub[c % 4 === 3 ? c - 3 : c + 1] as number;
      return Math.atan2(shell.hubs[3 * hub + 1] as number, shell.hubs[3 * hub] as number);
    }) as number[];
    const steps = ends.map((a, i) => {
      const step = (ends[(i + 1) % 3] as number) - a;
      return step < 0 ? step + 2 * Math.PI : step;
    });
    for (const step of steps) expect(step).toBeCloseTo((2 * Math.PI) / 3, 9);
  });

  it('start at the open side and end at the open side before where they are open', () => {
    const whole = crownUp(icosahedral(3, 0).shell);
    const dome = domeOf(whole, cutNear(whole, -0.18));
    const open = starsOf(dome).filter((star) => !star.closed);
    expect(open).toHaveLength(15);
    for (const { corners } of open) {
      expect(dome.mate[corners[0] as SideId]).toBe(-1);
      expect(dome.mate[previousSide(dome, corners.at(-1) as SideId)]).toBe(-1);
    }
  });

  it('are several runs at a pinched hub, which only fansOf reads', () => {
    const { shell } = cube();
    const [p, q] = [0, 1];
    const part = partOf(shell, [p, q, 2]).shell;
    expect(fansOf(part).every((runs) => runs.length === 1)).toBe(true);
    const { shell: ball } = icosahedral(1, 0);
    const around = Array.from(ball.sideHub.keys()).filter((s) => ball.sideHub[s] === 0);
    const star = starsOf(ball)[0]?.corners.map((s) => ball.sidePlace[s] as number) as number[];
    expect(around).toHaveLength(5);
    const pinched = partOf(ball, [star[0] as number, star[2] as number]).shell;
    expect(Math.max(...fansOf(pinched).map((runs) => runs.length))).toBe(2);
    expect(() => starsOf(pinched)).toThrow('2 runs of corners');
  });
});
