// The marks of a pile against the kinds that the tape gave its panels: who carries what, how often a
// mark is wrong, and which marks a kind truly has. Kinds that tape can't tell apart are one family.

import { compareText } from '../math/order.ts';
import type { Kind } from '../pile/kind.ts';
import type { PileKinds } from '../pile/kinds.ts';
import { panelsOf } from '../pile/panels.ts';
import type { Pile } from '../pile/schema.ts';
import { readMark, type WrittenMark } from '../pile/written-mark.ts';

/** One panel, or several that were written down in one row. */
export interface TalliedPanel {
  /** Indices in the pile's list of readings. */
  readonly readings: readonly number[];
  readonly tag: string | null;
  readonly count: number;
  /** Its mark; several where it was read differently, none where nobody read one. */
  readonly written: WrittenMark;
  /** Its kind by tape; null where that is not settled. */
  readonly kind: string | null;
  /** Families that it may belong to by tape, the likeliest first; none for a kind without a place. */
  readonly families: readonly number[];
}

/** Marks against families. */
export interface MarkTally {
  /** Every mark that a panel, a row or a group has for sure. */
  readonly marks: readonly string[];
  readonly panels: readonly TalliedPanel[];
  /** Mark → family → panels that carry it for sure. */
  readonly carried: readonly (readonly number[])[];
  /** Family → its panels, also the unmarked and faded ones. */
  readonly panelsOf: readonly number[];
  /** Family → marks (indices) that it truly has; what else its panels carry is wrong. */
  readonly real: readonly (readonly number[])[];
  /** Chance that a mark is wrong, 0.02 to 0.15. */
  readonly wrong: number;
}

/** How often marks are wrong before the pile says it, and what share of them is still usual: common
 * practice, no source. */
const WRONG = { first: 0.05, least: 0.02, most: 0.15, usual: 0.08 };

/** A mark that is mostly on other kinds must be on this share of a kind's marked panels to be one of
 * its own: our own judgement. */
const LEAST_SHARE = 0.12;
/** Fewer panels than this, of many, do not show that a mark belongs to a kind. */
export const LEAST_PANELS = 3;

/** The tally of a pile. `familyOf`: kind id → its family; undefined for kinds without a place. */
export function markTally(
  pile: Pile,
  worked: PileKinds,
  families: number,
  familyOf: (id: string) => number | undefined,
): MarkTally {
  const panels = talliedPanels(pile, worked, familyOf);
  const stated = statedMarks(pile, familyOf);
  const marks = allMarks(pile, panels, worked.kinds);
  const table = marks.map(() => new Array<number>(families).fill(0));
  const panelsOfFamily = new Array<number>(families).fill(0);
  for (const { written, count, families: own } of panels)
    for (const f of own) {
      panelsOfFamily[f] = (panelsOfFamily[f] as number) + count / own.length;
      const row = sureRow(written, marks, table);
      if (row) row[f] = (row[f] as number) + count / own.length;
    }
  for (const { mark, family, panels: n } of stated) {
    const row = table[marks.indexOf(mark)] as number[];
    const more = Math.max(0, n - (row[family] as number));
    row[family] = (row[family] as number) + more;
    panelsOfFamily[family] = Math.max(panelsOfFamily[family] as number, row[family] as number);
  }
  let wrong = WRONG.first;
  let real = realMarks(table, families, wrong);
  for (let round = 0; round < 2; round++) {
    wrong = wrongShare(table, real);
    real = realMarks(table, families, wrong);
  }
  const said = stated.filter((one) => one.panels === 0);
  return {
    marks,
    panels,
    carried: table,
    panelsOf: panelsOfFamily,
    real: real.map((own, f) => [
      ...new Set([
        ...own,
        ...said.filter((one) => one.family === f).map((one) => marks.indexOf(one.mark)),
      ]),
    ]),
    wrong,
  };
}

function sureRow(
  { marks: own, open }: WrittenMark,
  marks: readonly string[],
  table: number[][],
): number[] | null {
  return own.length === 1 && !open ? (table[marks.indexOf(own[0] as string)] as number[]) : null;
}

function talliedPanels(
  pile: Pile,
  { assigned }: PileKinds,
  familyOf: (id: string) => number | undefined,
): TalliedPanel[] {
  const at = new Map(assigned.map((one) => [one.reading, one]));
  return panelsOf(pile.readings, pile.readingSd).map((panel) => {
    const readings = panel.readings.map((one) => one.index).sort((a, b) => a - b);
    const verdict = at.get(readings[0] as number);
    const ids = verdict?.kind ? [verdict.kind] : (verdict?.candidates ?? []);
    const open = panel.marks.length === 0 && panel.faded.length === 0;
    const faded = panel.faded.flatMap((one) => one.marks);
    const written: WrittenMark = open
      ? { marks: [], open: true }
      : {
          marks: panel.marks.length > 0 ? panel.marks : [...new Set(faded)],
          open: panel.faded.some((one) => one.open),
        };
    const families = ids.map(familyOf).filter((f) => f !== undefined);
    return {
      readings,
      tag: panel.tag,
      count: panel.count,
      written,
      kind: verdict?.kind ?? null,
      families: [...new Set(families)],
    };
  });
}

/** What rows of kinds say of their marks: a row with one mark says it of all its panels. */
function statedMarks(pile: Pile, familyOf: (id: string) => number | undefined) {
  return pile.kinds.flatMap((row) => {
    const family = familyOf(row.id);
    const marks = row.marks.flatMap((mark) => readMark(mark).marks);
    if (family === undefined) return [];
    const panels = marks.length === 1 ? (row.good ?? 0) + (row.repair ?? 0) + (row.scrap ?? 0) : 0;
    return marks.map((mark) => ({ mark, family, panels }));
  });
}

function allMarks(pile: Pile, panels: readonly TalliedPanel[], kinds: readonly Kind[]): string[] {
  const ids = new Set(kinds.map((kind) => kind.id));
  const named = [
    ...panels.flatMap(({ written }) => written.marks),
    ...pile.kinds.flatMap((row) => row.marks.flatMap((mark) => readMark(mark).marks)),
    ...pile.groups.flatMap((group) =>
      group.around.filter((name) => !ids.has(name)).flatMap((name) => readMark(name).marks),
    ),
  ];
  return [...new Set(named)].sort(compareText);
}

/** Family → its marks: those on more of its panels than wrong marks would be, and those of which it
 * is the home: no other has a larger share of panels with it. */
function realMarks(
  table: readonly (readonly number[])[],
  families: number,
  wrong: number,
): number[][] {
  const all = Array.from({ length: families }, (_, f) =>
    table.reduce((sum, row) => sum + (row[f] as number), 0),
  );
  const share = (row: readonly number[], f: number): number =>
    (row[f] as number) / Math.max(1, all[f] as number);
  return all.map((own, f) => {
    const expected = (Math.max(wrong, WRONG.usual) * own) / Math.max(1, table.length - 1);
    const limit = expected + 3 * Math.sqrt(expected) + 0.5;
    return table.flatMap((row, m) => {
      const n = row[f] as number;
      const isHome = all.every((_, g) => share(row, g) <= share(row, f));
      const isMany = n > limit && n >= LEAST_SHARE * own;
      return n > 0 && (isMany || (isHome && n >= Math.min(LEAST_PANELS, own / 10))) ? [m] : [];
    });
  });
}

function wrongShare(table: readonly (readonly number[])[], real: readonly (readonly number[])[]) {
  let strays = 0;
  let all = 0;
  table.forEach((row, m) => {
    row.forEach((n, f) => {
      all += n;
      if (!(real[f] as readonly number[]).includes(m)) strays += n;
    });
  });
  return Math.min(WRONG.most, Math.max(WRONG.least, all > 0 ? strays / all : 0));
}
