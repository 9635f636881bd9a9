// The keys of the keypad for one hand, and what each does to the text. The order of asking: sides
// that are missing, then the next panel.

import { LEAST_SIDES } from '@shellraise/core';
import type { LengthSystem } from '../../state/settings.ts';
import type { Cell } from './cells.ts';
import type { TallyRow } from './rows.ts';

/** A key: a sign to be put, or an act. */
export type Key =
  | {
      readonly sign: string;
      readonly name: 'digit' | 'foot' | 'inch' | 'slash' | 'space' | 'point';
    }
  | { readonly act: 'back' | 'letters' | 'none' };

const digits = (signs: string): Key[] => [...signs].map((sign) => ({ sign, name: 'digit' }));
const back: Key = { act: 'back' };

/** Keys row by row; `across` in a row. */
export interface KeyBoard {
  readonly across: 3 | 4;
  readonly keys: readonly Key[];
}

const metric: KeyBoard = {
  across: 3,
  keys: [...digits('789456123'), { sign: '.', name: 'point' }, ...digits('0'), back],
};
const inch: KeyBoard = {
  across: 4,
  keys: [
    ...digits('789'),
    back,
    ...digits('456'),
    { sign: "'", name: 'foot' },
    ...digits('123'),
    { sign: '"', name: 'inch' },
    { sign: ' ', name: 'space' },
    ...digits('0'),
    { sign: '/', name: 'slash' },
    { sign: '.', name: 'point' },
  ],
};
const names: KeyBoard = {
  across: 3,
  keys: [...digits('789456123'), { act: 'letters' }, ...digits('0'), back],
};
const counts: KeyBoard = {
  across: 3,
  keys: [...digits('789456123'), { act: 'none' }, ...digits('0'), back],
};

/** The keys for a cell. */
export function keysFor(cell: Cell, system: LengthSystem): KeyBoard {
  if (typeof cell === 'number') return system === 'metric' ? metric : inch;
  return cell === 'count' ? counts : names;
}

/** The text after a sign; two spaces in a row are one. */
export const withSign = (text: string, sign: string): string =>
  (sign === ' ' && (text === '' || text.endsWith(' '))) || text.length >= 30 ? text : text + sign;

/** The text without its last sign. */
export const withoutLast = (text: string): string => [...text].slice(0, -1).join('');

/** The sign that a key of a real keyboard puts, or null. */
export const signOf = (key: string): string | null =>
  /^[\d.'"/ ]$/.test(key) ? key : key === ',' ? '.' : null;

/** The side asked for after this cell; null where the row has all of its sides. */
export function nextAsked(row: TallyRow, cell: Cell): number | null {
  const sides = Math.max(LEAST_SIDES, row.reading?.sides.length ?? 0, row.draft?.sides.length ?? 0);
  const from = typeof cell === 'number' ? cell + 1 : 0;
  if (row.reading) return from < sides && typeof cell === 'number' ? from : null;
  const missing = (i: number): boolean => (row.draft?.sides[i] ?? '') === '';
  for (let step = 0; step < sides; step++) {
    const side = (from + step) % sides;
    if (missing(side)) return side;
  }
  return null;
}

/** The tag that counts on from the last row's, as many figures wide, past those in use; empty where
 * that has no figures. */
export function nextTag(last: string | undefined, used: ReadonlySet<string>): string {
  const match = /^(.*?)(\d{1,9})$/.exec(last ?? '');
  if (!match) return '';
  const [, stem = '', figures = ''] = match;
  let number = Number(figures) + 1;
  const tag = (): string => `${stem}${String(number).padStart(figures.length, '0')}`;
  while (used.has(tag())) number++;
  return tag();
}
