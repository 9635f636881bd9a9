// The built app in a real Chromium: one server and one browser for a test file, a fresh profile for
// every page. Sizes and schemes as people have them.

import { fileURLToPath } from 'node:url';
import { createServer } from '@shellraise/server';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach } from 'vitest';
import type { Scheme } from '../../src/state/settings.ts';
import { frameWords } from '../../src/words/frame.ts';

/** Screens: a laptop and a phone. */
export const screens = {
  laptop: { viewport: { width: 1440, height: 900 }, hasTouch: false, isMobile: false },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
} as const;

/** A screen. */
export type Screen = keyof typeof screens;

/** WebGL without a graphics card. */
const soft = ['--no-sandbox', '--enable-unsafe-swiftshader', '--use-angle=swiftshader'];

/** How a page is opened. */
export interface PageOptions {
  readonly screen?: Screen;
  readonly scheme?: Scheme;
  /** `pile`, `shape`, `places`. */
  readonly sheet?: string;
  /** Run in the page before anything of the app. */
  readonly before?: (() => void) | undefined;
  readonly context?: BrowserContext;
}

/** How a test file's browser is. */
export interface BrowserOptions {
  /** What Chromium is started with. */
  readonly args?: readonly string[];
  /** Keeps the app for use without a network: costs every new profile a third of its first page. */
  readonly offline?: boolean;
  /** Pages of one test after the other find what the engine answered in the last: its stages and
   * plans take longer than all that is looked at. All else is forgotten between them. */
  readonly keepsAnswers?: boolean;
}

/** A test file's browser. Tests are skipped, with the reason, where there is no Chromium. */
export function inBrowser({
  args = soft,
  offline = false,
  keepsAnswers = false,
}: BrowserOptions = {}) {
  let browser: Browser | null = null;
  let server: Awaited<ReturnType<typeof createServer>> | null = null;
  let address = '';
  const contexts: BrowserContext[] = [];
  const shared = new Map<Screen, BrowserContext>();

  beforeAll(async () => {
    const executablePath = process.env.SHELLRAISE_CHROMIUM || '/usr/bin/chromium';
    if (noBrowser) return;
    server = createServer({ root: fileURLToPath(new URL('../../dist', import.meta.url)) });
    await server.listen({ host: '127.0.0.1', port: 0 });
    const { port } = server.server.address() as { port: number };
    address = `http://localhost:${port}/`;
    browser = await chromium.launch({ executablePath, args: [...args] });
  });

  beforeEach((test) => {
    if (noBrowser) test.skip(noBrowser);
    return async () => {
      for (const context of contexts.splice(0)) await context.close();
      for (const context of shared.values()) for (const page of context.pages()) await page.close();
    };
  });

  afterAll(async () => {
    await browser?.close();
    await server?.close();
  });

  /** A profile of its own: storage, service worker, files. */
  async function profile(screen: Screen = 'laptop'): Promise<BrowserContext> {
    const context = await newContext(screen);
    contexts.push(context);
    return context;
  }

  function newContext(screen: Screen): Promise<BrowserContext> {
    if (!browser) throw new Error('there is no browser');
    return browser.newContext({
      ...screens[screen],
      acceptDownloads: true,
      serviceWorkers: offline ? 'allow' : 'block',
    });
  }

  /** The profile that keeps answers, unless a page of this test has it already. */
  async function keptProfile(screen: Screen): Promise<BrowserContext> {
    const context = shared.get(screen) ?? (await newContext(screen));
    shared.set(screen, context);
    return context.pages().length > 0 ? profile(screen) : context;
  }

  /** The app on a sheet. Errors of the page fail the test that looks at `faults`. */
  async function open(options: PageOptions = {}): Promise<{ page: Page; faults: string[] }> {
    const { screen = 'laptop' } = options;
    const own = options.context ?? (keepsAnswers ? null : await profile(screen));
    const context = own ?? (await keptProfile(screen));
    const page = await context.newPage();
    if (!own) await page.addInitScript(forgetProjects);
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    if (options.scheme) await page.addInitScript(setScheme, options.scheme);
    if (options.before) await page.addInitScript(options.before);
    await page.goto(`${address}#${options.sheet ?? 'pile'}`);
    await page.locator('main').waitFor();
    return { page, faults };
  }

  return { profile, open, address: () => address, server: () => server };
}

/** Why there is no browser; empty where there is one. */
const noBrowser = process.env.SHELLRAISE_NO_CHROMIUM ?? '';

/** Run in the page. Settings that are there already stay. */
function setScheme(scheme: string): void {
  const key = 'shellraise-settings';
  const kept = JSON.parse(localStorage.getItem(key) ?? '{}') as object;
  localStorage.setItem(key, JSON.stringify({ ...kept, scheme }));
}

/** Run in the page, before the app and once: as in a new profile, save for the engine's answers. */
function forgetProjects(): void {
  if (sessionStorage.getItem('forgotten')) return;
  localStorage.clear();
  for (const name of ['shellraise', 'shellraise-photos']) indexedDB.deleteDatabase(name);
  sessionStorage.setItem('forgotten', 'yes');
}

/** Drops a file with this text onto the page. */
export async function dropFile(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content as string], fileName as string));
      return transfer;
    },
    [name, text],
  );
  await page.dispatchEvent('body', 'drop', { dataTransfer: data });
}

/** Puts the messages away, as somebody does who has read them. */
export async function putAway(page: Page): Promise<void> {
  const close = page.locator('.notices').getByRole('button', { name: frameWords.close });
  while ((await close.count()) > 0) await close.first().click();
}

/** The middle of a place's number on the Record sheet's plan, once the drawing has come to rest. */
export async function spotOf(page: Page, number: string): Promise<{ x: number; y: number }> {
  const label = page.locator('.plan text').getByText(number, { exact: true }).first();
  const middle = async () => {
    await label.waitFor();
    const box = await label.boundingBox();
    return box && { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  let last = await middle();
  for (let look = 0; look < 50; look++) {
    await page.waitForTimeout(100);
    const now = await middle();
    if (now && last && Math.hypot(now.x - last.x, now.y - last.y) < 0.5) return now;
    last = now;
  }
  throw new Error(`the number ${number} never came to rest`);
}
