// How wide a line of text may come out when the reader's machine picks the typeface. Widths are
// those of DejaVu Sans, about the widest common sans, in parts of the type size: other faces set
// the same words narrower; of scripts that it lacks, a whole square (Chinese, emoji) or most of one.
// Used to keep words inside their boxes and off each other.

/** Height of capitals and digits in parts of the type size. */
export const capHeight = 0.73;

const widths: readonly (readonly [RegExp, number])[] = [
  [/[iljI|.,:;'!′ ]/, 0.34],
  [/[frt()[\]\-/"″·°]/, 0.43],
  [/[mwMW%@—…]/, 1],
  [/[A-Z&×±–+=<>~≈]/, 0.78],
];
const other = 0.64;
/** Beyond Latin, the first that fits: marks that stand on a letter, ligatures of whole phrases, full
 * squares (East Asian wide forms, emoji), capitals, and letters of any other script. */
const foreign: readonly (readonly [RegExp, number])[] = [
  [/\p{Mn}|\p{Cf}/u, 0],
  [/[\ufdf0-\ufdff]/, 4],
  [
    /[\u1100-\u115f\u2600-\u27bf\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6\u{1f000}-\u{1faff}\u{20000}-\u{3fffd}]/u,
    1.35,
  ],
  [/[\u00c6\u0152\u0416\u0424\u0428-\u042b\u042e\u0436\u0448\u0449\u044b\u044e]/, 1.12],
  [/[\p{Lu}\u0430-\u045f]/u, 0.84],
  [/[\u2010-\u205e]/, 0.64],
  [/[\u0590-\u{10ffff}]/u, 1],
];
const boldShare = 1.1;

/** Greatest width of a line of text likely on paper, in the unit of `size`. */
export function textWidth(words: string, size: number, bold = false): number {
  let sum = 0;
  for (const letter of words) sum += widthOf(letter);
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

const widthOf = (letter: string): number =>
  (widths.find(([set]) => set.test(letter)) ?? foreign.find(([set]) => set.test(letter)))?.[1] ??
  other;

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
