// A QR code as text for a terminal: two modules to a character, dark on light whatever the
// terminal's own colours.

import { generate } from 'lean-qr';

/** Light modules around the code: the standard (ISO/IEC 18004) asks for four. */
const QUIET = 4;
const INVERSE = '\u001b[7m';
const PLAIN = '\u001b[0m';

/** The lines of a QR code. With `colour` light is drawn by the terminal's inverse video; without,
 * light is drawn as blocks, for terminals with light letters on dark. */
export function qrLines(text: string, colour: boolean): string[] {
  const code = generate(text);
  const isLight = (x: number, y: number): boolean => !code.get(x, y);
  const lines: string[] = [];
  for (let y = -QUIET; y < code.size + QUIET; y += 2) {
    let line = '';
    for (let x = -QUIET; x < code.size + QUIET; x++) {
      const [top, bottom] = [isLight(x, y), isLight(x, y + 1)];
      line += colour ? pair(!top, !bottom) : pair(top, bottom);
    }
    lines.push(colour ? `${INVERSE}${line}${PLAIN}` : line);
  }
  return lines;
}

const pair = (top: boolean, bottom: boolean): string =>
  top ? (bottom ? '█' : '▀') : bottom ? '▄' : ' ';
