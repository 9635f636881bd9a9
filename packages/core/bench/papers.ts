// How long the crew book of a shell of 320 places takes, its PDF with it, once the order of work is known;
// and every other set: `npm run bench -- papers`.

import PDFDocument from 'pdfkit';
import type { Line } from '../../../scripts/bench-line.d.ts';
import { toPdf } from '../src/papers/pdf.ts';
import { sheetJob } from '../src/papers/sets/job.ts';
import { sheetMakers } from '../src/papers/sets/list.ts';
import { makeSheets } from '../src/papers/sets/make.ts';
import type { PaperQuestion } from '../src/papers/sets/question.ts';
import { placeCount } from '../src/shell/shell.ts';
import { faces } from '../tests/papers/faces.ts';
import { standing } from '../tests/papers/standing.ts';

/** Wanted, seconds of processor: the crew book with its PDF. */
const WANTED = 5;

const nobodySaid = {
  ...{ loads: undefined, ground: undefined, parts: undefined, stages: undefined },
  ...{ takeoff: undefined, gear: undefined, crew: undefined, raising: undefined },
  ...{ fitout: undefined, storage: undefined },
};

/** Prints the times. */
export async function main(): Promise<readonly Line[]> {
  // Of a ball of 500 places the part over its lowest courses.
  const { shell, kinds, numbers } = standing(
    { solid: 'icosahedron', b: 5, c: 0, division: 'equal chords' },
    -0.27,
    5,
  );
  const asked: PaperQuestion = {
    ...{ shell, numbers, kinds, ...nobodySaid },
    ...{ title: 'Bench', date: '2026-05-14', assumes: 'Nothing.', which: '' },
    ...{ leftOut: [], painted: false, holes: [], hardware: [], plan: null, windFrom: null },
    ...{ paper: 'A4', lengths: 'metric' },
  };
  const [plan, ordered] = timed(() => sheetJob(asked, { tries: 1, seed: 1 }).raised().plan);
  console.log(`${placeCount(shell)} places; an order of work: ${ordered.toFixed(2)} s`);
  const job = sheetJob({ ...asked, plan }, { tries: 1, seed: 1 });
  const [, winds] = timed(job.raised);
  console.log(`props, lifts and winds of its ${plan.stages.length} stages: ${winds.toFixed(2)} s`);
  let book = winds;
  for (const maker of sheetMakers) {
    const [made, drawn] = timed(() => makeSheets(maker, job));
    if (!made.made || made.drawings.length === 0) continue;
    const before = process.cpuUsage().user;
    const { bytes } = await toPdf(
      made.drawings,
      { title: maker.name, date: asked.date, faces },
      PDFDocument,
    );
    const written = (process.cpuUsage().user - before) / 1e6;
    if (maker.name === 'crew-book') book += drawn + written;
    console.log(
      `${maker.name}: ${made.drawings.length} pages drawn in ${drawn.toFixed(2)} s, PDF of ${(bytes.length / 1e6).toFixed(1)} MB in ${written.toFixed(2)} s`,
    );
  }
  const memory = process.memoryUsage.rss() / 1e6;
  console.log(
    `the crew book with winds and PDF: ${book.toFixed(2)} s (wanted ${WANTED}); ${memory.toFixed(0)} MB`,
  );
  return [
    { what: 'crew book of 325 places with its PDF', found: book, unit: 's', wanted: WANTED },
    { what: 'memory, with all other sets', found: memory, unit: 'MB' },
  ];
}

/** What it gives, and the processor's seconds that it took. */
function timed<T>(make: () => T): readonly [T, number] {
  const before = process.cpuUsage().user;
  const made = make();
  return [made, (process.cpuUsage().user - before) / 1e6];
}
