// The latest moment at which a thing still passes the shell while it is built: the most panels, in the
// order of work, with which a way out is found. What passes with more panels passes with fewer, so the
// order is halved again and again. A way that is found is sure; that none is found with one panel more is
// no proof, unless a proof is told.

import type { PassAnswer, PassOptions } from '../passage/passing.ts';
import { type Carry, type CarryAnswer, type CarryQuestion, carryThrough } from './carry.ts';

/** The latest moment. */
export interface LastPassing {
  readonly name: string;
  /** Panels of the finished shell, without those left out on purpose. */
  readonly panels: number;
  /** The most panels placed with which a way was found, and that way; null: not even before the first
   * panel. All of them where it passes the finished shell. */
  readonly last: { readonly placed: number; readonly carried: CarryAnswer } | null;
  /** The fewest panels placed with which none was found; null where it passes the finished shell. */
  readonly after: { readonly placed: number; readonly answer: PassAnswer } | null;
}

/** How long each look searches: less than one thing alone is looked for, as there are several. */
const LOOK: PassOptions = {
  crossings: 2500,
  followed: 50,
  movements: 200,
  allMovements: 600,
  cells: 0,
};

/** The latest moment at which a thing passes; `options` go before those of each look. */
export function lastPassing(
  question: Omit<CarryQuestion, 'placed'>,
  thing: Carry,
  options: PassOptions = {},
): LastPassing {
  const out = new Set(question.leftOut);
  const panels = question.order.filter((place) => !out.has(place)).length;
  const looks = 2 + Math.ceil(Math.log2(panels + 1));
  let done = 0;
  const look = (placed: number): CarryAnswer => {
    const carried = carryThrough({ ...question, placed }, thing, {
      ...{ ...LOOK, ...options },
      onProgress: (part) => options.onProgress?.(Math.min(1, (done + part) / looks)),
    });
    done += 1;
    return carried;
  };
  const whole = look(panels);
  if (whole.answer.status === 'passes')
    return { name: thing.name, panels, last: { placed: panels, carried: whole }, after: null };
  let last: LastPassing['last'] = null;
  let after = { placed: panels, answer: whole.answer };
  while (after.placed - (last?.placed ?? -1) > 1 && !options.shouldStop?.()) {
    const placed = Math.floor((after.placed + (last?.placed ?? -1)) / 2);
    const carried = look(placed);
    if (carried.answer.status === 'passes') last = { placed, carried };
    else after = { placed, answer: carried.answer };
  }
  return { name: thing.name, panels, last, after };
}
