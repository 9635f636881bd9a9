// Makes the gallery of papers anew, one page of every set of the demo's sheets: node scripts/make-gallery.mjs.
// Writes docs/gallery/*.svg and docs/gallery.md. Needs a build of the command.

import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { capture, root } from './run.mjs';

/** The page that shows a set best, where it is not the first. */
const pages = { 'crew-book': 8, 'joint-pictures': 2, permit: 2, storage: 3 };

const folder = join(root, 'docs', 'gallery');
const made = mkdtempSync(join(tmpdir(), 'gallery-'));

process.exitCode = main();
rmSync(made, { recursive: true });

function main() {
  const demo = join(root, 'examples', 'demo', 'project.json');
  const command = join(root, 'packages', 'cli', 'bin', 'shellraise.js');
  const asked = ['papers', demo, '--out', made, '--as', 'svg', '--date', '2026-05-01', '--json'];
  const { code, output } = capture(process.execPath, [command, ...asked]);
  if (code !== 0) {
    console.error(output.trim());
    return 1;
  }
  const { sets, missed, nothing } = JSON.parse(output);
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const rows = sets.map(
    (set) => `| ${picture(set)} | \`${set.name}\` | ${set.what} | ${set.pages} |`,
  );
  const none = [...nothing, ...missed.map(({ name }) => name)].map((name) => `\`${name}\``);
  writeFileSync(
    join(root, 'docs', 'gallery.md'),
    `# Gallery of papers

One page of every set of sheets that \`shellraise papers examples/demo/project.json --out sheets\` makes of the demo,
an invented shell. \`node scripts/make-gallery.mjs\` makes this page anew. What each is for: [papers.md](papers.md).

| page | \`--only\` | what it is | pages |
|---|---|---|--:|
${rows.join('\n')}

The demo has nothing for ${none.join(', ')}.
`,
  );
  return 0;
}

/** Copies the page, and shows it. */
function picture({ name, pages: count }) {
  const page = count > 1 ? `${name}-${Math.min(pages[name] ?? 1, count)}` : name;
  const file = join(made, `${page}.svg`);
  if (!existsSync(file)) throw new Error(`${file}: not written`);
  copyFileSync(file, join(folder, `${name}.svg`));
  return `<a href="gallery/${name}.svg"><img src="gallery/${name}.svg" width="240" alt="${name}"></a>`;
}
