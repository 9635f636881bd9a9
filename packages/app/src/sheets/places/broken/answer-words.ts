// A way out of a broken panel in words, and as it is kept.

import type { DecidedBreak, Replacement } from '@shellraise/core';
import type { Lengths } from '../../../ui/lengths.ts';
import type { Words } from '../../../words/words.ts';

/** What is done, step by step, one sentence each. `numbers`: place → its number as shown. */
export function stepsOf(
  { moves }: Replacement,
  numbers: readonly string[],
  words: Words['fitting']['broken'],
  lengths: Lengths,
): string[] {
  return moves.map(({ from, to, kind, misfit }) => {
    const step = words.step(kind, from === null ? null : (numbers[from] ?? ''), numbers[to] ?? '');
    return misfit > 0 ? `${step}, ${words.offBy(lengths.small(misfit))}` : step;
  });
}

/** What it costs and leaves, one sentence each. */
export function costsOf(
  { undone, misfit, holesTake, leaves, lacks }: Replacement,
  numbers: readonly string[],
  words: Words['fitting']['broken'],
): string[] {
  return [
    undone === 0 ? words.nothingUndone : words.undone(undone),
    ...(leaves === null ? [] : [words.leaves(numbers[leaves] ?? '', lacks ?? '')]),
    ...(misfit > 0 ? [holesTake ? words.holesTake : words.holesDont] : []),
  ];
}

/** The answer as the project keeps it; `plain`: place → number with the datum not turned on. */
export function breakOf(
  place: number,
  { moves, lacks }: Pick<Replacement, 'moves' | 'lacks'>,
  plain: readonly string[],
): DecidedBreak {
  const number = (at: number): string => plain[at] as string;
  return {
    place: number(place),
    moves: moves.map(({ from, to, kind, turn }) => ({
      from: from === null ? null : number(from),
      to: number(to),
      kind,
      turn,
    })),
    lacks,
  };
}

/** Place → 1 where its panel is up: courses from the ground up to this one, but what is left out. */
export function builtUpTo(
  course: ArrayLike<number>,
  upTo: number,
  leftOut: readonly number[],
): Uint8Array {
  const out = new Set(leftOut);
  return Uint8Array.from(course, (own, place) => (own <= upTo && !out.has(place) ? 1 : 0));
}
