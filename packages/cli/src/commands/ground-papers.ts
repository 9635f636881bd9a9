// `shellraise ground --out`: the sheets of the ground as drawings (SVG).

import { type MadeSheets, makeSheets, sheetMakers, svgFiles } from '@shellraise/core';
import { Ending } from '../ending.ts';
import type { Chosen } from '../job.ts';
import type { GroundOptions } from '../options.ts';
import { chosenSheets } from '../sheets/job.ts';
import { writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';

/** The sets that the command writes. */
const SETS = ['stake-out', 'shims', 'anchors', 'ring-beam', 'survey'];

/** Writes the sheets that can be made, and what was written where; empty where no folder is asked for. What
 * is not known yet (anchors, levels) the command tells itself; a beam that can't be ends it. */
export function writeGround(chosen: Chosen, options: GroundOptions): string {
  const { out, lengths } = options;
  if (out === undefined) return '';
  const job = chosenSheets(chosen, { lengths, paper: 'A4', date: dateOf(options) });
  const files = sheetMakers
    .filter(({ name }) => SETS.includes(name))
    .flatMap((maker) => svgFiles(maker.name, drawingsOf(maker.name, makeSheets(maker, job))));
  writeAll(out, files);
  return writtenText(out, files);
}

function drawingsOf(name: string, set: MadeSheets) {
  if (set.made) return set.drawings;
  if (name === 'ring-beam') throw new Ending(2, set.lines);
  return [];
}
