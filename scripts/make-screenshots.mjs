// Takes the pictures of every sheet anew, on a laptop and a phone, light and dark, into
// docs/screenshots: node scripts/make-screenshots.mjs [name of a sheet]. Needs a Chromium.

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { palettePng } from './palette-png.mjs';
import { browserOnBuiltApp, screens } from './pictures.mjs';
import { root } from './run.mjs';

const sheets = ['pile', 'shape', 'places', 'ground', 'raising', 'record', 'fitout', 'papers'];
const schemes = ['light', 'dark'];
const folder = join(root, 'docs', 'screenshots');

process.exitCode = await main(process.argv[2]);

async function main(only) {
  const browser = await browserOnBuiltApp();
  if (browser === null) return 1;
  mkdirSync(folder, { recursive: true });
  const served = join(root, 'packages', 'server', 'dist', 'index.js');
  const { createServer } = await import(pathToFileURL(served).href);
  const server = createServer({ root: join(root, 'packages', 'app', 'dist') });
  await server.listen({ host: '127.0.0.1', port: 0 });
  const address = `http://localhost:${server.server.address().port}/`;
  for (const sheet of sheets.filter((one) => only === undefined || one === only))
    for (const [screen, options] of Object.entries(screens))
      for (const scheme of schemes)
        await take(browser, address, { sheet, screen, scheme, options });
  await browser.close();
  await server.close();
  return 0;
}

async function take(browser, address, { sheet, screen, scheme, options }) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  await page.addInitScript((chosen) => {
    const settings = { scheme: chosen, offlineTold: true };
    localStorage.setItem('shellraise-settings', JSON.stringify(settings));
  }, scheme);
  await page.goto(`${address}#${sheet}`);
  await prepare(page, sheet);
  const file = join(folder, `${sheet}-${screen}-${scheme}.png`);
  const picture = palettePng(await page.screenshot());
  writeFileSync(file, picture);
  console.log(`${file.slice(root.length + 1)}  ${Math.round(picture.length / 1024)} kB`);
  await context.close();
}

/** The sheet in use, as a person would have it. */
async function prepare(page, sheet) {
  await page.locator('main#sheet > *').first().waitFor();
  if (sheet === 'pile') await page.locator('main .kinds-forming').waitFor();
  if (sheet === 'shape') {
    await page.getByRole('button', { name: 'Close the shell', exact: true }).click();
    await page.locator('[data-stage=found] canvas').waitFor();
    await page.waitForTimeout(8000); // it grows
  }
  if (sheet === 'places') {
    await page.locator('[data-place]').first().waitFor();
    await page.getByRole('combobox', { name: 'Find a place' }).fill('2-03');
    await page.keyboard.press('Enter');
    await page.mouse.move(0, 0);
    await page.evaluate(() => document.activeElement?.blur());
  }
  if (sheet === 'ground') {
    await page.getByRole('tab', { name: 'Stages', exact: true }).click();
    await page.locator('.chart-stop[d^=M]').first().waitFor();
    await page.getByRole('slider').fill('30');
    await page.mouse.move(0, 0);
  }
  if (sheet === 'raising') {
    const patience = { timeout: 240_000 };
    await page.locator('.raise-card').waitFor(patience);
    await page.waitForFunction(() => !document.querySelector('progress'), undefined, patience);
    await page.getByRole('slider').fill('14');
    await page.evaluate(() => document.activeElement?.blur());
    await page.getByText(/^Stop work at gusts of/).waitFor(patience);
    await page.mouse.move(0, 0);
  }
  if (sheet === 'record') {
    await page.locator('.plan text').first().waitFor();
    await page.getByLabel('Your first name or initials').fill('Ada');
    for (let at = 1; at <= 24; at++) {
      const number = `1-${String(at).padStart(2, '0')}`;
      const label = page.locator('.plan text').getByText(number, { exact: true }).first();
      const box = await label.boundingBox();
      await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
    }
    await page.mouse.move(0, 0);
  }
  if (sheet === 'fitout') {
    await page.getByRole('tab', { name: 'Signal', exact: true }).click();
    await page.getByText('half-wave thicknesses').waitFor({ timeout: 60_000 });
  }
  if (sheet === 'papers') {
    const patience = { timeout: 240_000 };
    await page.getByRole('button', { name: 'Take the best so far' }).click(patience);
    const book = page.locator('.paper-sets tr[data-set="crew-book"]');
    await book.locator('td.paper-count').filter({ hasText: /\d/ }).waitFor(patience);
    await book.getByRole('button').click();
    await page.getByRole('region', { name: /^Crew book, page 1/ }).waitFor();
  }
  await page.waitForFunction(() => document.querySelector('progress') === null);
  await page.waitForTimeout(2000); // what is drawn last
  await page.evaluate(() => scrollTo(0, 0));
}
