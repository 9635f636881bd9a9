// What a person waits for from a tap or a key to the next picture: a seeded walk through all sheets, with taps
// on panels and a reading typed. Until the page has made its next frame, and, as the browser's own event timing
// has it, until that is on the screen; of the events that one tap makes the longest counts.

import { type Random, seededRandom } from '@shellraise/core';
import type { Page } from 'playwright-core';

/** A tap or a key. */
export interface Interaction {
  /** Where: the sheet, and what was tapped. */
  readonly what: string;
  /** Milliseconds until the page has made its next frame. */
  readonly frame: number;
  /** Until that is on the screen; the browser tells none under 16, which count as 16. */
  readonly shown: number;
}

const SHEETS = ['shape', 'places', 'ground', 'raising', 'record', 'fitout', 'papers', 'pile'];
/** Sheets that show the plan, and panels tapped there. */
const WITH_PLAN = new Set(['places', 'raising', 'record', 'papers']);
const TAPS = 4;

/** Walks through the demo so many times. The page is open and usable. */
export async function walk(page: Page, rounds: number, seed: number): Promise<Interaction[]> {
  const random = seededRandom(seed);
  await page.evaluate(listenToEvents);
  const found: Interaction[] = [];
  const after = async (what: string, act: () => Promise<unknown>): Promise<void> => {
    await act();
    await page.waitForTimeout(700);
    const { frame, shown } = await page.evaluate(() =>
      (window as unknown as { longest: () => { frame: number; shown: number } }).longest(),
    );
    found.push({ what, frame, shown: Math.max(16, shown) });
  };
  for (let round = 0; round < rounds; round++)
    for (const sheet of SHEETS) {
      await after(`to ${sheet}`, () => page.locator(`nav a[href="./#${sheet}"]`).click());
      await page.locator('main#sheet > *').first().waitFor();
      // What it reckons goes on beside it, as for a person who does not wait.
      await page.waitForTimeout(1000);
      for (let tap = 0; tap < TAPS && WITH_PLAN.has(sheet); tap++) {
        await page.locator('main#sheet [data-place]').first().waitFor();
        const at = await panelAt(page, random);
        if (at) await after(`a panel on ${sheet}`, () => page.mouse.click(...at));
      }
      if (sheet === 'pile') await typed(page, after);
    }
  return found;
}

/** The middle of a panel in sight; null where the sheet shows none. */
async function panelAt(page: Page, random: Random): Promise<[number, number] | null> {
  const all = await page.locator('main#sheet [data-place]').evaluateAll((panels) =>
    panels
      .map((panel) => {
        const { x, y, width, height } = panel.getBoundingClientRect();
        return [x + width / 2, y + height / 2] as [number, number];
      })
      .filter(
        ([x, y]) => document.elementFromPoint(x, y)?.closest('[data-place], svg, canvas') != null,
      ),
  );
  return all.length === 0 ? null : (all[random.below(all.length)] as [number, number]);
}

async function typed(
  page: Page,
  after: (what: string, act: () => Promise<unknown>) => Promise<void>,
): Promise<void> {
  const side = page.locator('main#sheet [data-row="2"] td.side').first();
  await after('a cell of the tally', () => side.click());
  for (const key of '928') await after('a key in the tally', () => page.keyboard.press(key));
  await after('Enter in the tally', () => page.keyboard.press('Enter'));
}

/** Run in the page: `longest()` gives the longest since it was asked last. */
function listenToEvents(): void {
  type Timing = PerformanceEventTiming & { readonly interactionId?: number };
  let [frame, shown] = [0, 0];
  const observer = new PerformanceObserver((list) => take(list.getEntries()));
  const take = (entries: readonly PerformanceEntry[]): void => {
    for (const { interactionId = 0, duration } of entries as readonly Timing[])
      if (interactionId > 0) shown = Math.max(shown, duration);
  };
  observer.observe({ type: 'event', durationThreshold: 16 } as PerformanceObserverInit);
  const follow = ({ timeStamp }: Event): void => {
    requestAnimationFrame(() => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        frame = Math.max(frame, performance.now() - timeStamp);
      };
      port2.postMessage(null);
    });
  };
  for (const type of ['pointerdown', 'pointerup', 'keydown']) addEventListener(type, follow, true);
  const page = window as unknown as { longest: () => { frame: number; shown: number } };
  page.longest = () => {
    take(observer.takeRecords());
    const found = { frame, shown };
    [frame, shown] = [0, 0];
    return found;
  };
}
