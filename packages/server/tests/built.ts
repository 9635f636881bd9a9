// A built app as small as can be, gone when the test has finished.

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

const files: Readonly<Record<string, string>> = {
  'index.html': '<!doctype html><title>app</title>',
  'sw.js': '// worker',
  'manifest.webmanifest': '{}',
  '.stamp': 'of the build',
  'assets/main-Ab3_-x9Z.js': 'export {}',
  'assets/solver-12345678.wasm': '',
  'assets/text-abcdefgh.woff2': '',
};

export function builtApp(): string {
  const folder = emptyFolder();
  mkdirSync(join(folder, 'app', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'not for the page');
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, 'app', name), text);
  return join(folder, 'app');
}

export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-server-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
