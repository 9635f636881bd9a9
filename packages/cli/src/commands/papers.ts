// `shellraise papers`: the drawings (SVG) and lists (CSV) of one arrangement.

import {
  accountSheet,
  buyTable,
  flatPlanSheet,
  hubsOf,
  kindCardSheets,
  kindsTable,
  type PlaceId,
  placeCount,
  placesByKind,
  placesTable,
  type SheetFacts,
  seamsTable,
  stockTable,
  tableToCsv,
  takeOffSheets,
  toSvg,
} from '@shellraise/core';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { type Lengths, lengthsIn } from '../lengths.ts';
import type { LengthSystem, PapersOptions } from '../options.ts';
import { fittedWords } from '../tape.ts';
import { print, printJson } from '../terminal.ts';
import { type OutFile, writeAll } from '../write.ts';
import { numbersText, standCaution } from './places.ts';
import { proofOf, takenFor, takeOffOf } from './takeoff.ts';

/** Runs the command: all files are written, or none. */
export async function papers(file: string, options: PapersOptions): Promise<void> {
  const chosen = await choose(file, options);
  const files = papersOf(chosen, options.lengths, dateOf(options));
  writeAll(options.out, files);
  if (options.json) printJson({ folder: options.out, files: files.map(({ name }) => name) });
  else print(writtenText(options.out, files), numbersText(chosen));
}

/** The day that the sheets bear: as asked for, or today. */
export const dateOf = ({ date }: { readonly date?: string }): string =>
  date ?? new Date().toISOString().slice(0, 10);

/** What was written where. */
export const writtenText = (folder: string, files: readonly OutFile[]): string =>
  [`Written to ${folder}:`, ...files.map(({ name }) => `  ${name}`)].join('\n');

/** Every sheet and list of an arrangement. */
export function papersOf(chosen: Chosen, lengths: LengthSystem, date: string): OutFile[] {
  const { standing, loaded, numbers } = chosen;
  const { shell } = standing;
  const kinds = fittedKinds(chosen);
  const list = takeOffOf(chosen);
  const sheet = (name: string): SheetFacts => ({
    project: loaded.title,
    sheet: name,
    date,
    assumes: assumptions(chosen, lengthsIn(lengths)),
  });
  const upper = upperFrom(chosen);
  const painted = numbers.status === 'frozen';
  const plan = (fromBelow: boolean, fromCourse?: number) =>
    flatPlanSheet(
      shell,
      numbers.numbers,
      kinds,
      {
        ...sheet(
          `Flat plan${fromCourse ? ', upper courses' : ''}${fromBelow ? ', from inside' : ''}`,
        ),
        caution: standCaution,
      },
      { paper: 'A3', lengths, fromBelow, painted, ...(fromCourse && { fromCourse }) },
    );
  const cards = kindCardSheets(kinds, sheet('Kinds'), {
    lengths,
    places: placesByKind(chosen.standing.shell, chosen.kinds.length),
    holes: loaded.holes,
  });
  const drawings = {
    'flat-plan': [plan(false)],
    'flat-plan-from-inside': [plan(true)],
    'flat-plan-upper': upper === null ? [] : [plan(false, upper)],
    'flat-plan-upper-from-inside': upper === null ? [] : [plan(true, upper)],
    kinds: cards,
    'proof-of-count': [accountSheet(proofOf(chosen, list), sheet('Proof of count'))],
    'take-off': takeOffSheets(list, takeOffFacts(sheet('Take-off'), takenFor(chosen)), {
      hardware: loaded.hardware,
    }),
  };
  const tables = {
    kinds: kindsTable(kinds),
    places: placesTable(shell, numbers, kinds),
    stock: stockTable(shell, kinds),
    seams: seamsTable(list),
    'take-off': buyTable(list),
  };
  return [
    ...Object.entries(drawings).flatMap(([name, sheets]) =>
      sheets.map((drawing, i) => ({
        name: `${name}${sheets.length > 1 ? `-${i + 1}` : ''}.svg`,
        text: toSvg(drawing),
      })),
    ),
    ...Object.entries(tables).map(([name, table]) => ({
      name: `${name}.csv`,
      text: tableToCsv(table),
    })),
  ];
}

/** The course from which a sheet of its own is worth while: the lowest that lies in the upper half
 * on the whole, where a shell goes far below its equator and has many places; else null. */
function upperFrom({ standing: { shell, courses } }: Chosen): number | null {
  const heights = Array.from(
    { length: shell.hubs.length / 3 },
    (_, h) => shell.hubs[3 * h + 2] ?? 0,
  );
  const places = placeCount(shell);
  if (places < 200 || Math.min(...heights) > -shell.radius / 2) return null;
  const up = courses.counts.map((_, c) => {
    const hubs = Array.from({ length: places }, (_, p) => p)
      .filter((p) => courses.course[p] === c + 1)
      .flatMap((p) => hubsOf(shell, p as PlaceId));
    return hubs.reduce((sum, h) => sum + (heights[h] as number), 0) > 0;
  });
  return up.indexOf(true) + 1 || null;
}

const takeOffFacts = (facts: SheetFacts, taken: string): SheetFacts => ({
  ...facts,
  assumes: `${facts.assumes} ${taken}`.trim(),
});

function assumptions({ found, shape, loaded, numbers }: Chosen, lengths: Lengths): string {
  const which = found.shapes.indexOf(shape) + 1;
  const doubts = shape.suspects.map(
    ({ kind, side, measured, expected }) =>
      `kind ${kind} side ${side + 1}, measured ${lengths.side(measured)}, by the net ${lengths.side(expected)}`,
  );
  return [
    `Sphere of radius ${lengths.large(shape.radius)}, give or take ${lengths.small(shape.radiusSd)}.`,
    fittedWords(loaded.pile, lengths),
    found.shapes.length > 1 ? `Shape ${which} of the ${found.shapes.length} that fit.` : '',
    numbers.status === 'lost'
      ? `Numbers are NOT those painted on the panels, which could not be kept: ${numbers.reason}.`
      : '',
    doubts.length > 0 ? `In doubt: ${doubts.join('; ')}.` : '',
  ]
    .filter((words) => words !== '')
    .join(' ')
    .replaceAll('"', '″')
    .replaceAll("'", '′');
}
