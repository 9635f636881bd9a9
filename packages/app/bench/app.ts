// How quick the built app is, in Chromium as it is served: `npm run bench -- app [load|turn|type|tap]`.
// Slowed means by the browser itself, four times (CDP, `Emulation.setCPUThrottlingRate`): its own thread, not
// what draws. Machines without graphics draw in software, which makes frames by the clock longer.

import { gzipSync } from 'node:zlib';
import type { Page } from 'playwright-core';
import type { Line } from '../../../scripts/bench-line.d.ts';
import { dropFile, type Ground, startGround } from './browser.ts';
import { walk } from './interactions.ts';
import { ballOf, longTally } from './piles.ts';

/** How often a thing is measured; the median counts. */
const TIMES = 5;

/** Measures everything, or the parts that are named. */
export async function main(asked: readonly string[]): Promise<readonly Line[]> {
  const parts = { load: firstSheet, turn: turnings, type: keystrokes, tap: taps };
  const names = Object.keys(parts) as (keyof typeof parts)[];
  const unknown = asked.find((name) => !names.some((one) => one === name));
  if (unknown !== undefined)
    throw new Error(`the app's benchmark has no part ${unknown}: there are ${names.join(', ')}`);
  const ground = await startGround();
  try {
    const lines: Line[] = [];
    for (const name of names)
      if (asked.length === 0 || asked.includes(name)) lines.push(...(await parts[name](ground)));
    return lines;
  } finally {
    await ground.close();
  }
}

/** A person can begin: the rows of the tally are on the screen and take what is typed. */
const USABLE = 'main#sheet [data-row]';

// --- the first sheet ---

async function firstSheet(ground: Ground): Promise<Line[]> {
  const plain = await repeated(() => firstLoad(ground, 1));
  const slowed = await repeated(() => firstLoad(ground, 4));
  const kept = await repeated(() => keptLoad(ground, 4));
  const [one] = plain;
  if (!one) throw new Error('nothing was measured');
  return [
    {
      what: 'script the first sheet waits for, gzip',
      found: one.page / 1000,
      unit: 'kB',
      wanted: 170,
    },
    {
      what: '  fetched by then for the engine’s thread, gzip',
      found: one.engine / 1000,
      unit: 'kB',
    },
    {
      what: 'first sheet usable',
      found: median(plain.map(({ ms }) => ms)),
      unit: 'ms',
    },
    {
      what: 'first sheet usable, processor slowed 4 ×',
      found: median(slowed.map(({ ms }) => ms)),
      unit: 'ms',
      wanted: 1500,
    },
    {
      what: 'first sheet usable, kept for offline use, slowed 4 ×',
      found: median(kept),
      unit: 'ms',
      wanted: 1500,
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

/** The same page opened again, once all its files are kept on the device. */
async function keptLoad(ground: Ground, slowed: number): Promise<number> {
  const { page, line, close } = await ground.page(1);
  await page.goto(ground.address);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
  });
  await line.send('Emulation.setCPUThrottlingRate', { rate: slowed });
  await page.addInitScript(watchFor, USABLE);
  await page.goto('about:blank');
  await page.goto(ground.address);
  const ms = await page.evaluate(() => (window as unknown as { usable: Promise<number> }).usable);
  const isKept = await page.evaluate(() => navigator.serviceWorker.controller !== null);
  if (!isKept) throw new Error('the page did not come from what is kept');
  await close();
  return ms;
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
const MOVES = 40;
/** Drags of each, the median counts: drawn in software a frame may take a tenth of a second. */
const DRAGS = 3;

/** What is turned: places, the steps along a side of a ball's net (null: the demo), and the most script a
 * frame, milliseconds, at the machine's own speed and slowed. */
const TURNED = [
  { of: 'the demo', steps: null, wanted: [4, 16] },
  { of: '320 places', steps: 4, wanted: [4, 16] },
  { of: '1280 places', steps: 8, wanted: [4, 16] },
] as const;

async function turnings(ground: Ground): Promise<Line[]> {
  const lines: Line[] = [];
  for (const { of, steps, wanted } of TURNED) {
    const { plain, slowed } = await turned(ground, steps);
    const what = `script a frame, turning ${of}`;
    lines.push(
      { what, found: plain.script, unit: 'ms', wanted: wanted[0] },
      { what: `${what}, slowed 4 ×`, found: slowed.script, unit: 'ms', wanted: wanted[1] },
      {
        what: `a frame by the clock, drawn in software, turning ${of}, slowed 4 ×`,
        found: slowed.frame,
        unit: 'ms',
      },
    );
  }
  return lines;
}

/** Milliseconds of a frame, medians of some drags. */
interface Frame {
  readonly script: number;
  readonly frame: number;
}

async function turned(
  ground: Ground,
  steps: number | null,
): Promise<{ readonly plain: Frame; readonly slowed: Frame }> {
  const { page, line, close } = await ground.page(1);
  await page.goto(ground.address);
  await page.locator(USABLE).first().waitFor();
  if (steps !== null) {
    await dropFile(page, 'ball.json', ballOf(steps));
    await page.getByText('ball.json').first().waitFor();
  }
  await page.evaluate(() => {
    location.hash = 'shape';
  });
  await page.locator('main#sheet button.go').click();
  await page.locator('[data-stage=found] canvas').waitFor({ timeout: 120_000 });
  // It grows before one's eyes first.
  await page.waitForTimeout(8000);
  await line.send('Performance.enable');
  const scriptSeconds = async (): Promise<number> => {
    const { metrics } = await line.send('Performance.getMetrics');
    return metrics.find(({ name }) => name === 'ScriptDuration')?.value ?? Number.NaN;
  };
  const perFrame = async (): Promise<Frame> => {
    const [before, start] = [await scriptSeconds(), performance.now()];
    const frames = await drag(page);
    return {
      script: (1000 * ((await scriptSeconds()) - before)) / frames,
      frame: (performance.now() - start) / frames,
    };
  };
  const medians = (frames: readonly Frame[]): Frame => ({
    script: median(frames.map(({ script }) => script)),
    frame: median(frames.map(({ frame }) => frame)),
  });
  const view = page.locator('canvas').first();
  const still = await view.screenshot();
  await drag(page);
  if (still.equals(await view.screenshot())) throw new Error('the shell did not turn');
  const plain = medians(await repeated(perFrame, DRAGS));
  await line.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const slowed = medians(await repeated(perFrame, DRAGS));
  await close();
  return { plain, slowed };
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

async function keystrokes(ground: Ground): Promise<Line[]> {
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
      wanted: 50,
    },
    {
      what: 'keystroke to paint, 700 readings, slowed 4 ×',
      found: worst(4),
      unit: 'ms',
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

// --- taps and keys through all sheets ---

/** What of a walk is longer than all but two in a hundred may be, milliseconds: what the makers of browsers
 * call good of interaction to next paint (web.dev, "Interaction to Next Paint"). */
const GOOD = 200;
const ROUNDS = 2;

async function taps(ground: Ground): Promise<Line[]> {
  const { page, line, close } = await ground.page(1);
  await page.goto(ground.address);
  await page.locator(USABLE).first().waitFor();
  await page.waitForTimeout(2000);
  await line.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const all = await walk(page, ROUNDS, 1);
  await close();
  const at = (of: 'frame' | 'shown', part: number): number => {
    const sorted = all.map((one) => one[of]).sort((a, b) => a - b);
    return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
  };
  const slowest = [...all].sort((a, b) => b.frame - a.frame).slice(0, 5);
  for (const { what, frame, shown } of slowest)
    console.log(`${what}: ${frame.toFixed(0)} ms, on the screen after ${shown.toFixed(0)} ms`);
  console.log(`of ${all.length}`);
  const what = 'tap or key to the next frame through all sheets, slowed 4 ×';
  const drawn = 'the same until it is on the screen, drawn in software';
  return [
    { what: `${what}: half`, found: at('frame', 0.5), unit: 'ms' },
    { what: `${what}: 98 %`, found: at('frame', 0.98), unit: 'ms', wanted: GOOD },
    { what: `${drawn}: half`, found: at('shown', 0.5), unit: 'ms' },
    { what: `${drawn}: 98 %`, found: at('shown', 0.98), unit: 'ms' },
  ];
}

// --- counting ---

async function repeated<T>(measure: () => Promise<T>, times = TIMES): Promise<T[]> {
  const found: T[] = [];
  for (let i = 0; i < times; i++) found.push(await measure());
  return found;
}

function median(numbers: readonly number[]): number {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? Number.NaN;
}
