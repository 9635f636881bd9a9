// Labels laid on label sheets: as many sheets as it takes, each label drawn into its own box, or the nearest
// label sheet named on which they fit. No frame and no title block: the sheet is all labels. Millimetres.

import { type Box, type Drawing, group, type Item, type TextItem, text } from './drawing.ts';
import { cutLines, type LabelStock, labelBoxes, labelStocks } from './label-stock.ts';
import { paperSizes } from './page.ts';
import { capHeight, fittingSize, wrapText } from './text-width.ts';

/** A label: draws itself into a box, or null where the box is too small for it. */
export interface LabelDrawn {
  /** What it is called in an error. */
  readonly name: string;
  readonly draw: (box: Box) => Item[] | null;
}

/** The sheets of labels, at least one. `skip`: labels of the first sheet that are used already. RangeError
 * where a label does not fit, naming the nearest label sheet of the same paper that holds all of them. */
export function labelSheets(
  labels: readonly LabelDrawn[],
  stock: LabelStock,
  title: string,
  skip = 0,
): Drawing[] {
  const boxes = labelBoxes(stock);
  if (!(Number.isInteger(skip) && skip >= 0 && skip < boxes.length))
    throw new RangeError(`${skip} labels used: expected 0 to ${boxes.length - 1} of ${stock.name}`);
  const [width, height] = paperSizes[stock.paper];
  const count = Math.max(1, Math.ceil((labels.length + skip) / boxes.length));
  const drawn = labels.map((label, i) => {
    const items = label.draw(inner(boxes[(i + skip) % boxes.length] as Box));
    if (items === null) throw tooSmall(label, labels, stock);
    return group(items, { label: label.name });
  });
  return Array.from({ length: count }, (_, sheet) => {
    const from = sheet * boxes.length - skip;
    const own = drawn.slice(Math.max(0, from), from + boxes.length);
    return {
      width,
      height,
      title: `${title}, sheet ${sheet + 1} of ${count}`,
      description: `${own.length} labels on ${stock.name}, ${sizeWords(stock)} each.`,
      items: [...cutLines(stock), ...own],
    };
  });
}

/** Kept free inside a label's edge: sheets shift by a millimetre or so in a printer. */
const LABEL_MARGIN = 2;

const inner = ({ x, y, width, height }: Box): Box => ({
  x: x + LABEL_MARGIN,
  y: y + LABEL_MARGIN,
  width: width - 2 * LABEL_MARGIN,
  height: height - 2 * LABEL_MARGIN,
});

const sizeWords = ({ width, height }: LabelStock): string =>
  `${Math.round(width * 10) / 10} x ${Math.round(height * 10) / 10} mm`;

function tooSmall(label: LabelDrawn, labels: readonly LabelDrawn[], stock: LabelStock): RangeError {
  const bigger = labelStocks
    .filter((one) => one.paper === stock.paper)
    .sort((a, b) => a.width * a.height - b.width * b.height)
    .find((one) => {
      const box = inner(labelBoxes(one)[0] as Box);
      return labels.every(({ draw }) => draw(box) !== null);
    });
  const nearest =
    bigger === undefined
      ? `no label sheet of ${stock.paper} holds it: shorten the words`
      : `the nearest that holds all is ${bigger.name} (${sizeWords(bigger)})`;
  return new RangeError(
    `label ${label.name} does not fit ${stock.name} (${sizeWords(stock)}): ${nearest}`,
  );
}

/** Words in a box from its top left, in the largest type from `size` down to `least` at which all lines
 * fit; null where none does. */
export function wordsIn(
  words: string,
  box: Box,
  size: number,
  least: number,
  more: Pick<TextItem, 'bold' | 'ink'> = {},
): { readonly items: TextItem[]; readonly height: number } | null {
  if (words.trim() === '') return { items: [], height: 0 };
  const bold = more.bold ?? false;
  const one = fittingSize(words, size, least, box.width, bold);
  for (let type = size; type >= least - 1e-9; type -= 0.2) {
    const lines =
      one !== null && one >= type - 1e-9 ? [words] : wrapText(words, type, box.width, bold);
    const height = lines.length * type * 1.3;
    if (height > box.height + 1e-9) continue;
    if (lines.length > 1 && one !== null && one * 1.3 <= box.height && one > 0.8 * type) continue;
    const items = lines.map((line, i) =>
      text([box.x, box.y + type * (0.65 + 1.3 * i)], line, type, more),
    );
    return { items, height };
  }
  return null;
}

/** One line in the middle of a box, as large as it goes; null where `least` is too large. */
export function lineIn(words: string, box: Box, least: number, bold = true): TextItem | null {
  const size = fittingSize(words, Math.min(60, box.height / capHeight), least, box.width, bold);
  if (size === null) return null;
  const middle: readonly [number, number] = [box.x + box.width / 2, box.y + box.height / 2];
  return text(middle, words, size, { bold, anchor: 'middle' });
}
