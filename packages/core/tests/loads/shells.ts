// Shells for the tests of loads: the icosahedron's faces in n² triangles, whole or from a height up.

import { placeCount, type Shell } from '../../src/shell/shell.ts';
import { above, ball, only } from '../takeoff/ball.ts';

/** The shell from `height` radii over the centre up, by the middles of its panels. */
export const dome = (n: number, radius = 3, height = 0.001): Shell =>
  height <= -1 ? ball(n, radius).shell : above(ball(n, radius), height).shell;

/** All places. */
export const all = (shell: Shell): number[] =>
  Array.from({ length: placeCount(shell) }, (_, p) => p);

/** Places whose middle passes a test, in the shell's frame over its radius. */
export function placesWhere(
  shell: Shell,
  test: (x: number, y: number, z: number) => boolean,
): number[] {
  return all(shell).filter((p) => {
    const sides = shell.sideHub.slice(shell.placeStart[p], shell.placeStart[p + 1]);
    const mean = (axis: number): number =>
      sides.reduce((sum, hub) => sum + (shell.hubs[3 * hub + axis] as number), 0) /
      (sides.length * shell.radius);
    return test(mean(0), mean(1), mean(2));
  });
}

export { ball, only };
