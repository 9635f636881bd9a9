// The browser that the browser tests run in: Debian's Chromium, or one that is there. Where the
// machine lets us (root, apt), it is installed; where not, the reason is told.

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
  console.log('Installing Chromium for the browser tests (apt-get install chromium) …');
  const installed = apt('update') && apt('install', '-y', '--no-install-recommends', 'chromium');
  const path = found();
  return path
    ? { path }
    : {
        reason: `Chromium could not be installed by apt${installed ? '' : ' (see apt-get install chromium)'}`,
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

const apt = (...args) =>
  capture('apt-get', ['-q', ...args], {
    timeout: 300_000,
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  }).code === 0;
