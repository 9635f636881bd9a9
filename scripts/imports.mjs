// Which sources there are, and what each imports.

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';

/** Sources and style sheets below a folder, sorted. */
export const sourceFiles = (folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(tsx?|css)$/.test(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();

/** What a file imports, as it is written there; of a style sheet also what it fetches. */
export function importsOf(file, text) {
  if (!file.endsWith('.css'))
    return ts.preProcessFile(text, true, true).importedFiles.map(({ fileName }) => fileName);
  const plain = text.replace(/\/\*[\s\S]*?\*\//g, '');
  return [...plain.matchAll(/@import\s+(?:url\()?\s*["']?([^"')\s;]+)|url\(\s*["']?([^"')\s]+)/g)]
    .map((match) => match[1] ?? match[2])
    .filter((target) => !/^(data:|#)/.test(target));
}
