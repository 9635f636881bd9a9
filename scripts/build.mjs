// Compiles the packages, core before cli. The compiler does nothing where nothing changed.
// `npm ci` ends with this (as `prepare`), so that `npx shellraise` works right after it.

import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { bin, capture, root } from './run.mjs';

const packages = ['core', 'cli'];

/** Builds if needed. Returns `{ code, output }`; the output is empty where all went well. */
export function build() {
  if (!existsSync(join(root, 'node_modules', 'typescript')))
    return {
      code: 1,
      output: 'The compiler is not installed: run npm ci (with dev dependencies).',
    };
  for (const name of packages) removeOrphans(join(root, 'packages', name));
  return capture(process.execPath, [bin('typescript', 'tsc'), '-b', '--pretty', 'false']);
}

/** Compiled files whose source is gone would still be found by an import: away with them. */
function removeOrphans(packageDir) {
  const dist = join(packageDir, 'dist');
  if (!existsSync(dist)) return;
  for (const entry of readdirSync(dist, { recursive: true, withFileTypes: true })) {
    const match = /^(.*?)(\.js|\.d\.ts)(\.map)?$/.exec(entry.name);
    if (!entry.isFile() || !match) continue;
    const folder = join(packageDir, 'src', entry.parentPath.slice(dist.length));
    if (!existsSync(join(folder, `${match[1]}.ts`))) rmSync(join(entry.parentPath, entry.name));
  }
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const { code, output } = build();
  if (output.trim()) console.error(output.trim());
  if (code !== 0) console.error('The build failed.');
  process.exitCode = code;
}
