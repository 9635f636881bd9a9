// The base ring drawn from above, datum up, as all sheets of the ground show it; and the page that
// they share: plan on the left, table, notes and title block in a column on the right. The caution
// stands right under the numbers that it is about. Millimetres on paper, metres on the ground.

import type { Base, BaseHub, PlanPoint } from '../ground/base.ts';
import type { Provenance } from '../loads/provenance.ts';
import {
  type Box,
  circle,
  type Drawing,
  group,
  type Item,
  inked,
  line,
  onPaper,
  type Point,
  polygon,
  text,
} from './drawing.ts';
import type { SheetFacts } from './flat-plan-sheet.ts';
import { frameItems, headingItems, type Page, scaleFor, titleBlockItems } from './page.ts';
import { type RuledColumn, type RuledRow, ruledTable } from './ruled-table.ts';
import { wrapText } from './text-width.ts';

/** How the plan lies on the paper. */
export interface GroundPlacing {
  /** 1 : scale. */
  readonly scale: number;
  /** Where a point of the ground comes to lie, x of the plan up, y to the left. */
  readonly at: (point: PlanPoint) => Point;
}

/** Kept free round the plan for numbers. */
const MARGIN = 15;

/** The largest scale at which points fit into a box, in its middle. */
export function placeGround(points: readonly PlanPoint[], box: Box): GroundPlacing {
  const span = (i: 0 | 1): [number, number] => {
    const all = points.map((p) => p[i]);
    return [Math.min(...all), Math.max(...all)];
  };
  const [[down, up], [right, left]] = [span(0), span(1)];
  const scale = Math.max(
    scaleFor(up - down, box.height - 2 * MARGIN),
    scaleFor(left - right, box.width - 2 * MARGIN),
  );
  const k = 1000 / scale;
  const [cx, cy] = [box.x + box.width / 2, box.y + box.height / 2];
  const [mx, my] = [(up + down) / 2, (left + right) / 2];
  return { scale, at: ([x, y]) => [cx - (y - my) * k, cy - (x - mx) * k] };
}

/** A point on the ray from the centre through a hub, `away` millimetres on paper further out. */
export function beyondHub(hub: BaseHub, placing: GroundPlacing, away: number): Point {
  const k = 1 + (away * placing.scale) / 1000 / hub.radius;
  return placing.at([hub.at[0] * k, hub.at[1] * k]);
}

/** The ring with its hubs, the centre peg and the datum line. */
export function baseItems(base: Base, datum: number, placing: GroundPlacing): Item[] {
  const { at } = placing;
  const ring = base.hubs.map((hub) => at(hub.at));
  const centre = at([0, 0]);
  const peg = at([datum, 0]);
  const cross = (dx: number, dy: number): Item =>
    line([centre[0] - dx, centre[1] - dy], [centre[0] + dx, centre[1] + dy], { weight: 'light' });
  return [
    line(centre, peg, { weight: 'light', dash: 'chain', ink: 'accent' }),
    polygon(ring, { weight: 'bold' }),
    ...ring.map((point) => circle(point, 1.1, { weight: 'medium' }, onPaper)),
    cross(3, 0),
    cross(0, 3),
    circle(centre, 1.3, { weight: 'medium' }, onPaper),
    polygon(
      [
        [peg[0], peg[1] - 2],
        [peg[0] - 1.3, peg[1] + 1],
        [peg[0] + 1.3, peg[1] + 1],
      ],
      { weight: 'thin', ink: 'accent' },
    ),
    text([peg[0] + 3, peg[1]], 'datum', 3, { bold: true, ink: 'accent' }),
    text([centre[0] + 3, centre[1] + 3.4], 'centre', 2.6, { halo: 1, ink: 'grey' }),
  ];
}

/** The number of each hub, `away` millimetres outside (negative: inside) the ring. */
export const hubNumbers = (base: Base, placing: GroundPlacing, away: number): Item[] =>
  base.hubs.map((hub) =>
    text(beyondHub(hub, placing, away), String(hub.number), 3.2, {
      bold: true,
      anchor: 'middle',
      halo: 0.8,
    }),
  );

/** A filled stake mark. */
export const stakeMark = ([x, y]: Point): Item =>
  polygon(
    [
      [x, y - 1],
      [x + 1, y],
      [x, y + 1],
      [x - 1, y],
    ],
    null,
    inked,
  );

/** What a sheet of the ground holds. */
export interface GroundSheet {
  readonly heading: string;
  readonly remark: string;
  readonly facts: SheetFacts;
  readonly lengths: string;
  /** What the title block says of the scale, where that is not the plan's own. */
  readonly scale?: string;
  /** The caution beside the numbers, and further notes. */
  readonly caution: string;
  readonly notes: readonly string[];
  /** Points that the plan has to show. */
  readonly points: readonly PlanPoint[];
  readonly plan: (placing: GroundPlacing) => Item[];
  readonly columns: readonly RuledColumn[];
  readonly rows: readonly RuledRow[];
}

const noteSize = 2.5;
const noteStep = 3.5;
const leastStep = 3.4;
const headRoom = 14;

/** The sheets, one at least; where the table is long the plan comes with each part of it. */
export function groundSheets(page: Page, sheet: GroundSheet): Drawing[] {
  const { frame } = page;
  const width = Math.max(96, Math.min(120, frame.width - frame.height));
  const column: Box = {
    x: frame.x + frame.width - width,
    y: frame.y,
    width,
    height: frame.height,
  };
  const main: Box = {
    x: frame.x,
    y: frame.y + headRoom,
    width: frame.width - width,
    height: frame.height - headRoom,
  };
  const placing = placeGround(sheet.points, main);
  const blockOf = (name: string) =>
    titleBlockItems(
      {
        ...sheet.facts,
        sheet: name,
        scale: sheet.scale ?? `1 : ${placing.scale}`,
        lengths: sheet.lengths,
      },
      column.x,
      frame.y + frame.height,
      width,
    );
  const { top } = blockOf(sheet.facts.sheet);
  const inner: Box = { x: column.x + 4, y: column.y + 3, width: width - 8, height: top };
  const warned = wrapText(`Caution. ${sheet.caution}`, noteSize, inner.width, true);
  const noted = sheet.notes.flatMap((note) => wrapText(note, noteSize, inner.width));
  const noteHeight = (warned.length + noted.length) * noteStep + 8;
  const room = top - inner.y - noteHeight;
  const perSheet = Math.max(4, Math.floor(room / leastStep) - 1);
  const pages = Math.max(1, Math.ceil(sheet.rows.length / perSheet));
  const each = Math.ceil(sheet.rows.length / pages);
  return Array.from({ length: pages }, (_, p) => {
    const rows = sheet.rows.slice(p * each, (p + 1) * each);
    const name = pages === 1 ? sheet.facts.sheet : `${sheet.facts.sheet}, ${p + 1} of ${pages}`;
    const step = Math.max(leastStep, Math.min(5.2, room / (rows.length + 1)));
    const table = ruledTable(sheet.columns, rows, inner, step);
    const from = inner.y + table.height + 4;
    return {
      width: page.width,
      height: page.height,
      title: `${sheet.facts.project}: ${sheet.heading}`,
      description: `${sheet.remark}. ${sheet.caution}`,
      items: [
        ...frameItems(page),
        line([column.x, frame.y], [column.x, frame.y + frame.height], { weight: 'medium' }),
        ...headingItems([frame.x + 5, frame.y + 7], sheet.heading, sheet.remark),
        group(sheet.plan(placing), { part: 'ground-plan' }),
        group(table.items, { part: 'table' }),
        group(
          warned.map((words, i) =>
            text([inner.x, from + i * noteStep], words, noteSize, { bold: true }),
          ),
          { part: 'caution' },
        ),
        group(
          noted.map((words, i) =>
            text([inner.x, from + 1.5 + (warned.length + i) * noteStep], words, noteSize, {
              ink: 'grey',
            }),
          ),
          { part: 'notes' },
        ),
        ...blockOf(name).items,
      ],
    };
  });
}

/** One plain row of a table. */
export const plainRow = (cells: readonly string[], accent = false): RuledRow => ({
  cells,
  accent,
  bold: cells.map((_, i) => i === 0),
  swatch: null,
});

/** The sources that a sheet must tell beside its numbers: those from memory, from common practice and
 * entered, each in a sentence. */
export function sourceNotes(sources: readonly Provenance[]): string[] {
  const told = (
    [
      ['From memory, to be confirmed', 'from memory'],
      ['Common practice, no published source', 'common practice'],
      ['Entered', 'entered'],
    ] as const
  ).map(([words, confirmation]) => {
    const texts = sources.filter((source) => source.confirmation === confirmation);
    return texts.length === 0 ? '' : `${words}: ${texts.map((source) => source.text).join('; ')}.`;
  });
  return told.filter((words) => words !== '');
}
