// Labels of bags: what goes in, with a box to tick for each line, and where it goes; of hubs: the places
// that meet there and the plate over it; and match-marks: a pair of labels for every seam, stuck on either
// side of it before it is parted, so that the arrows meet again.

import type { Bag } from '../raise/bags/bags.ts';
import type { RecordPlan } from '../record/names.ts';
import { type Box, type Drawing, type Item, inked, polygon, rectangle, text } from './drawing.ts';
import { type LabelDrawn, labelSheets, lineIn, wordsIn } from './label-sheets.ts';
import type { LabelStock } from './label-stock.ts';
import { ARM_LENGTH_TYPE, byNumber } from './panel-labels.ts';
import { wrapText } from './text-width.ts';

/** The largest and the least type of a bag's lines, millimetres. */
const LINES = [6, 2.4] as const;

/** A label for every bag. RangeError where one does not fit the label sheet. */
export const bagLabelSheets = (
  bags: readonly Bag[],
  project: string,
  stock: LabelStock,
): Drawing[] =>
  labelSheets(
    bags.map(
      ({ label, needs }): LabelDrawn => ({
        name: label.title,
        draw: (box) => bagDrawn(box, label, needs.length, project),
      }),
    ),
    stock,
    `${project}: bag labels`,
  );

function bagDrawn(
  box: Box,
  { title, lines }: Bag['label'],
  ticked: number,
  project: string,
): Item[] | null {
  const head = wordsIn(title, { ...box, height: box.height * 0.3 }, 9, ARM_LENGTH_TYPE, {
    bold: true,
  });
  const foot = wordsIn(project, { ...box, height: 7 }, 2.6, 2, { ink: 'grey' });
  if (head === null || foot === null) return null;
  const from = box.y + head.height + 1;
  const room = box.height - head.height - foot.height - 2;
  for (let size: number = LINES[0]; size >= LINES[1] - 1e-9; size -= 0.2) {
    const step = size * 1.3;
    const indent = size * 1.5;
    const wrapped = lines.map((line, i) =>
      wrapText(line, size, box.width - (i < ticked ? indent : 0)),
    );
    const height = wrapped.reduce((sum, rows) => sum + rows.length * step + size * 0.25, 0);
    if (height > room) continue;
    const items: Item[] = [];
    let y = from;
    wrapped.forEach((rows, i) => {
      const tick = i < ticked;
      const middle = y + size * 0.65;
      const square = { x: box.x, y: middle - size * 0.45, width: size * 0.9, height: size * 0.9 };
      if (tick) items.push(rectangle(square, { weight: 'light' }));
      const x = box.x + (tick ? indent : 0);
      items.push(...rows.map((row, r) => text([x, middle + r * step], row, size)));
      y += rows.length * step + size * 0.25;
    });
    const down = box.y + box.height - foot.height - box.y;
    const below = foot.items.map(
      (item): Item => ({ ...item, at: [item.at[0], item.at[1] + down] }),
    );
    return [...head.items, ...items, ...below];
  }
  return null;
}

/** A label for every hub where a panel meets, by its name: the places around it, how many corners its
 * plate covers. RangeError where one does not fit the label sheet. */
export function hubLabelSheets(
  plan: Pick<RecordPlan, 'hubs' | 'hubPlaces'>,
  project: string,
  stock: LabelStock,
  leftOut: readonly number[] = [],
): Drawing[] {
  const out = new Set(leftOut);
  const labels = plan.hubs
    .map((name, hub) => ({
      name,
      corners: (plan.hubPlaces[hub] ?? []).filter((place) => !out.has(place)).length,
    }))
    .filter(({ corners }) => corners > 0)
    .sort((a, b) => byNumber(a.name, b.name))
    .map(
      ({ name, corners }): LabelDrawn => ({
        name,
        draw: (box) => hubDrawn(box, name, corners, project),
      }),
    );
  return labelSheets(labels, stock, `${project}: hub labels`);
}

function hubDrawn(box: Box, name: string, corners: number, project: string): Item[] | null {
  const head = wordsIn(name, { ...box, height: box.height * 0.6 }, 7, 3.2, { bold: true });
  if (head === null) return null;
  const rest = { ...box, y: box.y + head.height, height: box.height - head.height };
  const plate = wordsIn(
    `Hub, plate over ${corners} ${corners === 1 ? 'corner' : 'corners'}`,
    rest,
    3.4,
    2.2,
  );
  if (plate === null) return null;
  const low = { ...rest, y: rest.y + plate.height, height: rest.height - plate.height };
  const tail = wordsIn(project, low, 2.4, 1.8, { ink: 'grey' });
  return tail === null ? null : [...head.items, ...plate.items, ...tail.items];
}

/** Two labels for every seam, one for each panel: its own number, the other's, and an arrow towards the
 * seam. RangeError where one does not fit the label sheet. */
export function matchMarkSheets(
  plan: Pick<RecordPlan, 'places' | 'seamPlaces'>,
  project: string,
  stock: LabelStock,
  leftOut: readonly number[] = [],
): Drawing[] {
  const out = new Set(leftOut);
  const labels = plan.seamPlaces
    .filter((places) => !places.some((place) => out.has(place)))
    .map(([a, b]) => [plan.places[a] as string, plan.places[b] as string] as const)
    .sort(([a, b], [c, d]) => byNumber(a, c) || byNumber(b, d))
    .flatMap(([a, b]): LabelDrawn[] => [
      { name: `${a} to ${b}`, draw: (box) => markDrawn(box, a, b, 1) },
      { name: `${b} to ${a}`, draw: (box) => markDrawn(box, b, a, -1) },
    ]);
  return labelSheets(labels, stock, `${project}: match-marks`);
}

/** `way` 1: the arrow points right. */
function markDrawn(box: Box, own: string, other: string, way: 1 | -1): Item[] | null {
  const arrow = Math.min(box.height, box.width * 0.2);
  const x = way === 1 ? box.x : box.x + arrow + 1;
  const room = { x, width: box.width - arrow - 1 };
  const head = lineIn(own, { ...room, y: box.y, height: box.height * 0.55 }, 4);
  const tail = lineIn(
    `to ${other}`,
    { ...room, y: box.y + box.height * 0.66, height: box.height * 0.34 },
    2.4,
    false,
  );
  if (head === null || tail === null) return null;
  const tip = way === 1 ? box.x + box.width : box.x;
  const back = tip - way * arrow * 0.9;
  const y = box.y + box.height / 2;
  const half = arrow * 0.45;
  return [
    head,
    tail,
    polygon(
      [
        [tip, y],
        [back, y - half],
        [back, y + half],
      ],
      null,
      inked,
    ),
  ];
}
