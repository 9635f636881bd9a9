// How wide a line of text comes out in the typefaces that the PDFs carry and the screen has: IBM Plex Sans
// Condensed, and DejaVu Sans Condensed for what that lacks; advance widths without kerning, rounded up to a
// hundredth of the type size. Of scripts that neither has, a whole square (Chinese, emoji) or most of one:
// there the writers set what would come out wider into the room reckoned here. Used to keep words inside
// their boxes and off each other.

import { boldWidths, plainWidths } from './letter-widths.ts';

/** Height of capitals and digits in parts of the type size, the taller of both faces. */
export const capHeight = 0.73;

/** Letters of the table: those of the basic plane. */
const LETTERS = 0x10000;

/** Code point → one more than the width in hundredths; 0 for a letter that no face has. */
function tableOf(runs: readonly string[]): Uint8Array {
  const table = new Uint8Array(LETTERS);
  let at = 0;
  for (const [, gap, count, width] of runs.join(' ').matchAll(/(\w*)(?:\*(\w+))?:(\w+)/g)) {
    at += gap ? Number.parseInt(gap, 36) : 0;
    const end = at + (count ? Number.parseInt(count, 36) : 1);
    table.fill(Number.parseInt(width as string, 36) + 1, at, end);
    at = end;
  }
  return table;
}

const tables = { plain: tableOf(plainWidths), bold: tableOf(boldWidths) };

/** Letters that no face has, the first that fits: ligatures of whole phrases, full squares (East Asian
 * wide forms, emoji), letters of any other script. */
const foreign: readonly (readonly [RegExp, number])[] = [
  [/[\ufdf0-\ufdff]/, 4],
  [
    /[\u1100-\u115f\u2600-\u27bf\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6\u{1f000}-\u{1faff}\u{20000}-\u{3fffd}]/u,
    1.35,
  ],
];
const other = 1;
/** Stand on the letter before, or are not seen. */
const none = /[\p{Mn}\p{Cf}]/u;
/** Bold letters of faces picked by the reader's machine, in parts of plain ones. */
const boldShare = 1.1;

/** Width of a line of text on paper, in the unit of `size`. */
export function textWidth(words: string, size: number, bold = false): number {
  const table = bold ? tables.bold : tables.plain;
  let sum = 0;
  for (const letter of words) sum += widthOf(letter, table, bold);
  return (sum * size) / 100;
}

/** The words broken into lines no wider than `width`; a longer single word is broken inside. */
export function wrapText(words: string, size: number, width: number, bold = false): string[] {
  const lines: string[] = [];
  let current = '';
  for (const word of words.split(/\s+/).filter((part) => part !== '')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (textWidth(longer, size, bold) <= width) {
      current = longer;
      continue;
    }
    if (current !== '') lines.push(current);
    const pieces = breakWord(word, size, width, bold);
    lines.push(...pieces.slice(0, -1));
    current = pieces.at(-1) as string;
  }
  return current === '' ? lines : [...lines, current];
}

/** The largest of `size`, and steps of a tenth down to `least`, at which the words fit in one line
 * of `width`; null where they don't fit even at `least`. */
export function fittingSize(
  words: string,
  size: number,
  least: number,
  width: number,
  bold = false,
): number | null {
  const full = textWidth(words, 1, bold);
  const fit = Math.min(size, Math.floor((width / full) * 10) / 10);
  return fit >= least ? fit : null;
}

/** Words in as few lines as fit into a room: in one line from `size` down to half of it, then in several,
 * ever smaller, down to `least`. RangeError, with the words and the room, where even that is too large. */
export function linesIn(
  words: string,
  size: number,
  least: number,
  room: { readonly width: number; readonly height: number },
  bold = false,
): { readonly lines: readonly string[]; readonly size: number } {
  const one = fittingSize(words, size, size / 2, room.width, bold);
  if (one !== null) return { lines: [words], size: one };
  for (let type = size; type >= least - 1e-9; type -= 0.05) {
    const lines = wrapText(words, type, room.width, bold);
    if (lines.length * type * LINE <= room.height + 1e-9) return { lines, size: type };
  }
  throw new RangeError(
    `"${[...words].slice(0, 30).join('')}…" (${[...words].length} characters) does not fit ${room.width.toFixed(0)} × ${room.height.toFixed(1)} mm of a sheet: shorten it`,
  );
}

/** From one line to the next, in parts of the type size. */
const LINE = 1.2;

/** The words cut with an ellipsis so that they fit into `width`. */
export function cutText(words: string, size: number, width: number, bold = false): string {
  if (textWidth(words, size, bold) <= width) return words;
  let cut = words;
  while (cut.length > 0 && textWidth(`${cut}…`, size, bold) > width) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}

/** In hundredths of the type size. */
function widthOf(letter: string, table: Uint8Array, bold: boolean): number {
  const code = letter.codePointAt(0) as number;
  const known = code < LETTERS ? (table[code] as number) : 0;
  if (code > 0x2ff && none.test(letter)) return 0;
  if (known > 0) return known - 1;
  const share = foreign.find(([set]) => set.test(letter))?.[1] ?? other;
  return 100 * share * (bold ? boldShare : 1);
}

/** A letter with the marks on it, or emoji joined into one: never parted. */
const together = /.(?:\p{M}|\u200d|\ufe0f|\p{Emoji_Modifier}|(?<=\u200d).)*/gsu;

function breakWord(word: string, size: number, width: number, bold: boolean): string[] {
  const pieces: string[] = [''];
  for (const letter of word.match(together) ?? []) {
    const longer = (pieces.at(-1) as string) + letter;
    if (textWidth(longer, size, bold) <= width || longer === letter)
      pieces[pieces.length - 1] = longer;
    else pieces.push(letter);
  }
  return pieces;
}
