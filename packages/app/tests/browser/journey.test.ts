import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { frameWords } from '../../src/words/frame.ts';
import { pileWords } from '../../src/words/pile.ts';
import { placesWords } from '../../src/words/places.ts';
import { shapeWords } from '../../src/words/shape.ts';
import { ball, orchardCsv, wrong } from './spreadsheet.ts';
import { dropFile, inBrowser, putAway, type Screen } from './support.ts';

const { open, profile } = inBrowser({ offline: true });

const goTo = (page: Page, sheet: 'pile' | 'shape' | 'places') =>
  page.getByRole('link', { name: frameWords.sheets[sheet] }).click();

/** Types what the tape says, as each screen lets one. */
async function measureAgain(page: Page, screen: Screen): Promise<void> {
  const suspect = page
    .locator('.slips')
    .getByRole('listitem')
    .filter({ hasText: `Panel ${wrong.tag}` })
    .filter({ hasText: `side ${wrong.side} reads ${wrong.reads}` });
  await suspect.getByRole('button', { name: pileWords.next.again }).click();
  if (screen === 'laptop') {
    await page.keyboard.press('Control+a');
    await page.keyboard.type(wrong.again);
    await page.keyboard.press('Enter');
  } else {
    const keys = page.getByRole('group', { name: pileWords.keypad.keys });
    for (const sign of wrong.again)
      await keys.getByRole('button', { name: sign, exact: true }).click();
    await page.getByRole('button', { name: pileWords.keypad.next, exact: true }).click();
    await page.getByRole('button', { name: pileWords.views.findings }).click();
  }
  await suspect.waitFor({ state: 'detached' });
}

/** Chooses the third of the ways to stand that lack nothing. */
async function chooseCut(page: Page): Promise<string | null> {
  await page.getByRole('button', { name: /^Ways to stand/ }).click();
  await page.getByRole('radio', { name: placesWords.chooser.nothing }).check();
  const way = page.locator('.candidate').nth(2);
  const height = await way.locator('.candidate-height').textContent();
  await way.getByRole('button').click();
  await page.getByText(`${height} tall`).first().waitFor();
  return height;
}

/** Finds a place by its number; returns what its joint picture says. */
async function findPlace(page: Page, number: string): Promise<string> {
  await page.getByRole('combobox', { name: placesWords.search.label }).fill(number);
  await page.keyboard.press('Enter');
  const joint = page.getByRole('img', { name: placesWords.details.joint(number) });
  return (await joint.textContent()) ?? '';
}

async function saveFile(page: Page): Promise<{ name: string; text: string }> {
  await page.getByRole('button', { name: frameWords.menu, exact: true }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('menuitem', { name: frameWords.menuItems.save }).click();
  const file = await download;
  return { name: file.suggestedFilename(), text: await readFile(await file.path(), 'utf8') };
}

describe.each(['laptop', 'phone'] as const)('a newcomer on a %s', (screen) => {
  it('brings a pile, mends it, chooses a shell, finds a place, and finds all of it again', async () => {
    const context = await profile(screen);
    const { page, faults } = await open({ context });
    await page.getByText(frameWords.demoIntro).waitFor();
    await dropFile(page, 'orchard.csv', orchardCsv);
    await page.getByText(frameWords.opened('orchard.csv')).waitFor();
    await page.getByText(frameWords.offlineReady).waitFor();
    await putAway(page);

    await measureAgain(page, screen);

    await goTo(page, 'shape');
    await page.getByRole('button', { name: shapeWords.close, exact: true }).click();
    await page.getByText(shapeWords.headline.ball(ball.across, ball.panels)).first().waitFor();

    await goTo(page, 'places');
    const height = await chooseCut(page);
    const said = await findPlace(page, '2-03');
    expect(said).toContain('to 2-04');
    const file = await saveFile(page);
    expect(JSON.parse(file.text)).toHaveProperty('places');
    await putAway(page);

    await context.setOffline(true);
    await page.reload();
    await page.getByText(`${height} tall`).first().waitFor();
    expect(await findPlace(page, '2-03')).toBe(said);
    expect(faults).toEqual([]);

    const other = await open({ screen, sheet: 'places' });
    await dropFile(other.page, file.name, file.text);
    await other.page.getByText(`${height} tall`).first().waitFor();
    await putAway(other.page);
    expect(await findPlace(other.page, '2-03')).toBe(said);
    expect((await saveFile(other.page)).text).toBe(file.text);
    expect(other.faults).toEqual([]);
  });
});
