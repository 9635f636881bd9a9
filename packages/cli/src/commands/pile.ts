// `shellraise pile`: the kinds of the pile, what is doubtful, and what to measure next.

import type { PileKinds } from '@shellraise/core';
import { type Lengths, lengthsIn } from '../lengths.ts';
import { type LoadedPile, loadPile } from '../load.ts';
import type { CommonOptions } from '../options.ts';
import { sidesWords } from '../tape.ts';
import {
  bullets,
  count,
  heading,
  paint,
  print,
  printJson,
  right,
  table,
  wrap,
} from '../terminal.ts';

/** Runs the command. */
export async function pile(file: string, options: CommonOptions): Promise<void> {
  const loaded = await loadPile(file, options);
  if (options.json) printJson(pileDocument(loaded));
  else print(...pileReport(loaded, lengthsIn(options.lengths)));
}

/** The blocks of the report. */
export function pileReport(loaded: LoadedPile, lengths: Lengths): readonly string[] {
  const { worked } = loaded;
  return [
    heading(`The pile: ${loaded.title}`),
    summary(loaded),
    kindTable(loaded, lengths),
    tapeNote(loaded),
    peopleTable(worked, lengths),
    bullets(
      paint.yellow('Readings that went wrong in a way that can be told:'),
      slipLines(loaded, lengths),
    ),
    suspectTable(loaded, lengths),
    bullets('Doubtful:', doubts(loaded, lengths)),
    bullets('Groups still joined:', groupLines(loaded)),
    bullets('To measure next:', nextLines(loaded)),
  ];
}

function summary({ pile, worked }: LoadedPile): string {
  const sources = [
    ...(pile.readings.length > 0 ? [count(pile.readings.length, 'reading')] : []),
    ...(pile.kinds.length > 0 ? [`${count(pile.kinds.length, 'row')} of kinds`] : []),
  ];
  const panels = worked.kinds.reduce((sum, kind) => sum + kind.good + kind.repair + kind.scrap, 0);
  const counted = worked.kinds.some((kind) => kind.counted);
  const found = `${count(worked.kinds.length, 'kind')}${counted ? `, ${count(panels, 'panel')}` : ', nobody counted the panels'}`;
  return `${found}; from ${sources.join(' and ')}.`;
}

function kindTable({ pile, worked }: LoadedPile, lengths: Lengths): string {
  return table(
    [
      { head: 'kind' },
      { head: `sides, ${sidesWords(pile)}, ${lengths.unit}` },
      right('known to'),
      right('good'),
      right('to mend'),
      right('scrap'),
      { head: 'marks' },
    ],
    worked.kinds.map((kind) => [
      kind.id,
      lengths.sides(kind.sides),
      `± ${lengths.small(Math.max(...kind.sideSds))}`,
      ...[kind.good, kind.repair, kind.scrap].map((n) => (kind.counted ? String(n) : '?')),
      kind.marks.join(', '),
    ]),
  );
}

/** A spreadsheet has no column for where the tape was held. */
const tapeNote = ({ project }: LoadedPile): string =>
  project === null
    ? wrap(
        'A spreadsheet does not say where the tape was held: its lengths are taken as hub to hub. Held along holes or skin, it shows less, and the true shell is a little larger; a project file can say so ("measuredAlong", "hubAllowance").',
        '',
      )
    : '';

function peopleTable({ people, noise }: PileKinds, lengths: Lengths): string {
  if (people.length === 0) return '';
  const basis = {
    panels: 'panels others measured too',
    kinds: 'kinds only',
    nothing: 'nothing',
  };
  const rows = people.map((one) => [
    one.by,
    String(one.readings),
    one.sd === null ? 'not known' : `${lengths.off(one.bias)} ± ${lengths.small(one.sd)}`,
    basis[one.basis],
    one.stated === true ? 'as the file says' : one.applied ? 'taken off' : 'left in',
  ]);
  const heads = ['tape of', 'readings', 'reads by', 'known from', ''];
  const found =
    noise.found === null
      ? ''
      : `\nOne reading is good to ${lengths.small(noise.used)} (one standard deviation; the file says ${lengths.small(noise.stated)}).`;
  return `${table(
    heads.map((head, i) => ({
      head,
      align: i === 1 || i === 2 ? ('right' as const) : ('left' as const),
    })),
    rows,
  )}${found}`;
}

const slipWords = {
  length: 'read wrong',
  swapped: 'sides in each other\u2019s place',
  unit: 'another unit',
  face: 'read from the other face',
  shift: 'every side off by one length',
} as const;

/** Readings explained by a slip; they make no kind of their own. */
function slipLines({ worked }: LoadedPile, lengths: Lengths): string[] {
  const row = (sides: readonly number[]): string => sides.map(lengths.side).join(', ');
  return worked.slips.map((one) => {
    const who = one.by === null ? '' : ` (${one.by})`;
    const what = [one.slip, ...(one.orElse === null ? [] : [one.orElse])]
      .map((slip) => slipWords[slip])
      .join(' or ');
    const panel = one.tag ?? `reading ${one.reading + 1}`;
    return `panel ${panel}${who}, kind ${one.kind}: ${what}: ${row(one.measured)}; should read ${row(one.expected)}`;
  });
}

function suspectTable({ worked }: LoadedPile, lengths: Lengths): string {
  if (worked.suspects.length === 0) return '';
  const rows = worked.suspects.map((one) => [
    one.reading === null ? `row of kind ${one.kind}` : (one.tag ?? `reading ${one.reading + 1}`),
    one.by ?? '',
    one.kind,
    String(one.side + 1),
    lengths.fine(one.measured),
    lengths.fine(one.expected),
    lengths.off(one.measured - one.expected),
  ]);
  const heads = ['panel', 'by', 'kind', 'side', 'measured', 'expected', 'off'];
  return `${paint.yellow('Readings that disagree with their kind; measure these again:')}\n${table(
    heads.map((head, i) => ({ head, align: i < 4 ? ('left' as const) : ('right' as const) })),
    rows,
  )}`;
}

function doubts({ worked }: LoadedPile, lengths: Lengths): string[] {
  return [
    ...worked.maybeOne.map(
      ({ kinds: [a, b], difference }) =>
        `Kinds ${a} and ${b} may be one: they differ by ${lengths.small(difference)} at most.`,
    ),
    ...worked.maybeTwo.map(
      ({ kind, spread }) =>
        `Kind ${kind} may be two: its readings spread by ${lengths.small(spread)}.`,
    ),
    ...worked.sharedTags.map(({ tag, panels }) => {
      const rows = panels.flat().map((row) => {
        const kind = worked.assigned.find(({ reading }) => reading === row)?.kind;
        return `reading ${row + 1}${kind ? ` (kind ${kind})` : ''}`;
      });
      return `The tag "${tag}" is on ${panels.length} panels, ${rows.join(', ')}; give each its own.`;
    }),
    ...worked.mixedMarks.map(({ mark, kinds }) => markDoubt(mark, kinds)),
    ...worked.miscounts.map(
      ({ kind, counted, found }) =>
        `Kind ${kind}: the file counts ${counted} panels, but ${found} were tagged.`,
    ),
  ];
}

function markDoubt(mark: string, kinds: PileKinds['mixedMarks'][number]['kinds']): string {
  const parts = kinds.map(
    ({ kind, panels, stray }) =>
      `${panels > 0 ? `${panels} of ` : ''}kind ${kind}${stray ? ' (likely a mistake)' : ''}`,
  );
  return `The mark "${mark}" is on ${parts.join(', ')}.`;
}

function groupLines({ worked, pile }: LoadedPile): string[] {
  return [
    ...worked.groups.map(
      ({ around, closed, count: n }) =>
        `${n} × ${around.join(' ')}${closed ? ', all the way round the hub' : ''}`,
    ),
    ...worked.unsettledGroups.map(({ group, readings, more }) => {
      const around = pile.groups[group]?.around.join(' ') ?? '';
      if (readings.length === 0) return `${around}: neighbours in it have no side in common`;
      const ways = readings.map((kinds) => kinds.join(' ')).join('; or ');
      return `${around}: may be ${ways}${more ? '; or more' : ''}`;
    }),
  ];
}

const reasons = {
  'one reading': 'rests on one reading; measure another panel of it',
  'face unknown': 'which face was measured is unknown, so either hand fits; look at it again',
  'two kinds fit': 'fits two kinds; measure it again',
} as const;

function nextLines({ worked, pile }: LoadedPile): string[] {
  return worked.tooFew.map(({ path, kinds, why }) => {
    const tag = pile.readings[Number(/^pile\.readings\[(\d+)\]/.exec(path)?.[1])]?.tag;
    const what = tag === undefined ? path : `panel ${tag}`;
    const which = path === `kind ${kinds[0]}` ? '' : ` (kind ${kinds.join(' or ')})`;
    return `${what}${which}: ${reasons[why]}.`;
  });
}

function pileDocument({ title, worked, pile }: LoadedPile): object {
  return {
    title,
    measuredAlong: pile.measuredAlong,
    hubAllowance: pile.hubAllowance,
    ...worked,
  };
}
