// Lengths as the sheets show them: the reader's unit first, the other one after it.

import { type LengthStyle, writeLength } from '../measure/length.ts';

/** Which unit comes first on a sheet. */
export type LengthsShown = 'metric' | 'inch';

const millimetres: LengthStyle = { unit: 'mm', step: 1 };
const inches: LengthStyle = { unit: 'in', step: 16 };
const metres: LengthStyle = { unit: 'm' };
const feet: LengthStyle = { unit: 'ft', step: 16 };

/** A length in metres in the unit that comes first: whole millimetres or sixteenths of an inch. */
export function lengthFirst(metres: number, shown: LengthsShown): string {
  return primes(writeLength(metres, shown === 'metric' ? millimetres : inches));
}

/** A length in metres in the other unit. */
export function lengthSecond(metres: number, shown: LengthsShown): string {
  return lengthFirst(metres, shown === 'metric' ? 'inch' : 'metric');
}

/** A radius, height or width in metres, to the millimetre, or in feet, inches and sixteenths. */
export function largeFirst(length: number, shown: LengthsShown): string {
  return primes(writeLength(length, shown === 'metric' ? metres : feet));
}

/** The same in the other unit. */
export function largeSecond(length: number, shown: LengthsShown): string {
  return largeFirst(length, shown === 'metric' ? 'inch' : 'metric');
}

/** What the title block says of the lengths. */
export const lengthsNote = (shown: LengthsShown): string =>
  shown === 'metric' ? 'mm (inches)' : 'inches (mm)';

/** A bolt's length as it is sold: sixteenths of an inch for inch threads, millimetres for metric. */
export const boltLength = (thread: string, metres: number): string =>
  primes(writeLength(metres, thread.startsWith('M') ? millimetres : inches));

const primes = (words: string): string => words.replace(/"/g, '″').replace(/'/g, '′');
