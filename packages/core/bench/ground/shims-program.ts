// The shims of a base as a linear program for HiGHS, to compare with: tops e_i, plane h + a x + b y, every
// e_i at or above the ground, steps between hubs bounded; the tilt within a square, ours within a circle.

import type { Base } from '../../src/ground/base.ts';

/** The program's text, for the least sum of shims. */
export function shimsProgram(
  base: Base,
  heights: readonly number[],
  { tilt, neighbour, overall }: { tilt: number; neighbour: number; overall: number },
): string {
  const rows: string[] = [];
  const count = base.hubs.length;
  const term = (c: number, v: string): string => `${c < 0 ? '-' : '+'} ${Math.abs(c)} ${v}`;
  const off = (i: number, sign: 1 | -1): string => {
    const [x, y] = base.hubs[i]?.at ?? [0, 0];
    return `${term(sign, `e${i}`)} ${term(-sign * x, 'a')} ${term(-sign * y, 'b')}`;
  };
  heights.forEach((h, i) => {
    rows.push(`e${i} >= ${h}`);
    for (let j = 0; j < count; j++) {
      if (i === j) continue;
      const apart = Math.min(Math.abs(i - j), count - Math.abs(i - j));
      rows.push(`${off(i, 1)} ${off(j, -1)} <= ${Math.min(overall, apart * neighbour)}`);
    }
  });
  const names = heights.map((_, i) => `e${i} free`).join('\n');
  return (
    `Minimize\n obj: ${heights.map((_, i) => `e${i}`).join(' + ')}\n` +
    `Subject To\n${rows.map((row, i) => ` c${i}: ${row}`).join('\n')}\n` +
    `Bounds\n-${tilt} <= a <= ${tilt}\n-${tilt} <= b <= ${tilt}\n${names}\nEnd`
  );
}
