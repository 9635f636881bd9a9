import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { papersWords as words } from '../../src/words/papers.ts';
import { inBrowser } from './support.ts';

const { open } = inBrowser();

const row = (page: Page, set: string) => page.locator(`.paper-sets tr[data-set="${set}"]`);

/** Pages of a set as the sheet tells them, once it is made. */
async function told(page: Page, set: string): Promise<number> {
  const count = row(page, set).locator('td.paper-count');
  await expect.poll(() => count.textContent(), { timeout: 60_000 }).toMatch(/^\d+$/);
  return Number(await count.textContent());
}

const pagesIn = (pdf: string): number => pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;

describe('the Papers sheet', () => {
  it('tells the sets and their pages, draws them, prints and saves just those', async () => {
    const { page, faults } = await open({ sheet: 'papers' });
    // Of the shell and its ground at once.
    expect(await told(page, 'stake-out')).toBeGreaterThan(0);
    await page.locator('.paper-page svg[role="img"] text').first().waitFor();
    await row(page, 'kinds').getByRole('button').click();
    await page.getByRole('region', { name: /^Kinds, page 1 of/ }).waitFor();
    // What the project says nothing of, and what can't be made, says so.
    await row(page, 'flat-plan-upper').getByText(words.nothing).waitFor();

    // By the order of work: the best so far is enough here.
    await page.getByRole('button', { name: words.takeNow }).click({ timeout: 60_000 });
    const book = await told(page, 'crew-book');
    expect(book).toBeGreaterThan(10);
    await row(page, 'crew-book').getByRole('button').click();
    await page.getByRole('button', { name: words.after }).click();
    await page.getByRole('region', { name: `Crew book, page 2 of ${book}` }).waitFor();

    const labels = await told(page, 'panel-labels');
    for (const set of ['Crew book', 'Panel labels'])
      await page.getByLabel(words.pick(set), { exact: true }).check();
    await page.getByText(words.chosen(2, book + labels)).waitFor();

    const coming = page.waitForEvent('download', { timeout: 60_000 });
    await page.getByRole('button', { name: words.pdf }).click();
    const file = await coming;
    expect(file.suggestedFilename()).toMatch(/-papers\.pdf$/);
    const pdf = readFileSync(await file.path()).toString('latin1');
    expect(pdf.startsWith('%PDF')).toBe(true);
    expect(pagesIn(pdf)).toBe(book + labels);

    // To the printer: a page of paper each, and nothing of the app.
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await page.getByRole('button', { name: words.print }).click();
    await page.locator('.printed-papers').waitFor({ state: 'attached' });
    const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(pagesIn(printed)).toBe(book + labels);
    const sizes = [...printed.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)];
    const short = sizes.map(([, ...size]) => Math.min(...size.map(Number)) / 72);
    expect(short.every((inches) => Math.abs(inches * 25.4 - 210) < 1)).toBe(true);
    expect(faults).toEqual([]);
  }, 120_000);
});
