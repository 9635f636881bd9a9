// What is left to do once shapes are found or not: what exchanging kinds costs, what to read or look
// at next, whether enough is known, and the star that proves it on the grass.

import { interchangeCosts } from './interchange-cost.ts';
import type { Identification, ShapeQuestion } from './shape.ts';

/** The answer to a question with all that follows from it. */
export function withWhatNext(question: ShapeQuestion, found: Identification): Identification {
  const shapes = found.shapes.map((shape) => ({
    ...shape,
    interchangeCosts: interchangeCosts(shape, question.kinds),
  }));
  return { ...found, shapes };
}
