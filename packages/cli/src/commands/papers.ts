// `shellraise papers`: the sheets and the lists (CSV) of one arrangement.

import {
  buyTable,
  kindsTable,
  type NamedFile,
  placesTable,
  type SheetJob,
  seamsTable,
  stockTable,
  svgFiles,
  type Table,
  tableToCsv,
} from '@shellraise/core';
import { type Chosen, choose } from '../job.ts';
import type { PapersOptions, SheetOptions } from '../options.ts';
import { pdfFiles } from '../sheets/files.ts';
import { chosenSheets } from '../sheets/job.ts';
import { LISTS, type MissedSet, makeSets, namesIn } from '../sheets/make.ts';
import { bullets, print, printJson, wrap } from '../terminal.ts';
import { writeAll } from '../write.ts';
import { numbersText } from './places.ts';

/** Runs the command: all files are written, or none. */
export async function papers(file: string, options: SheetOptions): Promise<void> {
  const chosen = await choose(file, options);
  const { files, sets, missed, nothing, letters } = await papersOf(chosen, options);
  writeAll(options.out, files);
  if (options.json)
    printJson({
      folder: options.out,
      files: files.map(({ name }) => name),
      sets,
      missed,
      nothing,
      letters,
    });
  else
    print(
      writtenText(options.out, files),
      missedText(missed),
      nothingText(nothing),
      lettersText(letters),
      numbersText(chosen),
    );
}

/** The day that the sheets bear: as asked for, or today. */
export const dateOf = ({ date }: { readonly date?: string }): string =>
  date ?? new Date().toISOString().slice(0, 10);

/** What was written where. */
export const writtenText = (folder: string, files: readonly NamedFile[]): string =>
  [`Written to ${folder}:`, ...files.map(({ name }) => `  ${name}`)].join('\n');

/** Sets that were not made, and why. */
const missedText = (missed: readonly MissedSet[]): string =>
  bullets(
    'Not made:',
    missed.map(({ name, why }) => `${name}: ${why.join('; ')}`),
  );

/** Sets that the file has nothing for. */
const nothingText = (nothing: readonly string[]): string =>
  nothing.length === 0 ? '' : wrap(`The file has nothing for: ${nothing.join(', ')}.`, '');

/** Letters that no typeface of the PDF has, and what helps. */
const lettersText = (letters: readonly string[]): string =>
  letters.length === 0
    ? ''
    : wrap(
        `The PDF’s typefaces lack ${letters.join(' ')}: its pages have their numbers instead, such as <U+${codeOf(letters[0] as string)}>. Give --font FILE, a typeface that has them; the SVG sheets show them in the reader’s own.`,
        '',
      );

const codeOf = (letter: string): string =>
  (letter.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0');

/** A set as `--json` tells it. */
export interface SetTold {
  readonly name: string;
  readonly what: string;
  readonly pages: number;
}

/** Every sheet and list that was asked for. */
export async function papersOf(
  chosen: Chosen,
  options: PapersOptions & Partial<SheetOptions>,
): Promise<{
  readonly files: readonly NamedFile[];
  readonly sets: readonly SetTold[];
  readonly missed: readonly MissedSet[];
  readonly nothing: readonly string[];
  /** Letters that no typeface of the PDF has. */
  readonly letters: readonly string[];
}> {
  const look = {
    lengths: options.lengths,
    paper: options.paper ?? 'A4',
    date: dateOf(options),
  };
  const job = chosenSheets(chosen, look);
  const { made, missed, nothing } = makeSets(job, options.only);
  const sort = options.as ?? 'both';
  const pdf =
    sort === 'svg'
      ? { files: [], letters: [] }
      : await pdfFiles(chosen.loaded.title, look.date, made, options.font);
  return {
    files: [
      ...pdf.files,
      ...(sort === 'pdf' ? [] : made.flatMap(({ name, drawings }) => svgFiles(name, drawings))),
      ...(options.only === undefined || namesIn(options.only).includes(LISTS)
        ? listFiles(chosen, job)
        : []),
    ],
    sets: made.map(({ name, what, drawings }) => ({ name, what, pages: drawings.length })),
    missed,
    nothing,
    letters: pdf.letters,
  };
}

function listFiles(chosen: Chosen, { asked: { kinds }, takeOff }: SheetJob): readonly NamedFile[] {
  const { shell } = chosen.standing;
  const tables: Readonly<Record<string, Table>> = {
    kinds: kindsTable(kinds),
    places: placesTable(shell, chosen.numbers, kinds),
    stock: stockTable(shell, kinds),
    seams: seamsTable(takeOff()),
    'take-off': buyTable(takeOff()),
  };
  return Object.entries(tables).map(([name, table]) => ({
    name: `${name}.csv`,
    text: tableToCsv(table),
  }));
}
