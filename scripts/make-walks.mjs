// Walks the app as two strangers do, a lead at a laptop and a helper with a phone, and takes a picture of
// every step into docs/screenshots/walks: node scripts/make-walks.mjs. Needs a Chromium. docs/walks.md
// tells what was seen.

import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { browserOnBuiltApp, screens } from './pictures.mjs';
import { root } from './run.mjs';
import { helperThrough } from './walks/helper.mjs';
import { leadToEnd, leadToSite } from './walks/lead.mjs';
import { camera } from './walks/shot.mjs';

const PORT = 4394;
const folder = join(root, 'docs', 'screenshots', 'walks');

process.exitCode = await main();

async function main() {
  const browser = await browserOnBuiltApp();
  if (browser === null) return 1;
  mkdirSync(folder, { recursive: true });
  const data = mkdtempSync(join(tmpdir(), 'shellraise-walks-'));
  const site = served(data);
  await site.start();
  const newPage = async (screen) => (await browser.newContext(screens[screen])).newPage();
  try {
    const shot = camera(folder, await newPage('laptop'));
    const lead = await newPage('laptop');
    // Of the picture of the code: an address that is nobody's.
    await lead.route('**/sync/addresses', (route) =>
      route.fulfill({ json: [`http://192.168.1.5:${PORT}/`] }),
    );
    const { code } = site;
    await leadToSite(lead, shot, { address: `http://localhost:${PORT}/`, code });
    const phone = await newPage('phone');
    const noted = await helperThrough(phone, shot, { address: onNetwork(), code, site });
    const numbers = await lead
      .locator('.plan text')
      .evaluateAll((texts) =>
        texts.map((text) => text.textContent ?? '').filter((text) => /^\d-\d\d$/.test(text)),
      );
    const left = [...new Set(numbers)].filter((number) => !noted.includes(number)).sort();
    await leadToEnd(lead, shot, left);
  } finally {
    await browser.close();
    await site.kill();
    rmSync(data, { recursive: true, force: true });
  }
  return 0;
}

/** The laptop's address as a phone has it: over plain http, if this computer is on a network. */
function onNetwork() {
  const all = Object.values(networkInterfaces()).flatMap((list) => list ?? []);
  const own = all.find(({ family, internal }) => family === 'IPv4' && !internal);
  return `http://${own?.address ?? 'localhost'}:${PORT}/`;
}

/** The laptop: `shellraise serve` on a folder, which can be killed and started again. */
function served(data) {
  const command = join(root, 'packages', 'cli', 'bin', 'shellraise.js');
  const words = ['serve', '--port', `${PORT}`, '--data', data, '--codes', '--no-open', '--lan'];
  let child = null;
  let printed = '';
  return {
    code: (role) => new RegExp(`^ +${role} +(\\S+)`, 'm').exec(printed)?.[1] ?? '',
    start: async () => {
      child = spawn(process.execPath, [command, ...words], {
        stdio: ['ignore', 'pipe', 'inherit'],
      });
      printed = '';
      for await (const part of child.stdout) {
        printed += String(part);
        if (printed.includes('Ctrl-C')) break;
      }
    },
    kill: async () => {
      if (!child || child.exitCode !== null) return;
      const gone = new Promise((done) => child.once('exit', done));
      child.kill('SIGKILL');
      await gone;
      child = null;
    },
  };
}
