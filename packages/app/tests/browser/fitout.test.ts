import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fitoutWords as words } from '../../src/words/fitout.ts';
import { groundFormWords } from '../../src/words/ground-forms.ts';
import { inBrowser, putAway } from './support.ts';

const { open } = inBrowser();

const tab = (page: Page, key: keyof typeof words.tab) =>
  page.getByRole('tab', { name: words.tab[key], exact: true }).click();
const field = (page: Page, name: string) => page.getByLabel(name, { exact: true });
const drawing = (page: Page, title: RegExp) => page.getByRole('region', { name: title }).waitFor();

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Enter');
}

/** A tetrahedron, or what is left of one, as an ASCII file. */
function stl(name: string, facets: number): string {
  const p = ['0 0 0', '400 0 0', '0 400 0', '0 0 400'];
  const turns = [
    [0, 2, 1],
    [0, 1, 3],
    [1, 2, 3],
    [2, 0, 3],
    [0, 2, 1],
  ];
  const rows = turns
    .slice(0, facets)
    .map(
      (turn) =>
        `facet normal 0 0 0\nouter loop\n${turn.map((i) => `vertex ${p[i]}`).join('\n')}\nendloop\nendfacet`,
    );
  const file = join(tmpdir(), `${name}-${process.pid}.stl`);
  writeFileSync(file, `solid x\n${rows.join('\n')}\nendsolid x\n`);
  return file;
}

describe('the Fit-out sheet', () => {
  it('passes the dish through the door, swings it, maps its sky, buys and times the seal', async () => {
    const { page, faults } = await open({ sheet: 'fitout' });
    await page.getByText(words.door.stiffness).waitFor({ timeout: 60_000 });
    await page.getByText(words.door.propsTold(5)).waitFor();
    // What the props push, and bars of our own under a stress that is told.
    await page.getByText(words.door.pushes('0.19 kN')).first().waitFor();
    await field(page, words.door.named).selectOption('own');
    await type(page, words.door.allowable, '5');
    await page.getByText(words.door.used, { exact: true }).waitFor({ timeout: 60_000 });
    await tab(page, 'pass');
    await page.getByRole('button', { name: words.pass.go('dish') }).click();
    await page.getByText(/^dish passes: a way was found/).waitFor({ timeout: 60_000 });
    await drawing(page, /dish passes/);
    await field(page, words.pass.through).selectOption('last');
    await page.getByRole('button', { name: words.pass.go('dish') }).click();
    await page.getByText(words.pass.latestOpen('dish')).waitFor({ timeout: 60_000 });
    await tab(page, 'swing');
    await page.getByText(/^It swings: nowhere nearer than 842/).waitFor();
    await drawing(page, /The dish swings/);
    await tab(page, 'signal');
    await drawing(page, /Loss over the sky, 1\.420 GHz/);
    await page.getByText(/^0\.61 dB at azimuth/).waitFor();
    await tab(page, 'seal');
    await page.getByRole('row', { name: /^tape 250 m 275 m 19$/ }).waitFor();
    await page.getByText(words.seal.hours('2026-05-04T06:00', [words.seal.hour(4, 9)])).waitFor();
    await drawing(page, /Seal plan/);
    await tab(page, 'air');
    await page.getByText(words.air.dripsTold(8, 8)).waitFor();
    await tab(page, 'upkeep');
    await page.getByText('2026-05-05', { exact: true }).waitFor();
    await tab(page, 'room');
    await page.getByText(/^potting bench: fits/).waitFor();
    expect(faults).toEqual([]);
  });

  it('keeps what is typed in the project, and says what cannot be', async () => {
    const { page, faults } = await open({ sheet: 'fitout' });
    await page.getByText(words.door.header, { exact: true }).waitFor({ timeout: 60_000 });
    // A dish larger than the shell.
    await tab(page, 'swing');
    await type(page, words.swing.diameter, '9 m');
    await page.getByText(/fitout\.dish\.diameter: .*9 m.*less than the shell/).waitFor();
    await page.getByRole('button', { name: /^Undo/ }).click();
    await type(page, words.swing.diameter, '3.6 m');
    await page.getByText(/^It does not swing/).waitFor();
    // A thickness out of range, a frequency out of range, a door that is none.
    await tab(page, 'signal');
    await type(page, words.signal.thickness, '3 m');
    await page.getByText(groundFormWords.range('0 mm', '1000 mm')).waitFor();
    // What can't be read stays with its layer when the one before it is taken out.
    const thickness = (layer: number) => field(page, words.signal.thickness).nth(layer - 1);
    const takeOut = (layer: number) =>
      page.getByRole('button', { name: words.remove(words.signal.layer(layer)), exact: true });
    await page.getByRole('button', { name: words.signal.add, exact: true }).click();
    await page.getByRole('button', { name: words.signal.add, exact: true }).click();
    await thickness(3).fill('much');
    await thickness(3).press('Enter');
    await takeOut(2).click();
    await takeOut(3).waitFor({ state: 'detached' });
    expect(await thickness(2).inputValue()).toBe('much');
    expect(await thickness(1).inputValue()).toBe('3 m');
    // Who takes rows out by keyboard goes on at the next.
    expect(await takeOut(2).evaluate((button) => button === document.activeElement)).toBe(true);
    await page.keyboard.press('Enter');
    await takeOut(2).waitFor({ state: 'detached' });
    expect(await takeOut(1).evaluate((button) => button === document.activeElement)).toBe(true);
    await type(page, words.signal.frequencies, '1 kHz');
    await page.getByText(words.signal.frequenciesFault).waitFor();
    // A measured loss beside the reckoned one; a skyline.
    const measured = words.signal.measuredOf('1420.40575 MHz');
    await type(page, measured, '50');
    await page.getByText(groundFormWords.rangeOrNone('0', '40')).waitFor();
    await type(page, measured, '0.3');
    await page.getByText(words.signal.usesMeasured).waitFor({ timeout: 60_000 });
    await page.getByText(/^0\.30 dB measured; \d\.\d\d dB reckoned$/).waitFor();
    await tab(page, 'swing');
    await type(page, words.swing.skyline, '0, 95');
    await page.getByText(words.swing.skylineFault).waitFor();
    await type(page, words.swing.skyline, '0, 4, 25, 3');
    await page.getByText(/by the skyline$/).waitFor();
    await tab(page, 'door');
    await type(page, words.door.panels, '9-99');
    await page.getByText(words.door.panelsFault).waitFor();
    // An STL file: unit not said, not closed, then read.
    await tab(page, 'pass');
    const give = async (file: string): Promise<void> => {
      const chooser = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: words.pass.file }).click();
      await (await chooser).setFiles(file);
    };
    await give(stl('bracket', 4));
    await page.getByText(/unit: found none, expected one of mm/).waitFor();
    await putAway(page);
    await field(page, words.pass.unit).selectOption('mm');
    await give(stl('open', 5));
    await page.getByText(/3 edges that are not shared/).waitFor();
    await putAway(page);
    await give(stl('bracket', 4));
    await page.getByText(words.pass.hull(4)).waitFor();
    // Kept: there after another sheet.
    await page.keyboard.press('Alt+4');
    await page.locator('.frame[data-sheet=ground]').waitFor();
    await page.keyboard.press('Alt+7');
    await tab(page, 'swing');
    expect(await field(page, words.swing.diameter).inputValue()).toBe('3.600 m');
    expect(faults).toEqual([]);
  });
});
