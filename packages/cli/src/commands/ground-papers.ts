// `shellraise ground --out`: the sheets of the ground as drawings (SVG).

import type { SurveyAnswer } from '@shellraise/core';
import type { ChosenSite } from '../ground-site.ts';
import type { Chosen } from '../job.ts';
import type { GroundOptions } from '../options.ts';
import { svgFiles } from '../sheets/files.ts';
import { groundDrawings } from '../sheets/ground-sheets.ts';
import { writeAll } from '../write.ts';
import { dateOf, writtenText } from './papers.ts';

/** Writes the sheets, and what was written where; empty where no folder is asked for. */
export function writeGround(
  chosen: Chosen,
  site: ChosenSite,
  survey: SurveyAnswer | null,
  options: GroundOptions,
): string {
  const { out, lengths } = options;
  if (out === undefined) return '';
  const sets = groundDrawings(chosen, site, survey, { lengths, date: dateOf(options) });
  const files = Object.entries(sets).flatMap(([name, drawings]) => svgFiles(name, drawings));
  writeAll(out, files);
  return writtenText(out, files);
}
