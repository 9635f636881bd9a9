import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createServer } from '@shellraise/server';
import type { Page } from 'playwright-core';
import { describe, expect, it, onTestFinished } from 'vitest';
import { sheets } from '../../src/state/app-state.ts';
import { emptyProject } from '../../src/state/empty-project.ts';
import { frameWords } from '../../src/words/frame.ts';
import { dropFile, inBrowser } from './support.ts';

const { open, profile } = inBrowser({ offline: true });
const ready = (page: Page) => page.getByText(frameWords.offlineReady);

describe('without a network', () => {
  it('opens every sheet, once it said that it is ready', async () => {
    const context = await profile();
    const { page, faults } = await open({ context });
    await ready(page).waitFor();
    await context.setOffline(true);
    await page.reload();
    for (const sheet of sheets) {
      await page.getByRole('link', { name: frameWords.sheets[sheet] }).click();
      await page.locator('main .title-block').waitFor();
    }
    // The engine too, in its own thread.
    await dropFile(page, 'dropped.json', JSON.stringify({ ...emptyProject('A'), shellraise: 1 }));
    await page.getByText(frameWords.opened('dropped.json')).waitFor();
    expect(faults).toEqual([]);
  });

  it('says that it is ready once for each device', async () => {
    const context = await profile('phone');
    const { page } = await open({ context });
    await ready(page).waitFor();
    await page.reload();
    await page.locator('main .title-block').waitFor();
    await page.evaluate(() => navigator.serviceWorker.ready);
    await page.waitForTimeout(300);
    expect(await ready(page).count()).toBe(0);
  });

  it('takes a newer version when every page of the old one was closed, and no sooner', async () => {
    const site = await ownSite();
    const context = await profile();
    const page = await context.newPage();
    await page.goto(site.address);
    await ready(page).waitFor();
    const [old] = await caches(page);
    site.renew();
    await page.reload();
    await page.getByText(frameWords.updateReady).waitFor();
    expect(await markOf(page)).toBe('old');
    await page.close();
    const next = await context.newPage();
    await expect
      .poll(async () => {
        await next.goto(site.address);
        return markOf(next);
      })
      .toBe('new');
    const kept = await caches(next);
    expect(kept).toHaveLength(1);
    expect(kept).not.toContain(old);
  });
});

const caches = (page: Page): Promise<string[]> => page.evaluate(() => window.caches.keys());

const markOf = (page: Page): Promise<string> =>
  page.evaluate(() => document.querySelector('meta[name=mark]')?.getAttribute('content') ?? 'old');

/** The built app served from a folder of its own, which a newer build can replace. */
async function ownSite() {
  const folder = mkdtempSync(join(tmpdir(), 'shellraise-site-'));
  cpSync(fileURLToPath(new URL('../../dist', import.meta.url)), folder, { recursive: true });
  const server = createServer({ root: folder });
  await server.listen({ host: '127.0.0.1', port: 0 });
  const { port } = server.server.address() as { port: number };
  onTestFinished(async () => {
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const edit = (name: string, change: (text: string) => string): void =>
    writeFileSync(join(folder, name), change(readFileSync(join(folder, name), 'utf8')));
  return {
    address: `http://localhost:${port}/`,
    renew: (): void => {
      edit('index.html', (text) =>
        text.replace('<head>', '<head><meta name="mark" content="new">'),
      );
      edit('sw.js', (text) => text.replace(/[0-9a-f]{12}(?=`)/, 'newer0000000'));
    },
  };
}
