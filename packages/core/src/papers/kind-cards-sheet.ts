// Sheets of kind cards, four to an A4: what to hold next to a panel to know which it is.

import type { Kind } from '../pile/kind.ts';
import { type Box, type Drawing, group, type Item, line } from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { kindFills } from './hatch.ts';
import { type KindCard, kindCardItems, shapeRoom } from './kind-card.ts';
import { type LengthsShown, lengthsNote } from './length-text.ts';
import {
  footBlock,
  frameItems,
  headingItems,
  type Page,
  type Paper,
  pageOf,
  scaleFor,
  scales,
} from './page.ts';
import { panelShape, standingSide } from './panel-shape.ts';

/** Options of `kindCardSheets`. */
export interface KindCardOptions {
  readonly paper?: Paper;
  readonly lengths?: LengthsShown;
  /** Kind (index) → places that take it; null where no shell is chosen. */
  readonly places?: readonly number[] | null;
  /** Kind (index) → side → holes. */
  readonly holes?: readonly (readonly (number | null)[] | null)[] | null;
}

const headRoom = 15;

/** Cards across and down a sheet: each about 90 mm by 110 mm. */
function gridOf({ frame }: Page): { readonly across: number; readonly down: number } {
  return { across: Math.round(frame.width / 90), down: Math.round(frame.height / 120) };
}

/** The cards of all kinds, four to an A4 or Letter sheet and nine to an A3, every shape at one scale; no sheet for no kinds. */
export function kindCardSheets(
  kinds: readonly Kind[],
  facts: SheetFacts,
  options: KindCardOptions = {},
): Drawing[] {
  const page = pageOf(options.paper ?? 'A4', 'upright');
  const fills = kindFills(kinds);
  const cards = kinds.map(
    (kind, k): KindCard => ({
      kind,
      fill: fills[k] ?? { tint: null, hatch: null },
      places: options.places?.[k] ?? null,
      holes: options.holes?.[k] ?? null,
    }),
  );
  const { across, down } = gridOf(page);
  const perSheet = across * down;
  const count = Math.ceil(cards.length / perSheet);
  return Array.from({ length: count }, (_, i) =>
    cardSheet(page, cards.slice(i * perSheet, (i + 1) * perSheet), kinds, facts, options, {
      number: i + 1,
      of: count,
    }),
  );
}

function cardSheet(
  page: Page,
  cards: readonly KindCard[],
  kinds: readonly Kind[],
  facts: SheetFacts,
  options: KindCardOptions,
  sheet: { readonly number: number; readonly of: number },
): Drawing {
  const lengths = options.lengths ?? 'metric';
  const { frame } = page;
  const name = sheet.of === 1 ? facts.sheet : `${facts.sheet}, ${sheet.number} of ${sheet.of}`;
  const blockAt = (scale: string) =>
    footBlock(page, {
      ...facts,
      sheet: name,
      scale,
      lengths: `${lengthsNote(lengths)}, hub to hub`,
      more: [['cards', 'seen from outside']],
    });
  const { top } = blockAt('1 : 1');
  const area: Box = { ...frame, y: frame.y + headRoom, height: top - frame.y - headRoom };
  const scale = scaleOf(kinds, cardBox(page, area, 0));
  const block = blockAt(`1 : ${scale}`);
  const items: Item[] = cards.flatMap((card, i) =>
    kindCardItems(card, cardBox(page, area, i), { scale, lengths }),
  );
  return {
    width: page.width,
    height: page.height,
    title: `${facts.project}: ${name}`,
    description: `Kinds ${cards.map((card) => card.kind.id).join(', ')}, seen from outside. ${facts.assumes}`,
    items: [
      ...frameItems(page),
      ...headingItems(
        [frame.x + 5, frame.y + 5.5],
        'Kinds',
        'seen from outside, to one scale; hold the smooth face towards you',
      ),
      line([frame.x, area.y], [frame.x + frame.width, area.y], { weight: 'thin' }),
      group(items, { part: 'cards' }),
      ...block.items,
    ],
  };
}

function cardBox(page: Page, area: Box, i: number): Box {
  const { across, down } = gridOf(page);
  const [width, height] = [area.width / across, area.height / down];
  const [column, row] = [i % across, Math.floor(i / across)];
  return { x: area.x + column * width, y: area.y + row * height, width, height };
}

/** The largest scale at which every kind's shape fits its room. */
function scaleOf(kinds: readonly Kind[], box: Box): number {
  const room = shapeRoom(box);
  const shapes = kinds.flatMap((kind) => panelShape(kind.sides, standingSide(kind)) ?? []);
  const extent = (axis: 0 | 1): number =>
    Math.max(
      0,
      ...shapes.map(({ corners }) => {
        const values = corners.map((corner) => corner[axis]);
        return Math.max(...values) - Math.min(...values);
      }),
    );
  const wide = scaleFor(extent(0), room.width);
  const high = scaleFor(extent(1), room.height);
  return Math.max(wide, high, scales[0] as number);
}
