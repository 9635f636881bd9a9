// What the foot of the tally says of the cell that is typed in: the length in both systems, or what
// is wrong with it.

import type { Lengths } from '../../ui/lengths.ts';
import type { Words } from '../../words/words.ts';
import { type Cell, type CellFault, readSide } from './cells.ts';
import { cellText, checkRow, type TallyRow } from './rows.ts';

/** A fault in words; `text` is what was typed. */
export function faultWords(
  fault: CellFault,
  text: string,
  lengths: Lengths,
  words: Words['pile'],
): string {
  const { faults } = words;
  switch (fault.why) {
    case 'unread':
      return faults.unread(text, fault.expected);
    case 'range':
      return faults.range(lengths.large(fault.metres));
    case 'open':
      return fault.over > 0 ? faults.open(lengths.side(fault.over)) : faults.openExact;
    case 'count':
      return faults.count(text);
    case 'tagged count':
      return faults.taggedCount;
    case 'other sides':
      return faults.otherSides(text, fault.sides);
  }
}

/** The foot's line for a cell; `typed` is what stands in its field. Empty where there is nothing
 * to say. */
export function readoutOf(
  row: TallyRow,
  cell: Cell,
  typed: string | null,
  lengths: Lengths,
  words: Words['pile'],
): string {
  const kept = cellText(row, cell, lengths.side);
  const text = typed ?? kept;
  if (text === kept && row.draft && !row.fresh) {
    const fault = checkRow(row.reading, row.draft, lengths.bare).faults.get(cell);
    if (fault) return faultWords(fault, text, lengths, words);
  }
  if (typeof cell !== 'number' || text.trim() === '') return words.tally.hint;
  const read = readSide(text, lengths.bare);
  if (!read.ok)
    return text === kept || read.fault.why === 'range'
      ? faultWords(read.fault, text, lengths, words)
      : words.tally.hint;
  return words.tally.echo(lengths.side(read.metres), lengths.echo(read.metres));
}

/** The length typed, in the other system; empty where it is none. */
export function shortEcho(text: string, lengths: Lengths): string {
  const read = text.trim() === '' ? null : readSide(text, lengths.bare);
  return read?.ok ? lengths.echo(read.metres) : '';
}
