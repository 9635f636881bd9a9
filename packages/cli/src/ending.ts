// How a command can end other than well, and the exit code that says so.

/** 1: an honest "no"; 2: bad input; 3: a fault of ours. */
export type BadExit = 1 | 2 | 3;

/** Ends the command: the lines go to standard error, one each. */
export class Ending extends Error {
  readonly exit: BadExit;
  readonly lines: readonly string[];

  constructor(exit: BadExit, lines: readonly string[]) {
    super(lines.join('\n'));
    this.exit = exit;
    this.lines = lines;
  }
}

/** Bad input: what was given and what was allowed. */
export const badInput = (...lines: readonly string[]): Ending => new Ending(2, lines);
