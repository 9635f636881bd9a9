// Sheets as files: a PDF for each set.

import type { NamedFile } from '@shellraise/core';
import type { MadeSet } from './make.ts';
import { facesWith, pdfOf } from './pdf.ts';

/** A PDF for each set, and the letters that no typeface in them has. */
export async function pdfFiles(
  title: string,
  date: string,
  sets: readonly MadeSet[],
  font?: string,
): Promise<{ readonly files: readonly NamedFile[]; readonly letters: readonly string[] }> {
  const faces = facesWith(font);
  const files: NamedFile[] = [];
  const letters = new Set<string>();
  for (const { name, what, drawings } of sets) {
    const { bytes, missing } = await pdfOf(`${title}: ${what}`, date, drawings, faces);
    files.push({ name: `${name}.pdf`, text: bytes });
    for (const letter of missing) letters.add(letter);
  }
  return { files, letters: [...letters] };
}
