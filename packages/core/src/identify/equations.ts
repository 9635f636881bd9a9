// The two kinds of equation that a net asks of the unknowns of a corner model.

import { addTerm, type Equation } from './belief.ts';
import type { CornerModel } from './corner-model.ts';

/** Two kind-sides that meet are of one length, metres. */
export function setSeamInto(equation: Equation, model: CornerModel, a: number, b: number): void {
  equation.terms = 0;
  addTerm(equation, a, 1);
  addTerm(equation, b, -1);
  equation.value = (model.lengths[b] as number) - (model.lengths[a] as number);
}

/** The corners (kind-sides) around a hub add up to `sum`, radians. */
export function setStarInto(
  equation: Equation,
  model: CornerModel,
  corners: readonly number[],
  sum: number,
): void {
  equation.terms = 0;
  equation.value = sum;
  for (const corner of corners) {
    const kind = model.kindOf[corner] as number;
    const start = model.first[kind] as number;
    const end = model.first[kind + 1] as number;
    const at = (model.slopeStart[corner] as number) - start;
    equation.value -= model.angles[corner] as number;
    for (let s = start; s < end; s++) addTerm(equation, s, model.slopes[at + s] as number);
    addTerm(equation, model.lengths.length, model.kappaSlopes[corner] as number);
  }
}
