import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { recordWords as words } from '../../src/words/record.ts';
import { recordingWords } from '../../src/words/recording.ts';
import { sharingWords as sharing } from '../../src/words/sharing.ts';
import { laptop } from './site-server.ts';
import { inBrowser, type Screen, spotOf } from './support.ts';

const { profile } = inBrowser();

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const tab = (page: Page, key: keyof typeof recordingWords.tab) =>
  page.getByRole('tab', { name: recordingWords.tab[key] }).click();
/** The line under the plan. */
const strip = (page: Page, text: string) =>
  page.locator('.site-strip').getByText(text, { exact: true }).waitFor();
const onLaptop = (page: Page) => strip(page, sharing.short('kept', 0));
const waits = (page: Page, count: number) => strip(page, sharing.short('away', count));

/** Two neighbours of the lowest course, and what lies between them. */
const SEAM = '1-01/1-02';

/** The number of a place, or what lies between two of them, pressed as a person does. */
async function press(page: Page, number: string, other = number): Promise<void> {
  await page.locator('.record-drawing').scrollIntoViewIfNeeded();
  const [a, b] = [await spotOf(page, number), await spotOf(page, other)];
  await page.mouse.click((a.x + b.x) / 2, (a.y + b.y) / 2);
}

const done = async (page: Page, what: keyof typeof words.tallyOf): Promise<string | null> =>
  page.getByRole('row', { name: words.tallyOf[what] }).getByRole('cell').first().textContent();

const counted = (page: Page, count: number) =>
  page.getByText(words.saved.count(count), { exact: true }).waitFor();

describe('a site', () => {
  it('is shared by code, goes on without the laptop, and comes together again', async () => {
    const site = await laptop();
    /** A device that came by the picture of a role. */
    const join = async (role: 'lead' | 'crew', by: string, screen: Screen) => {
      const page = await (await profile(screen)).newPage();
      page.setDefaultTimeout(60_000);
      const faults: string[] = [];
      page.on('pageerror', (error) => faults.push(error.message));
      await page.goto(`${site.address}#join=${site.code(role)}`);
      await page.locator('main').waitFor();
      expect(page.url()).toBe(`${site.address}#record`);
      return {
        page,
        faults,
        ready: async () => {
          await onLaptop(page);
          await page.locator('.plan text').getByText('1-01', { exact: true }).first().waitFor();
          await page.getByLabel(words.name).fill(by);
          await tab(page, 'done');
        },
      };
    };
    const lead = await join('lead', 'Ada', 'laptop');
    await lead.page.getByRole('button', { name: sharing.putHere('The orchard shell') }).click();
    await lead.ready();
    const crew = await join('crew', 'Bram', 'phone');
    await crew.ready();

    for (const number of ['1-01', '1-02']) await press(lead.page, number);
    await counted(crew.page, 2);
    expect(await done(crew.page, 'placed')).toBe('2');
    for (const { page } of [lead, crew]) await onLaptop(page);

    await site.kill();
    for (const { page } of [lead, crew]) await button(page, words.of.seams).click();
    await press(lead.page, '1-01', '1-02');
    await press(crew.page, '1-01', '1-02');
    await press(crew.page, '1-01', '1-02');
    await waits(lead.page, 1);
    await waits(crew.page, 2);
    expect(await done(lead.page, 'snug')).toBe('0');
    expect(await done(crew.page, 'snug')).toBe('1');

    await site.start();
    for (const { page } of [lead, crew]) {
      await onLaptop(page);
      await counted(page, 5);
      await page.getByText(words.question(SEAM)).waitFor();
      expect(await done(page, 'placed')).toBe('2');
    }

    // A picture needs an address that a phone can reach: this laptop is open to itself alone.
    await tab(lead.page, 'laptop');
    await lead.page.getByText(sharing.showCodes).click();
    const code = site.code('crew');
    await button(lead.page, sharing.showOf(code)).click();
    await lead.page.getByText(sharing.alone).waitFor();
    await button(lead.page, sharing.revokeOf(code)).click();
    await lead.page.getByText(sharing.revoked(code)).waitFor();
    await strip(crew.page, sharing.short('ended', 0));

    // The same phone comes again, to look.
    await tab(crew.page, 'laptop');
    await crew.page.getByText(sharing.joinAgain).click();
    await crew.page.getByLabel(sharing.code).fill(site.code('looker'));
    await button(crew.page, sharing.join).click();
    await crew.page.getByText(sharing.lookerOnly).waitFor();
    await onLaptop(crew.page);
    await tab(crew.page, 'done');
    await press(crew.page, '1-01', '1-02');
    await counted(crew.page, 5);
    expect([lead, crew].flatMap(({ faults }) => faults)).toEqual([]);
    // Two fresh profiles work out the shell each: on a busy machine that alone takes a minute.
  }, 240_000);

  it('is not joined with a wrong code, and the paper for the fence holds the right one', async () => {
    const site = await laptop();
    const page = await (await profile()).newPage();
    page.setDefaultTimeout(60_000);
    await page.route('**/sync/addresses', (route) =>
      route.fulfill({ json: ['http://192.168.1.5:4180/'] }),
    );
    await page.goto(`${site.address}#record`);
    await page.locator('.plan text').first().waitFor();
    await tab(page, 'laptop');
    await page.getByLabel(sharing.code).fill('AAAAA AAAAA');
    await button(page, sharing.join).click();
    await page.getByRole('alert').getByText(sharing.joinFaults.wrong).waitFor();
    await page.getByLabel(sharing.code).fill(site.code('lead').toLowerCase());
    await button(page, sharing.join).click();
    await page.getByRole('button', { name: sharing.putHere('The orchard shell') }).click();
    await onLaptop(page);
    await tab(page, 'laptop');
    await page.getByText(sharing.showCodes).click();
    await button(page, sharing.showOf(site.code('crew'))).click();
    const address = `http://192.168.1.5:4180/#join=${site.code('crew')}`;
    await page.getByText(address, { exact: true }).waitFor();
    await page.emulateMedia({ media: 'print' });
    const paper = page.locator('.join-paper');
    expect(await paper.textContent()).toContain(site.code('crew'));
    expect(await paper.locator('svg path').getAttribute('d')).toMatch(/^M/);
    expect(await page.locator('#app').isVisible()).toBe(false);
  });
});
