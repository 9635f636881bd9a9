// `npm run bench [-- name [arguments]]`: compiles packages/*/bench and runs the named benchmark,
// or all of them. A benchmark exports `main(args)`, which may return an exit code.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, buildApp } from './build.mjs';
import { chromium } from './chromium.mjs';
import { install } from './install.mjs';
import { bin, capture, root } from './run.mjs';

process.exitCode = await bench(process.argv.slice(2));

async function bench([name, ...args]) {
  if (install() !== 0) return 1;
  const all = listed();
  const chosen = name === undefined ? all : all.filter((one) => one.name === name);
  if (chosen.length === 0) {
    const names = all.map((one) => one.name).join(', ') || 'none yet';
    console.error(`There is no benchmark ${name ?? ''}: there are ${names}.`);
    return 2;
  }
  const steps = chosen.some((one) => one.package === 'app') ? [build, buildApp] : [build];
  for (const step of steps) {
    const built = step();
    if (built.code !== 0) return failed(built.output);
  }
  for (const folder of new Set(chosen.map((one) => one.package))) {
    const compiled = capture(process.execPath, [
      bin('typescript', 'tsc'),
      '-p',
      join('packages', folder, 'bench'),
      '--pretty',
      'false',
    ]);
    if (compiled.code !== 0) return failed(compiled.output);
  }
  for (const one of chosen) await runOne(one, args);
  return process.exitCode ?? 0;
}

function listed() {
  return readdirSync(join(root, 'packages')).flatMap((folder) => {
    const bench = join(root, 'packages', folder, 'bench');
    if (!existsSync(bench)) return [];
    return readdirSync(bench)
      .filter((file) => file.endsWith('.ts') && exportsMain(join(bench, file)))
      .map((file) => ({ package: folder, name: file.slice(0, -3) }));
  });
}

function exportsMain(file) {
  return /^export (async )?function main\b/m.test(readFileSync(file, 'utf8'));
}

async function runOne({ package: folder, name }, args) {
  if (folder === 'app') {
    const { path, reason } = chromium();
    if (!path) return console.log(`${name} is left out: ${reason}`);
    process.env.SHELLRAISE_CHROMIUM = path;
  }
  const file = join(root, 'packages', folder, 'dist-bench', 'bench', `${name}.js`);
  const { main } = await import(pathToFileURL(file).href);
  const code = await main(args);
  if (typeof code === 'number' && code !== 0) process.exitCode = code;
}

function failed(output) {
  console.error(output.trim());
  return 1;
}
