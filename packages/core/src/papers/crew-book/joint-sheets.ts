// The joint pictures on paper: four to a sheet, in the order in which the panels go up.

import type { PlaceId } from '../../shell/ids.ts';
import { seamCount } from '../../shell/shell.ts';
import type { Drawing, Item, Point } from '../drawing.ts';
import { group, line, text } from '../drawing.ts';
import type { SheetFacts } from '../flat-plan-sheet.ts';
import { kindFills } from '../hatch.ts';
import { jointPicture } from '../joint-picture.ts';
import { lengthsNote } from '../length-text.ts';
import { footBlock, frameItems, headingItems, pageOf } from '../page.ts';
import type { CrewBookContent } from './content.ts';
import { type BookLook, boltWords } from './stage-cards.ts';

const PER_SHEET = 4;
const HEAD = 15;

/** What the pictures are made from. */
export interface JointSheetContent extends CrewBookContent {
  /** Seam → bolts in it; null where nobody knows. */
  readonly bolts: (seam: number) => number | null;
}

/** The sheets; none for a plan that lifts nothing. */
export function jointSheets(
  content: JointSheetContent,
  facts: SheetFacts,
  look: BookLook,
): Drawing[] {
  const { plan } = content;
  const order = plan.stages.flatMap(({ number, lifts }) =>
    lifts.flatMap(({ places }, i) =>
      places.map((place) => ({ place, when: `stage ${number}, lift ${i + 1}` })),
    ),
  );
  const count = Math.ceil(order.length / PER_SHEET);
  const seamsOf = seamsByPlace(content);
  const fills = kindFills(content.kinds);
  return Array.from({ length: count }, (_, n): Drawing => {
    const page = pageOf(look.paper, 'upright');
    const { frame } = page;
    const own = order.slice(n * PER_SHEET, (n + 1) * PER_SHEET);
    const sheet = `Joint pictures, ${n + 1} of ${count}`;
    const block = footBlock(page, {
      ...facts,
      sheet,
      scale: 'none',
      lengths: `${lengthsNote(look.lengths)}, hub to hub`,
      more: [['seen', 'from outside']],
    });
    const [wide, high] = [frame.width / 2, (block.top - frame.y - HEAD) / 2];
    const cells = own.map(({ place, when }, i) => {
      const [x, y] = [frame.x + (i % 2) * wide, frame.y + HEAD + Math.floor(i / 2) * high];
      const picture = jointPicture({
        ...content,
        place: place as PlaceId,
        fills,
        lengths: look.lengths,
        fromInside: false,
      });
      const k = Math.min((wide - 4) / picture.box.width, (high - 17) / picture.box.height, 1);
      const shift: Point = [
        x + wide / 2 - (picture.box.x + picture.box.width / 2) * k,
        y + 13 + (high - 15) / 2 - (picture.box.y + picture.box.height / 2) * k,
      ];
      const bolts = (seamsOf.get(place) ?? []).map(content.bolts);
      return group(
        [
          text([x + 4, y + 5], when, 3.4, { bold: true }),
          text([x + 4, y + 10], `bolts: ${boltWords(bolts)}`, 3, { ink: 'grey' }),
          ...picture.items.map((item) => scaledItem(item, k, shift)),
        ],
        { place: String(place) },
      );
    });
    return {
      width: page.width,
      height: page.height,
      title: `${facts.project}: ${sheet}`,
      description: `Places ${own.map(({ place }) => content.numbers[place]).join(', ')} with their neighbours, seen from outside. ${facts.assumes}`,
      items: [
        ...frameItems(page),
        ...headingItems(
          [frame.x + 5, frame.y + 5.5],
          'Joint pictures',
          'in the order of work; outside towards you, up is towards the crown',
        ),
        line([frame.x, frame.y + HEAD], [frame.x + frame.width, frame.y + HEAD], {
          weight: 'thin',
        }),
        line([frame.x + wide, frame.y + HEAD], [frame.x + wide, block.top], { weight: 'thin' }),
        line([frame.x, frame.y + HEAD + high], [frame.x + frame.width, frame.y + HEAD + high], {
          weight: 'thin',
        }),
        ...cells,
        ...block.items,
      ],
    };
  });
}

/** Place → its seams by index, none of them to a place left open. */
function seamsByPlace({ shell, leftOut }: CrewBookContent): Map<number, number[]> {
  const found = new Map<number, number[]>();
  const placesOf = (seam: number): number[] =>
    [0, 1].map((end) => shell.sidePlace[shell.seams[2 * seam + end] as number] as number);
  for (let seam = 0; seam < seamCount(shell); seam++) {
    const places = placesOf(seam);
    if (places.some((place) => leftOut.includes(place))) continue;
    for (const place of places) found.set(place, [...(found.get(place) ?? []), seam]);
  }
  return found;
}

/** An item drawn smaller; lines keep their weight. */
function scaledItem(item: Item, k: number, [dx, dy]: Point): Item {
  const at = ([x, y]: Point): Point => [x * k + dx, y * k + dy];
  switch (item.type) {
    case 'group':
      return { ...item, items: item.items.map((one) => scaledItem(one, k, [dx, dy])) };
    case 'text':
      return {
        ...item,
        at: at(item.at),
        size: item.size * k,
        ...(item.halo !== undefined && { halo: item.halo * k }),
      };
    case 'path':
      return { ...item, points: item.points.map(at) };
    case 'circle':
      return { ...item, centre: at(item.centre), radius: item.radius * k };
  }
}
