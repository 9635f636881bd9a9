// The typefaces that the command line puts into its PDFs.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { PdfFace } from '../../src/papers/pdf.ts';

const { resolve } = createRequire(import.meta.url);
const face = (name: string, file: string, bold = false): PdfFace => ({
  name,
  bold,
  bytes: new Uint8Array(readFileSync(resolve(file))),
});
const plex = (part: string): string =>
  `@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-${part}-normal.woff`;

export const faces: readonly PdfFace[] = [
  face('plex', plex('latin-400')),
  face('plex-ext', plex('latin-ext-400')),
  face('dejavu', 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
  face('plex-bold', plex('latin-600'), true),
  face('dejavu-bold', 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf', true),
];
