// Tally sheets to measure a pile with a pencil: a row a panel, a cell a side, with what the pile's table
// asks for; a picture of how sides run; for known kinds how long each side should be.

import type { Kind } from '../pile/kind.ts';
import {
  type Box,
  circle,
  type Drawing,
  type Item,
  inked,
  type Point,
  polygon,
  text,
} from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, list, TICK, words } from './flow-blocks.ts';
import { handTest } from './kind-words.ts';
import { type LengthsShown, lengthFirst, lengthsNote } from './length-text.ts';
import type { Paper } from './page.ts';
import { panelShape, standingSide } from './panel-shape.ts';

/** Options of `tallySheets`. */
export interface TallyOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
  /** Readings of each known kind; 4 where left out. */
  readonly readings?: number;
  /** Blank rows for panels of unknown kind; 30 where left out. */
  readonly blank?: number;
  /** Sides of the panels in the blank rows; 3 where left out. */
  readonly sides?: number;
}

/** Between which points is measured, and how, before the first row is filled in. */
const HOW: readonly string[] = [
  'Lay the panel with its outside up and write "out"; if only its inside can be seen, write "in". Nobody knows: leave it blank.',
  'Begin at any side, go round anticlockwise as you see it, and write every side, hook to the same two points each time: hole to hole, corner to corner of the skin, or hub to hub. Tick below which.',
  'Read every side twice, the second time from the other end. They differ by more than 2 mm (1/16″): read again.',
  'Write what is painted or stamped on it as it is, and a tag of your own: stick it on before you lay the panel down.',
  'Condition: good, repair, or scrap.',
];

/** The sheets, one at least: known kinds first, then blank rows. RangeError for fewer than 3 sides or
 * more than 8, and for counts that are no whole numbers from 0 to 1000. */
export function tallySheets(
  kinds: readonly Kind[],
  facts: SheetFacts,
  options: TallyOptions = {},
): Drawing[] {
  const { readings = 4, blank = 30, sides = 3 } = options;
  const shown = options.lengths ?? 'metric';
  if (!(Number.isInteger(sides) && sides >= 3 && sides <= 8))
    throw new RangeError(`${sides} sides a panel: expected 3 to 8`);
  for (const count of [readings, blank])
    if (!(Number.isInteger(count) && count >= 0 && count <= 1000))
      throw new RangeError(`${count} rows: expected 0 to 1000`);
  const blocks: FlowBlock[] = [
    list('number', HOW),
    {
      block: 'figure',
      height: 44,
      draw: (box) => howItems(box),
    },
    list('tick', ['measured along the holes', 'measured along the skin', 'measured hub to hub']),
    { block: 'blanks', names: ['Measured by', 'Day', 'Tape (name, checked against)'] },
    ...(readings === 0 ? [] : kinds.flatMap((kind) => kindBlocks(kind, readings, shown))),
    ...(blank === 0
      ? []
      : [heading(kinds.length > 0 ? 'Other panels' : 'Panels'), tally(sides, [], blank)]),
  ];
  return flowSheets(blocks, facts, {
    ...(options.paper && { paper: options.paper }),
    heading: 'Tally of panels',
    remark:
      'a row a panel; write the unit once at the head of the column where it is not the one named',
    lengths: lengthsNote(shown),
  });
}

function kindBlocks(kind: Kind, rows: number, shown: LengthsShown): FlowBlock[] {
  const sides = kind.sides
    .map((side, i) => `side ${i + 1}: ${lengthFirst(side, shown)}`)
    .join(', ');
  const test = handTest(kind);
  const marks = kind.marks.length === 0 ? '' : ` Marked ${kind.marks.join(', ')}.`;
  return [
    heading(`Kind ${kind.id}`),
    words(`${sides}, as fitted, hub to hub.${marks}${test === null ? '' : ` ${test}`}`, {
      quiet: true,
    }),
    tally(kind.sides.length, kind.marks.length === 1 ? kind.marks : [], rows),
  ];
}

function tally(sides: number, marks: readonly string[], rows: number): FlowBlock {
  const each = 0.48 / sides;
  return {
    block: 'table',
    grid: true,
    rowHeight: 8,
    size: 3,
    columns: [
      { name: 'tag', share: 0.11 },
      { name: 'mark', share: 0.11 },
      ...Array.from({ length: sides }, (_, i) => ({ name: `side ${i + 1}`, share: each })),
      { name: 'out, in', share: 0.08 },
      { name: 'condition', share: 0.12 },
      { name: 'checked', share: 0.1, align: 'start' },
    ],
    rows: Array.from({ length: rows }, () => [
      '',
      marks[0] ?? '',
      ...Array.from({ length: sides }, () => ''),
      '',
      '',
      TICK,
    ]),
  };
}

/** A panel with its sides in their order, and the way round. */
function howItems(box: Box): Item[] {
  const shape = panelShape([1, 0.86, 0.8], standingSide({ sides: [1, 0.86, 0.8], hand: 'R' }));
  if (shape === null) return [];
  const k = (box.height - 12) / Math.max(...shape.corners.map(([, y]) => y));
  const x0 = box.x + box.width / 2 - k / 2;
  const corners = shape.corners.map(
    ([x, y]): Point => [x0 + x * k, box.y + box.height - 6 - y * k],
  );
  const middle: Point = [
    corners.reduce((sum, p) => sum + p[0], 0) / 3,
    corners.reduce((sum, p) => sum + p[1], 0) / 3,
  ];
  const dot = corners[0] as Point;
  return [
    polygon(corners, { weight: 'medium' }),
    circle(dot, 1, null, inked),
    ...corners.map((corner, i) => {
      const next = corners[(i + 1) % 3] as Point;
      const at: Point = [(corner[0] + next[0]) / 2, (corner[1] + next[1]) / 2];
      const away = 5 / Math.hypot(at[0] - middle[0], at[1] - middle[1]);
      return text(
        [at[0] + (at[0] - middle[0]) * away, at[1] + (at[1] - middle[1]) * away * 0.8],
        `${i + 1}`,
        4,
        { bold: true, anchor: 'middle' },
      );
    }),
    text(middle, 'outside up', 3, { anchor: 'middle' }),
    text([dot[0] - 3, dot[1] - 3], 'begin here', 3, { anchor: 'end', ink: 'grey' }),
  ];
}
