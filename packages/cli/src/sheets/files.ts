// Sheets as files: an SVG for each page.

import { type Drawing, toSvg } from '@shellraise/core';
import type { OutFile } from '../write.ts';

/** The pages of a set, numbered where there are several. */
export const svgFiles = (name: string, drawings: readonly Drawing[]): readonly OutFile[] =>
  drawings.map((drawing, i) => ({
    name: `${name}${drawings.length > 1 ? `-${i + 1}` : ''}.svg`,
    text: toSvg(drawing),
  }));
