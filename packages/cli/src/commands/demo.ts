// `shellraise demo`: the whole job on the demo project, and the papers in a folder.

import { existsSync } from 'node:fs';
import { relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { choose } from '../job.ts';
import { lengthsIn } from '../lengths.ts';
import type { PapersOptions } from '../options.ts';
import { shapeDocument } from '../shape-document.ts';
import { heading, print, printJson } from '../terminal.ts';
import { writeAll } from '../write.ts';
import { papersOf, writtenText } from './papers.ts';
import { pileReport } from './pile.ts';
import { placesReport } from './places.ts';
import { shapeReport } from './shape.ts';
import { takeOffOf, takeoffReport } from './takeoff.ts';

/** Runs the command. */
export async function demo(options: PapersOptions): Promise<void> {
  const file = demoFile();
  const chosen = await choose(file, options);
  const { files } = await papersOf(chosen, options);
  writeAll(options.out, files);
  if (options.json) {
    const shapes = shapeDocument(chosen.found, chosen.loaded.kinds);
    printJson({ ...shapes, folder: options.out, files: files.map(({ name }) => name) });
    return;
  }
  const lengths = lengthsIn(options.lengths);
  print(
    heading(`Demo: ${chosen.loaded.title} (${relative(process.cwd(), file)})`),
    ...pileReport(chosen.loaded, lengths),
    ...shapeReport(chosen.found, chosen.loaded, lengths),
    ...placesReport(chosen, options, lengths),
    ...takeoffReport(chosen, takeOffOf(chosen), options, lengths),
    writtenText(options.out, files),
  );
}

/** The demo's file: in the package where it was installed as one, else in the checkout. */
function demoFile(): string {
  const [inPackage, inCheckout] = ['../../', '../../../../'].map((up) =>
    fileURLToPath(new URL(`${up}examples/demo/project.json`, import.meta.url)),
  ) as [string, string];
  return existsSync(inPackage) ? inPackage : inCheckout;
}
