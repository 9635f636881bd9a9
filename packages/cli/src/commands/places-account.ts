// `shellraise places --account`: panels, seams, hubs and bolts by formula and by list; with --out the page
// as a drawing.

import { accountSheet, type ProofRow, toSvg } from '@shellraise/core';
import { type Chosen, choose } from '../job.ts';
import type { PlacesOptions } from '../options.ts';
import { heading, paint, print, printJson, table, wrap } from '../terminal.ts';
import { writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';
import { proofOf } from './takeoff.ts';

/** What a count must say beside it. */
const countCaution = 'A count of pieces only: it says nothing of what the shell bears.';

/** Runs the command; sets exit code 1 where a count does not agree. */
export async function placesAccount(file: string, options: PlacesOptions): Promise<void> {
  const chosen = await choose(file, options);
  const rows = proofOf(chosen);
  if (rows.some(({ agrees }) => agrees === false)) process.exitCode = 1;
  const written = options.out === undefined ? '' : writeSheet(chosen, rows, options, options.out);
  if (options.json)
    printJson({ arrangement: chosen.number, account: rows, cautions: [countCaution] });
  else
    print(
      heading(`Proof of count of arrangement ${chosen.number}`),
      ...rows.map(rowText),
      wrap(countCaution, ''),
      written,
    );
}

function writeSheet(
  { loaded, number }: Chosen,
  rows: readonly ProofRow[],
  options: PlacesOptions,
  folder: string,
): string {
  const sheet = accountSheet(rows, {
    project: loaded.title,
    sheet: 'Proof of count',
    date: dateOf(options),
    assumes: `Arrangement ${number}.`,
  });
  const files = [{ name: 'proof-of-count.svg', text: toSvg(sheet) }];
  writeAll(folder, files);
  return writtenText(folder, files);
}

function rowText({ what, list, formula, byFormula, byList, agrees, why }: ProofRow): string {
  const told =
    agrees === null
      ? paint.yellow(`no formula: ${why}`)
      : agrees
        ? `${formula} = ${byFormula}: agrees`
        : paint.red(`${formula} = ${byFormula}: DOES NOT AGREE`);
  return [
    table(
      [{ head: what }, { head: 'count', align: 'right' as const }],
      list.map(({ of, count }) => [of, String(count)]),
    ),
    wrap(`In all ${byList}. ${told}`, '  '),
  ].join('\n');
}
