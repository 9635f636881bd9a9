// The column beside the flat plan: kinds and seams with their counts, how to read the numbers, the caution,
// an elevation.

import type { Kind } from '../pile/kind.ts';
import { rims } from '../shell/rims.ts';
import { placeAt, type Shell } from '../shell/shell.ts';
import type { ShellSideClasses } from '../takeoff/side-classes.ts';
import { type Box, type Fill, group, type Item, line, type Point, text } from './drawing.ts';
import { elevationItems } from './elevation.ts';
import { type LengthsShown, lengthFirst, lengthSecond } from './length-text.ts';
import { type RuledColumn, ruledTable } from './ruled-table.ts';
import { wrapText } from './text-width.ts';

/** Height kept for the elevation where the tables can spare it, millimetres. */
const elevationRoom = 46;

/** What the column tells. */
export interface ColumnContent {
  readonly shell: Shell;
  readonly kinds: readonly Kind[];
  readonly kindAt: readonly number[];
  readonly fills: readonly Fill[];
  readonly classes: ShellSideClasses | null;
  readonly leftOut: ReadonlySet<number>;
  readonly missing: ReadonlySet<number>;
  /** Places on this sheet; null for all. */
  readonly only: ReadonlySet<number> | null;
  readonly shown: LengthsShown;
  readonly nadir: boolean;
  /** True where some numbers came out too small to read at arm's length. */
  readonly small: boolean;
  readonly numbersNote: string;
  /** Stands between the tables and the elevation, beside the numbers it is about. */
  readonly caution: string;
}

/** The column in its box: tables, notes, caution, elevation. */
export function columnItems(box: Box, content: ColumnContent): Item[] {
  const inner: Box = { x: box.x + 4, y: box.y + 4, width: box.width - 8, height: box.height - 4 };
  const notes = noteItems(content, inner);
  const kindRows = kindRowsOf(content);
  const seamRows = seamRowsOf(content);
  const room = inner.height - notes.height - (seamRows.length > 0 ? 6 : 0) - 4;
  const rows = kindRows.length + seamRows.length + 3;
  const besideElevation = (room - elevationRoom) / rows;
  const step = Math.max(3.2, Math.min(5.4, besideElevation >= 4.2 ? besideElevation : room / rows));
  const columns = content.only === null ? kindColumns : upperColumns;
  const kindTable = ruledTable(columns, kindRows, inner, step);
  const seamTable = ruledTable(
    seamColumns,
    seamRows,
    { ...inner, y: inner.y + kindTable.height + 4 },
    step,
  );
  const used = kindTable.height + (seamRows.length > 0 ? 4 + seamTable.height : 0);
  const from = inner.y + used + 4 + notes.height + 5;
  const spare = box.y + box.height - from - 3;
  const left: Box = { ...inner, y: from, height: Math.min(spare, 76) };
  return [
    group(kindTable.items, { part: 'kinds' }),
    ...(seamRows.length > 0 ? [group(seamTable.items, { part: 'seam-list' })] : []),
    group(notes.draw(inner.y + used + 4), { part: 'notes' }),
    group(elevationItems(content.shell, content.leftOut, left, content.shown), {
      part: 'elevation',
    }),
  ];
}

const kindColumns: readonly RuledColumn[] = [
  { name: 'kind', share: 0.34, align: 'start' },
  { name: 'places', share: 0.2, align: 'end' },
  { name: 'in stock', share: 0.23, align: 'end' },
  { name: 'over', share: 0.23, align: 'end' },
];

/** Of a sheet that shows the upper courses alone: stock is held against the whole. */
const upperColumns: readonly RuledColumn[] = [
  { name: 'kind', share: 0.34, align: 'start' },
  { name: 'places here', share: 0.36, align: 'end' },
  { name: 'in all', share: 0.3, align: 'end' },
];

const seamColumns: readonly RuledColumn[] = [
  { name: 'seam', share: 0.18, align: 'start' },
  { name: 'seams', share: 0.2, align: 'end' },
  { name: 'hub to hub', share: 0.62, align: 'end' },
];

function kindRowsOf(content: ColumnContent) {
  const { kinds, kindAt, leftOut, fills, only } = content;
  return kinds.flatMap((kind, k) => {
    const all = kindAt.flatMap((at, p) => (at === k && !leftOut.has(p) ? [p] : []));
    const places = all.length;
    const here = all.filter((p) => only?.has(p) ?? true).length;
    if (here === 0) return [];
    const swatch = fills[k] as Fill;
    if (only !== null)
      return [
        {
          cells: [kind.id, String(here), String(places)],
          accent: false,
          bold: [true, true, false],
          swatch,
        },
      ];
    const over = kind.good - places;
    const short = kind.counted && over < 0;
    return [
      {
        cells: [
          kind.id,
          String(places),
          kind.counted ? String(kind.good) : '–',
          !kind.counted ? '' : short ? `short ${-over}` : over === 0 ? '–' : String(over),
        ],
        accent: short,
        bold: [true, true, false, short],
        swatch,
      },
    ];
  });
}

function seamRowsOf({ shell, classes, shown, only }: ColumnContent) {
  if (classes === null) return [];
  const counts = classes.classes.map(() => 0);
  for (let i = 0; i < shell.seams.length; i += 2) {
    const side = shell.seams[i] as number;
    const place = shell.sidePlace[side] as number;
    const mate = shell.sidePlace[shell.seams[i + 1] as number] as number;
    if (only !== null && !only.has(place) && !only.has(mate)) continue;
    const first = shell.placeStart[place] as number;
    const of = classes.of[shell.kind[place] as number] as readonly number[];
    const at = of[((shell.turn[place] as number) + side - first) % of.length] as number;
    counts[at] = (counts[at] as number) + 1;
  }
  return classes.classes.flatMap((one, c) =>
    counts[c] === 0
      ? []
      : [
          {
            cells: [
              String(one.number),
              String(counts[c]),
              `${lengthFirst(one.length, shown)}  (${lengthSecond(one.length, shown)})`,
            ],
            accent: false,
            bold: [true, false, false],
            swatch: null,
          },
        ],
  );
}

/** Line samples, how to read the numbers, and the caution. */
function noteItems(
  content: ColumnContent,
  inner: Box,
): { readonly height: number; readonly draw: (y: number) => Item[] } {
  const rim = rims(content.shell).flatMap((one) =>
    one.sides.filter((side) => content.only?.has(placeAt(content.shell, side)) ?? true),
  );
  const samples = [
    ...(rim.length > 0 ? [['base ring', line([0, 0], [9, 0], { weight: 'heavy' })] as const] : []),
    ...(content.leftOut.size > 0
      ? [
          [
            `left open: ${content.leftOut.size} ${content.leftOut.size === 1 ? 'place' : 'places'}`,
            line([0, 0], [9, 0], { weight: 'thin', dash: 'dashed' }),
          ] as const,
        ]
      : []),
    ...(content.missing.size > 0
      ? [
          [
            `no panel: ${content.missing.size} places`,
            line([0, 0], [9, 0], { weight: 'bold', ink: 'accent' }),
          ] as const,
        ]
      : []),
  ];
  const outer =
    content.nadir && content.only === null
      ? ' The outer circle is the lowest point, spread out.'
      : '';
  const small = content.small ? ' Some numbers are small: print on larger paper.' : '';
  const words = wrapText(
    `${content.numbersNote} With it stands its kind. The scale holds outwards from the crown.${outer}${small}`,
    2.6,
    inner.width,
  );
  const caution =
    content.caution === '' ? [] : wrapText(`Caution. ${content.caution}`, 2.6, inner.width, true);
  const cautionAt = samples.length * 4.6 + words.length * 3.6 + 6;
  const height = cautionAt + caution.length * 3.6 - 2;
  const draw = (y: number): Item[] => [
    ...samples.flatMap(([name, sample], i) => {
      const at = y + 2 + i * 4.6;
      const moved = sample.points.map(([px]): Point => [inner.x + px, at]);
      return [{ ...sample, points: moved }, text([inner.x + 12, at], name, 2.8)];
    }),
    ...words.map((row, i) =>
      text([inner.x, y + samples.length * 4.6 + 3 + i * 3.6], row, 2.6, { ink: 'grey' }),
    ),
    ...caution.map((row, i) => text([inner.x, y + cautionAt + i * 3.6], row, 2.6, { bold: true })),
  ];
  return { height, draw };
}
