// What the record knows better than the project file: panels found broken, the survey, bolts that were
// counted. As parts of the project to be put in their place; nothing is changed where it is so already.

import type { GroundSettings } from '../ground/schema.ts';
import type { HardwareRow, ReadingRow } from '../pile/schema.ts';
import type { RecordLog } from '../record/log.ts';
import { RECORD_PASSES, type RecordPass } from '../record/what.ts';
import type { SidePattern } from '../takeoff/seam-bolts.ts';
import { readThread } from '../takeoff/threads.ts';
import { SAME_BOLT_LENGTH } from '../takeoff/tolerances.ts';

type Survey = GroundSettings['survey'];

/** What the record is held against: parts of the project, and the shell's seams with their bolts and
 * passes, by index. */
export interface ProjectParts {
  readonly readings: readonly ReadingRow[];
  readonly hardware: readonly HardwareRow[];
  readonly survey: GroundSettings['survey'];
  readonly patterns: readonly (SidePattern | null)[];
  readonly passes: readonly RecordPass[];
}

/** Parts as the record has them; null where they are so already. */
export interface ProjectNews {
  readonly readings: readonly ReadingRow[] | null;
  readonly hardware: readonly HardwareRow[] | null;
  readonly survey: GroundSettings['survey'] | null;
  /** Tags whose condition is another, survey readings that are new or others, sizes of bolts counted. */
  readonly tags: readonly string[];
  readonly surveyed: number;
  readonly sizes: number;
}

/** What is new in the record. Of several readings of one thing the last in the record's order counts;
 * counted bolts are loose ones, so those in seams at finger or more are added: a lot is what there is in
 * all. */
export function projectNews(log: RecordLog, parts: ProjectParts): ProjectNews {
  const { readings, tags } = conditions(log, parts.readings);
  const { survey, surveyed } = readingsOf(log, parts.survey);
  const { hardware, sizes } = counted(log, parts);
  return {
    readings: tags.length > 0 ? readings : null,
    survey: surveyed > 0 ? survey : null,
    hardware: sizes > 0 ? hardware : null,
    ...{ tags, surveyed, sizes },
  };
}

function conditions(log: RecordLog, rows: readonly ReadingRow[]) {
  const tags: string[] = [];
  const readings = rows.map((row) => {
    const what = row.tag === undefined ? null : log.stands(`condition ${row.tag}`)?.entry.what;
    if (what?.kind !== 'panel condition' || what.condition === (row.condition ?? 'good'))
      return row;
    if (!tags.includes(what.tag)) tags.push(what.tag);
    return { ...row, condition: what.condition };
  });
  return { readings, tags };
}

/** A reading of the same thing has the same key. */
function keyOf(one: Survey[number]): string {
  if (one.what === 'chord')
    return `chord ${Math.min(one.from, one.to)} ${Math.max(one.from, one.to)}`;
  return one.what === 'height' ? `height ${one.ring} ${one.number}` : `${one.what} ${one.hub}`;
}

const lengthOf = (one: Survey[number]): number =>
  one.what === 'level' || one.what === 'height' ? one.height : one.length;

function readingsOf(log: RecordLog, before: Survey): { survey: Survey; surveyed: number } {
  const last = new Map(
    log.living('surveyed').map(({ what: { reading } }) => [keyOf(reading), reading]),
  );
  const known = new Map(before.map((one) => [keyOf(one), lengthOf(one)]));
  const news = [...last].filter(([key, one]) => known.get(key) !== lengthOf(one));
  const others = before.filter((one) => !news.some(([key]) => key === keyOf(one)));
  return { survey: [...others, ...news.map(([, one]) => one)], surveyed: news.length };
}

interface Size {
  readonly thread: string;
  readonly length: number;
}

function counted(log: RecordLog, { hardware, patterns, passes }: ProjectParts) {
  let rows = [...hardware];
  let sizes = 0;
  for (const subject of new Set(
    log.living('bolts counted').map(({ what }) => `bolts ${what.thread} ${what.length}`),
  )) {
    const what = log.stands(subject)?.entry.what;
    if (what?.kind !== 'bolts counted') continue;
    const inShell = patterns.reduce(
      (sum, own, seam) =>
        own && isSame(own, what) && RECORD_PASSES.indexOf(passes[seam] ?? 'none') > 0
          ? sum + own.holes
          : sum,
      0,
    );
    const count = what.count + inShell;
    const lots = rows.filter((row) => isLot(row, what));
    if (lots.reduce((sum, row) => sum + row.count, 0) === count && lots.length > 0) continue;
    sizes++;
    // One lot holds what there is of the size; which box it lies in is not known any more.
    rows =
      lots.length === 0
        ? [...rows, { item: 'bolt', ...sizeOf(what), count, state: 'unknown' }]
        : rows.map((row) => (row === lots[0] ? { ...row, count } : row));
    const [, ...rest] = lots;
    rows = rows.map((row) => (rest.includes(row) ? { ...row, count: 0 } : row));
  }
  return { hardware: rows, sizes };
}

const sizeOf = ({ thread, length }: Size): Size => ({ thread, length });

const isLot = (row: HardwareRow, size: Size): boolean =>
  row.item === 'bolt' &&
  row.thread !== undefined &&
  row.length !== undefined &&
  isSame({ thread: row.thread, length: row.length }, size);

const isSame = (a: Size, b: Size): boolean =>
  designation(a.thread) === designation(b.thread) &&
  Math.abs(a.length - b.length) <= SAME_BOLT_LENGTH;

function designation(text: string): string {
  const read = readThread(text);
  return read.ok ? read.value.designation : text.trim();
}
