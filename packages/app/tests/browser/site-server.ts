// The laptop in a browser test: the command's own server as a process that can be killed and started
// again, with the codes that it prints.

import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const command = fileURLToPath(new URL('../../../cli/bin/shellraise.js', import.meta.url));

/** A laptop that shares a folder of its own on a port of its own. */
export async function laptop() {
  const data = mkdtempSync(join(tmpdir(), 'shellraise-site-'));
  onTestFinished(() => rmSync(data, { recursive: true, force: true }));
  const port = await freePort();
  let child: ChildProcess | null = null;
  let printed = '';

  async function start(): Promise<void> {
    const words = ['serve', '--port', `${port}`, '--data', data, '--codes', '--no-open'];
    const started = spawn(process.execPath, [command, ...words], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    child = started;
    printed = '';
    for await (const part of started.stdout) {
      printed += String(part);
      if (printed.includes('Ctrl-C')) break;
    }
  }

  /** As a power cut does. */
  async function kill(): Promise<void> {
    const ended = child;
    child = null;
    if (!ended || ended.exitCode !== null) return;
    const gone = once(ended, 'exit');
    ended.kill('SIGKILL');
    await gone;
  }

  onTestFinished(kill);
  await start();
  return {
    address: `http://localhost:${port}/`,
    code: (role: string): string => new RegExp(`${role} +(\\S+)`).exec(printed)?.[1] ?? '',
    start,
    kill,
  };
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const { port } = probe.address() as { port: number };
  probe.close();
  return port;
}
