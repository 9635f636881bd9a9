// What a PDF takes besides core: its writer, and the typefaces that go into the file: IBM Plex Sans
// Condensed (SIL Open Font Licence 1.1), as the screen has it; DejaVu Sans Condensed (Bitstream Vera licence)
// for what that lacks. Fetched when the first PDF is made; kept for offline like every file of the app.

import plex from '@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-latin-400-normal.woff?url';
import plexBold from '@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-latin-600-normal.woff?url';
import plexExt from '@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-latin-ext-400-normal.woff?url';
import plexExtBold from '@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-latin-ext-600-normal.woff?url';
import type { PdfFace, PdfMaker } from '@shellraise/core';
import dejavu from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url';
import dejavuBold from 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url';

const files: readonly (readonly [name: string, address: string, bold: boolean])[] = [
  ['plex', plex, false],
  ['plex-ext', plexExt, false],
  ['dejavu', dejavu, false],
  ['plex-bold', plexBold, true],
  ['plex-ext-bold', plexExtBold, true],
  ['dejavu-bold', dejavuBold, true],
];

/** The writer and the faces. */
export interface PdfTools {
  readonly Maker: PdfMaker;
  readonly faces: readonly PdfFace[];
}

let loading: Promise<PdfTools> | null = null;

/** Both, loaded once; a load that failed is tried anew. */
export function pdfTools(): Promise<PdfTools> {
  loading ??= load().catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}

async function load(): Promise<PdfTools> {
  const [{ default: Maker }, ...faces] = await Promise.all([
    import('pdfkit'),
    ...files.map(async ([name, address, bold]): Promise<PdfFace> => {
      const answer = await fetch(address);
      if (!answer.ok) throw new Error(`the typeface ${name} could not be fetched`);
      return { name, bold, bytes: new Uint8Array(await answer.arrayBuffer()) };
    }),
  ]);
  return { Maker, faces };
}
