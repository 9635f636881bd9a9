import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { frameWords } from '../../src/words/frame.ts';
import { pileWords } from '../../src/words/pile.ts';
import { shapeWords } from '../../src/words/shape.ts';
import { ball, orchardCsv, wrong } from './spreadsheet.ts';
import { dropFile, inBrowser, putAway, type Screen } from './support.ts';

const { open, profile } = inBrowser();

const goTo = (page: Page, sheet: 'pile' | 'shape' | 'places') =>
  page.getByRole('link', { name: frameWords.sheets[sheet] }).click();

/** Types what the tape says, as each screen lets one. */
async function measureAgain(page: Page, screen: Screen): Promise<void> {
  const suspect = page
    .getByRole('listitem')
    .filter({ hasText: `Panel ${wrong.tag}, side ${wrong.side}: reads ${wrong.reads}` });
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

describe.each(['laptop', 'phone'] as const)('a newcomer on a %s', (screen) => {
  it('brings a pile, mends it, and sees what it closes into and what can stand', async () => {
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

    expect(faults).toEqual([]);
  });
});
