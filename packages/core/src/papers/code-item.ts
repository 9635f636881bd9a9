// A text as a QR code on a sheet (ISO/IEC 18004), drawn as black bars with the white border that readers
// want. Millimetres.

import { correction, generate } from 'lean-qr';
import { type Box, group, type Item, inked, onPaper, rectangle } from './drawing.ts';

/** White modules round a code, as the standard asks. */
const BORDER = 4;

/** The smallest module that phones read off paper held in the hand, millimetres: common practice, no
 * source. */
const LEAST_MODULE = 0.4;

/** A code's dark modules: rows of a square. */
export interface CodeModules {
  /** Modules a side, without border. */
  readonly size: number;
  readonly dark: (x: number, y: number) => boolean;
}

/** The code of a text; null where it is too long for any. `strong`: a quarter of it may be
 * torn or dirty (level Q), else a seventh (level M); `least`: level L, for long ones. */
export function codeModules(
  what: string,
  level: 'least' | 'usual' | 'strong' = 'usual',
): CodeModules | null {
  const least = { least: correction.L, usual: correction.M, strong: correction.Q }[level];
  try {
    const code = generate(what, { minCorrectionLevel: least });
    return { size: code.size, dark: (x, y) => code.get(x, y) };
  } catch {
    return null;
  }
}

/** A code with its border in the square at the top left of the box; null where its modules would be
 * smaller than phones read. */
export function codeItem(code: CodeModules, box: Box): Item | null {
  const side = Math.min(box.width, box.height);
  const module = side / (code.size + 2 * BORDER);
  if (module < LEAST_MODULE) return null;
  const bars: Item[] = [];
  for (let y = 0; y < code.size; y++)
    for (let x = 0, from = -1; x <= code.size; x++) {
      const dark = x < code.size && code.dark(x, y);
      if (dark && from < 0) from = x;
      if (dark || from < 0) continue;
      // A hair higher than its row: no white lines between rows in print.
      const bar = {
        x: box.x + (from + BORDER) * module,
        y: box.y + (y + BORDER) * module,
        width: (x - from) * module,
        height: module * 1.03,
      };
      bars.push(rectangle(bar, null, inked));
      from = -1;
    }
  const paper = rectangle({ x: box.x, y: box.y, width: side, height: side }, null, onPaper);
  return group([paper, ...bars], { part: 'code' });
}
