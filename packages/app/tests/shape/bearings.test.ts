import { describe, expect, it } from 'vitest';
import { seenArrow, withBearings } from '../../src/drawing/shell-view/bearings.ts';
import { panelsOfShell } from '../../src/drawing/shell-view/panels.ts';
import { poseOf, roomOf, type View } from '../../src/drawing/shell-view/pose.ts';
import { ball } from './notation.ts';

const { shell } = ball(4);
/** The upper half, standing on z = 0 or so. */
const upper = new Set(
  [...shell.kind.keys()].filter((place) => {
    const hubs = shell.sideHub.subarray(shell.placeStart[place], shell.placeStart[place + 1]);
    return [...hubs].some((hub) => (shell.hubs[3 * hub + 2] as number) < -0.2);
  }),
);
const panels = panelsOfShell(shell, { leftOut: upper });
const room = withBearings(roomOf(panels));
const size = { width: 400, height: 300 };
const datum = { label: 'datum', azimuth: 0, main: true };
const seen = (view: View, inside: boolean) =>
  seenArrow(datum, room, panels.radius, poseOf(view, room, 4 / 3, inside), size, inside);
const from = (azimuth: number, elevation = 0.2): View => ({ azimuth, elevation, zoom: 1 });

describe('the datum outside', () => {
  it('points to the right where the eye has it on its right, to the left on its left', () => {
    const right = seen(from(-1), false);
    const left = seen(from(1), false);
    expect(right && right.tip[0] > right.tail[0]).toBe(true);
    expect(left && left.tip[0] < left.tail[0]).toBe(true);
  });

  it('is hidden by the shell where it lies behind it', () => {
    expect(seen(from(Math.PI), false)).toBeNull();
    expect(seen(from(0), false)).not.toBeNull();
  });

  it('keeps its words in the picture', () => {
    for (const azimuth of [-1.5, -0.7, 0, 0.7, 1.5]) {
      const [x, y] = seen(from(azimuth), false)?.text ?? [200, 150];
      expect(x >= 0 && x <= 400 && y >= 0 && y <= 300).toBe(true);
    }
  });
});

describe('the datum inside', () => {
  it('stands up at the wall that is looked at', () => {
    const arrow = seen(from(0), true);
    expect(arrow?.tip[0]).toBeCloseTo(200, 6);
    expect(arrow && arrow.tip[1] < arrow.tail[1]).toBe(true);
  });

  it('is told at the edge, on the side to turn to, where it is out of sight', () => {
    const onLeft = seen(from(-1.9), true);
    const onRight = seen(from(1.9), true);
    expect(onLeft && onLeft.tip[0] < 100).toBe(true);
    expect(onRight && onRight.tip[0] > 300).toBe(true);
    for (const azimuth of [-3, -2, 2, 3])
      for (const elevation of [-0.4, 0.5, 1.5]) {
        const [x, y] = seen(from(azimuth, elevation), true)?.tip ?? [-1, -1];
        expect(x >= 0 && x <= 400 && y >= 0 && y <= 300).toBe(true);
      }
  });
});
