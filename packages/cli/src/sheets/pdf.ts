// The host's part of PDF: the writer, and the typefaces that go into the file. IBM Plex Sans Condensed
// (SIL Open Font Licence 1.1), as the app has it; DejaVu Sans Condensed (Bitstream Vera licence) for what
// that lacks: Greek, Cyrillic, Hebrew, Arabic, signs.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Drawing, type PdfFace, type PdfFile, toPdf } from '@shellraise/core';
import { badInput } from '../ending.ts';

const require = createRequire(import.meta.url);

const plex = (part: string): string =>
  `@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-${part}-normal.woff`;
const dejavu = (style: string): string => `dejavu-fonts-ttf/ttf/DejaVuSansCondensed${style}.ttf`;

const files: readonly (readonly [name: string, file: string, bold: boolean])[] = [
  ['plex', plex('latin-400'), false],
  ['plex-ext', plex('latin-ext-400'), false],
  ['dejavu', dejavu(''), false],
  ['plex-bold', plex('latin-600'), true],
  ['plex-ext-bold', plex('latin-ext-600'), true],
  ['dejavu-bold', dejavu('-Bold'), true],
];

/** The faces of every file; `more` is a typeface of the caller's own for letters that these lack. */
export const facesWith = (more: string | undefined): readonly PdfFace[] => [
  ...files.map(([name, file, bold]) => ({
    name,
    bold,
    bytes: new Uint8Array(readFileSync(require.resolve(file))),
  })),
  ...(more === undefined ? [] : [{ name: 'own', bold: false, bytes: ownFace(more) }]),
];

function ownFace(file: string): Uint8Array {
  try {
    return new Uint8Array(readFileSync(file));
  } catch {
    throw badInput(`--font: found "${file}", expected a typeface file (TTF, OTF or WOFF) to read`);
  }
}

/** Sheets as one PDF, a page each. */
export async function pdfOf(
  title: string,
  date: string,
  drawings: readonly Drawing[],
  faces: readonly PdfFace[],
): Promise<PdfFile> {
  const { default: PDFDocument } = await import('pdfkit');
  return toPdf(drawings, { title, date, faces }, PDFDocument);
}
