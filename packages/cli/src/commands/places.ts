// `shellraise places`: the shells that the stock can stand, which panel goes where in one of them,
// and what the near misses lack.

import {
  type Arrangement,
  type Arrangements,
  type Kind,
  STAND_CAUTION,
  type StockRow,
  type WayUp,
} from '@shellraise/core';
import { type Chosen, choose, keep, shapesWith, unfreeze } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import type { PlacesOptions, StandOptions } from '../options.ts';
import {
  caution,
  count,
  heading,
  lineWidth,
  paint,
  print,
  printJson,
  table,
  wrap,
} from '../terminal.ts';
import { placesDocument } from './places-document.ts';

const shown = 8;

/** Runs the command; sets exit code 1 where nothing stands without something short. */
export async function places(file: string, options: PlacesOptions): Promise<void> {
  const chosen = await choose(file, options);
  const done = keepAsAsked(file, chosen, options);
  if (chosen.list.tallest === null) process.exitCode = 1;
  if (options.json) printJson(placesDocument(chosen, options));
  else print(...placesReport(chosen, options, lengthsIn(options.lengths)), done);
}

/** Writes what the options ask to be kept; what was done, in words. */
function keepAsAsked(file: string, chosen: Chosen, options: PlacesOptions): string {
  const { keep: kept = false, freeze = false, unfreeze: forget = false } = options;
  const former = `the former file is ${file}.previous.`;
  if (kept || freeze) {
    const repaired = options.repaired ?? chosen.loaded.project?.places?.repaired ?? false;
    keep(file, chosen, { repaired, freeze, unfreeze: forget });
    return `Kept in ${file}${freeze ? ', its numbers frozen' : ''}; ${former}`;
  }
  if (!forget) return '';
  return unfreeze(file, chosen)
    ? `The numbers are no longer frozen in ${file}; ${former}`
    : `No numbers were frozen in ${file}.`;
}

/** What stands of the painted numbers, in words; empty where nothing is frozen. */
export function numbersText({ numbers }: Pick<Chosen, 'numbers'>): string {
  if (numbers.status === 'plain') return '';
  if (numbers.status === 'lost')
    return paint.red(
      wrap(
        `The painted numbers could not be kept: ${numbers.reason}. The numbers here are NOT those on the panels.`,
        '',
      ),
    );
  const kept = numbers.painted.reduce((sum, one) => sum + one, 0);
  const added = numbers.numbers.filter((_, p) => numbers.painted[p] === 0).sort();
  const parts = [
    `Painted numbers are kept on ${count(kept, 'panel')}`,
    added.length === 0
      ? ''
      : `${count(added.length, 'place')} added since: ${added[0]} to ${added.at(-1)}`,
    numbers.idle.length === 0
      ? ''
      : `${count(numbers.idle.length, 'painted panel')} set aside: ${runsOf(numbers.idle)}`,
  ];
  return wrap(`${parts.filter((part) => part !== '').join('; ')}.`, '');
}

/** Numbers in order, runs within a course drawn together: `1-01 to 1-30, 2-04`. */
function runsOf(numbers: readonly string[]): string {
  const runs: string[][] = [];
  for (const number of numbers) {
    const last = runs.at(-1)?.at(-1)?.split('-') ?? [];
    const [course, position] = number.split('-');
    if (last[0] === course && Number(last[1]) + 1 === Number(position)) runs.at(-1)?.push(number);
    else runs.push([number]);
  }
  return runs.map((run) => (run.length > 1 ? `${run[0]} to ${run.at(-1)}` : run[0])).join(', ');
}

/** The blocks of the report. */
export function placesReport(
  chosen: Chosen,
  options: Pick<StandOptions, 'shape'>,
  lengths: Lengths,
): readonly string[] {
  const { found, list } = chosen;
  return [
    heading('What can stand'),
    severalShapes(found.shapes.length, options.shape),
    verdict(list, lengths),
    uncountedNote(list),
    standsTable(list, lengths),
    nearMisses(list, lengths),
    heading(`Arrangement ${chosen.number}`),
    describe(chosen, lengths),
    sameShapes(chosen),
    numbersText(chosen),
    stockTable(chosen.arrangement.stock),
    courseTable(chosen, chosen.kinds),
    caution(standCaution),
  ];
}

/** What every statement that something can stand must say beside it. */
export const standCaution = STAND_CAUTION;

/** Which shape the report goes on from, where there were several. */
export const severalShapes = (shapes: number, used: number): string =>
  shapes === 1
    ? ''
    : wrap(
        `${shapes} shapes fit these kinds; this is for shape ${used}. Other shapes: --shape 1 to ${shapes}. "shellraise shape" says what tells them apart.`,
        '',
      );

/** Whether it matters which of several shapes it is. */
function sameShapes(chosen: Chosen): string {
  const all = chosen.found.shapes.length;
  if (all === 1) return '';
  const same = shapesWith(chosen);
  const text =
    same.length === all
      ? `This shell is the same in all ${all} shapes that fit: what tells them apart does not matter for it.`
      : `Of the ${all} shapes that fit, this shell is part of shape ${same.join(', ')} only: settle first which one it is; "shellraise shape" says how.`;
  return wrap(text, '');
}

function verdict(list: Arrangements, lengths: Lengths): string {
  const best = list.tallest === null ? null : (list.arrangements[list.tallest] as Arrangement);
  if (best === null)
    return paint.bold('Nothing can stand without something short; the nearest misses are below.');
  const flat = list.tallestFlat;
  const other =
    flat === null || flat === list.tallest ? '' : ` The tallest with a flat base: no. ${flat + 1}.`;
  return paint.bold(
    wrap(
      `The tallest with nothing short: ${lengths.large(best.cut.height)} high, ${count(best.cut.places.length, 'panel')}.${other}`,
      '',
    ),
  );
}

function uncountedNote({ uncounted, arrangements }: Arrangements): string {
  if (uncounted.length === 0) return '';
  const all = uncounted.length === arrangements[0]?.stock.flatMap((row) => row.kinds).length;
  return paint.yellow(
    wrap(
      all
        ? 'Nobody counted the panels: the list takes it that there are enough of each kind.'
        : `Nobody counted kind ${uncounted.join(', ')}: the list takes it that there are enough.`,
      '',
    ),
  );
}

const listColumns = [
  { head: 'no.', align: 'right' as const },
  { head: 'height', align: 'right' as const },
  { head: 'floor across', align: 'right' as const },
  { head: 'panels', align: 'right' as const },
  { head: 'crown' },
  { head: 'base uneven' },
];

function standsTable(list: Arrangements, lengths: Lengths): string {
  const standing = list.arrangements.filter((one) => one.short === 0);
  const rows = standing.slice(0, shown).map((one, i) => rowOf(list, one, i, lengths));
  return standing.length === 0
    ? ''
    : `${table(listColumns, rows)}${more(standing.length)}\n  ${wrap(orderNote, '  ', lineWidth() - 2)}`;
}

/** Why a lower number may show a lesser height. */
const orderNote =
  'Height is from the lowest base hub; the order goes by the crown over the mean of the base hubs.';

function nearMisses(list: Arrangements, lengths: Lengths): string {
  const tallest = list.tallest === null ? 0 : (list.arrangements[list.tallest]?.cut.rise ?? 0);
  const misses = list.arrangements.flatMap((one, i) =>
    one.short > 0 && one.cut.rise > tallest * 1.001 ? [{ one, i }] : [],
  );
  if (misses.length === 0) return '';
  const rows = misses.slice(0, shown).map(({ one, i }) => rowOf(list, one, i, lengths));
  const [head = '', ...lines] = table(listColumns, rows).split('\n');
  const each = lines.flatMap((line, i) => [
    line,
    lacksText((misses[i] as { one: Arrangement }).one),
  ]);
  return ['Taller, but with panels short:', head, ...each].join('\n') + more(misses.length);
}

const more = (all: number): string =>
  all > shown ? `\n  … and ${all - shown} more (--json lists all)` : '';

function rowOf(list: Arrangements, one: Arrangement, i: number, lengths: Lengths): string[] {
  const { cut } = one;
  return [
    String(i + 1),
    lengths.large(cut.height),
    lengths.large(2 * cut.floor.mean),
    String(cut.places.length),
    crownText(list.waysUp[one.wayUp] as WayUp),
    cut.flat ? 'flat' : lengths.side(cut.baseZ.max - cut.baseZ.min),
  ];
}

/** `hub of 1 1 1 1 1`, `place of 5`, `seam of 3L 3R`. */
const crownText = ({ at, kinds }: WayUp): string => `${at} of ${kinds.join(' ')}`;

/** What a near miss lacks, below its row; a kind and its number stay on one line. */
function lacksText(one: Arrangement): string {
  const each = one.stock
    .filter((row) => row.short > 0)
    .map((row) =>
      `kind ${row.kinds.join('/')}: ${row.short}${mend(row)}`.replaceAll(' ', '\u00a0'),
    );
  const text = wrap(`lacks ${each.join(', ')}`, ' '.repeat(13), lineWidth() - 7);
  return `       ${text.replaceAll('\u00a0', ' ')}`;
}

const mend = (row: StockRow): string => (row.mendable > 0 ? ` (mend ${row.mendable})` : '');

function describe({ arrangement, way, shape }: Chosen, lengths: Lengths): string {
  const { cut, courses, openSides } = arrangement;
  const facts = [
    ['crown', crownText(way)],
    ['height', `${lengths.large(cut.height)} from the lowest base hub`],
    ['floor', `${lengths.large(2 * cut.floor.mean)} across the base hubs, mean`],
    ['sphere', `radius ${lengths.large(shape.radius)} ± ${lengths.small(shape.radiusSd)}`],
    [
      'base',
      `${openSides} open sides, ${cut.flat ? 'flat' : `uneven by ${lengths.side(cut.baseZ.max - cut.baseZ.min)}`}`,
    ],
    ['courses', `${courses.join(', ')} places from the ground up`],
  ];
  return facts
    .map(
      ([name, value]) =>
        `  ${(name ?? '').padEnd(9)}${wrap(value ?? '', ' '.repeat(11), lineWidth() - 11)}`,
    )
    .join('\n');
}

function stockTable(rows: readonly StockRow[]): string {
  const heads = ['kind', 'places', 'good', 'to mend', 'short', 'left over'];
  return table(
    heads.map((head, i) => ({ head, align: i === 0 ? ('left' as const) : ('right' as const) })),
    rows.map((row) => [
      row.kinds.join(' or '),
      String(row.need),
      row.counted ? String(row.good) : 'not counted',
      row.counted ? String(row.repair) : '',
      row.short > 0 ? paint.red(String(row.short)) : '0',
      row.counted ? String(row.left) : '',
    ]),
  );
}

/** Course by course, from the ground up: the kinds in turn, clockwise seen from above. */
function courseTable({ standing }: Chosen, kinds: readonly Kind[]): string {
  const { courses, shell } = standing;
  const rows = courses.counts.map((places, c) => {
    const inCourse = Array.from(courses.course.keys())
      .filter((p) => courses.course[p] === c + 1)
      .sort((p, q) => (courses.position[p] as number) - (courses.position[q] as number));
    const ids = inCourse.map((p) => (kinds[shell.kind[p] as number] as Kind).id);
    return [String(c + 1), String(places), ids.join(' ')];
  });
  const body = rows.map(([course = '', places = '', ids = '']) => {
    const [first, ...others] = wrap(ids, '', lineWidth() - 18).split('\n');
    const head = `  ${course.padStart(6)}  ${places.padStart(6)}  ${first}`;
    return [head, ...others.map((line) => `${' '.repeat(18)}${line}`)].join('\n');
  });
  return [
    wrap(
      'Kinds course by course, from the ground up, clockwise seen from above from the datum:',
      '',
    ),
    paint.bold('  course  places  kinds'),
    ...body,
  ].join('\n');
}
