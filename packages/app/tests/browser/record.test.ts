import { readFile } from 'node:fs/promises';
import { RecordLog, writeRecordFile } from '@shellraise/core';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { placesWords } from '../../src/words/places.ts';
import { recordWords as words } from '../../src/words/record.ts';
import { recordingWords as recording } from '../../src/words/recording.ts';
import { twinWords as twin } from '../../src/words/twin.ts';
import { inBrowser, spotOf } from './support.ts';

const { open, knowingProfile } = inBrowser();

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const tab = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();
async function done(page: Page, what: keyof typeof words.tallyOf): Promise<string | null> {
  await tab(page, recording.tab.done);
  const row = page.getByRole('row', { name: words.tallyOf[what] });
  return row.getByRole('cell').first().textContent();
}
const saved = (page: Page, entries: number) =>
  page.getByText(`${words.saved.here} ${words.saved.count(entries)}`).waitFor();

/** The number of a place, as the plan draws it, pressed for so long. */
async function press(page: Page, number: string, milliseconds = 0): Promise<void> {
  const { x, y } = await spotOf(page, number);
  await page.mouse.click(x, y, { delay: milliseconds });
}

describe('what is noted on the plan', () => {
  it('is there after the page was closed, can be taken back, and goes to another device as a file', async () => {
    const context = await knowingProfile();
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

  it('is chosen by a long press without a word, checked with the wrench, and stopped at once', async () => {
    const { page, faults } = await open({ sheet: 'record' });
    await page.locator('.plan text').getByText('1-01', { exact: true }).first().waitFor();
    await page.getByLabel(words.name).fill('Ada');
    await press(page, '1-01', 700);
    await page.getByText(recording.held(words.place('1-01'))).waitFor();
    expect(await done(page, 'placed')).toBe('0');
    await page.getByText(words.around).click();
    await button(page, words.seam('1-01/1-02')).click();
    await page.getByText(words.sample).click();
    await page.getByLabel(recording.sample.bolts).fill('3');
    await page.getByLabel(recording.sample.failed).fill('1');
    await button(page, recording.sample.note).click();
    await saved(page, 1);
    await tab(page, recording.tab.forgotten);
    await page
      .getByText(/a bolt failed/)
      .first()
      .waitFor();
    await tab(page, recording.tab.next);
    await button(page, recording.stop.lightning).click();
    await page.getByRole('alert').getByText(recording.stop.on.lightning).waitFor();
    await button(page, recording.stop.lift.lightning).click();
    await page.getByText(recording.stop.on.lightning).waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });

  it('tells where a tagged panel goes, walks round the ring, and takes a form', async () => {
    const { page, faults } = await open({ sheet: 'record' });
    await page.locator('.plan text').getByText('1-01', { exact: true }).first().waitFor();
    await page.getByLabel(words.name).fill('Ada');
    await tab(page, recording.tab.tag);
    await button(page, recording.scan.start).waitFor();
    await page.getByLabel(recording.tagged.tag).fill('17');
    await page.getByText(/^Panel 017 goes to /).waitFor();
    const put = page.getByRole('button', { name: /^017 is in place at / }).first();
    const number = (await put.textContent())?.split(' ').at(-1) ?? '';
    await put.click();
    await page.getByText(recording.tagged.placed('017', [number])).waitFor();
    await saved(page, 1);
    for (const one of ['1-01', '1-02', '1-03']) if (one !== number) await press(page, one);
    // Turned over and by a quarter, a press still means what is drawn there.
    await button(page, recording.turns.inside).click();
    await page.getByText(recording.turns.mirrored).waitFor();
    for (let i = 0; i < 3; i++)
      await page.getByRole('button', { name: recording.turns.right }).click();
    await press(page, '1-04');
    await page.getByText(words.said(words.place('1-04'), words.step.placed)).waitFor();
    await button(page, words.takeBack).click();
    await tab(page, recording.tab.walk);
    await button(page, recording.walk.done(words.step.snug)).click();
    await button(page, recording.walk.done(words.step.snug)).click();
    await page.getByText(recording.walk.none(words.course(1), words.step.snug)).waitFor();
    await tab(page, recording.tab.note);
    await page.getByLabel(recording.forms.field.person, { exact: true }).fill('Bo');
    await button(page, recording.forms.note).click();
    await button(page, recording.forms.goes('Bo')).waitFor();
    await button(page, recording.forms.of.condition).click();
    await page.getByLabel(recording.forms.field.tag).fill('018');
    await button(page, recording.forms.note).click();
    await tab(page, recording.tab.day);
    await page.getByText(recording.day.stillHere(['Bo'])).waitFor();
    await tab(page, recording.tab.done);
    // The demo becomes a project of its own, and its record goes with it.
    await button(page, recording.back.take).click();
    await tab(page, recording.tab.done);
    await page.getByText(recording.back.none).waitFor();
    expect(Number(await done(page, 'placed'))).toBeGreaterThanOrEqual(3);
    expect(faults).toEqual([]);
  });
});

describe('somebody who has never seen it', () => {
  it('is led to the field of the name, sees which way round a panel goes, and notes with a photo', async () => {
    const { page, faults } = await open({ sheet: 'record', screen: 'phone' });
    await page.locator('.plan text').getByText('1-01', { exact: true }).first().waitFor();
    await press(page, '1-01');
    await page.getByRole('status').getByText(words.nameFirst).waitFor();
    await button(page, words.toName).click();
    await page.keyboard.type('Ada');
    expect(await page.getByLabel(words.name).inputValue()).toBe('Ada');
    expect(await page.getByText(words.nameFirst).count()).toBe(0);
    await press(page, '1-01');
    await page.getByText(words.wayIn).click();
    await page.getByRole('img', { name: placesWords.details.joint('1-01') }).waitFor();
    await tab(page, recording.tab.note);
    expect(await page.getByLabel(recording.forms.field.person, { exact: true }).inputValue()).toBe(
      'Ada',
    );
    await button(page, recording.forms.of.note).click();
    const tick = await page.getByRole('checkbox', { name: /^about / }).boundingBox();
    expect(tick?.width).toBeLessThan(30);
    const picture = await page.screenshot();
    const photo = { name: 'dent.png', mimeType: 'image/png', buffer: picture };
    await page.locator('.photo-add input').setInputFiles(photo);
    await page.getByText(/^Photo .* goes with the note/).waitFor();
    expect(faults).toEqual([]);
  });
});

describe('the page of a day', () => {
  it('is printed of the day that is chosen, in place of the sheet', async () => {
    const { page, faults } = await open({ sheet: 'record' });
    const log = new RecordLog();
    const at = Date.UTC(2026, 5, 12, 9);
    const what = { kind: 'panel placed', place: '1-01', tag: null, turn: null } as const;
    log.add(log.write(what, { writer: 'abcdefgh', by: 'Bo', at }));
    const chooser = page.waitForEvent('filechooser');
    await button(page, words.fromFile).click();
    const buffer = Buffer.from(writeRecordFile(log.entries()));
    await (await chooser).setFiles({ name: 'a.jsonl', mimeType: 'application/jsonl', buffer });
    await page.getByText(words.brought(1)).waitFor();
    await tab(page, recording.tab.day);
    await page.getByRole('combobox', { name: recording.day.which }).selectOption('2026-06-12');
    // A browser whose printing comes after `print` has come back.
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await button(page, recording.day.print).click();
    const printed = page.locator('.printed-record');
    expect(await printed.textContent()).toContain(recording.day.heading('2026-06-12'));
    await page.evaluate(() => dispatchEvent(new Event('afterprint')));
    await printed.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });
});

describe('what was ticked on paper', () => {
  it('is noted line by line, off sheets of this plan alone', async () => {
    const { page, faults } = await open({ sheet: 'record' });
    await page.getByLabel(words.name).fill('Ada');
    await tab(page, recording.tab.paper);
    await page.evaluate(() => {
      window.print = () => undefined;
    });
    await button(page, twin.print).click();
    const head = await page.locator('.printed-twin .twin-head strong').textContent();
    const check = (head ?? '').slice(-4);
    await page.getByLabel(twin.typed).fill('1-3a 4a=0143 999a');
    await page.getByText(twin.found(4, 0)).waitFor();
    await page.getByText(/^999a: expected lines from 1 to/).waitFor();
    await page.getByLabel(twin.check).fill(check === '0000' ? '1111' : '0000');
    await page.getByText(twin.otherPlan(check)).waitFor();
    expect(await button(page, twin.note(4)).isDisabled()).toBe(true);
    await page.getByLabel(twin.check).fill(check.toLowerCase());
    await button(page, twin.note(4)).click();
    await page.getByText(twin.noted(4)).waitFor();
    await saved(page, 4);
    await page.getByLabel(twin.typed).fill('1-4a');
    await page.getByText(twin.found(0, 4)).waitFor();
    expect(faults).toEqual([]);
  });
});
