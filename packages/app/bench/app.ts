// How quick the built app is, in Chromium as it is served: `npm run bench -- app [load|turn|type]`.
// Prints each figure beside its budget; a missed budget is exit code 1.

import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import { dropFile, type Ground, startGround } from './browser.ts';
import { largeBall, longTally } from './piles.ts';

/** What is measured. */
interface Row {
  readonly what: string;
  readonly found: number;
  readonly unit: 'kB' | 'ms';
  /** The most it may be; null where it is told and no more. */
  readonly budget: number | null;
}

/** How often a thing is measured; the median counts. */
const TIMES = 5;

/** Measures everything, or the parts that are named, and prints the table. Returns the exit code. */
export async function main(asked: readonly string[]): Promise<number> {
  const parts = { load: firstSheet, turn: turning, type: keystrokes };
  const names = Object.keys(parts) as (keyof typeof parts)[];
  const unknown = asked.find((name) => !names.some((one) => one === name));
  if (unknown !== undefined) {
    console.error(`The app's benchmark has no part ${unknown}: there are ${names.join(', ')}.`);
    return 2;
  }
  const ground = await startGround();
  try {
    const rows: Row[] = [];
    for (const name of names)
      if (asked.length === 0 || asked.includes(name)) rows.push(...(await parts[name](ground)));
    console.log('The app as it is served, Chromium, 1440 × 900, medians\n');
    for (const row of rows) console.log(lineOf(row));
    const missed = rows.filter(({ found, budget }) => budget !== null && !(found <= budget)).length;
    console.log(missed === 0 ? '\nAll budgets are met.' : `\n${missed} missed.`);
    return missed === 0 ? 0 : 1;
  } finally {
    await ground.close();
  }
}

function lineOf({ what, found, unit, budget }: Row): string {
  const verdict =
    budget === null ? '' : `at most ${budget} ${unit}  ${found <= budget ? 'met' : 'MISSED'}`;
  return `${what.padEnd(60)} ${found.toFixed(1).padStart(8)} ${unit}  ${verdict}`.trimEnd();
}

/** A person can begin: the rows of the tally are on the screen and take what is typed. */
const USABLE = 'main#sheet [data-row]';

// --- the first sheet ---

async function firstSheet(ground: Ground): Promise<Row[]> {
  const plain = await repeated(() => firstLoad(ground, 1));
  const slowed = await repeated(() => firstLoad(ground, 4));
  const [one] = plain;
  if (!one) throw new Error('nothing was measured');
  return [
    {
      what: 'script the first sheet waits for, gzip',
      found: one.page / 1000,
      unit: 'kB',
      budget: 170,
    },
    {
      what: '  fetched by then for the engine’s thread, gzip',
      found: one.engine / 1000,
      unit: 'kB',
      budget: null,
    },
    {
      what: 'first sheet usable',
      found: median(plain.map(({ ms }) => ms)),
      unit: 'ms',
      budget: null,
    },
    {
      what: 'first sheet usable, processor slowed 4 ×',
      found: median(slowed.map(({ ms }) => ms)),
      unit: 'ms',
      budget: 1500,
    },
  ];
}

interface FirstLoad {
  /** Since the navigation began. */
  readonly ms: number;
  /** Bytes of script, gzip, fetched by the page before the sheet was usable. */
  readonly page: number;
  /** The same, fetched by the engine's worker. */
  readonly engine: number;
}

async function firstLoad(ground: Ground, slowed: number): Promise<FirstLoad> {
  const { page, close } = await ground.page(slowed);
  const scripts: { readonly body: Promise<Buffer>; readonly engine: boolean }[] = [];
  let usable = false;
  page.on('response', (response) => {
    if (usable || !/\.js$/.test(new URL(response.url()).pathname)) return;
    if (response.request().serviceWorker()) return;
    scripts.push({ body: response.body(), engine: /worker/.test(response.url()) });
  });
  await page.addInitScript(watchFor, USABLE);
  await page.goto(ground.address);
  const ms = await page.evaluate(() => (window as unknown as { usable: Promise<number> }).usable);
  usable = true;
  const sizes = await Promise.all(
    scripts.map(async ({ body, engine }) => ({
      engine,
      size: gzipSync(await body, { level: 9 }).length,
    })),
  );
  await close();
  const sum = (engine: boolean): number =>
    sizes.filter((one) => one.engine === engine).reduce((all, { size }) => all + size, 0);
  return { ms, page: sum(false), engine: sum(true) };
}

/** Run in the page: `usable` becomes the time at which a thing was painted, milliseconds since the
 * navigation began. */
function watchFor(selector: string): void {
  const place = window as unknown as { usable: Promise<number> };
  place.usable = new Promise((resolve) => {
    const look = (): void => {
      if (!document.querySelector(selector)) requestAnimationFrame(look);
      else requestAnimationFrame(() => setTimeout(() => resolve(performance.now()), 0));
    };
    look();
  });
}

// --- turning a shell ---

/** Moves of one drag. */
const MOVES = 60;

async function turning(ground: Ground): Promise<Row[]> {
  const { page, line, close } = await ground.page(1);
  await page.goto(ground.address);
  await page.locator(USABLE).first().waitFor();
  await dropFile(page, 'ball.json', largeBall());
  await page.getByText('ball.json').first().waitFor();
  await page.evaluate(() => {
    location.hash = 'shape';
  });
  await page.locator('main#sheet button.go').click();
  await page.locator('[data-stage=found] canvas').waitFor({ timeout: 120_000 });
  // It grows before one's eyes first.
  await page.waitForTimeout(8000);
  await line.send('Performance.enable');
  const perFrame = async (): Promise<number> => {
    const before = await script();
    const frames = await drag(page);
    return (1000 * ((await script()) - before)) / frames;
  };
  const script = async (): Promise<number> => {
    const { metrics } = await line.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? Number.NaN;
  };
  const view = page.locator('canvas').first();
  const still = await view.screenshot();
  await drag(page);
  if (still.equals(await view.screenshot())) throw new Error('the shell did not turn');
  const plain = await repeated(perFrame);
  await line.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const slowed = await repeated(perFrame);
  await close();
  return [
    { what: 'script a frame, turning 1,280 places', found: median(plain), unit: 'ms', budget: 4 },
    {
      what: 'script a frame, turning 1,280 places, slowed 4 ×',
      found: median(slowed),
      unit: 'ms',
      budget: 16,
    },
  ];
}

/** Drags the drawing round with the mouse, one move a frame. Returns the number of frames. */
async function drag(page: Page): Promise<number> {
  const box = await page.locator('canvas').first().boundingBox();
  if (!box) throw new Error('there is no 3D view');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let i = 1; i <= MOVES; i++) {
    await page.mouse.move(x + i, y + i / 3);
    await page.evaluate(() => new Promise(requestAnimationFrame));
  }
  await page.mouse.up();
  return MOVES;
}

// --- typing in a long tally ---

async function keystrokes(ground: Ground): Promise<Row[]> {
  const times: Record<number, number[]> = {};
  for (const slowed of [1, 4]) {
    const { page, line, close } = await ground.page(1);
    await page.goto(ground.address);
    await page.locator(USABLE).first().waitFor();
    await dropFile(page, 'tally.json', longTally());
    await page.getByText('tally.json').first().waitFor();
    await page.waitForTimeout(3000);
    await line.send('Emulation.setCPUThrottlingRate', { rate: slowed });
    times[slowed] = await typed(page);
    await close();
  }
  const worst = (slowed: number): number => Math.max(...(times[slowed] ?? [Number.NaN]));
  return [
    {
      what: 'keystroke to paint, 700 readings, slowest of 12',
      found: worst(1),
      unit: 'ms',
      budget: 50,
    },
    {
      what: 'keystroke to paint, 700 readings, slowed 4 ×',
      found: worst(4),
      unit: 'ms',
      budget: null,
    },
  ];
}

/** Types into a cell of the tally; milliseconds from each key to the paint after it. */
async function typed(page: Page): Promise<number[]> {
  await page.locator('main#sheet [data-row="2"] td.side').first().click();
  await page.locator('main#sheet [data-row="2"] input').first().focus();
  await page.evaluate(() => {
    const place = window as unknown as { keys: number[] };
    place.keys = [];
    addEventListener(
      'keydown',
      ({ timeStamp }) =>
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => place.keys.push(performance.now() - timeStamp);
          port2.postMessage(null);
        }),
      true,
    );
  });
  for (const key of '928 mm, 3 ft') {
    await page.keyboard.press(key === ' ' ? 'Space' : key);
    await page.waitForTimeout(120);
  }
  return page.evaluate(() => (window as unknown as { keys: number[] }).keys);
}

// --- counting ---

async function repeated<T>(measure: () => Promise<T>): Promise<T[]> {
  const found: T[] = [];
  for (let i = 0; i < TIMES; i++) found.push(await measure());
  return found;
}

function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}
