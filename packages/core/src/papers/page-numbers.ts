// The number of each page of a set, below the frame at the outer edge, so that a heap of loose paper can be
// put in order again. Millimetres.

import { type Drawing, text } from './drawing.ts';
import { linesIn } from './text-width.ts';

const size = 2.6;
/** Of the number's middle over the lower edge of the sheet, and of its end from the right. */
const up = 6.4;
const side = 10;
/** Height of the strip between frame and edge that a printer still prints. */
const strip = 6;

/** The drawings with `name` and page number below each; a set of one sheet bears its name alone. A long
 * name is set smaller, then in several lines; RangeError where that does not do. */
export const withPageNumbers = (drawings: readonly Drawing[], name: string): Drawing[] =>
  drawings.map((drawing, i) => {
    const number = drawings.length > 1 ? `page ${i + 1} of ${drawings.length}` : '';
    // The centring mark stands in the middle of the edge.
    const room = drawing.width / 2 - side - 4;
    const said = number === '' ? name : `${name} · ${number}`;
    const { lines, size: type } = linesIn(said, size, 1, { width: room, height: strip });
    const labels = lines.map((words, n) => {
      const y = drawing.height - up + (n - (lines.length - 1) / 2) * type * 1.2;
      return text([drawing.width - side, y], words, type, { anchor: 'end', ink: 'grey' });
    });
    return { ...drawing, items: [...drawing.items, ...labels] };
  });
