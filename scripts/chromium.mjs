// The browser for browser tests, pictures and the benchmark: Debian's Chromium, or one that is
// there. Where the machine lets us (root, apt), it is installed; where not, the reason is told.

import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { capture } from './run.mjs';

const names = ['chromium', 'chromium-browser', 'google-chrome'];

/** `{ path }` of a Chromium, or `{ reason }` why there is none. */
export function chromium() {
  const there = found();
  if (there) return { path: there };
  if (process.platform !== 'linux' || process.getuid?.() !== 0 || !inPath('apt-get'))
    return { reason: 'no Chromium was found, and it can only be installed by root with apt' };
  console.log('Installing Chromium (apt-get install chromium) …');
  const installed =
    apt(2, 'update') && apt(6, 'install', '-y', '--no-install-recommends', 'chromium');
  const path = found();
  return path
    ? { path }
    : {
        reason: `there is no Chromium, and apt-get install chromium ${installed ? 'brought none' : 'failed'}`,
      };
}

function found() {
  const asked = process.env.SHELLRAISE_CHROMIUM;
  if (asked && existsSync(asked)) return asked;
  return names.map(inPath).find(Boolean) ?? null;
}

const inPath = (name) =>
  (process.env.PATH ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));

const patience = ['Acquire::http::Timeout=20', 'Acquire::Retries=1', 'DPkg::Lock::Timeout=60'];

/** Waits neither for a question nor for long: a network or a lock that does not answer ends it. */
const apt = (minutes, ...args) =>
  capture('apt-get', ['-q', ...patience.flatMap((option) => ['-o', option]), ...args], {
    timeout: minutes * 60_000,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).code === 0;
