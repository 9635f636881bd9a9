// Half-built shells to try things on.

import { coursesOf } from '../../src/shell/courses.ts';
import { naturalCuts } from '../../src/shell/cuts.ts';
import { partOf } from '../../src/shell/part.ts';
import { placeCount, type Shell } from '../../src/shell/shell.ts';
import { ball } from '../frame/fixtures.ts';

/** A ball of radius 1 cut so that about `places` places stand. */
export function cutBall(b: number, places: number): Shell {
  const whole = ball(b);
  const off = (count: number): number => Math.abs(count - places);
  const cut = naturalCuts(whole).reduce((best, one) =>
    off(one.places.length) < off(best.places.length) ? one : best,
  );
  return partOf(whole, cut.places).shell;
}

/** Places in the order of their numbers. */
export function inNumberOrder(shell: Shell): number[] {
  const { course, position } = coursesOf(shell);
  return [...Array(placeCount(shell)).keys()].sort(
    (a, b) => course[a] - course[b] || position[a] - position[b],
  );
}

/** The numbers of a shell's places. */
export const numbersOf = (shell: Shell): readonly string[] => coursesOf(shell).numbers;
