import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { frameWords } from '../../src/words/frame.ts';
import { dropFile, inBrowser } from './support.ts';

const { open, profile, knowingProfile } = inBrowser();

const csv = (tag: string) => `tag,side1 mm,side2 mm,side3 mm\n${tag},928,929,1082\n`;
const undo = (page: Page) => page.getByRole('button', { name: frameWords.undo, exact: true });
const redo = (page: Page) => page.getByRole('button', { name: frameWords.redo, exact: true });
const saved = (page: Page) =>
  page.locator('.title-block').getByText(frameWords.saving.saved, { exact: true }).waitFor();

/** A pile of one's own with one reading, kept. */
async function ownPile(page: Page): Promise<void> {
  await dropFile(page, 'first.csv', csv('1'));
  await page.getByText(frameWords.opened('first.csv')).waitFor();
  await saved(page);
}

/** The project as it would be written to a file. */
async function savedFile(page: Page): Promise<{ name: string; text: string }> {
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const file = await download;
  return { name: file.suggestedFilename(), text: await readFile(await file.path(), 'utf8') };
}

const tagsIn = (text: string): string[] =>
  (JSON.parse(text) as { pile: { readings: { tag: string }[] } }).pile.readings.map(
    ({ tag }) => tag,
  );

describe('a project', () => {
  it('is written to a file that opens as the same project', async () => {
    const { page } = await open();
    await ownPile(page);
    const first = await savedFile(page);
    expect(first.name).toBe('first.json');
    expect(tagsIn(first.text)).toEqual(['1']);
    const other = await open();
    await dropFile(other.page, first.name, first.text);
    await other.page.getByText(frameWords.opened('first.json')).waitFor();
    expect(await savedFile(other.page)).toEqual(first);
  });

  it('takes back and makes again each change, after the page was closed too', async () => {
    const context = await knowingProfile();
    const { page } = await open({ context });
    await ownPile(page);
    expect(await undo(page).isDisabled()).toBe(true);
    await dropFile(page, 'more.csv', csv('2'));
    await page.getByText(frameWords.openedAddition('more.csv', 1)).waitFor();
    await saved(page);
    expect(tagsIn((await savedFile(page)).text)).toEqual(['1', '2']);
    await page.reload();
    await page.getByTitle(frameWords.undoOf(frameWords.addOf('more.csv'))).waitFor();
    await page.locator('main').focus();
    await page.keyboard.press('Control+z');
    expect(tagsIn((await savedFile(page)).text)).toEqual(['1']);
    await redo(page).click();
    expect(tagsIn((await savedFile(page)).text)).toEqual(['1', '2']);
    expect(await redo(page).isDisabled()).toBe(true);
  });

  it('shows in one page what was changed in another', async () => {
    const context = await knowingProfile();
    const one = (await open({ context })).page;
    await ownPile(one);
    const two = (await open({ context })).page;
    await two.locator('.project-name').getByText('first').waitFor();
    await dropFile(two, 'more.csv', csv('2'));
    await one.getByTitle(frameWords.undoOf(frameWords.addOf('more.csv'))).waitFor();
    expect(tagsIn((await savedFile(one)).text)).toEqual(['1', '2']);
  });

  it('is kept among others, opened again, removed, and brought back', async () => {
    const { page } = await open();
    await ownPile(page);
    await page.getByRole('button', { name: frameWords.menu, exact: true }).click();
    await page.getByRole('menuitem', { name: frameWords.menuItems.empty }).click();
    await page.locator('.project-name').getByText(frameWords.untitled).waitFor();
    const list = page.getByRole('dialog').getByRole('listitem');
    await page.keyboard.press('Alt+p');
    await list
      .filter({ hasText: 'first' })
      .getByRole('button', { name: /^first/ })
      .click();
    await page.locator('.project-name').getByText('first').waitFor();
    await page.keyboard.press('Alt+p');
    const empty = list.filter({ hasText: frameWords.untitled });
    await empty.getByRole('button', { name: frameWords.remove }).click();
    await empty.waitFor({ state: 'detached' });
    // The button that had the focus is gone; the dialog takes it a moment later.
    await page.waitForFunction(() => document.activeElement?.closest('[role=dialog]'));
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.locator('.notices').getByRole('button', { name: frameWords.undo }).click();
    await page.keyboard.press('Alt+p');
    await empty.waitFor();
  });
});

describe('the demo', () => {
  it('is what a newcomer sees, and is never changed itself', async () => {
    const { page } = await open();
    await page.locator('.title-block').getByText(frameWords.saving.demo).waitFor();
    const title = await page.locator('.project-name').textContent();
    expect(title).not.toBe(frameWords.untitled);
    await ownPile(page);
    await page.getByRole('button', { name: frameWords.menu, exact: true }).click();
    await page.getByRole('menuitem', { name: frameWords.menuItems.demo }).click();
    await page.locator('.title-block').getByText(frameWords.saving.demo).waitFor();
    expect(await page.locator('.project-name').textContent()).toBe(title);
  });
});

describe('a page that is opened again', () => {
  it('shows what stands without asking the engine for the shapes again', async () => {
    const context = await profile();
    const { page } = await open({ context, sheet: 'places', before: noteQuestions });
    const asked = () => page.evaluate(() => (globalThis as { asked?: string[] }).asked ?? []);
    const plan = page.locator('.plan-view').first();
    await plan.waitFor();
    expect(await asked()).toContain('identify');
    // The list of arrangements is asked after what stands, and kept a moment after it came.
    await page.waitForFunction(async () => {
      const open = indexedDB.open('shellraise-answers');
      await new Promise((done) => open.addEventListener('success', done));
      const count = open.result.transaction('answers').objectStore('answers').count();
      await new Promise((done) => count.addEventListener('success', done));
      open.result.close();
      return count.result >= 1;
    });
    await page.reload();
    await plan.waitFor();
    expect(await asked()).not.toContain('identify');
  });
});

/** Run in the page: writes down every question that goes to a worker. */
function noteQuestions(): void {
  const asked: string[] = [];
  Object.assign(globalThis, { asked });
  const send = Worker.prototype.postMessage as (...args: unknown[]) => void;
  Worker.prototype.postMessage = function (this: Worker, ...args: unknown[]) {
    asked.push(...((args[0] as { path?: string[] }).path ?? []));
    send.apply(this, args);
  };
}

describe('the keyboard', () => {
  it('skips to the sheet, and goes from sheet to sheet, the way back too', async () => {
    const { page } = await open();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('sheet');
    for (const [key, sheet] of [
      ['Alt+2', 'shape'],
      ['Alt+3', 'places'],
      ['Alt+1', 'pile'],
    ] as const) {
      await page.keyboard.press(key);
      await page.locator(`.frame[data-sheet=${sheet}]`).waitFor();
      expect(new URL(page.url()).hash).toBe(`#${sheet}`);
    }
    await page.goBack();
    await page.locator('.frame[data-sheet=places]').waitFor();
  });
});
