// Walks the app as two strangers do, a lead at a laptop and a helper with a phone, and takes a picture of
// every step into docs/screenshots/walks: node scripts/make-walks.mjs. Needs a Chromium. docs/walks.md
// tells what was seen.

import { spawn } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium as playwright } from 'playwright-core';
import { build, buildApp } from './build.mjs';
import { chromium } from './chromium.mjs';
import { root } from './run.mjs';
import { helperThrough } from './walks/helper.mjs';
import { leadToEnd, leadToSite } from './walks/lead.mjs';
import { camera } from './walks/shot.mjs';

const PORT = 4394;
const folder = join(root, 'docs', 'screenshots', 'walks');
const screens = {
  laptop: { viewport: { width: 1440, height: 900 } },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
};

process.exitCode = await main();

async function main() {
  const { path, reason } = chromium();
  if (!path) {
    console.error(reason);
    return 1;
  }
  for (const step of [build, buildApp]) {
    const { code, output } = step();
    if (code === 0) continue;
    console.error(output.trim());
    return 1;
  }
  mkdirSync(folder, { recursive: true });
  const data = mkdtempSync(join(tmpdir(), 'shellraise-walks-'));
  const site = served(data);
  await site.start();
  const browser = await playwright.launch({
    executablePath: path,
    args: ['--no-sandbox', '--enable-unsafe-swiftshader', '--use-angle=swiftshader'],
  });
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
