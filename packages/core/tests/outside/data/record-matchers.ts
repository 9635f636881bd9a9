// Set up for `npm run checks` alone: what the outside tests hold to a number by an ordinary matcher
// (toBeCloseTo, toBe, toEqual, toHaveLength, an upper bound) is recorded as well. Other matchers,
// lower bounds (mostly the twins) and anything negated are not.

import { chai } from 'vitest';
import { type CheckRow, record } from './checked.ts';

type Row = Omit<CheckRow, 'count'>;

const exact = (got: unknown, expected: unknown): Row | null =>
  typeof got === 'number' && typeof expected === 'number'
    ? { got, expected, error: Math.abs(got - expected), allowed: 0, measure: 'absolute' }
    : null;

const bound = (got: unknown, most: unknown, sign: string): Row | null =>
  typeof got === 'number' && typeof most === 'number' && Number.isFinite(most)
    ? { got, expected: `${sign} ${most}`, error: null, allowed: most, measure: 'bound' }
    : null;

/** The pairs of data/pairs.ts record themselves. */
const isPairs = (got: unknown): boolean =>
  Array.isArray(got) && got.some((x) => typeof x === 'object' && x !== null && 'actual' in x);

const rows: Readonly<
  Record<string, (got: unknown, ...args: unknown[]) => readonly (Row | null)[]>
> = {
  toBeCloseTo: (got, expected, digits = 2) => {
    const row = exact(got, expected);
    return [row && { ...row, allowed: 10 ** -(digits as number) / 2 }];
  },
  toBe: (got, expected) => [exact(got, expected)],
  toEqual: (got, expected) =>
    Array.isArray(got) && Array.isArray(expected)
      ? expected.map((x, i) => exact(got[i], x))
      : [exact(got, expected)],
  toHaveLength: (got, expected) =>
    isPairs(got) ? [] : [exact((got as ArrayLike<unknown>).length, expected)],
  toBeLessThan: (got, most) => [bound(got, most, '<')],
  toBeLessThanOrEqual: (got, most) => [bound(got, most, '≤')],
};

for (const [name, rowsOf] of Object.entries(rows))
  chai.util.overwriteMethod(
    chai.Assertion.prototype,
    name,
    (original: (...args: unknown[]) => unknown) =>
      function (this: object, ...args: unknown[]) {
        if (!chai.util.flag(this, 'negate'))
          for (const row of rowsOf(chai.util.flag(this, 'object'), ...args))
            if (row) record({ ...row, count: 1 });
        return original.apply(this, args);
      },
  );
