import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { recordWords as words } from '../../src/words/record.ts';
import { inBrowser } from './support.ts';

const { open, profile } = inBrowser();

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const done = (page: Page, what: keyof typeof words.tallyOf) =>
  page.getByRole('row', { name: words.tallyOf[what] }).getByRole('cell').first().textContent();
const saved = (page: Page, entries: number) =>
  page.getByText(`${words.saved.here} ${words.saved.count(entries)}`).waitFor();

/** The number of a place, as the plan draws it, pressed. */
async function press(page: Page, number: string): Promise<void> {
  const label = page.locator('.plan text').getByText(number, { exact: true }).first();
  const box = await label.boundingBox();
  if (!box) throw new Error(`${number} is not drawn`);
  await page.mouse.click(box.x + box.width / 2, box.y + box.height / 2);
}

describe('what is noted on the plan', () => {
  it('is there after the page was closed, can be taken back, and goes to another device as a file', async () => {
    const context = await profile();
    const first = await open({ context, sheet: 'record' });
    const { page } = first;
    await page.locator('.plan text').getByText('1-01', { exact: true }).first().waitFor();
    await press(page, '1-01');
    await page.getByRole('status').getByText(words.nameFirst).waitFor();
    expect(await done(page, 'placed')).toBe('0');
    await page.getByLabel(words.name).fill('Ada');
    for (const number of ['1-01', '1-02', '1-03']) await press(page, number);
    await saved(page, 3);
    await button(page, words.takeBack).click();
    await saved(page, 4);
    expect(await done(page, 'placed')).toBe('2');
    await button(page, words.of.seams).click();
    await press(page, '1-04');
    await page.getByText(/a panel beside it is not in place yet/).waitFor();
    await page.reload();
    await saved(page, 4);
    expect(await done(page, 'placed')).toBe('2');
    expect(await page.getByLabel(words.name).inputValue()).toBe('Ada');
    const download = page.waitForEvent('download');
    await button(page, words.toFile).click();
    const path = await (await download).path();
    expect((await readFile(path, 'utf8')).split('\n').length).toBe(6);
    const other = await open({ sheet: 'record' });
    for (const told of [words.brought(4), words.brought(0)]) {
      const chooser = other.page.waitForEvent('filechooser');
      await button(other.page, words.fromFile).click();
      await (await chooser).setFiles(path);
      await other.page.getByText(told).waitFor();
    }
    expect(await done(other.page, 'placed')).toBe('2');
    expect([...first.faults, ...other.faults]).toEqual([]);
  });
});
