import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { frameWords } from '../../src/words/frame.ts';
import { groundWords as words } from '../../src/words/ground.ts';
import { groundFormWords as forms } from '../../src/words/ground-forms.ts';
import { groundStabilityWords as stability } from '../../src/words/ground-stability.ts';
import { accessFaults } from './access.ts';
import { tooSmall, tooWide } from './sizes.ts';
import { inBrowser } from './support.ts';

const { open } = inBrowser();
const PATIENCE = { timeout: 60_000 };

const tabs = { ...words.tab, ...forms.tab };
const openTab = (page: Page, tab: keyof typeof tabs) =>
  page.getByRole('tab', { name: tabs[tab], exact: true }).click();
const undo = (page: Page) =>
  page.getByRole('button', { name: frameWords.undo, exact: true }).click();
const ready = (page: Page) => page.locator('.wind-rose').waitFor(PATIENCE);

/** Types into a field and leaves it. */
async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
}

describe.each(['laptop', 'phone'] as const)('the ground on a %s', (screen) => {
  it('is anchored for the wind that is entered, and says what is missing', async () => {
    const { page, faults } = await open({ sheet: 'ground', screen });
    await ready(page);
    await openTab(page, 'anchors');
    const missing = page.locator('.ground-faults li');
    const rows = page.locator('.ground-table tbody tr');
    await expect.poll(() => rows.count(), PATIENCE).toBe(20);
    await page.getByLabel(words.anchors.soil, { exact: true }).selectOption('none');
    await page.getByLabel(words.anchors.sort, { exact: true }).selectOption('ballast');
    await expect.poll(() => missing.count(), PATIENCE).toBeGreaterThan(0);
    await page.getByLabel(words.anchors.soil, { exact: true }).selectOption('loam');
    await expect.poll(() => missing.count(), PATIENCE).toBe(0);
    await page.getByText(/^\d+ anchors: ballast, 500 kg a piece on wood/).waitFor();
    await page.getByText(/^Each piece weighs 4\.90 kN/).waitFor();
    await openTab(page, 'site');
    // What can't be a wind is refused and changes nothing.
    await type(page, words.site.wind, 'a breeze');
    await page.getByText(/^Expected a wind of 0\.5 m\/s to 115\.0 m\/s/).waitFor();
    await type(page, words.site.wind, '28');
    await page.getByText(/^Velocity pressure \d+ Pa by/).waitFor();
    await page
      .getByText(/\d+ values from memory or common practice/)
      .first()
      .waitFor();
    await page.getByText(words.caution).first().waitFor();
    await undo(page);
    await expect
      .poll(() => page.getByLabel(words.site.wind, { exact: true }).inputValue())
      .toMatch(/^24/);
    expect(await tooWide(page)).toEqual([]);
    if (screen === 'phone') expect(await tooSmall(page)).toEqual([]);
    expect(faults).toEqual([]);
  });
});

describe('what the lead knows', () => {
  it('of snow and doors counts at once, and what can’t be is refused', async () => {
    const { page, faults } = await open({ sheet: 'ground' });
    await ready(page);
    await page.getByText(forms.snow.none).waitFor();
    await type(page, forms.snow.ground('kN/m²'), '300');
    await page.getByText(forms.rangeOrNone('0', '20')).waitFor();
    await type(page, forms.snow.ground('kN/m²'), '0.8');
    await page.getByText(forms.snow.alone).waitFor();
    expect(await page.locator('.ground-facts dd').count()).toBeGreaterThan(3);
    await page.getByText(forms.use.enclosure.closed).waitFor();
    await page.getByLabel(forms.use.door, { exact: true }).check();
    await page.getByText(forms.use.enclosure['open door']).waitFor();
    await undo(page);
    await page.getByText(forms.use.enclosure.closed).waitFor();
    await page.getByLabel(forms.use.person, { exact: true }).check();
    await page.getByText(/^One person with tools: 1\.33 kN/).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    expect(faults).toEqual([]);
  });

  it('of the parts is reckoned with, and what nobody said is named', async () => {
    const { page } = await open({ sheet: 'ground', screen: 'phone' });
    await ready(page);
    await openTab(page, 'parts');
    await page.getByText(forms.parts.nothingSupposed).waitFor();
    await page.getByText(/^5\/16-18 UNC SAE J429 Gr 5\. Proof load of one: 19\.8/).waitFor();
    await page.getByLabel(forms.parts.material, { exact: true }).selectOption('unknown');
    await page.getByText(/^Supposed, for nobody said: material of the panels\./).waitFor();
    await type(page, forms.parts.thread, 'thick');
    await page.getByText(forms.parts.threadFault).waitFor();
    await type(page, forms.parts.thread, 'M8');
    await page.getByText(/^M8/).first().waitFor();
    expect(await tooWide(page)).toEqual([]);
    expect(await tooSmall(page)).toEqual([]);
    expect(await accessFaults(page)).toEqual([]);
  });

  it('better than a code takes its place with a reason, and goes again', async () => {
    const { page, faults } = await open({ sheet: 'ground' });
    await ready(page);
    const pressure = page.getByText(/^Velocity pressure \d+ Pa/);
    const before = await pressure.textContent();
    await openTab(page, 'assumed');
    const add = page.getByRole('button', { name: forms.own.add, exact: true });
    await page.getByLabel(forms.own.number, { exact: true }).selectOption('topography');
    await page.getByLabel(forms.own.value(''), { exact: true }).fill('9');
    await add.click();
    await page.getByText(forms.range('0.5', '4')).waitFor();
    await page.getByText(forms.own.reasonFault).waitFor();
    await page.getByLabel(forms.own.value(''), { exact: true }).fill('1.5');
    await page.getByLabel(forms.own.reason, { exact: true }).fill('stands on a crest');
    await add.click();
    await page.locator('.own-numbers').getByText('stands on a crest').waitFor();
    await page
      .locator('.sources')
      .getByText(/stands on a crest/)
      .first()
      .waitFor();
    await openTab(page, 'site');
    await expect.poll(() => pressure.textContent()).not.toBe(before);
    await openTab(page, 'assumed');
    await page.locator('.own-numbers button').click();
    await openTab(page, 'site');
    await expect.poll(() => pressure.textContent()).toBe(before);
    expect(faults).toEqual([]);
  });

  it('of a beam gives its pieces, and a sheet', async () => {
    const { page } = await open({ sheet: 'ground' });
    await ready(page);
    await openTab(page, 'beam');
    await page.getByText(forms.beam.none).waitFor();
    await page.getByLabel(forms.beam.has, { exact: true }).check();
    await type(page, forms.beam.stock, '4.8 m');
    await page.getByText(forms.beam.order(5, '4.800 m')).waitFor();
    expect(await page.locator('.ground-table tbody tr').count()).toBe(1);
    await page.getByRole('button', { name: words.sheet.whole, exact: true }).click();
    await page.locator('.ground-paper svg').getByText('Ring beam').first().waitFor();
    await type(page, forms.beam.stock, '1 m');
    await page.getByText(forms.beam.tooLong(20)).waitFor();
  });
});

describe('levels and survey', () => {
  it('give shims when every hub is read, and refuse what no length is', async () => {
    const { page } = await open({ sheet: 'ground' });
    await ready(page);
    await openTab(page, 'levels');
    const cells = page.locator('.reading-cell');
    const count = await cells.count();
    await cells.first().fill('up there');
    await cells.first().press('Enter');
    await page.getByText(words.levels.fault).waitFor();
    for (let i = 0; i < count; i++) {
      await cells.nth(i).fill(i === 3 ? '1412' : '1400');
      await cells.nth(i).press('Enter');
    }
    await page.getByText(/^Shims: 0\.\d+ m in all, the highest 1\d\.\d mm/).waitFor();
    await undo(page);
    await page.getByText(words.levels.left(1)).waitFor();
  });

  it('say no go where a hub stands far out, and which one to move', async () => {
    const { page } = await open({ sheet: 'ground' });
    await ready(page);
    await openTab(page, 'survey');
    const count = await page.locator('.readings tbody tr').count();
    for (let hub = 1; hub <= count; hub++) {
      await type(page, words.survey.of(words.survey.radius, hub), hub === 4 ? '3.69 m' : '3.65 m');
      await type(page, words.survey.of(words.survey.level, hub), '0');
    }
    await page.getByText(words.survey.verdicts['no go'], { exact: true }).waitFor();
    await page.getByText(/^Hub 4: \d\d\.\d mm inwards/).waitFor();
    await type(page, words.survey.of(words.survey.radius, 4), '3.65 m');
    await page
      .getByText(words.survey.verdicts['no go'], { exact: true })
      .waitFor({ state: 'hidden' });
    // A chord longer than the base is no reading.
    await type(page, words.survey.of(words.survey.chord, 1), '40 m');
    await page.locator('.ground-faults li').first().waitFor();
  });
});

describe('the stages', () => {
  it('come while they are reckoned, can be stopped, and tell of each whether it stands', async () => {
    const { page, faults } = await open({ sheet: 'ground', fresh: true });
    await ready(page);
    await openTab(page, 'stages');
    await page.locator('.chart-stop[d^=M]').first().waitFor(PATIENCE);
    await page.getByRole('button', { name: frameWords.cancel, exact: true }).click(PATIENCE);
    await page.getByText(/^Stopped after \d+ of 160 stages/).waitFor();
    const slider = page.getByRole('slider', { name: words.stages.slider });
    await slider.fill('1');
    await page
      .getByText(words.stages.status['needs props'], { exact: true })
      .or(page.getByText(words.stages.status.stands, { exact: true }))
      .waitFor(PATIENCE);
    await slider.focus();
    await page.keyboard.press('End');
    await page
      .getByText(words.stages.stage(160, 160, ''), { exact: false })
      .or(page.getByText(/^Stage 160 of 160/))
      .first()
      .waitFor(PATIENCE);
    await page.getByText(words.stages.status.stands, { exact: true }).waitFor(PATIENCE);
    expect(await accessFaults(page)).toEqual([]);
    expect(faults).toEqual([]);
  });

  it('are drawn bent by the wind where they stand, and by choice where they move freely', async () => {
    const { page, faults } = await open({ sheet: 'ground' });
    await ready(page);
    await openTab(page, 'stages');
    const slider = page.getByRole('slider', { name: words.stages.slider });
    await slider.fill('160');
    const note = page.locator('.ground-note');
    await note.getByText(/^By its weight and a gust of \d+\.\d m\/s from \d+°/).waitFor(PATIENCE);
    await slider.fill('30');
    await note.getByText(words.stages.moves).waitFor(PATIENCE);
    await page
      .getByRole('button', { name: words.stages.movementShown.wind, exact: true })
      .click(PATIENCE);
    await note.getByText(/^By its weight and a gust of 11\.6 m\/s/).waitFor();
    // Buckling is reckoned where somebody asks, drawn as the rest is, and not shown beside another stage.
    const ask = page.getByRole('button', { name: stability.ask, exact: true });
    await ask.click();
    await note.getByText(stability.note.buckling).waitFor(PATIENCE);
    await page
      .locator('.stability')
      .getByText(/× the load.*a perfect one at/)
      .waitFor();
    await page.locator('.stability').getByText(words.caution).waitFor();
    await page.getByRole('button', { name: stability.shown.swing, exact: true }).click();
    await note.getByText(stability.note.swing).waitFor();
    expect(await accessFaults(page)).toEqual([]);
    await slider.fill('31');
    await ask.waitFor(PATIENCE);
    await note.getByText(stability.note.swing).waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });

  it('draw the movement as arrows for who wants no motion', async () => {
    const { page } = await open({ sheet: 'ground' });
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await ready(page);
    await openTab(page, 'stages');
    await page.getByRole('slider', { name: words.stages.slider }).fill('30');
    await page.locator('.ground-still').waitFor(PATIENCE);
    expect(await page.getByRole('button', { name: words.stages.still }).count()).toBe(0);
    expect(
      await page.locator('.ground-still path[stroke="var(--accent)"]').count(),
    ).toBeGreaterThan(1);
  });
});
