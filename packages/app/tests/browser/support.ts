// The built app in a real Chromium: one server and one browser for all test files, every test in a
// profile that holds nothing but what the engine answered before: its stages and plans take longer
// than all that is looked at. Sizes and schemes as people have them.

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

/** What playwright switches off, and of the browser's own window the lists under its address line: a
 * thread of theirs starts with every page, though nobody sees them. The last such switch counts alone. */
const switchedOff = [
  'AvoidUnnecessaryBeforeUnloadCheckSync',
  'DestroyProfileOnBrowserClose',
  'HttpsUpgrades',
  'HttpsFirstBalancedModeAutoEnable',
  'LensOverlay',
  'MediaRouter',
  'PaintHolding',
  'ThirdPartyStoragePartitioning',
  'AvoidCorsURLLoaderRestartOnRedirect',
  'TcpPortRandomizationWin',
  'OptimizationHints',
  'NetworkTimeServiceQuerying',
  'AimEnabled',
  'PreconnectToSearch',
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
];

/** Pages are painted without a graphics card that would have to be reckoned as well. */
const lean = [
  `--disable-features=${switchedOff.join()}`,
  '--disable-gpu-rasterization',
  '--disable-gpu-compositing',
];

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
  /** In a profile in which the engine has answered nothing yet. */
  readonly fresh?: boolean;
}

/** How a test file's browser is. */
export interface BrowserOptions {
  /** What Chromium is started with. */
  readonly args?: readonly string[];
  /** Keeps the app for use without a network: costs every new profile a third of its first page. */
  readonly offline?: boolean;
}

/** What stays from one test file to the next. */
interface House {
  readonly browser: Browser;
  readonly server: Awaited<ReturnType<typeof createServer>>;
  readonly address: string;
  /** Profiles that keep the engine's answers, and nothing else from one test to the next. */
  readonly profiles: { readonly screen: Screen; readonly context: BrowserContext }[];
}

/** By what Chromium was started with. They end with this process. */
const houses = new Map<string, Promise<House>>();

function houseOf(args: readonly string[]): Promise<House> {
  const house = houses.get(args.join(' ')) ?? newHouse(args);
  houses.set(args.join(' '), house);
  return house;
}

async function newHouse(args: readonly string[]): Promise<House> {
  const executablePath = process.env.SHELLRAISE_CHROMIUM || '/usr/bin/chromium';
  const server = createServer({ root: fileURLToPath(new URL('../../dist', import.meta.url)) });
  await server.listen({ host: '127.0.0.1', port: 0 });
  server.server.unref();
  const { port } = server.server.address() as { port: number };
  const browser = await chromium.launch({ executablePath, args: [...lean, ...args] });
  return { browser, server, address: `http://localhost:${port}/`, profiles: [] };
}

/** A test file's browser. Tests are skipped, with the reason, where there is no Chromium. */
export function inBrowser({ args = soft, offline = false }: BrowserOptions = {}) {
  let house: House | null = null;
  const fresh: BrowserContext[] = [];
  const lent = new Set<BrowserContext>();

  beforeAll(async () => {
    if (!noBrowser) house = await houseOf(args);
  });

  beforeEach((test) => {
    if (noBrowser) test.skip(noBrowser);
    return async () => {
      for (const context of fresh.splice(0)) await context.close();
      for (const context of lent) await forgetAll(context, inHouse().address);
      lent.clear();
    };
  });

  // A browser like no other file's is not kept.
  afterAll(async () => {
    if (house === null || args === soft) return;
    houses.delete(args.join(' '));
    await house.browser.close();
    await house.server.close();
  });

  function inHouse(): House {
    if (!house) throw new Error('there is no browser');
    return house;
  }

  const newContext = (screen: Screen): Promise<BrowserContext> =>
    inHouse().browser.newContext({
      ...screens[screen],
      acceptDownloads: true,
      serviceWorkers: offline ? 'allow' : 'block',
    });

  /** A profile of its own, that has never been used: storage, service worker, files. */
  async function profile(screen: Screen = 'laptop'): Promise<BrowserContext> {
    const context = await newContext(screen);
    fresh.push(context);
    return context;
  }

  /** As `profile`, but what the engine answered in other tests need not be asked again. */
  async function knowingProfile(screen: Screen = 'laptop'): Promise<BrowserContext> {
    if (offline) return profile(screen);
    const { profiles } = inHouse();
    const free = profiles.find((one) => one.screen === screen && !lent.has(one.context));
    const context = free?.context ?? (await newContext(screen));
    if (!free) profiles.push({ screen, context });
    lent.add(context);
    return context;
  }

  /** The app on a sheet. Errors of the page fail the test that looks at `faults`. */
  async function open(options: PageOptions = {}): Promise<{ page: Page; faults: string[] }> {
    const { screen = 'laptop' } = options;
    const context =
      options.context ?? (await (options.fresh ? profile(screen) : knowingProfile(screen)));
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => {
      if (message.type() === 'error') faults.push(message.text());
    });
    if (options.scheme) await page.addInitScript(setScheme, options.scheme);
    if (options.before) await page.addInitScript(options.before);
    await page.goto(`${inHouse().address}#${options.sheet ?? 'pile'}`);
    await page.locator('main').waitFor();
    return { page, faults };
  }

  return { profile, knowingProfile, open };
}

/** Leaves a profile as it was made, but for the engine's answers. */
async function forgetAll(context: BrowserContext, address: string): Promise<void> {
  for (const page of context.pages()) await page.close();
  await context.setOffline(false);
  const page = await context.newPage();
  // Of the app's origin, without the app.
  await page.goto(new URL('robots.txt', address).href);
  await page.evaluate(async () => {
    localStorage.clear();
    const names = (await indexedDB.databases()).flatMap(({ name }) => name ?? []);
    for (const name of names.filter((one) => one !== 'shellraise-answers'))
      await new Promise<void>((done, fail) => {
        const deleting = indexedDB.deleteDatabase(name);
        deleting.onsuccess = () => done();
        deleting.onerror = () => fail(deleting.error);
      });
  });
  await page.close();
}

/** Why there is no browser; empty where there is one. */
const noBrowser = process.env.SHELLRAISE_NO_CHROMIUM ?? '';

/** Run in the page. Settings that are there already stay. */
function setScheme(scheme: string): void {
  const key = 'shellraise-settings';
  const kept = JSON.parse(localStorage.getItem(key) ?? '{}') as object;
  localStorage.setItem(key, JSON.stringify({ ...kept, scheme }));
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

/** Takes the first order of work that stands: looking for a better one takes the processor, and may
 * change the number of stages. */
export async function orderRests(page: Page): Promise<void> {
  await page.locator('[data-order]').waitFor({ timeout: 60_000 });
  const found = page.locator('[data-order=found]');
  const cancel = page.getByRole('button', { name: frameWords.cancel, exact: true });
  await found.or(cancel).first().waitFor();
  // It may end by itself just now.
  if (!(await found.isVisible())) await cancel.click({ timeout: 5000 }).catch(() => undefined);
  await found.waitFor({ timeout: 60_000 });
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
