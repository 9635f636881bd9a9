import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { frameWords } from '../../src/words/frame.ts';
import { shapeWords } from '../../src/words/shape.ts';
import { dropFile, inBrowser } from './support.ts';

const { open } = inBrowser();
const sheetsOf = ['pile', 'shape', 'places'] as const;

const faultOf = (page: Page) => page.getByRole('alert').last();
const titleOf = (page: Page) => page.locator('.project-name').textContent();

const pile = (title: string, more: object = {}) =>
  JSON.stringify({ shellraise: 1, title, pile: {}, ...more });

describe('a file that is none of ours', () => {
  it('is named, and nothing is changed, whichever sheet it is dropped on', async () => {
    for (const sheet of sheetsOf) {
      const { page } = await open({ sheet });
      const before = await titleOf(page);
      await dropFile(page, 'holiday.jpg', 'JFIF\0\0picture');
      await faultOf(page).getByText(frameWords.notText('holiday.jpg')).waitFor();
      expect(await titleOf(page)).toBe(before);
    }
  });

  it('is told with every fault where it is nearly one of ours', async () => {
    const { page } = await open();
    const before = await titleOf(page);
    const pileOf = { readingSd: -1, kinds: [{ id: '', sides: [1, 2] }], readings: 'many' };
    await dropFile(
      page,
      'nearly.json',
      JSON.stringify({ shellraise: 1, title: 'x', pile: pileOf }),
    );
    const told = faultOf(page);
    await told.getByText(/^nearly\.json was not opened: it has \d+ faults/).waitFor();
    const lines = await told.getByRole('listitem').allTextContents();
    for (const path of ['readingSd', 'kinds', 'readings'])
      expect(
        lines.some((line) => line.includes(path)),
        path,
      ).toBe(true);
    expect(await titleOf(page)).toBe(before);
  });

  it('is told where it breaks off in the middle', async () => {
    const { page } = await open();
    await dropFile(page, 'half.json', pile('whole').slice(0, 30));
    await faultOf(page)
      .getByText(/^half\.json was not opened/)
      .waitFor();
  });

  it('is left to the newer version that it comes from', async () => {
    const { page } = await open();
    const before = await titleOf(page);
    await dropFile(page, 'later.json', pile('later', { shellraise: 2 }));
    await faultOf(page).getByText(frameWords.newerFile('later.json')).waitFor();
    expect(await titleOf(page)).toBe(before);
  });

  it('asks for the unit where a spreadsheet has none, and opens with the answer', async () => {
    const { page } = await open();
    await dropFile(page, 'bare.csv', 'tag,side1,side2,side3\n1,928,929,1082\n');
    const told = faultOf(page);
    await told.getByText(frameWords.whichUnit).waitFor();
    await told.getByRole('button', { name: 'mm', exact: true }).click();
    await page.getByText(frameWords.opened('bare.csv')).waitFor();
    expect(await titleOf(page)).toContain('bare');
  });

  it('is told where it is too large to be a project', async () => {
    const { page } = await open();
    await page.evaluate(() => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(21 * 1024 * 1024)], 'video.json'));
      document.body.dispatchEvent(
        new DragEvent('drop', { bubbles: true, cancelable: true, dataTransfer: transfer }),
      );
    });
    await faultOf(page).getByText(frameWords.tooLarge('video.json')).waitFor();
  });
});

describe('a browser that keeps nothing', () => {
  it('is told of with the first change, with the way to save a file', async () => {
    const { page } = await open({
      before: () => {
        Object.defineProperty(IDBFactory.prototype, 'open', {
          value: () => {
            throw new DOMException('not in a private window', 'SecurityError');
          },
        });
      },
    });
    await dropFile(page, 'own.json', pile('My own pile'));
    const told = faultOf(page);
    await told.getByText(frameWords.savingRefused.unavailable).waitFor();
    await page.locator('.title-block').getByText(frameWords.saving.refused).waitFor();
    const download = page.waitForEvent('download');
    await told.getByRole('button', { name: frameWords.menuItems.save }).click();
    expect((await download).suggestedFilename()).toBe('my-own-pile.json');
  });

  it('is told of where its room is full', async () => {
    const { page } = await open({
      before: () => {
        IDBObjectStore.prototype.put = () => {
          throw new DOMException('no room', 'QuotaExceededError');
        };
      },
    });
    await dropFile(page, 'own.json', pile('My own pile'));
    await faultOf(page).getByText(frameWords.savingRefused.full).waitFor();
    await page.locator('.title-block').getByText(frameWords.saving.refused).waitFor();
  });

  it('opens the demo all the same where it keeps no settings either', async () => {
    const { page, faults } = await open({
      before: () => {
        Object.defineProperty(window, 'localStorage', {
          get: () => {
            throw new DOMException('denied', 'SecurityError');
          },
        });
      },
    });
    await page.locator('main .title-block').waitFor();
    expect(faults).toEqual([]);
  });
});

describe('an engine that dies', () => {
  it('is told of, with nothing lost, and is started again with the next question', async () => {
    const { page } = await open({
      before: () => {
        // Threads end at once, as their script is not there, until it is back.
        const Own = Worker;
        window.Worker = class extends Own {
          constructor(url: string | URL, options?: WorkerOptions) {
            super(('back' in window ? url : '/gone.js') as string, options);
          }
        };
      },
    });
    const before = await titleOf(page);
    await dropFile(page, 'own.json', pile('My own pile'));
    await page.locator('.notices').getByText(frameWords.engineDied).waitFor();
    expect(await titleOf(page)).toBe(before);
    await page.evaluate(() => Object.assign(window, { back: true }));
    await dropFile(page, 'own.json', pile('My own pile'));
    await page.getByText(frameWords.opened('own.json')).waitFor();
  });

  it('is told of where it was closing the shell, and closes it when asked again', async () => {
    const { page } = await open({
      sheet: 'shape',
      fresh: true,
      before: () => {
        // The second thread, which is for what takes long, ends at once.
        const Own = Worker;
        let started = 0;
        window.Worker = class extends Own {
          constructor(url: string | URL, options?: WorkerOptions) {
            super((++started === 2 ? '/gone.js' : url) as string, options);
          }
        };
      },
    });
    await page.getByRole('button', { name: shapeWords.close, exact: true }).click();
    await page.getByText(shapeWords.failed.died).waitFor();
    await page.getByRole('button', { name: shapeWords.failed.again }).click();
    await page.locator('[data-stage=found]').waitFor();
  });
});
