// The number of each page of a set, below the frame at the outer edge, so that a heap of loose paper can be
// put in order again. Millimetres.

import { type Drawing, text } from './drawing.ts';
import { cutText, textWidth } from './text-width.ts';

const size = 2.6;
/** Of the number's middle over the lower edge of the sheet, and of its end from the right. */
const up = 6.4;
const side = 10;

/** The drawings with `name` and page number below each; a set of one sheet bears its name alone. */
export const withPageNumbers = (drawings: readonly Drawing[], name: string): Drawing[] =>
  drawings.map((drawing, i) => {
    const number = drawings.length > 1 ? `page ${i + 1} of ${drawings.length}` : '';
    // The centring mark stands in the middle of the edge.
    const room = drawing.width / 2 - side - 4;
    const tail = number === '' ? '' : ` · ${number}`;
    const words = cutText(name, size, room - textWidth(tail, size)) + tail;
    const label = text([drawing.width - side, drawing.height - up], words, size, {
      anchor: 'end',
      ink: 'grey',
    });
    return { ...drawing, items: [...drawing.items, label] };
  });
