// Sheets as files: an SVG for each page, a PDF for each set.

import { type Drawing, toSvg } from '@shellraise/core';
import type { OutFile } from '../write.ts';
import type { MadeSet } from './make.ts';
import { facesWith, pdfOf } from './pdf.ts';

/** The pages of a set, numbered where there are several. */
export const svgFiles = (name: string, drawings: readonly Drawing[]): readonly OutFile[] =>
  drawings.map((drawing, i) => ({
    name: `${name}${drawings.length > 1 ? `-${i + 1}` : ''}.svg`,
    text: toSvg(drawing),
  }));

/** A PDF for each set, and the letters that no typeface in them has. */
export async function pdfFiles(
  title: string,
  date: string,
  sets: readonly MadeSet[],
  font?: string,
): Promise<{ readonly files: readonly OutFile[]; readonly letters: readonly string[] }> {
  const faces = facesWith(font);
  const files: OutFile[] = [];
  const letters = new Set<string>();
  for (const { name, what, drawings } of sets) {
    const { bytes, missing } = await pdfOf(`${title}: ${what}`, date, drawings, faces);
    files.push({ name: `${name}.pdf`, text: bytes });
    for (const letter of missing) letters.add(letter);
  }
  return { files, letters: [...letters] };
}
