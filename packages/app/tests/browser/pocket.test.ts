import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { carriedIn } from '../../src/files/carried.ts';
import { codesWords as codes } from '../../src/words/codes.ts';
import { frameWords as frame } from '../../src/words/frame.ts';
import { recordWords as words } from '../../src/words/record.ts';
import { inBrowser, spotOf } from './support.ts';

const { open, profile } = inBrowser();

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
/** Waits until so many panels are noted. */
const placed = (page: Page, count: number) =>
  page.getByRole('application', { name: new RegExp(`: ${count} of \\d+ placed$`) }).waitFor();

async function press(page: Page, number: string): Promise<void> {
  const { x, y } = await spotOf(page, number);
  await page.mouse.click(x, y);
}

/** What a press hands out as a file: its path, kept under this name. */
async function handedOut(page: Page, name: string, act: () => Promise<void>): Promise<string> {
  const download = page.waitForEvent('download');
  await act();
  const path = join(tmpdir(), `shellraise-${process.pid}-${name}`);
  await (await download).saveAs(path);
  return path;
}

const pocketOf = (page: Page, name: string) =>
  handedOut(page, name, async () => {
    await button(page, frame.menu).click();
    await page.getByRole('menuitem', { name: frame.menuItems.pocket }).click();
  });

describe('the pocket copy', () => {
  it('opens from a file without a network, takes notes, and gives them back without doubles', async () => {
    const laptop = await open({ sheet: 'record' });
    await laptop.page.getByLabel(words.name).fill('Ada');
    await press(laptop.page, '1-01');
    await placed(laptop.page, 1);
    const file = await pocketOf(laptop.page, 'first.pocket.html');

    const context = await profile('phone');
    await context.setOffline(true);
    const phone = await context.newPage();
    const faults: string[] = [];
    phone.on('pageerror', (error) => faults.push(error.message));
    phone.on('request', (request) => {
      if (!/^(file|data|blob):/.test(request.url())) faults.push(request.url());
    });
    await phone.goto(`${pathToFileURL(file)}#record`);
    await placed(phone, 1);
    await phone.getByLabel(words.name).fill('Bo');
    await press(phone, '1-02');
    await placed(phone, 2);
    // What was noted is there when the file is opened again.
    await phone.reload();
    await placed(phone, 2);
    const record = await handedOut(phone, 'record.jsonl', () =>
      button(phone, words.toFile).click(),
    );
    const next = await pocketOf(phone, 'second.pocket.html');
    expect(faults).toEqual([]);

    const page = await readFile(next, 'utf8');
    const text = /id="carried">([^<]*)</.exec(page)?.[1];
    expect(carriedIn(text)?.record.trim().split('\n').length).toBe(3);
    expect(Buffer.byteLength(page)).toBeLessThan(9_000_000);

    for (const told of [words.brought(1), words.brought(0)]) {
      const chooser = laptop.page.waitForEvent('filechooser');
      await button(laptop.page, words.fromFile).click();
      await (await chooser).setFiles(record);
      await laptop.page.getByText(told).waitFor();
    }
    await placed(laptop.page, 2);

    // From screen to camera: what the phone noted since, as codes, in photos.
    await press(phone, '1-03');
    await placed(phone, 3);
    await button(phone, codes.show).click();
    const code = phone.getByRole('img', { name: codes.picture(1, 1) });
    const photo = await code.screenshot();
    await button(laptop.page, codes.read).click();
    await laptop.page.getByText(codes.noCamera).waitFor();
    for (const told of [codes.brought(1), codes.brought(0)]) {
      const chooser = laptop.page.waitForEvent('filechooser');
      await button(laptop.page, codes.choose).click();
      await (await chooser).setFiles({ name: 'code.png', mimeType: 'image/png', buffer: photo });
      await laptop.page.getByText(told).waitFor();
    }
    await laptop.page.keyboard.press('Escape');
    await placed(laptop.page, 3);
    expect(laptop.faults).toEqual([]);
  });
});
