// The record on paper, as sheets: a numbered line for every place, seam and hub with a lettered box for
// each state. What is ticked is typed in as `17a 20-24c` (see record/twin.ts).

import { type TwinLine, twinCheck } from '../record/twin.ts';
import { type Box, type Drawing, type Item, line, rectangle, text } from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { flowSheets } from './flow.ts';
import { type FlowBlock, heading, words } from './flow-blocks.ts';
import type { Paper } from './page.ts';
import { fittingSize, wrapText } from './text-width.ts';

/** What every sheet of the twin says. */
const TWIN_CAUTION =
  'Tick what you have seen, not what should be so. A record of what people said, no proof: who stands under a seam looks at it first; local codes and a licensed engineer or rigger decide.';

const KEYS: Readonly<Record<TwinLine['sort'], string>> = {
  place: 'a in place; write the tag that is on the panel',
  seam: 'a finger, b snug, c final, d sealed',
  hub: 'a plate on, b prop set, c prop gone',
};
const SORTS: Readonly<Record<TwinLine['sort'], string>> = {
  place: 'panels',
  seam: 'seams',
  hub: 'hubs, by the panels around them',
};

/** The sheets of the lines, one at least. */
export function twinSheets(
  lines: readonly TwinLine[],
  facts: SheetFacts,
  options: { readonly paper?: Paper } = {},
): Drawing[] {
  const check = twinCheck(lines);
  const blocks: FlowBlock[] = [{ block: 'blanks', names: ['Who', 'Day', 'From, to'] }];
  lines.forEach((one, i) => {
    const before = lines[i - 1];
    if (before?.course !== one.course || before.sort !== one.sort)
      blocks.push(
        heading(`Course ${one.course}: ${SORTS[one.sort]}`),
        words(KEYS[one.sort], { quiet: true, size: 2.5 }),
      );
    blocks.push(lineBlock(one));
  });
  return flowSheets(
    blocks,
    { ...facts, caution: [facts.caution ?? '', TWIN_CAUTION].join(' ').trim() },
    {
      ...(options.paper && { paper: options.paper }),
      columns: 2,
      heading: `Record on paper: sheets of plan ${check}`,
      remark: `Typed into the record as line and box: 17a, 20-24c, 31cd, 12a=0143. Sheets that do not bear ${check} are of another plan.`,
      lengths: 'none',
      size: 3,
    },
  );
}

const NUMBER = 11;
const BOX = 4.2;
const STEP = 8;

/** A line: its number, its boxes, its name, room for a tag. */
function lineBlock({ number, name, boxes, sort }: TwinLine): FlowBlock {
  const used = NUMBER + boxes.length * STEP + 1;
  const rows = (width: number): readonly string[] => wrapText(name, 3, width);
  // The columns of A4 and Letter are at least this wide.
  const least = 82 - used - (sort === 'place' ? 24 : 0);
  const tall = Math.max(6.4, rows(least).length * 3.9 + 2.4);
  return {
    block: 'figure',
    height: tall,
    tight: true,
    draw: (box: Box): Item[] => {
      const y = box.y + 3.2;
      const left = box.x + used;
      const size = fittingSize(String(number), 3, 1.8, NUMBER - 2) ?? 1.8;
      return [
        text([box.x + NUMBER - 2, y], String(number), size, { anchor: 'end', ink: 'grey' }),
        ...boxes.flatMap(({ letter }, i): Item[] => {
          const x = box.x + NUMBER + i * STEP;
          return [
            rectangle({ x: x + 2.6, y: y - BOX / 2, width: BOX, height: BOX }, { weight: 'light' }),
            text([x + 1, y], letter, 2.5, { anchor: 'middle', ink: 'grey' }),
          ];
        }),
        ...rows(least).map((row, i) =>
          text([left, y + i * 3.9], row, 3, { bold: sort === 'place' }),
        ),
        ...(sort === 'place'
          ? [
              text([box.x + box.width - 21, y], 'tag', 2.4, { ink: 'grey', anchor: 'end' }),
              line([box.x + box.width - 20, y + 2], [box.x + box.width, y + 2], { weight: 'hair' }),
            ]
          : []),
      ];
    },
  };
}
