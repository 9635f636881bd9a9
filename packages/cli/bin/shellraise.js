#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const main = new URL('../dist/run/main.js', import.meta.url);
if (existsSync(fileURLToPath(main))) {
  const { main: run } = await import(main.href);
  await run(process.argv.slice(2));
} else {
  console.error('shellraise is not built yet: run npm ci, or npm run build, in the checkout.');
  process.exitCode = 3;
}
