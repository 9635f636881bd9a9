// `npm run api`: the documentation of core, in dist/api, a page for each folder with its runnable example at
// the head. Anything unclear to the generator is a fault.

import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { folders, layers } from './layers.mjs';
import { bin, root, run } from './run.mjs';

const core = join(root, 'packages', 'core');
const entries = join(root, 'dist', 'api-entries');
const out = join(root, 'dist', 'api');

/** What core offers of one folder, as a module of its own with a head. */
function entryOf(folder, statements) {
  const example = readFileSync(join(core, 'examples', `${folder}.mjs`), 'utf8').trim();
  const head = ['/**', ` * ${folders[folder]}.`, ' *', ' * ```js']
    .concat(example.split('\n').map((line) => ` * ${line}`.trimEnd()))
    .concat([' * ```', ' *', ` * @module ${folder}`, ' */']);
  return `${head.join('\n')}\n${statements.join('\n')}\n`;
}

/** Folder → the export statements of the index that are its. */
function exportsByFolder() {
  const file = join(core, 'src', 'index.ts');
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.ES2022);
  const found = new Map(layers.map((name) => [name, []]));
  for (const statement of source.statements) {
    const [, folder] = /^\.\/([^/]+)\//.exec(statement.moduleSpecifier.text);
    found.get(folder).push(statement.getText(source).replace("'./", "'../../packages/core/src/"));
  }
  return found;
}

rmSync(entries, { recursive: true, force: true });
mkdirSync(entries, { recursive: true });
for (const [folder, statements] of exportsByFolder())
  writeFileSync(join(entries, `${folder}.ts`), entryOf(folder, statements));
const options = { lib: ['ES2023'], types: [], noEmit: true, composite: false };
writeFileSync(
  join(entries, 'tsconfig.json'),
  JSON.stringify({
    extends: '../../tsconfig.base.json',
    compilerOptions: options,
    include: ['*.ts', '../../packages/core/src/**/*.d.ts'],
  }),
);
process.exitCode = run(process.execPath, [
  bin('typedoc'),
  ...['--tsconfig', join(entries, 'tsconfig.json'), '--out', out],
  ...['--name', 'Shellraise core', '--readme', 'none', '--disableSources', '--hideGenerator'],
  ...['--validation.notExported', 'true', '--validation.invalidLink', 'true'],
  '--treatWarningsAsErrors',
  ...layers.flatMap((name) => ['--entryPoints', join(entries, `${name}.ts`)]),
]);
rmSync(entries, { recursive: true });
if (process.exitCode === 0)
  console.log(`The documentation of core is in ${join(out, 'index.html')}.`);
