// Sheets of labels by their plain dimensions, and where each label lies. Millimetres from the top left
// corner of the sheet. The dimensions are those in which label sheets are commonly sold: common practice,
// no source; measure a sheet of the packet before printing a hundred.

import { type Box, type Item, line } from './drawing.ts';
import { paperSizes } from './page.ts';

/** A sheet of labels. */
export interface LabelStock {
  /** What it is asked for by: paper and labels across and down, `A4 3 x 7`. */
  readonly name: string;
  readonly paper: 'A4' | 'Letter';
  readonly across: number;
  readonly down: number;
  /** Of one label. */
  readonly width: number;
  readonly height: number;
  /** Of the first label's corner. */
  readonly left: number;
  readonly top: number;
  /** From one label to the next. */
  readonly stepAcross: number;
  readonly stepDown: number;
  /** True for plain paper, cut along drawn lines. */
  readonly cut: boolean;
}

type Row = readonly [string, number, number, number, number, number, number, number, number];

/** Paper, across, down, width, height, left, top, step across, step down. */
const sold: readonly Row[] = [
  ['A4', 5, 13, 38.1, 21.2, 4.75, 10.7, 40.6, 21.2],
  ['A4', 3, 7, 63.5, 38.1, 7.25, 15.15, 66, 38.1],
  ['A4', 2, 7, 99.1, 38.1, 4.65, 15.15, 101.6, 38.1],
  ['A4', 2, 4, 99.1, 67.7, 4.65, 13.1, 101.6, 67.7],
  ['Letter', 4, 20, 44.45, 12.7, 7.6, 12.7, 52.1, 12.7],
  ['Letter', 3, 10, 66.675, 25.4, 4.76, 12.7, 69.85, 25.4],
  ['Letter', 2, 5, 101.6, 50.8, 3.97, 12.7, 106.36, 50.8],
  ['Letter', 2, 3, 101.6, 84.67, 3.97, 12.7, 106.36, 84.67],
];

/** Plain paper: across and down. */
const plain: readonly (readonly [number, number])[] = [
  [4, 10],
  [3, 7],
  [2, 4],
  [2, 2],
  [1, 2],
];

/** Kept free round plain paper: what printers leave blank, common practice, no source. */
const EDGE = 8;

const cutStock = (paper: 'A4' | 'Letter', across: number, down: number): LabelStock => {
  const [width, height] = paperSizes[paper];
  const [wide, high] = [(width - 2 * EDGE) / across, (height - 2 * EDGE) / down];
  return {
    name: `${paper} plain ${across} x ${down}`,
    paper,
    across,
    down,
    width: wide,
    height: high,
    left: EDGE,
    top: EDGE,
    stepAcross: wide,
    stepDown: high,
    cut: true,
  };
};

/** All label sheets, of each paper the smallest labels first, then plain paper to cut. */
export const labelStocks: readonly LabelStock[] = [
  ...sold.map(([paper, across, down, width, height, left, top, stepAcross, stepDown]) => ({
    name: `${paper} ${across} x ${down}`,
    paper: paper as 'A4' | 'Letter',
    ...{ across, down, width, height, left, top, stepAcross, stepDown },
    cut: false,
  })),
  ...(['A4', 'Letter'] as const).flatMap((paper) =>
    plain.map(([across, down]) => cutStock(paper, across, down)),
  ),
];

/** The label sheet of a name. RangeError with the names there are. */
export function labelStock(name: string): LabelStock {
  const found = labelStocks.find((stock) => stock.name === name);
  if (found === undefined)
    throw new RangeError(
      `no label sheet "${name}": expected one of ${labelStocks.map((one) => one.name).join(', ')}`,
    );
  return found;
}

/** Where the labels of one sheet lie, row by row. */
export function labelBoxes(stock: LabelStock): Box[] {
  return Array.from({ length: stock.across * stock.down }, (_, i) => ({
    x: stock.left + (i % stock.across) * stock.stepAcross,
    y: stock.top + Math.floor(i / stock.across) * stock.stepDown,
    width: stock.width,
    height: stock.height,
  }));
}

/** The lines along which plain paper is cut, edge to edge; none on label sheets. */
export function cutLines(stock: LabelStock): Item[] {
  if (!stock.cut) return [];
  const [width, height] = paperSizes[stock.paper];
  const stroke = { weight: 'hair', dash: 'dashed', ink: 'grey' } as const;
  return [
    ...Array.from({ length: stock.across + 1 }, (_, i) => stock.left + i * stock.stepAcross).map(
      (x): Item => line([x, 0], [x, height], stroke),
    ),
    ...Array.from({ length: stock.down + 1 }, (_, i) => stock.top + i * stock.stepDown).map(
      (y): Item => line([0, y], [width, y], stroke),
    ),
  ];
}
