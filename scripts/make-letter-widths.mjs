// Writes packages/core/src/papers/letter-widths.ts anew, from the typefaces that the PDFs carry:
// node scripts/make-letter-widths.mjs. Needs a build.

import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import PDFDocument from 'pdfkit';
import { plainFace } from '../packages/core/dist/papers/woff.js';
import { bin, root, run } from './run.mjs';

const { resolve } = createRequire(import.meta.url);
const plex = (part) =>
  `@fontsource/ibm-plex-sans-condensed/files/ibm-plex-sans-condensed-${part}-normal.woff`;
const dejavu = (style) => `dejavu-fonts-ttf/ttf/DejaVuSansCondensed${style}.ttf`;

/** A letter has the width of the first face that has it. */
const faces = {
  plain: [plex('latin-400'), plex('latin-ext-400'), dejavu('')],
  bold: [plex('latin-600'), plex('latin-ext-600'), dejavu('-Bold')],
};

const file = join(root, 'packages', 'core', 'src', 'papers', 'letter-widths.ts');
writeFileSync(file, source(runsOf(faces.plain), runsOf(faces.bold)));
process.exitCode = run(process.execPath, [
  bin('@biomejs/biome', 'biome'),
  'format',
  '--write',
  file,
]);

function opened(name) {
  const pen = new PDFDocument({ autoFirstPage: false, font: null });
  pen.registerFont(name, plainFace(new Uint8Array(readFileSync(resolve(name)))));
  pen.font(name);
  return pen._font.font;
}

/** Runs of letters of one width: how many are left out before it, how many, hundredths rounded up. */
function runsOf(names) {
  const widths = new Map();
  for (const font of names.map(opened))
    for (const code of font.characterSet) {
      const own = code >= 0xe000 && code < 0xf900;
      if (code < 32 || code > 0xffff || own || widths.has(code)) continue;
      const { advanceWidth } = font.glyphForCodePoint(code);
      widths.set(code, Math.ceil((100 * advanceWidth) / font.unitsPerEm - 1e-9));
    }
  const runs = [];
  for (const [code, width] of [...widths].sort(([a], [b]) => a - b)) {
    const last = runs.at(-1);
    if (last && last.end === code && last.width === width) last.end++;
    else runs.push({ start: code, end: code + 1, width });
  }
  let at = 0;
  return runs.map(({ start, end, width }) => {
    const [gap, count] = [start - at, end - start];
    at = end;
    const part = (n, none, sign) => (n === none ? '' : sign + n.toString(36));
    return `${part(gap, 0, '')}${part(count, 1, '*')}:${width.toString(36)}`;
  });
}

function source(plain, bold) {
  const rows = (runs) => {
    const lines = [''];
    for (const one of runs) {
      const longer = `${lines.at(-1)} ${one}`.trim();
      if (longer.length > 92) lines.push(one);
      else lines[lines.length - 1] = longer;
    }
    return lines.map((words) => `  '${words}',`).join('\n');
  };
  return `// Made by scripts/make-letter-widths.mjs from the typefaces that the PDFs carry: advance widths of the
// letters of IBM Plex Sans Condensed (regular and semibold), and of DejaVu Sans Condensed where that has
// none, up to U+FFFF. Each word is a run of letters of one width, in numbers of base 36: letters left out
// before it, \`*\` and how many where more than one, \`:\` and hundredths of the type size, rounded up.

/** Widths of plain letters, as runs. */
export const plainWidths: readonly string[] = [
${rows(plain)}
];

/** Widths of bold letters, as runs. */
export const boldWidths: readonly string[] = [
${rows(bold)}
];
`;
}
