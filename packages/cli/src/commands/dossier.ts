// `shellraise dossier`: the as-built dossier out of a record's file; or an invented record of a weekend
// to try it with.

import { writeFileSync } from 'node:fs';
import {
  type Dossier,
  describeFault,
  dossier as dossierOf,
  dossierSheets,
  fitoutMakers,
  initialsOf,
  inventedWeekend,
  makeSheets,
  type NamedFile,
  RecordLog,
  readRecordFile,
  recordPlan,
  seamBolts,
  withPageNumbers,
  writeRecordFile,
} from '@shellraise/core';
import { dossierBlocks, dossierCaution, timeText } from '../dossier-blocks.ts';
import { badInput } from '../ending.ts';
import { readText } from '../input.ts';
import { type Chosen, choose, fittedKinds } from '../job.ts';
import { keptOpenings } from '../openings.ts';
import type { DossierCommandOptions } from '../options.ts';
import { pdfFiles } from '../sheets/files.ts';
import { chosenSheets } from '../sheets/job.ts';
import { bullets, heading, print, printJson } from '../terminal.ts';
import { writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';
import { severalShapes } from './places.ts';

/** Nine in the morning of the invented weekend's first day. */
const NINE = Date.UTC(2026, 5, 12, 7);

/** Runs the command; exit code 1 where something is in question or was forgotten. */
export async function dossier(file: string, options: DossierCommandOptions): Promise<void> {
  if ((options.record === undefined) === (options.invent === undefined))
    throw badInput('dossier: expected --record FILE, or --invent FILE to make one up to try with');
  const chosen = await choose(file, options);
  const plan = recordPlan(chosen.standing.shell, {
    numbers: chosen.numbers.numbers,
    course: chosen.standing.courses.course,
  });
  const bolts = boltsOf(chosen);
  const leftOut = keptOpenings(chosen);
  if (options.invent !== undefined) {
    const entries = inventedWeekend(plan, { seed: options.seed, from: NINE, bolts, leftOut });
    writeFileSync(options.invent, writeRecordFile(entries));
    if (options.json) printJson({ file: options.invent, entries: entries.length });
    else print(`${entries.length} invented entries: ${options.invent}`);
    return;
  }
  const { entries, faults } = readRecordFile(await readText(options.record as string));
  const bad = faults.map((fault) => `${options.record}: ${describeFault(fault)}`);
  if (entries.length === 0 && bad.length > 0) throw badInput(...bad.slice(0, 5));
  const log = new RecordLog();
  log.addAll(entries);
  const made = dossierOf(log, plan, {
    bolts,
    leftOut,
    ...(options.initials && { nameOf: initialsOf }),
  });
  if (made.questions.length > 0 || made.forgotten.length > 0) process.exitCode = 1;
  const sheets = await writeSheets(chosen, made, options);
  if (options.json)
    printJson({
      ...plain(made),
      unread: bad,
      cautions: [dossierCaution],
      files: sheets.map(({ name }) => name),
    });
  else
    print(
      heading(`As built: ${chosen.loaded.title}`),
      severalShapes(chosen.found.shapes.length, options.shape),
      ...dossierBlocks(made),
      bullets('Lines that could not be read:', bad),
      options.out === undefined ? '' : writtenText(options.out, sheets),
    );
}

/** Sets of the fit-out that go with what is handed over. */
const HANDED_OVER = ['door', 'ways-in', 'swing', 'signal', 'seal-plan', 'upkeep'];

/** The dossier as sheets, with those of the fit-out; names of the files, none where no folder is asked
 * for. */
async function writeSheets(
  chosen: Chosen,
  made: Dossier,
  { out, lengths }: DossierCommandOptions,
): Promise<readonly NamedFile[]> {
  if (out === undefined) return [];
  const { loaded } = chosen;
  const date = dateOf({});
  const sheets = dossierSheets(
    made,
    { project: loaded.title, sheet: 'As built', date, assumes: 'Times by this computer’s clock.' },
    { timeText },
  );
  const drawings = withPageNumbers(sheets, `${loaded.title}: as built`);
  const set = { name: 'as-built', what: 'as built', drawings };
  const job = chosenSheets(chosen, { lengths, paper: 'A4', date });
  const fitted = fitoutMakers
    .filter(({ name }) => HANDED_OVER.includes(name))
    .flatMap((maker) => {
      const sheet = makeSheets(maker, job);
      // One that can't be made is told with its reasons by `papers`.
      return sheet.made && sheet.drawings.length > 0
        ? [{ name: maker.name, what: maker.what, drawings: sheet.drawings }]
        : [];
    });
  const { files } = await pdfFiles(loaded.title, date, [set, ...fitted]);
  writeAll(out, files);
  return files;
}

/** Seam → its bolts, by the holes that were counted and the settings. */
function boltsOf(chosen: Chosen): (seam: number) => number | null {
  const { takeoff, holes } = chosen.loaded;
  const bolts = seamBolts(chosen.standing.shell, fittedKinds(chosen), takeoff, holes);
  return (seam) => {
    const one = bolts[seam];
    return one?.status === 'known' ? one.pattern.holes : null;
  };
}

/** As JSON has it: no maps, and what can't be counted is null. */
const plain = (made: Dossier): object => ({
  ...made,
  clocks: Object.fromEntries(made.clocks),
  forgotten: made.forgotten.map((one) => ({
    ...one,
    bolts: Number.isFinite(one.bolts ?? 0) ? one.bolts : null,
  })),
});
