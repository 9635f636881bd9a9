// Running other programs from the scripts: one place for how their output and failures are shown.

import { spawn, spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { constants, setPriority } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The checkout. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Runs a program; output goes to the terminal. Returns its exit code, 1 where it could not run. */
export function run(program, args, options = {}) {
  const done = spawnSync(program, args, { cwd: root, stdio: 'inherit', ...options });
  if (done.error) console.error(`${program}: ${done.error.message}`);
  return done.status ?? 1;
}

/** Runs a program and keeps its output: `{ code, output }`. */
export function capture(program, args, options = {}) {
  const done = spawnSync(program, args, {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64e6,
    ...options,
  });
  const output = `${done.stdout ?? ''}${done.stderr ?? ''}${done.error ? done.error.message : ''}`;
  return { code: done.status ?? 1, output };
}

/** Runs a program beside whatever else goes on: a promise of its output (where that is not shown at
 * once, by `stdio`) and exit code. With `patient`, it and all that it starts give way to others. */
export const started = (program, args, { patient = false, ...options } = {}) =>
  new Promise((done) => {
    const child = spawn(program, args, { cwd: root, stdio: 'pipe', ...options });
    if (patient && child.pid) setPriority(child.pid, constants.priority.PRIORITY_BELOW_NORMAL);
    let output = '';
    for (const stream of [child.stdout, child.stderr])
      stream?.setEncoding('utf8').on('data', (text) => {
        output += text;
      });
    child.on('error', (error) => done({ code: 1, output: `${program}: ${error.message}` }));
    child.on('close', (code) => done({ code: code ?? 1, output }));
  });

/** The script file behind a command of an installed package, e.g. `bin('typescript', 'tsc')`. */
export function bin(name, command = name) {
  const require = createRequire(join(root, 'package.json'));
  const packageFile = join(root, 'node_modules', name, 'package.json');
  const { bin: bins } = require(packageFile);
  return join(dirname(packageFile), typeof bins === 'string' ? bins : bins[command]);
}

/** `3.2 s` since a `performance.now()` reading. */
export const since = (start) => `${((performance.now() - start) / 1000).toFixed(1)} s`;
