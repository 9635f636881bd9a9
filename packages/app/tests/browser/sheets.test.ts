import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Sheet } from '../../src/state/app-state.ts';
import { fitoutWords } from '../../src/words/fitout.ts';
import { fittingWords } from '../../src/words/fitting.ts';
import { frameWords } from '../../src/words/frame.ts';
import { pileWords } from '../../src/words/pile.ts';
import { placesWords } from '../../src/words/places.ts';
import { recordWords } from '../../src/words/record.ts';
import { shapeWords } from '../../src/words/shape.ts';
import { unreadable } from './readable.ts';
import { dropFile, inBrowser, putAway, type Screen, screens } from './support.ts';

const { open } = inBrowser();
const allScreens = Object.keys(screens) as Screen[];

/** Waits until nothing is computed any more and the messages are put away. */
async function settle(page: Page): Promise<void> {
  await page.locator('main#sheet > *').first().waitFor();
  await page.waitForTimeout(250);
  await page.waitForFunction(() => document.querySelector('progress') === null);
  await putAway(page);
}

/** What somebody does on a sheet, one step after the other; each is looked at. */
interface Walk {
  readonly sheet: Sheet;
  /** What of it, where not all is in one walk. */
  readonly of?: string;
  readonly steps: readonly (readonly [
    name: string,
    go: (page: Page) => Promise<unknown>,
    on?: Screen,
  ])[];
}

const press = (page: Page, name: string) =>
  page.getByRole('button', { name, exact: true }).first().click();
const measureAgain = (page: Page) =>
  page.getByRole('button', { name: pileWords.next.again }).first().click();
const tab = (page: Page, name: string) => page.getByRole('tab', { name, exact: true }).click();

async function close(page: Page, stage: 'found' | 'nothing'): Promise<void> {
  await press(page, shapeWords.close);
  await page.locator(`[data-stage=${stage}]`).waitFor();
  const skip = page.getByRole('button', { name: shapeWords.drawn.skip });
  if (await skip.isVisible()) await skip.click();
}

/** Two kinds that no ball can be made of. */
const noBall = 'mark,side1 mm,side2 mm,side3 mm,count\nA,900,1400,700,12\nB,1000,1210,1130,8\n';

const walks: readonly Walk[] = [
  {
    sheet: 'pile',
    steps: [
      ['the demo', async () => undefined],
      ['a reading under the tape', (page) => measureAgain(page)],
      ['the tally', (page) => press(page, pileWords.views.tally), 'phone'],
      ['the findings', (page) => press(page, pileWords.views.findings), 'phone'],
      ['an empty pile', (page) => press(page, frameWords.startOwn)],
    ],
  },
  {
    sheet: 'shape',
    steps: [
      ['before the press', async () => undefined],
      ['a ball', (page) => close(page, 'found')],
      [
        'no ball',
        async (page) => {
          await dropFile(page, 'none.csv', noBall);
          await page.getByText(frameWords.opened('none.csv')).waitFor();
          await settle(page);
          await close(page, 'nothing');
        },
      ],
    ],
  },
  {
    sheet: 'places',
    steps: [
      ['the shell', (page) => page.locator('[data-place]').first().waitFor()],
      ['in 3D', (page) => tab(page, placesWords.view.solid), 'phone'],
      ['the plan', (page) => tab(page, placesWords.view.plan), 'phone'],
      [
        'a place',
        async (page) => {
          await page.getByRole('combobox', { name: placesWords.search.label }).fill('2-03');
          await page.keyboard.press('Enter');
          await page.getByRole('img', { name: placesWords.details.joint('2-03') }).waitFor();
        },
      ],
      ['from the floor', (page) => press(page, placesWords.view.turnOver)],
      ['the take-off', (page) => tab(page, placesWords.takeOff.tab)],
      ['the numbers', (page) => tab(page, placesWords.numbers.tab)],
      ['the ways to stand', (page) => page.getByRole('button', { name: /^Ways to stand/ }).click()],
    ],
  },
  {
    sheet: 'places',
    of: ', fits and doors',
    steps: [
      [
        'the fits',
        async (page) => {
          await page.locator('[data-place]').first().waitFor();
          await tab(page, fittingWords.tab);
          await page.getByText(fittingWords.wishes.change).click();
          await press(page, fittingWords.find);
          await page.locator('.fit.first .accent', { hasText: fittingWords.badgeProved }).waitFor();
          await page.getByText(fittingWords.why).first().click();
        },
      ],
      [
        'doors, one of them left out',
        async (page) => {
          await tab(page, fittingWords.door.tab);
          await page.getByText(fittingWords.door.reveal).first().click();
          await page.getByRole('button', { name: fittingWords.door.adopt }).first().click();
          await page.getByRole('region', { name: fittingWords.door.now }).waitFor();
        },
      ],
    ],
  },
  {
    sheet: 'places',
    of: ', breaks, leftovers and tags',
    steps: [
      [
        'a panel that broke',
        async (page) => {
          await page.locator('[data-place]').first().waitFor();
          await tab(page, fittingWords.broken.tab);
          await page.getByRole('combobox', { name: placesWords.search.label }).fill('3-07');
          await page.keyboard.press('Enter');
          await page.getByText(fittingWords.broken.card('1')).click();
          await page.locator('.cut-down summary').click();
          await page.getByRole('button', { name: fittingWords.broken.decide }).first().click();
          await page.getByRole('region', { name: fittingWords.broken.soFar }).waitFor();
        },
      ],
      [
        'what is left over',
        async (page) => {
          await tab(page, fittingWords.leftOver.tab);
          await page.getByRole('button', { name: fittingWords.leftOver.name }).first().click();
          await page.keyboard.press('Enter');
          await page.getByRole('region', { name: fittingWords.leftOver.named }).waitFor();
        },
      ],
      [
        'the tags',
        async (page) => {
          await tab(page, fittingWords.tags.tab);
          await page.getByRole('button', { name: fittingWords.tags.csv }).waitFor();
        },
      ],
    ],
  },
  {
    sheet: 'fitout',
    steps: [
      ['the door', (page) => page.getByText(fitoutWords.door.stiffness).waitFor()],
      ['what must pass', (page) => tab(page, fitoutWords.tab.pass)],
      ['the swing', (page) => tab(page, fitoutWords.tab.swing)],
      ['the seal', (page) => tab(page, fitoutWords.tab.seal)],
      ['the upkeep', (page) => tab(page, fitoutWords.tab.upkeep)],
    ],
  },
  {
    sheet: 'record',
    steps: [
      ['nothing noted', (page) => page.locator('[data-place]').first().waitFor()],
      [
        'a panel noted',
        async (page) => {
          await page.getByLabel(recordWords.name).fill('Ada');
          await page.locator('.plan-window').focus();
          await page.keyboard.press('ArrowDown');
          await page.keyboard.press('Enter');
          await page.getByRole('button', { name: recordWords.takeBack }).waitFor();
        },
      ],
    ],
  },
];

describe.each(allScreens)('on a %s', (screen) => {
  it.each(walks.map((walk) => [`${walk.sheet}${walk.of ?? ''}`, walk] as const))(
    'the sheet %s can be read and reached in every scheme',
    async (_, { sheet, steps }) => {
      const { page, faults } = await open({ screen, sheet });
      await settle(page);
      const found: string[] = [];
      for (const [i, [name, go, on]] of steps.entries()) {
        if (on !== undefined && on !== screen) continue;
        await go(page);
        await settle(page);
        const roles = screen === 'laptop' || i === 0 || on === 'phone';
        found.push(...(await unreadable(page, name, screen, roles)));
      }
      expect(found).toEqual([]);
      expect(faults).toEqual([]);
    },
  );

  it('what lies over a sheet can be read and reached in every scheme', async () => {
    const { page, faults } = await open({ screen });
    await settle(page);
    const found: string[] = [];
    await page.getByRole('button', { name: frameWords.menu, exact: true }).click();
    await page.getByRole('menu').waitFor();
    found.push(...(await unreadable(page, 'the menu', screen)));
    await page.getByRole('menuitem', { name: frameWords.menuItems.projects }).click();
    await page.getByRole('dialog').waitFor();
    await page.waitForTimeout(200);
    found.push(...(await unreadable(page, 'the projects', screen)));
    for (const [keys, name] of [
      ['Control+/', 'the keys'],
      ['Alt+v', 'the view'],
    ] as const) {
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      await page.keyboard.press(keys);
      await page.getByRole('dialog').waitFor();
      await page.waitForTimeout(200);
      found.push(...(await unreadable(page, name, screen)));
    }
    expect(found).toEqual([]);
    expect(faults).toEqual([]);
  });
});

describe('the look', () => {
  it('is chosen in the view, at once, and kept', async () => {
    const papers = {
      outdoor: 'rgb(255, 255, 255)',
      dark: 'rgb(21, 23, 27)',
      light: 'rgb(253, 252, 249)',
    };
    const { page } = await open();
    await page.getByRole('button', { name: frameWords.view, exact: true }).click();
    const choose = (scheme: keyof typeof papers) =>
      page.getByRole('radio', { name: frameWords.schemes[scheme], exact: true }).check();
    for (const scheme of Object.keys(papers) as (keyof typeof papers)[]) {
      await choose(scheme);
      const paper = await page.evaluate(
        () => getComputedStyle(document.querySelector('.frame') as Element).backgroundColor,
      );
      expect(paper, scheme).toBe(papers[scheme]);
    }
    await choose('outdoor');
    await page.reload();
    await page.locator('[data-scheme=outdoor] main').waitFor();
  });
});
