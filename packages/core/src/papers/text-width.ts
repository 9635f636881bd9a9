// How wide a line of text may come out when the reader's machine picks the typeface. Widths are
// those of DejaVu Sans, about the widest common sans, in parts of the type size: other faces set
// the same words narrower. Used to keep words inside their boxes and off each other.

/** Height of capitals and digits in parts of the type size. */
export const capHeight = 0.73;

const widths: readonly (readonly [RegExp, number])[] = [
  [/[iljI|.,:;'!′ ]/, 0.34],
  [/[frt()[\]\-/"″·°]/, 0.43],
  [/[mwMW%@—…]/, 1],
  [/[A-Z&×±–+=<>~≈]/, 0.78],
];
const other = 0.64;
const boldShare = 1.1;

/** Greatest width of a line of text likely on paper, in the unit of `size`. */
export function textWidth(words: string, size: number, bold = false): number {
  let sum = 0;
  for (const letter of words) sum += widths.find(([set]) => set.test(letter))?.[1] ?? other;
  return sum * size * (bold ? boldShare : 1);
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

/** The words cut with an ellipsis so that they fit into `width`. */
export function cutText(words: string, size: number, width: number, bold = false): string {
  if (textWidth(words, size, bold) <= width) return words;
  let cut = words;
  while (cut.length > 0 && textWidth(`${cut}…`, size, bold) > width) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}…`;
}

function breakWord(word: string, size: number, width: number, bold: boolean): string[] {
  const pieces: string[] = [''];
  for (const letter of word) {
    const longer = (pieces.at(-1) as string) + letter;
    if (textWidth(longer, size, bold) <= width || longer === letter)
      pieces[pieces.length - 1] = longer;
    else pieces.push(letter);
  }
  return pieces;
}
