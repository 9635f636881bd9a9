// What the identification is asked of a pile, once its readings are worked up.

import type { PileKinds } from '../pile/kinds.ts';
import type { Pile } from '../pile/schema.ts';
import type { ShapeQuestion } from './shape.ts';

/** Tape held along holes or skin and nobody said how far the hubs lie beyond: up to about a
 * flange's width, metres (our own judgement). */
const UNKNOWN_ALLOWANCE = 0.005;

/** The question that a worked-up pile asks. */
export const shapeQuestion = (pile: Pile, { kinds, groups }: PileKinds): ShapeQuestion => ({
  kinds,
  groups,
  allowanceSd: pile.hubAllowance === null && pile.measuredAlong !== 'hubs' ? UNKNOWN_ALLOWANCE : 0,
});
