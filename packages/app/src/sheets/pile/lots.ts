// Hardware lots as text in a form, and read back. Lengths in metres.

import {
  type HardwareRow,
  type LengthUnit,
  LONGEST_ITEM,
  MOST_COUNTED,
  PLATE_CORNERS,
  readLength,
} from '@shellraise/core';
import { named } from './rows.ts';

/** A lot as typed. */
export interface LotText {
  readonly item: HardwareRow['item'];
  readonly thread: string;
  readonly length: string;
  readonly count: string;
  readonly corners: string;
  readonly state: HardwareRow['state'];
}

/** Why a lot can't be taken. */
export type LotFault =
  | { readonly field: 'length'; readonly expected: string | null }
  | { readonly field: 'count' | 'corners' };

/** A lot as typed: empty, or as it is in the pile. */
export const lotText = (lot: HardwareRow | null, length: (metres: number) => string): LotText => ({
  item: lot?.item ?? 'bolt',
  thread: lot?.thread ?? '',
  length: lot?.length === undefined ? '' : length(lot.length),
  count: lot ? `${lot.count}` : '',
  corners: lot?.corners === undefined ? '' : `${lot.corners}`,
  state: lot?.state ?? 'unknown',
});

/** The lot, or its faults. What the form does not show is kept from `before`; a length that was not
 * typed anew keeps its value. */
export function readLot(
  text: LotText,
  before: HardwareRow | null,
  unit: LengthUnit,
  length: (metres: number) => string,
): { readonly lot: HardwareRow | null; readonly faults: readonly LotFault[] } {
  const faults: LotFault[] = [];
  const metres = lotLength(text.length, before, unit, length);
  if (typeof metres === 'object') faults.push(metres);
  const count = wholeIn(text.count, 0, MOST_COUNTED);
  if (count === null) faults.push({ field: 'count' });
  const corners =
    text.corners.trim() === ''
      ? undefined
      : wholeIn(text.corners, PLATE_CORNERS.least, PLATE_CORNERS.most);
  if (corners === null) faults.push({ field: 'corners' });
  if (faults.length > 0 || count === null || typeof metres === 'object')
    return { lot: null, faults };
  const row = {
    ...before,
    item: text.item,
    thread: named(text.thread),
    length: metres,
    count,
    corners: text.item === 'plate' ? (corners ?? undefined) : undefined,
    rim: text.item === 'plate' ? before?.rim : undefined,
    state: text.state,
  };
  const lot = Object.fromEntries(
    Object.entries(row).filter(([, value]) => value !== undefined),
  ) as HardwareRow;
  return { lot, faults };
}

function lotLength(
  text: string,
  before: HardwareRow | null,
  unit: LengthUnit,
  length: (metres: number) => string,
): number | undefined | LotFault {
  const plain = text.trim();
  if (plain === '') return undefined;
  if (before?.length !== undefined && plain === length(before.length)) return before.length;
  const read = readLength(plain, { unit });
  if (!read.ok) return { field: 'length', expected: read.faults[0]?.expected ?? null };
  return read.value > 0 && read.value <= LONGEST_ITEM
    ? read.value
    : { field: 'length', expected: null };
}

function wholeIn(text: string, least: number, most: number): number | null {
  const plain = text.trim();
  if (!/^\d{1,6}$/.test(plain)) return null;
  const count = Number(plain);
  return count >= least && count <= most ? count : null;
}
