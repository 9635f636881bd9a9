import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { frameWords } from '../../src/words/frame.ts';
import { hardWords } from '../../src/words/hard-piles.ts';
import { pileWords } from '../../src/words/pile.ts';
import { shapeWords } from '../../src/words/shape.ts';
import { unreadableAnywhere } from './readable.ts';
import { dropFile, inBrowser, putAway } from './support.ts';

const { open } = inBrowser();

/** The icosahedron with each edge in three steps, radius 3 m; side 1 of kind 2 was read 20 mm long. */
const misread = JSON.stringify({
  shellraise: 1,
  title: 'One side misread',
  pile: {
    kinds: [
      { id: '1', sides: [1.0458, 1.0458, 1.2106], good: 60 },
      { id: '2', sides: [1.2306, 1.2372, 1.2372], good: 120 },
    ],
  },
});
const { mends } = hardWords;
const says = mends.slips.length('2', [0], '1230.5 mm', '1210.5 mm');

async function close(page: Page, label: string): Promise<void> {
  await page.getByRole('button', { name: label, exact: true }).click();
  await page.waitForFunction(() => document.querySelector('.stale') === null);
  await page.locator('[data-stage=found]').waitFor();
  const skip = page.getByRole('button', { name: shapeWords.drawn.skip });
  if (await skip.isVisible()) await skip.click();
}

async function openClosed() {
  const opened = await open({ sheet: 'shape' });
  await dropFile(opened.page, 'misread.json', misread);
  await opened.page.getByRole('button', { name: shapeWords.close, exact: true }).waitFor();
  await putAway(opened.page);
  await close(opened.page, shapeWords.close);
  return opened;
}

describe('a kind that was read wrong', () => {
  it('is named with what the net says, takes it at a press, and reads wrong again after an undo', async () => {
    const { page, faults } = await openClosed();
    await page.getByText(says).waitFor();
    await page.getByRole('button', { name: mends.takeOf('2'), exact: true }).click();
    await close(page, shapeWords.closeAgain);
    expect(await page.getByText(mends.heading).count()).toBe(0);
    await page.getByText('1210.6').first().waitFor();
    await page.keyboard.press('Control+z');
    await close(page, shapeWords.closeAgain);
    await page.getByText(says).waitFor();
    expect(faults).toEqual([]);
  });

  it('can be read and reached on either screen in every scheme', async () => {
    const { page } = await openClosed();
    expect(await unreadableAnywhere(page, 'a kind that was read wrong')).toEqual([]);
  });
});

it('tells one tag on two panels, leads to its row, and opens a spreadsheet that is chosen', async () => {
  const { page, faults } = await open();
  await page.getByRole('button', { name: frameWords.startOwn, exact: true }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: pileWords.empty.open, exact: true }).click();
  const rows = Array.from({ length: 12 }, (_, i) => {
    const sides = i % 4 === 3 ? '1547,1547,1547' : '1547,1368,1368';
    return `${i === 3 ? 3 : i + 1},${sides}`;
  });
  const text = ['tag,side1 mm,side2 mm,side3 mm', ...rows].join('\n');
  const buffer = Buffer.from(text);
  await (await chooser).setFiles({ name: 'heap.csv', mimeType: 'text/csv', buffer });
  await page.getByText(pileWords.sharedTags.says('3')).waitFor();
  await page.getByRole('button', { name: pileWords.sharedTags.row(4, '2'), exact: true }).click();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('4');
  await page.keyboard.press('Enter');
  await page.getByText(pileWords.sharedTags.title).waitFor({ state: 'detached' });
  expect(faults).toEqual([]);
});
