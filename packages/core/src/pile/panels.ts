// Readings gathered by panel: readings with one tag are one panel, save where the tag was put on two by
// mistake (shared-tags.ts); a reading without a tag is one panel, or `count` of them. Sides turned to run anticlockwise seen from outside; a reading whose
// face is unknown keeps both ways. Everything is put in an order that depends on what was read and
// not on the order in which it was written down.

import { lowestTurn, turned } from '../math/cyclic.ts';
import { compareLists, compareText } from '../math/order.ts';
import { fromOtherFace } from './polygon.ts';
import type { Condition, ReadingRow } from './schema.ts';
import { partedByPanel } from './shared-tags.ts';
import { isPlain, readMark, type WrittenMark } from './written-mark.ts';

/** One reading, ready to be compared. */
export interface PanelReading {
  /** Index in the pile's list of readings. */
  readonly index: number;
  readonly by: string | null;
  /** Metres, as seen from outside (where the face is unknown: as written). */
  readonly sides: readonly number[];
  readonly faceKnown: boolean;
  /** Whether a person says that it stands as it was read, and is no slip. */
  readonly asRead?: boolean;
}

/** One panel, or several alike that were written down in one row. */
export interface Panel {
  readonly tag: string | null;
  /** Marks that can be read for sure; several where its readings disagree. */
  readonly marks: readonly string[];
  /** Marks that were written as one of several: only where none can be read for sure. */
  readonly faded: readonly WrittenMark[];
  readonly readings: readonly PanelReading[];
  /** The worst that any of its readings says; good where none says. */
  readonly condition: Condition;
  readonly count: number;
  readonly sideCount: number;
}

const WORSE: readonly Condition[] = ['good', 'repair', 'scrap'];

/** The panels of a list of readings, in an order that does not depend on that of the list. `sd`: of one
 * reading, metres. */
export function panelsOf(rows: readonly ReadingRow[], sd: number): Panel[] {
  const keyed = rows.map((row, index) => ({ row, index, key: keyOf(row) }));
  keyed.sort(
    (a, b) => compareLists(a.key.shape, b.key.shape) || compareText(a.key.text, b.key.text),
  );
  const byTag = new Map<string, { row: ReadingRow; index: number }[]>();
  const groups: { row: ReadingRow; index: number }[][] = [];
  for (const item of keyed) {
    const group = item.row.tag === undefined ? undefined : byTag.get(item.row.tag);
    if (group) group.push(item);
    else {
      const fresh = [item];
      groups.push(fresh);
      if (item.row.tag !== undefined) byTag.set(item.row.tag, fresh);
    }
  }
  return groups.flatMap((group) => partedByPanel(group, keyed, sd)).map(panelOf);
}

/** A tag that is on several panels: their readings, as indices in the pile's list, panel by panel. */
export interface SharedTag {
  readonly tag: string;
  readonly panels: readonly (readonly number[])[];
}

/** The tags that are on several of these panels, in the order in which they were written down. */
export function sharedTags(panels: readonly Panel[]): SharedTag[] {
  const byTag = new Map<string, number[][]>();
  for (const { tag, readings } of panels) {
    if (tag === null) continue;
    const rows = readings.map(({ index }) => index).sort((a, b) => a - b);
    byTag.set(tag, [...(byTag.get(tag) ?? []), rows]);
  }
  const first = ({ panels: rows }: SharedTag): number => rows[0]?.[0] ?? 0;
  return [...byTag]
    .filter(([, rows]) => rows.length > 1)
    .map(([tag, rows]) => ({ tag, panels: rows.sort(([a = 0], [b = 0]) => a - b) }))
    .sort((a, b) => first(a) - first(b));
}

function panelOf(group: readonly { row: ReadingRow; index: number }[]): Panel {
  const first = (group[0] as { row: ReadingRow }).row;
  const written = group.flatMap(({ row }) => (row.mark === undefined ? [] : [readMark(row.mark)]));
  const marks = written.filter(isPlain).flatMap((mark) => mark.marks);
  const worst = Math.max(...group.map(({ row }) => WORSE.indexOf(row.condition ?? 'good')));
  return {
    tag: first.tag ?? null,
    marks: [...new Set(marks)].sort(compareText),
    faded: marks.length > 0 ? [] : written.filter((mark) => mark.marks.length > 0),
    readings: group.map(({ row, index }) => ({
      index,
      by: row.by ?? null,
      sides: row.seenFrom === 'inside' ? fromOtherFace(row.sides) : row.sides,
      faceKnown: row.seenFrom !== 'unknown',
      ...(row.asRead && { asRead: true }),
    })),
    condition: WORSE[worst] as Condition,
    count: first.count ?? 1,
    sideCount: first.sides.length,
  };
}

function keyOf(row: ReadingRow): { shape: number[]; text: string } {
  const sides = row.seenFrom === 'inside' ? fromOtherFace(row.sides) : row.sides;
  return {
    shape: [sides.length, ...turned(sides, lowestTurn(sides))],
    text: JSON.stringify([
      row.tag,
      row.by,
      row.mark,
      row.seenFrom,
      row.condition,
      row.count,
      sides,
    ]),
  };
}
