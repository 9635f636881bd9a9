import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { papersWords } from '../../src/words/papers.ts';
import { patternWords as words } from '../../src/words/patterns.ts';
import { inBrowser } from './support.ts';

const { open } = inBrowser();

async function make(page: Page): Promise<void> {
  await page.getByRole('button', { name: words.make }).click();
}

async function type(page: Page, name: string, text: string): Promise<void> {
  const field = page.getByLabel(name, { exact: true });
  await field.fill(text);
  await field.press('Enter');
}

describe('the Model tab', () => {
  it('makes a net, refuses a bed too small with what fits, and saves parts to print as one zip', async () => {
    const { page, faults } = await open({ sheet: 'papers' });
    const tab = page.getByRole('tab', { name: papersWords.tab.model, exact: true });
    await tab.click({ timeout: 30_000 });
    await make(page);
    await page
      .getByText(/^Net at 1 : 20: \d+ pieces on \d+ sheets of A4/)
      .waitFor({ timeout: 30_000 });
    await page.getByRole('region', { name: words.picture }).getByRole('img').waitFor();
    await page.getByRole('button', { name: words.sorts.snap }).click();
    await type(page, words.settings.bed, '50 x 50 x 50');
    await make(page);
    await page.getByRole('alert').filter({ hasText: words.settings.bed }).waitFor();
    await type(page, words.settings.bed, '220 x 220 x 250');
    await make(page);
    await page.getByText(/^160 panels of 6 kinds and 91 hubs/).waitFor({ timeout: 30_000 });
    const [file] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: words.saveAll }).click(),
    ]);
    expect(file.suggestedFilename()).toMatch(/3d-print-in-parts\.zip$/);
    expect(faults).toEqual([]);
  }, 60_000);
});
