// The cells of a row of the tally, as text and as what the text means. A side is typed in any unit;
// a bare number is in the unit of the person's system, and is kept with that unit, so that it means
// the same when the system is switched. Metres.

import {
  LEAST_SIDES,
  type LengthUnit,
  MOST_COUNTED,
  type ReadingRow,
  readLength,
  SIDE_LENGTHS,
} from '@shellraise/core';
import type { DraftRow } from '../../state/doc.ts';

/** A cell of a row: a side by its index from 0, or a named one. */
export type Cell = 'tag' | 'mark' | 'by' | 'seenFrom' | 'condition' | 'count' | number;

/** Why a cell can't be used. */
export type CellFault =
  | { readonly why: 'unread'; readonly expected: string }
  | { readonly why: 'range'; readonly metres: number }
  | { readonly why: 'open'; readonly over: number }
  | { readonly why: 'count' }
  | { readonly why: 'tagged count' }
  | { readonly why: 'other sides'; readonly sides: number };

/** A length as typed, or why it can't be a side. */
export type SideRead =
  | { readonly ok: true; readonly metres: number }
  | { readonly ok: false; readonly fault: CellFault };

/** The columns of a tally whose panels have up to so many sides. */
export const columnsFor = (sides: number): readonly Cell[] => [
  ...(['tag', 'mark', 'by'] as const),
  ...Array.from({ length: sides }, (_, i) => i),
  ...(['seenFrom', 'condition', 'count'] as const),
];

/** Sides that a tally needs columns for. */
export function sidesIn(readings: readonly ReadingRow[], drafts: readonly DraftRow[]): number {
  let most: number = LEAST_SIDES;
  for (const { sides } of readings) most = Math.max(most, sides.length);
  for (const { sides } of drafts) most = Math.max(most, sides.length);
  return most;
}

/** A side as typed; a bare number in `unit`. */
export function readSide(text: string, unit: LengthUnit): SideRead {
  const read = readLength(text, { unit });
  if (!read.ok)
    return { ok: false, fault: { why: 'unread', expected: read.faults[0]?.expected ?? '' } };
  const metres = read.value;
  if (metres < SIDE_LENGTHS.min || metres > SIDE_LENGTHS.max)
    return { ok: false, fault: { why: 'range', metres } };
  return { ok: true, metres };
}

/** The text with the unit that a bare number had when it was typed; other text as it is. */
export function withUnit(text: string, unit: LengthUnit): string {
  const plain = text.trim();
  if (plain === '' || readLength(plain).ok || !readLength(plain, { unit }).ok) return plain;
  return unit === 'in' ? `${plain}"` : `${plain} ${unit}`;
}

/** A whole number of panels, or null. Empty stands for one. */
export function readCount(text: string): number | null {
  const plain = text.trim();
  if (plain === '') return 1;
  if (!/^\d{1,6}$/.test(plain)) return null;
  const count = Number(plain);
  return count >= 1 && count <= MOST_COUNTED ? count : null;
}

/** How much the longest side exceeds the others together, metres; null where they can meet. */
export function gapOf(sides: readonly number[]): number | null {
  const sum = sides.reduce((total, side) => total + side, 0);
  const over = 2 * Math.max(...sides) - sum;
  return over < 0 ? null : over;
}

/** The faces by name or first letter, as people write them. */
export function readFace(text: string): DraftRow['seenFrom'] | null {
  return startOf(['outside', 'inside', 'unknown'] as const, text);
}

/** A condition by name or first letter; `mend` is `repair`. */
export function readCondition(text: string): Exclude<DraftRow['condition'], ''> | null {
  if (/^(to )?mend(ing)?$/i.test(text.trim())) return 'repair';
  return startOf(['good', 'repair', 'scrap'] as const, text);
}

function startOf<T extends string>(words: readonly T[], text: string): T | null {
  const plain = text.trim().toLowerCase();
  if (plain === '') return null;
  return words.find((word) => word === plain || (plain.length === 1 && word[0] === plain)) ?? null;
}
