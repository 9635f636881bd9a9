import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { folder, run, shellraise } from './run.ts';

it('`shellraise serve` is the server, with its own faults and exit codes', async () => {
  const wrong = await run(['serve', '--port', 'x']);
  expect([wrong.code, wrong.err]).toEqual([2, expect.stringContaining('found x, expected 1 to')]);
});

it('`shellraise serve` prints the codes, keeps its data where it is told, and ends well', async () => {
  const data = join(folder(), 'site');
  mkdirSync(data);
  const child = spawn(process.execPath, [
    shellraise,
    'serve',
    '--no-open',
    '--codes',
    '--data',
    data,
  ]);
  onTestFinished(() => void child.kill('SIGKILL'));
  let out = '';
  const ended = new Promise<number | null>((resolve) => child.once('close', resolve));
  await new Promise<void>((resolve) =>
    child.stdout.on('data', (part: Buffer) => {
      out += part;
      // Without a built app it ends by itself, and says so on standard error.
      if (out.includes('Ctrl-C')) resolve();
      void ended.then(() => resolve());
    }),
  );
  child.kill('SIGINT');
  expect(await ended).toBe(0);
  expect(out).toMatch(/Shellraise is at http:\/\/localhost:\d+\//);
  expect(out).toMatch(/crew {4}[A-Z2-9]{5}-[A-Z2-9]{5}/);
});
