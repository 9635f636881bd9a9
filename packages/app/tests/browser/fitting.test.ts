import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fittingWords as words } from '../../src/words/fitting.ts';
import { frameWords } from '../../src/words/frame.ts';
import { placesWords } from '../../src/words/places.ts';
import { accessFaults } from './access.ts';
import { inBrowser } from './support.ts';

const { open } = inBrowser();
const PATIENCE = { timeout: 60_000 };

async function openTab(page: Page, name: string): Promise<void> {
  await page.locator('[data-place]').first().waitFor(PATIENCE);
  await page.getByRole('tab', { name, exact: true }).click();
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();
/** Waits until the best is proved. */
const proved = (page: Page) => page.getByText(words.badgeProved, { exact: true }).waitFor(PATIENCE);
const proof = (page: Page) => page.locator('.fit-proof');
const undo = (page: Page) => press(page, frameWords.undo);

/** Types into a field and leaves it. */
async function type(page: Page, label: string, text: string): Promise<void> {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
}

describe.each(['laptop', 'phone'] as const)('the fits on a %s', (screen) => {
  it('are found for the wishes that nobody changed, the best with its proof, and one stands at a press', async () => {
    const { page, faults } = await open({ sheet: 'places', screen });
    const wasm: string[] = [];
    page.on('request', (request) => {
      if (request.url().endsWith('.wasm')) wasm.push(request.url());
    });
    await openTab(page, words.tab);
    expect(wasm).toEqual([]);
    await press(page, words.find);
    await proved(page);
    expect(await proof(page).textContent()).toMatch(/^Proved best: none of the \d+ ways up/);
    const rows = page.locator('.fits > li');
    expect(await rows.count()).toBeGreaterThan(3);
    expect(await rows.first().textContent()).toContain('3.650 m');
    expect(await rows.first().textContent()).toContain(words.nothingToGet);

    // The second is taller and wants a panel: which, and for which place, stands below it.
    const second = rows.nth(1);
    await second.getByText(words.why).click();
    expect(await second.textContent()).toMatch(/Bought or made panel for \d+-\d+/);
    const height = await second.locator('.candidate-height').textContent();
    await second.getByRole('button').click();
    await page.getByText(`${height} tall`).first().waitFor();
    await second.getByText(words.stands).waitFor();
    await undo(page);
    await page.getByText('3.650 m tall').first().waitFor();
    expect(faults).toEqual([]);
  });
});

describe('the wishes', () => {
  it('are kept with undo, and the fits say when they are for others', async () => {
    const { page } = await open({ sheet: 'places' });
    await openTab(page, words.tab);
    await press(page, words.find);
    await proved(page);
    await page.getByText(words.wishes.change).click();
    await press(page, words.wishes.up(words.counts('tallest')));
    await page.getByText(words.stale).waitFor();
    await press(page, words.findAgain);
    await proved(page);
    // The tallest of all is far taller than what the stock alone can stand.
    const height = await page.locator('.fits .candidate-height').first().textContent();
    expect(Number.parseFloat(height ?? '')).toBeGreaterThan(5);
    await undo(page);
    await page.getByText(words.stale).waitFor();
    expect(await page.locator('.wish-order li').first().textContent()).toContain(
      words.counts('fewest bought'),
    );
  });

  it('that cannot be read change nothing and say what was expected', async () => {
    const { page } = await open({ sheet: 'places' });
    await openTab(page, words.tab);
    await page.getByText(words.wishes.change).click();
    await type(page, words.wishes.spares, 'many');
    await page.getByText(words.wishes.wholeFault(100)).waitFor();
    expect(await page.getByRole('button', { name: frameWords.undo }).isDisabled()).toBe(true);
  });

  it('that stand against each other are named, the fewest of them, and one is given up at a press', async () => {
    const { page, faults } = await open({ sheet: 'places' });
    await openTab(page, words.tab);
    await page.getByText(words.wishes.change).click();
    await type(page, words.wishes.mostBought, '0');
    await type(page, words.wishes.leastHeight, '5 m');
    await type(page, words.wishes.mostFloor, '9 m');
    await press(page, words.find);
    const conflict = page.getByRole('region', { name: words.conflict });
    await conflict.waitFor(PATIENCE);
    const said = await conflict.textContent();
    expect(said).toContain(words.demand('leastHeight').slice(1));
    expect(said).toContain(words.demand('mostBought').slice(1));
    expect(said).not.toContain(words.demand('mostFloor').slice(1));
    await press(page, words.ease(words.demand('leastHeight')));
    await press(page, words.findAgain);
    await proved(page);
    expect(faults).toEqual([]);
  });
});

describe('a search that is stopped', () => {
  it('ends at once, keeps what was found, and can be started again', async () => {
    const { page } = await open({ sheet: 'places' });
    // What proves the best comes late, so that the search does not end before the press.
    let late = 8000;
    await page.route('**/*.wasm', async (route) => {
      await new Promise((done) => setTimeout(done, late));
      await route.continue();
    });
    await openTab(page, words.tab);
    await press(page, words.find);
    const stop = page.locator('.fit-panel').getByRole('button', { name: frameWords.cancel });
    await stop.click();
    late = 0;
    await page.getByText(words.stopped).waitFor({ timeout: 1000 });
    await press(page, words.findAgain);
    await proved(page);
  });
});

const placesPage = async (screen: 'laptop' | 'phone' = 'laptop') => {
  const { page, faults } = await open({ sheet: 'places', screen });
  await page.locator('[data-place]').first().waitFor(PATIENCE);
  return { page, faults };
};

async function pick(page: Page, number: string): Promise<void> {
  await page.getByRole('combobox', { name: placesWords.search.label }).fill(number);
  await page.keyboard.press('Enter');
}

describe('a panel that breaks in mid-build', () => {
  const { broken } = words;
  const heading = (page: Page, number: string, kind: string) =>
    page.getByText(broken.heading(number, kind)).waitFor(PATIENCE);
  const first = (page: Page) => page.locator('.ways-out > li').first();

  it('has its spare first, then the panel of a place not built, then one to make, and all can be undone', async () => {
    const { page, faults } = await placesPage();
    await pick(page, '1-05');
    await openTab(page, broken.tab);
    await page.getByLabel(broken.upTo).selectOption('3');
    await heading(page, '1-05', '5');
    await first(page)
      .getByText(broken.step('5', null, '1-05'))
      .waitFor(PATIENCE);
    expect(await first(page).textContent()).toContain(broken.nothingUndone);
    await first(page).getByRole('button', { name: broken.decide }).click();
    const soFar = page.getByRole('region', { name: broken.soFar });
    await soFar.getByText('1-05').first().waitFor();

    // There was one spare: the next comes from a place above what is up, and nothing is undone.
    await pick(page, '1-13');
    await heading(page, '1-13', '5');
    await first(page)
      .getByText(/^The 5 of 4-\d+ into 1-13/)
      .waitFor(PATIENCE);
    expect(await first(page).textContent()).toContain(broken.nothingUndone);
    expect(await first(page).textContent()).toMatch(
      /Then 4-\d+ lacks its panel: get one of kind 5/,
    );

    // With all of it up no panel is free: one is to be made, by the card below.
    await page.getByLabel(broken.upTo).selectOption({ label: broken.courses(6, 6) });
    await first(page).getByText(broken.make('5')).waitFor(PATIENCE);
    await page.getByText(broken.card('5')).waitFor();

    await press(page, frameWords.undo);
    await soFar.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });
});

describe('what is left over', () => {
  const { leftOver } = words;

  it('becomes a second structure with a name, which keeps its panels, until it is undone', async () => {
    const { page, faults } = await placesPage();
    await openTab(page, leftOver.tab);
    const rows = page.locator('.fits > li');
    await rows.first().waitFor(PATIENCE);
    const before = await page.getByText(/good panels left over/).textContent();
    expect(before).toMatch(/^38 good panels/);
    expect(await rows.first().locator('svg path').count()).toBeGreaterThan(2);
    const panels = Number(/(\d+) panels/.exec((await rows.first().textContent()) ?? '')?.[1]);
    await rows.first().getByRole('button', { name: leftOver.name }).click();
    await page.keyboard.type('Tool tent');
    await page.keyboard.press('Enter');
    const named = page.getByRole('region', { name: leftOver.named });
    await named.getByText('Tool tent').waitFor(PATIENCE);
    await page.getByText(new RegExp(`^${38 - panels} good panels left over`)).waitFor(PATIENCE);
    await press(page, frameWords.undo);
    await named.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });
});

describe('a door', () => {
  const { door } = words;

  it('is chosen from ranked candidates, leaves its panels out of plan and stock, and is closed again', async () => {
    const { page, faults } = await placesPage();
    await openTab(page, door.tab);
    const rows = page.locator('.ways-out > li');
    await rows.first().waitFor(PATIENCE);
    const out = Number.parseInt((await rows.first().textContent()) ?? '', 10);
    expect(out).toBeGreaterThan(3);
    await rows
      .first()
      .getByText(/About \d+ % of the stiffness is left/)
      .waitFor(PATIENCE);
    await type(page, door.wind, '90');
    await rows
      .first()
      .getByText(/\d+° off where the wind comes from/)
      .waitFor(PATIENCE);
    await rows.first().getByText(door.reveal).click();
    expect(
      await rows
        .first()
        .getByText(/^at \d+-\d+: \d+/)
        .count(),
    ).toBeGreaterThan(4);
    await rows.first().getByRole('button', { name: door.adopt }).click();
    const now = page.getByRole('region', { name: door.now });
    await now.waitFor(PATIENCE);
    await openTab(page, leftOverTab);
    await page.getByText(new RegExp(`^${38 + out} good panels left over`)).waitFor(PATIENCE);
    await openTab(page, door.tab);
    await now.getByRole('button', { name: door.close }).click();
    await now.waitFor({ state: 'detached' });
    expect(faults).toEqual([]);
  });

  it('that is larger than the shell is refused with what may be had instead', async () => {
    const { page } = await placesPage();
    await openTab(page, door.tab);
    await type(page, door.height, '9 m');
    await page.getByText(door.nowhere.door(['0.900 m', '9.000 m'])).waitFor(PATIENCE);
  });
});

describe('a hatch, and the way of a thing', () => {
  const { door } = words;

  it('are looked for by their own sizes; one is left out as what it is', async () => {
    const { page, faults } = await placesPage();
    await openTab(page, door.tab);
    const rows = page.locator('.ways-out > li');
    await rows.first().waitFor(PATIENCE);
    await page.getByLabel(door.as, { exact: true }).selectOption('hatch');
    await type(page, door.diameter, '0.5 m');
    await expect
      .poll(async () => Number.parseInt((await rows.first().textContent()) ?? '', 10), PATIENCE)
      .toBeLessThan(3);
    await type(page, door.diameter, '15 m');
    await page.getByText(door.nowhere.hatch(['15.000 m', ''])).waitFor(PATIENCE);
    await page.getByLabel(door.as, { exact: true }).selectOption('thing');
    await rows.first().waitFor(PATIENCE);
    await type(page, door.section, '0, 0; 1, 1; 0, 1; 1, 0');
    await page.getByText(door.sectionFault).waitFor();
    await type(page, door.section, '0, 0; 0.8, 0; 0.4, 0.7');
    await page.getByText(door.sectionDrawn('0.800 m', '0.700 m')).first().waitFor();
    await rows.first().waitFor(PATIENCE);
    await rows.first().getByRole('button', { name: door.adopt }).click();
    await page.getByRole('region', { name: door.now }).waitFor(PATIENCE);
    expect(await accessFaults(page)).toEqual([]);
    expect(faults).toEqual([]);
  });
});

describe('the proof of count', () => {
  const { proof } = placesWords;

  it('stands below the take-off and is printed with the plans', async () => {
    const { page, faults } = await placesPage();
    await openTab(page, placesWords.takeOff.tab);
    await page.getByText(proof.heading, { exact: true }).click(PATIENCE);
    const table = page.locator('.count-proof');
    await table.getByText(/course by course = 160/).waitFor(PATIENCE);
    await table.getByText(proof.agrees).first().waitFor();
    expect(await table.getByText(proof.not).count()).toBe(0);
    // Printed: two plans, and the proof turned to lie on the same paper at its full size.
    await expect
      .poll(async () => {
        const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
        return [...pdf.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, ...size]) =>
          size.map((points) => Math.round((Number(points) / 72) * 25.4)),
        );
      }, PATIENCE)
      .toEqual([
        [297, 210],
        [297, 210],
        [297, 210],
      ]);
    const sheets = page.locator('.printed-sheet');
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    expect(await sheets.last().getAttribute('viewBox')).toBe('0 0 297 210');
    expect(await sheets.last().locator('g').first().getAttribute('transform')).toContain('rotate');
    expect(faults).toEqual([]);
  });
});

const leftOverTab = words.leftOver.tab;
