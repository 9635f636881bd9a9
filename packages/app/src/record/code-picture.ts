// A text as a QR code to draw, and the text of a QR code in a picture.

import { correction, generate } from 'lean-qr';

/** A QR code to draw: modules a side with its white border, and the dark ones as an SVG path. */
export interface CodePicture {
  readonly size: number;
  readonly path: string;
}

/** White modules round a code (ISO/IEC 18004). */
const BORDER = 4;

/** The code of a text, at level M. Fails where the text is too long for one. */
export function codePicture(text: string): CodePicture {
  const code = generate(text, { minCorrectionLevel: correction.M });
  let path = '';
  for (let y = 0; y < code.size; y++)
    for (let x = 0, from = -1; x <= code.size; x++) {
      const dark = code.get(x, y);
      if (dark && from < 0) from = x;
      if (dark || from < 0) continue;
      path += `M${from + BORDER} ${y + BORDER}h${x - from}v1h${from - x}z`;
      from = -1;
    }
  return { size: code.size + 2 * BORDER, path };
}

/** Points of a picture, four bytes each: red, green, blue, and how solid. */
export interface Points {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

/** The text of the code in a picture; null where none can be read. */
export async function codeIn({ data, width, height }: Points): Promise<string | null> {
  const { default: read } = await import('jsqr');
  return read(data, width, height, { inversionAttempts: 'dontInvert' })?.data ?? null;
}
