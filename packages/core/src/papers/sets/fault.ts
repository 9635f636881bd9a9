// Why a set of sheets can't be made: one error for all of them, with its reasons as lines.

import { describeFault, type Fault, type Read } from '../../measure/fault.ts';

/** A set that can't be made. */
export class SheetFault extends Error {
  /** `input`: what was entered can't be; `no`: an honest no, nothing is wrong with what was entered. */
  readonly why: 'input' | 'no';
  readonly lines: readonly string[];

  constructor(why: 'input' | 'no', lines: readonly string[]) {
    super(lines.join('\n'));
    this.why = why;
    this.lines = lines;
  }
}

/** What was read; throws a `SheetFault` with every fault where it was not. */
export function readOr<T>(read: Read<T>): T {
  if (read.ok) return read.value;
  throw new SheetFault('input', read.faults.map(describeFault));
}

/** The faults of an honest no as lines. */
export const noLines = (faults: readonly Fault[]): string[] =>
  faults.map(({ path, found, expected }) => `${path}: ${found}; expected ${expected}`);
