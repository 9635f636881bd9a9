// `node scripts/licences.mjs`: the licences of what Shellraise runs with, as docs/licences.md; with `--check`
// nothing is written, and the exit code is 1 where the page there is another. What only builds and
// tests it is not in it.

import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from './run.mjs';

const target = join(root, 'docs', 'licences.md');

/** The page: every package that runs with ours, its version and its licence. */
export function licencesText() {
  const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
  const rows = Object.entries(lock.packages)
    .filter(([path, { dev, link }]) => path.includes('node_modules/') && !dev && !link)
    .map(([path, { version, license }]) => {
      const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length);
      return `| ${name} | ${version} | ${license ?? licenceIn(path)} |`;
    });
  return `# Licences

Shellraise is under the [MIT licence](../LICENSE). It runs with these packages, each under its own. Both typefaces may be
passed on with it: IBM Plex Sans Condensed under the SIL Open Font Licence 1.1, DejaVu Sans Condensed under the
licence of Bitstream Vera. \`node scripts/licences.mjs\` makes this page from the lock file.

| package | version | licence |
|---|---|---|
${[...new Set(rows)].sort().join('\n')}
`;
}

/** As the head of its licence file says; the lock file leaves out who says it there alone. */
function licenceIn(path) {
  const head = /^(\S+) licence|^(\S+) license/im.exec(
    readFileSync(join(root, path, 'LICENSE'), 'utf8'),
  );
  if (!head) throw new Error(`${path} names no licence`);
  return head[1] ?? head[2];
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  const text = licencesText();
  if (!process.argv.includes('--check')) writeFileSync(target, text);
  else if (readFileSync(target, 'utf8') !== text) {
    console.error('docs/licences.md is not what the lock file says: node scripts/licences.mjs');
    process.exitCode = 1;
  }
}
