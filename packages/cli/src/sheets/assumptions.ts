// What the sheets of an arrangement take for granted, in words.

import type { Chosen } from '../job.ts';
import type { Lengths } from '../lengths.ts';
import { fittedWords } from '../tape.ts';

/** The sentences, in one run. */
export function assumptions({ found, shape, loaded, numbers }: Chosen, lengths: Lengths): string {
  const which = found.shapes.indexOf(shape) + 1;
  const doubts = shape.suspects.map(
    ({ kind, side, measured, expected }) =>
      `kind ${kind} side ${side + 1}, measured ${lengths.side(measured)}, by the net ${lengths.side(expected)}`,
  );
  return [
    `Sphere of radius ${lengths.large(shape.radius)}, give or take ${lengths.small(shape.radiusSd)}.`,
    fittedWords(loaded.pile, lengths),
    found.shapes.length > 1 ? `Shape ${which} of the ${found.shapes.length} that fit.` : '',
    numbers.status === 'lost'
      ? `Numbers are NOT those painted on the panels, which could not be kept: ${numbers.reason}.`
      : '',
    doubts.length > 0 ? `In doubt: ${doubts.join('; ')}.` : '',
  ]
    .filter((words) => words !== '')
    .join(' ')
    .replaceAll('"', '″')
    .replaceAll("'", '′');
}
