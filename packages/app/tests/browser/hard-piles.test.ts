import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { frameWords } from '../../src/words/frame.ts';
import { hardWords } from '../../src/words/hard-piles.ts';
import { pileWords } from '../../src/words/pile.ts';
import { shapeWords } from '../../src/words/shape.ts';
import { unreadableAnywhere } from './readable.ts';
import { dropFile, inBrowser, putAway } from './support.ts';

const { open } = inBrowser();
const example = (name: string): string =>
  readFileSync(new URL(`../../../../examples/hard/${name}.json`, import.meta.url), 'utf8');

async function openFile(page: Page, name: string, text: string): Promise<void> {
  await dropFile(page, name, text);
  await page.getByText(frameWords.opened(name)).waitFor();
  await putAway(page);
}

async function close(page: Page, label: string): Promise<void> {
  await page.getByRole('button', { name: label, exact: true }).click();
  const isFound = () =>
    document.querySelector('[data-stage=found]') !== null &&
    document.querySelector('.stale') === null;
  await page.waitForFunction(isFound, null, { timeout: 60_000 });
  const skip = page.getByRole('button', { name: shapeWords.drawn.skip });
  if (await skip.isVisible()) await skip.click();
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
const undo = (page: Page) => page.keyboard.press('Control+z');

describe('a kind without a place', () => {
  it('is left out, stays out when the shell is closed again, and comes back with one undo', async () => {
    const { page, faults } = await open({ sheet: 'shape' });
    await openFile(page, 'strangers.json', example('strangers'));
    await close(page, shapeWords.close);
    const { strangers } = hardWords;
    await press(page, strangers.leaveOut('odd 1'));
    await page.getByText(strangers.leftOut('odd 1')).waitFor();
    await close(page, shapeWords.closeAgain);
    const leave = (kind: string) =>
      page.getByRole('button', { name: strangers.leaveOut(kind), exact: true }).count();
    expect([await leave('odd 1'), await leave('odd 2')]).toEqual([0, 1]);
    await press(page, strangers.takeBack('odd 1'));
    await page.getByText(strangers.leftOut('odd 1')).waitFor({ state: 'detached' });
    await undo(page);
    await page.getByText(strangers.leftOut('odd 1')).waitFor();
    await undo(page);
    await page.getByText(strangers.leftOut('odd 1')).waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });
});

describe('a shape of which nobody noted the face', () => {
  it('is settled by the one look that the sheet asks for', async () => {
    const { page } = await open({ sheet: 'shape' });
    await openFile(page, 'hands.json', example('hands'));
    await close(page, shapeWords.close);
    await page.getByText(hardWords.hands.mirrored).waitFor();
    await press(page, hardWords.hands.asShown);
    await close(page, shapeWords.closeAgain);
    expect(await page.getByText(hardWords.hands.mirrored).count()).toBe(0);
    await undo(page);
    await close(page, shapeWords.closeAgain);
    await page.getByText(hardWords.hands.mirrored).waitFor();
  });
});

/** Ten panels of one kind of the demo's size, one of them with two digits in each other's place. */
const misread = [
  'tag,side1 mm,side2 mm,side3 mm,seen from',
  ...Array.from({ length: 9 }, (_, i) => `p${i},1103,921,1003,outside`),
  'p9,1103,921,1030,outside',
].join('\n');

describe('a reading that went wrong', () => {
  it('is named, put right in place, and wrong again after one undo', async () => {
    const { page, faults } = await open();
    await openFile(page, 'misread.csv', misread);
    const { slips, tally } = pileWords;
    const list = page.locator('.slips');
    const named = list.getByText(slips.who(tally.rowOf('p9', 10), null), { exact: false });
    await named.first().waitFor();
    await list.getByRole('button', { name: slips.mend.length, exact: false }).click();
    await list.waitFor({ state: 'detached' });
    await page.waitForFunction(() => document.querySelector('progress') === null);
    expect(await list.count()).toBe(0);
    await undo(page);
    await named.first().waitFor();
    await list.getByRole('button', { name: slips.stands, exact: false }).click();
    await list.getByText(slips.standsLine(tally.rowOf('p9', 10))).waitFor();
    await list.getByRole('button', { name: slips.doubt, exact: false }).click();
    await named.first().waitFor();
    expect(faults).toEqual([]);
  });
});

/** Every example that closes or says why not, on both screens, in all schemes. */
const looked = ['cut-base', 'gap', 'hands', 'laps-amiss', 'marks', 'strangers'] as const;

it.each(looked)('what the sheet says of %s can be read and reached', async (name) => {
  const { page } = await open({ sheet: 'shape' });
  await openFile(page, `${name}.json`, example(name));
  await close(page, shapeWords.close);
  expect(await unreadableAnywhere(page, name)).toEqual([]);
});
