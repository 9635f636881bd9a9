import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { type Sheet, sheets } from '../../src/state/app-state.ts';
import { frameWords } from '../../src/words/frame.ts';
import { placesWords } from '../../src/words/places.ts';
import { shapeWords } from '../../src/words/shape.ts';
import { dropFile, inBrowser, orderRests } from './support.ts';

const { open } = inBrowser();
/** One page goes through all sheets: it is loaded once. */
const ALL_SHEETS = { timeout: 300_000 };

const plan = (page: Page) => page.getByRole('application', { name: /^Flat plan of/ });

/** What the flat plan reads out of what is selected. */
const readOut = (page: Page) =>
  page.locator('.plan-view').getByRole('status').textContent() as Promise<string>;

describe('with the keyboard alone', () => {
  it('a shape is found, a place too, and its neighbours are gone to and read out', async () => {
    const { page, faults } = await open();
    await page.keyboard.press('Alt+2');
    await page.locator('.frame[data-sheet=shape]').waitFor();
    await page.getByRole('button', { name: shapeWords.close, exact: true }).waitFor();
    await page.locator('main').focus();
    await tabTo(page, shapeWords.close);
    await page.keyboard.press('Enter');
    await page.locator('[data-stage=found]').waitFor();
    await page.keyboard.press('Alt+3');
    await plan(page).waitFor();
    await page.keyboard.press('Control+k');
    await page.keyboard.type('2-03');
    await page.keyboard.press('Enter');
    await page.getByRole('img', { name: placesWords.details.joint('2-03') }).waitFor();
    await plan(page).focus();
    const first = await readOut(page);
    expect(first).toMatch(
      /^place 2-03, kind \S+, course 2; side 1 to \S+, side 2 to \S+, side 3 to \S+/,
    );
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => readOut(page)).not.toBe(first);
    const second = /^place (\S+),/.exec(await readOut(page))?.[1];
    expect(first).toContain(`to ${second}`);
    expect(await readOut(page)).toContain('to 2-03');
    await page.keyboard.press('Escape');
    await page.getByText(placesWords.details.nothing).waitFor();
    expect(faults).toEqual([]);
  });

  it('every control of every sheet can be come to, and shows that it is', ALL_SHEETS, async () => {
    const { page } = await open();
    for (const sheet of sheets) {
      await turnTo(page, sheet);
      await page.waitForTimeout(800);
      const reached = new Set<string>();
      for (let i = 0; i < 60; i++) {
        await page.keyboard.press('Tab');
        const at = await page.evaluate(() => {
          const one = document.activeElement;
          if (!one || one === document.body) return null;
          const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(one);
          const ring = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
          const seen = ring || boxShadow !== 'none';
          return { name: one.outerHTML.slice(0, 120), seen, inMain: one.closest('main') !== null };
        });
        if (at === null) continue;
        expect(at.seen, `${sheet}: ${at.name}`).toBe(true);
        if (at.inMain) reached.add(at.name);
      }
      expect(reached.size, sheet).toBeGreaterThan(1);
    }
  });
});

/** Turns to a sheet and waits for what it shows first. */
async function turnTo(page: Page, sheet: Sheet): Promise<void> {
  await page.evaluate((hash) => {
    location.hash = hash;
  }, sheet);
  await page.locator(`.frame[data-sheet=${sheet}]`).waitFor();
  const first = {
    places: '[data-place]',
    ground: '.wind-rose',
    raising: '.raise-card',
    record: '.noting',
    fitout: '.fitout-tabs .fit-panel',
    papers: '.paper-page svg',
    pile: 'main input',
    shape: 'main button',
  };
  await page.locator(first[sheet]).first().waitFor();
  if (sheet === 'raising') await orderRests(page);
}

/** Goes on by Tab until a button has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let i = 0; i < 40; i++) {
    await page.keyboard.press('Tab');
    if ((await page.evaluate(() => document.activeElement?.textContent)) === name) return;
  }
  throw new Error(`${name} can't be reached by Tab`);
}

describe('a note', () => {
  it('stays on the sheet it was told on, and goes when another is turned to', async () => {
    const { page } = await open();
    await dropFile(page, 'more.csv', 'side1 mm,side2 mm,side3 mm,count\n900,1000,1100,3\n');
    const note = page.locator('.notices .notice');
    await note.first().waitFor();
    await page.waitForTimeout(500);
    expect(await note.count()).toBeGreaterThan(0);
    await page.keyboard.press('Alt+2');
    await expect.poll(() => note.count()).toBe(0);
  });
});

describe('lengths', () => {
  it('are in feet and inches on every sheet, at a switch, and back', async () => {
    const { page } = await open({ sheet: 'places' });
    await page.locator('[data-place]').first().waitFor();
    await page.getByText(/^3\.\d+ m tall/).waitFor();
    await page.keyboard.press('Alt+v');
    await page.getByRole('radio', { name: frameWords.inch, exact: true }).check();
    await page.keyboard.press('Escape');
    await page.getByText(/^11' 11 [\d/]+" tall/).waitFor();
    await page.locator('.title-block').getByText(frameWords.lengths.inch).waitFor();
    await page.keyboard.press('Alt+1');
    const cell = page.locator('[data-row="0"] td.side').first();
    expect(await cell.textContent()).toMatch(/^44 13\/16"/);
    await page.keyboard.press('Alt+v');
    await page.getByRole('radio', { name: frameWords.metric, exact: true }).check();
    await page.keyboard.press('Escape');
    await expect.poll(() => cell.textContent()).toMatch(/^1138 mm/);
  });
});

describe('on paper', () => {
  /** Pages of a sheet as it is printed. */
  async function pages(page: Page, format: string): Promise<number> {
    const pdf = (await page.pdf({ format, preferCSSPageSize: false })).toString('latin1');
    return pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
  }

  /** Pages at most, where no cards are printed. */
  const most: Readonly<Record<Sheet, number>> = {
    pile: 14,
    shape: 4,
    places: 4,
    ground: 6,
    raising: 3,
    record: 3,
    fitout: 8,
    papers: 1,
  };

  it(
    'every sheet is a drawing of few pages on A4 and on Letter, without its buttons',
    ALL_SHEETS,
    async () => {
      const { page } = await open();
      // Hatches take Chromium seconds a page, and no room.
      await page.addStyleTag({ content: '[fill^="url("] { fill: none !important }' });
      for (const sheet of sheets) {
        await turnTo(page, sheet);
        if (sheet === 'shape') {
          await page.getByRole('button', { name: shapeWords.close, exact: true }).click();
          await page.locator('[data-stage=found]').waitFor();
        }
        await page.waitForTimeout(1000);
        // Cards are made as the printer asks for the page, each for a page of its own; two stages of
        // many lifts may go over one.
        await page.evaluate(() => {
          document.body.removeAttribute('data-cards');
          new MutationObserver(() => {
            const cards = document.querySelectorAll('.printed-cards > *').length;
            if (cards > 0) document.body.setAttribute('data-cards', `${cards}`);
          }).observe(document.body, { childList: true, subtree: true });
        });
        for (const format of ['A4', 'Letter']) {
          const count = await pages(page, format);
          const cards = Number(await page.locator('body').getAttribute('data-cards'));
          expect(cards > 0, `cards of ${sheet}`).toBe(sheet === 'raising');
          expect(count, `${sheet} on ${format}`).toBeGreaterThanOrEqual(1);
          expect(count, `${sheet} on ${format}`).toBeLessThanOrEqual(
            cards > 0 ? cards + 2 : most[sheet],
          );
        }
        await page.emulateMedia({ media: 'print' });
        // Rows and drawings that can be pressed on the screen are plain ones on paper.
        const framed = await page.evaluate(() =>
          [...document.querySelectorAll('button:not(:has(svg)), input, select')]
            .filter((one) => one.checkVisibility())
            .filter((one) => Number.parseFloat(getComputedStyle(one).borderTopWidth) > 0)
            .map((one) => one.outerHTML.slice(0, 80)),
        );
        expect(framed, sheet).toEqual([]);
        await page.emulateMedia({ media: null });
      }
    },
  );
});
