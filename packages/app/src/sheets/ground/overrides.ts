// The lead's own numbers in the place of the table's, as plain data.

import { LOAD_NUMBERS, type LoadNumberKey, type Override } from '@shellraise/core';
import type { Typed } from '../../ui/use-typed.ts';
import { within } from './edits.ts';

/** The overrides with this one in the place of any other of its number. */
export const withOverride = (
  overrides: readonly Override[],
  { number, value, reason }: Override,
): Override[] => [
  ...overrides.filter((one) => one.number !== number),
  { number, value, reason: reason.trim() },
];

/** The overrides without those of a number. */
export const withoutOverride = (
  overrides: readonly Override[],
  number: LoadNumberKey,
): Override[] => overrides.filter((one) => one.number !== number);

/** What counts: of each number its last override, in the table's order. */
export const overridesNow = (overrides: readonly Override[]): readonly Override[] =>
  (Object.keys(LOAD_NUMBERS) as LoadNumberKey[]).flatMap(
    (key) => overrides.findLast(({ number }) => number === key) ?? [],
  );

/** A number typed for a row of the table; nothing typed is no number. */
export function readOwn(key: LoadNumberKey, text: string): Typed<number> {
  const { least, most } = LOAD_NUMBERS[key];
  const typed = within(text.replace('−', '-'), least, most);
  return typed.ok && typed.value !== undefined ? { ok: true, value: typed.value } : { ok: false };
}

/** A value of the table with its unit. */
export const withUnit = (value: number, unit: string): string =>
  `${String(value).replace('-', '−')}${unit === '' ? '' : ` ${unit}`}`;
