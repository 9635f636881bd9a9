// Runs the built command line and keeps what it said: in a process that has the engine loaded (`run`),
// or as a user does, in a process of its own (`runAlone`), which says the same and takes longer.

import { type ChildProcess, fork, spawn } from 'node:child_process';
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
}

let host: ChildProcess | null = null;
let asked = 0;
const waiting = new Map<number, (told: { ran?: Ran; fault?: string }) => void>();

/** The process that runs one command after the other; it ends with this one. */
function running(): ChildProcess {
  if (host) return host;
  const child = fork(join(root, 'packages/cli/tests/host.mjs'), {
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  child.on('message', ({ id, ...told }: { id: number; ran?: Ran; fault?: string }) => {
    waiting.get(id)?.(told);
    waiting.delete(id);
    if (waiting.size === 0) child.channel?.unref();
  });
  child.once('exit', (code) => {
    host = null;
    for (const tell of waiting.values()) tell({ fault: `the host ended with code ${code}` });
    waiting.clear();
  });
  child.unref();
  host = child;
  return child;
}

/** Runs `shellraise` with these words where the engine is loaded already. */
export function run(args: readonly string[], options: RunOptions = {}): Promise<Ran> {
  const child = running();
  child.channel?.ref();
  const id = asked++;
  return new Promise((resolve, reject) => {
    waiting.set(id, ({ ran, fault }) => (ran ? resolve(ran) : reject(new Error(fault))));
    const { cwd = root, env } = options;
    child.send({ id, asked: { args, cwd, env: { COLUMNS: '', ...env } } });
  });
}

/** Tells its parent when it would hear an interrupt. */
const tellsOfHearing = `data:text/javascript,${encodeURIComponent(
  "process.on('newListener', (name) => { if (name === 'SIGINT') process.send?.(name); })",
)}`;

/** As `run`, in a process of its own. `interruptAfter`: milliseconds after which an interrupt is
 * sent, from when the command line listens for it. */
export function runAlone(
  args: readonly string[],
  options: RunOptions & { readonly interruptAfter?: number } = {},
): Promise<Ran> {
  const { cwd = root, env, interruptAfter } = options;
  return new Promise((resolve, reject) => {
    const told = interruptAfter === undefined ? [] : ['--import', tellsOfHearing];
    const child = spawn(process.execPath, [...told, shellraise, ...args], {
      cwd,
      env: { ...process.env, COLUMNS: '', ...env },
      stdio: ['ignore', 'pipe', 'pipe', ...(interruptAfter === undefined ? [] : ['ipc' as const])],
    });
    let [out, err] = ['', ''];
    child.stdout?.on('data', (data: Buffer) => {
      out += data;
    });
    child.stderr?.on('data', (data: Buffer) => {
      err += data;
    });
    child.once('message', () => setTimeout(() => child.kill('SIGINT'), interruptAfter));
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, out, err }));
  });
}

const known = new Map<string, Promise<Ran>>();

/** As `run`, but what was run already is not run again. */
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
