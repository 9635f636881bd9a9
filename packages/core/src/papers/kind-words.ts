// What a kind card says in words: its hand, the test that tells left from right, which face is out.
// Sides are named from 1 on paper, as in the pile's table; side 1 is side 0 of the code.

import type { Kind } from '../pile/kind.ts';

/** `left hand`, `right hand`, or that it has none: it is its own mirror image. */
export function handWords(kind: Kind): string {
  if (kind.hand === 'L') return 'left hand';
  if (kind.hand === 'R') return 'right hand';
  return 'no hand';
}

/** How to tell this panel from its mirror image with no drawing at hand. A triangle with three
 * different sides stands on its longest side with the outside facing the reader: then the shortest
 * lies on one side. Null where the kind has no hand; polygons with more sides are read round. */
export function handTest(kind: Kind): string | null {
  if (kind.hand === null) return null;
  if (kind.sides.length !== 3) {
    const round = kind.sides.map((_, i) => i + 1).join(', ');
    return `Outside towards you, go round anticlockwise from side 1: the sides come as ${round}. On its mirror image they come the other way round.`;
  }
  const [first, second, third] = kind.sides as readonly [number, number, number];
  const longest = indexOfLongest([first, second, third]);
  const right = kind.sides[(longest + 1) % 3] as number;
  const left = kind.sides[(longest + 2) % 3] as number;
  if (right === left) return null;
  const where = left < right ? 'left' : 'right';
  return `Stand it on its longest side (side ${longest + 1}), outside towards you: the shortest side is on the ${where}.`;
}

/** How many there are, in words; says so where nobody counted. */
export function stockWords(kind: Kind): string {
  if (!kind.counted) return 'not counted';
  const rest = [
    kind.repair > 0 ? `${kind.repair} to mend` : '',
    kind.scrap > 0 ? `${kind.scrap} scrap` : '',
  ].filter((words) => words !== '');
  return [`${kind.good} good`, ...rest].join(', ');
}

/** Which way up, where to begin, and the corners in the same order. */
export function readingWords(kind: Kind, angles: readonly number[]): string {
  const hand = kind.hand === null ? ' Left and right are the same.' : '';
  const list = angles.map((angle) => `${((angle * 180) / Math.PI).toFixed(1)}°`).join(', ');
  return `Outside towards you, flanges away. Side 1 begins at the dot, the others follow anticlockwise. Corners from the dot: ${list}.${hand}`;
}

/** The first of the longest sides. */
function indexOfLongest(sides: readonly number[]): number {
  return sides.reduce((best, side, i) => (side > (sides[best] as number) ? i : best), 0);
}
