// Comparison of one figure, or a list of figures, with an outside value: asserts, and where the
// environment variable SHELLRAISE_CHECKS names a file adds a line to it, from which
// scripts/checks.mjs makes docs/checks.md. The source is the comment on top of the test's file.

import { appendFileSync } from 'node:fs';
import { expect } from 'vitest';

/** What a tolerance is relative to. */
export type Allowed =
  /** Absolute, in the unit of the figure. */
  | { readonly within: number }
  /** A share of the expected value. */
  | { readonly ratio: number }
  /** A share of the largest of the expected values, for lists of which some are near 0. */
  | { readonly ofLargest: number };

/** A figure of ours beside one of somebody else's. */
export type Check = Allowed & {
  readonly got: number | ArrayLike<number>;
  readonly expected: number | ArrayLike<number>;
  /** What the figure is, where the title of the test does not say it. */
  readonly what?: string;
  /** How sure the expected value is, where it differs from what the file's source says. */
  readonly standing?: 'confirmed' | 'printed' | 'from memory' | 'common practice' | 'reckoned';
};

/** One line of the table: the worst of `count` figures. */
export interface CheckRow {
  readonly what?: string | undefined;
  readonly expected: number | string;
  readonly got: number;
  /** In the measure of `allowed`; null where the bound is the whole check. */
  readonly error: number | null;
  readonly allowed: number;
  readonly measure: 'absolute' | 'relative' | 'of the largest' | 'bound';
  readonly count: number;
  readonly standing?: string | undefined;
}

/** Fails unless each figure is nearer to the expected one than allowed; equal ones always are. */
export function checked(check: Check): void {
  const row = worst(check);
  record(row);
  if (!(row.error === 0 || (row.error as number) < row.allowed))
    expect.fail(
      `${check.what ?? 'the figure'} is ${row.got}, expected ${row.expected}: off by ${row.error} (${row.measure}), less than ${row.allowed} is allowed`,
    );
}

/** The figure that is furthest off; lists of different lengths are refused. */
function worst(check: Check): CheckRow {
  const [got, expected] = [listed(check.got), listed(check.expected)];
  if (got.length !== expected.length || got.length === 0)
    expect.fail(`${got.length} figures, ${expected.length} expected`);
  const largest = Math.max(...expected.map(Math.abs));
  const errors = got.map((x, i) => {
    const error = Math.abs(x - expected[i]);
    if ('ratio' in check) return error / Math.abs(expected[i]);
    return 'ofLargest' in check ? error / largest : error;
  });
  // Figures that are no numbers are the worst.
  const broken = errors.findIndex(Number.isNaN);
  const at = broken >= 0 ? broken : errors.indexOf(Math.max(...errors));
  return {
    what: check.what,
    expected: expected[at],
    got: got[at],
    error: errors[at],
    ...measured(check),
    count: got.length,
    standing: check.standing,
  };
}

const listed = (x: number | ArrayLike<number>): number[] =>
  typeof x === 'number' ? [x] : Array.from(x);

function measured(allowed: Allowed): Pick<CheckRow, 'allowed' | 'measure'> {
  if ('ratio' in allowed) return { allowed: allowed.ratio, measure: 'relative' };
  if ('ofLargest' in allowed) return { allowed: allowed.ofLargest, measure: 'of the largest' };
  return { allowed: allowed.within, measure: 'absolute' };
}

/** Adds a line for the test that runs, if lines are asked for and it is an outside check. */
export function record(row: CheckRow): void {
  const file = process.env.SHELLRAISE_CHECKS;
  if (!file) return;
  const { testPath, currentTestName } = expect.getState();
  if (!currentTestName || !testPath?.includes('/tests/outside/')) return;
  appendFileSync(file, `${JSON.stringify({ testPath, test: currentTestName, ...row })}\n`);
}
