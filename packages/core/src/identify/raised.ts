// How probable shapes are once what they have no place for is explained.

import type { Shape } from './shape.ts';

/** The shapes, in the same proportion, together at least this probable. */
export function raisedTo(shapes: readonly Shape[], least: number): Shape[] {
  const sum = shapes.reduce((all, { probability }) => all + probability, 0);
  const by = sum > 0 && sum < least ? least / sum : 1;
  return shapes.map((shape) => ({ ...shape, probability: by * shape.probability }));
}
