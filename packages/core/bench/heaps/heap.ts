// What a hard pile is: the pile as a person would have it, and a judge who knows the truth.
// Metres, radians.

import type { Identification, ShapeQuestion } from '../../src/identify/shape.ts';
import type { Random } from '../../src/math/random.ts';
import type { PileKinds } from '../../src/pile/kinds.ts';
import type { Pile } from '../../src/pile/schema.ts';

/** What a judge sees of one run. */
export interface Run {
  readonly pile: Pile;
  readonly worked: PileKinds;
  readonly question: ShapeQuestion;
  readonly answer: Identification;
}

/** How an answer did. `right`: the shape, and all that the case asks to be said. `short`: the shape,
 * but `lacks` was not said. `no`: an honest no. `wrong`: shapes, the true one not among them.
 * `certain`: wrong, alone, complete and at 90 % or more. */
export type Outcome = 'right' | 'short' | 'no' | 'wrong' | 'certain';

/** A judge's word. */
export interface HardVerdict {
  readonly outcome: Outcome;
  readonly lacks: readonly string[];
  /** Whether the best shape is the true one; null where there is no shape. */
  readonly bestRight: boolean | null;
}

/** A pile with its judge. */
export interface HardPile {
  readonly label: string;
  readonly pile: Pile;
  /** Radius of the truth, metres; null where nothing closes. */
  readonly radius: number | null;
  readonly judge: (run: Run) => HardVerdict;
}

/** One of the twelve cases. `most` is the most places of a base; each pile's own are fewer or as
 * many. */
export interface HardCase {
  readonly name: string;
  readonly about: string;
  readonly make: (random: Random, most: number) => HardPile;
}
