// `npm start`: installs what is needed, builds, serves the app and prints where it is. Arguments go
// to the server: `npm start -- --lan`.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build, buildApp } from './build.mjs';
import { install } from './install.mjs';
import { root } from './run.mjs';

process.exitCode = await start();

async function start() {
  const installed = install();
  if (installed !== 0) return installed;
  if (!existsSync(join(root, 'packages', 'app', 'dist'))) console.log('Building the app …');
  for (const step of [build, buildApp]) {
    const { code, output } = step();
    if (code === 0) continue;
    console.error(output.trim());
    console.error('The build failed.');
    return code;
  }
  const server = join(root, 'packages', 'server', 'dist', 'main.js');
  const { main } = await import(pathToFileURL(server).href);
  await main(process.argv.slice(2));
  return process.exitCode ?? 0;
}
