// Runs the built command line as a user does, and keeps what it said.

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

export const root = fileURLToPath(new URL('../../..', import.meta.url));
export const shellraise = join(root, 'packages/cli/bin/shellraise.js');
export const example = (name: string): string => join(root, 'examples', name);

export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface RunOptions {
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
  /** Milliseconds after which an interrupt is sent. */
  readonly interruptAfter?: number;
}

export function run(args: readonly string[], options: RunOptions = {}): Promise<Ran> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [shellraise, ...args], {
      cwd: options.cwd ?? root,
      env: { ...process.env, COLUMNS: '', ...options.env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let [out, err] = ['', ''];
    child.stdout.on('data', (data: Buffer) => {
      out += data;
    });
    child.stderr.on('data', (data: Buffer) => {
      err += data;
    });
    if (options.interruptAfter !== undefined)
      setTimeout(() => child.kill('SIGINT'), options.interruptAfter);
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, out, err }));
  });
}

const known = new Map<string, Promise<Ran>>();

/** As `run`, but what was run in this file already is not run again. */
export function runOnce(...args: readonly string[]): Promise<Ran> {
  const key = JSON.stringify(args);
  const ran = known.get(key) ?? run(args);
  known.set(key, ran);
  return ran;
}

/** A folder that is gone when the test has finished. */
export function folder(): string {
  const path = mkdtempSync(join(tmpdir(), 'shellraise-'));
  onTestFinished(() => rmSync(path, { recursive: true, force: true }));
  return path;
}

/** A file with this text, gone when the test has finished. */
export function fileOf(text: string | Uint8Array, name = 'pile.json'): string {
  const path = join(folder(), name);
  writeFileSync(path, text);
  return path;
}
