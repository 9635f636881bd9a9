// Installs the dependencies when the lock file is not the one that was installed last.

import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root, run } from './run.mjs';

const stamp = join(root, 'node_modules', '.shellraise-lock');

/** Installs if needed. Returns the exit code. */
export function install() {
  const wanted = lockHash();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === wanted) return 0;
  console.log('Installing what is needed (npm ci) …');
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const shell = process.platform === 'win32';
  // `prepare` would build; whoever calls this builds next, and shows what failed.
  const code = run(npm, ['ci', '--ignore-scripts', '--no-progress', '--loglevel=error'], { shell });
  if (code === 0) writeFileSync(stamp, wanted);
  return code;
}

/** Marks the packages as installed: `npm ci` run by hand ends in `prepare`, which calls this. */
export function markInstalled() {
  if (existsSync(join(root, 'node_modules'))) writeFileSync(stamp, lockHash());
}

function lockHash() {
  const lock = readFileSync(join(root, 'package-lock.json'));
  return createHash('sha256').update(lock).update(process.version).digest('hex');
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href)
  process.exitCode = install();
