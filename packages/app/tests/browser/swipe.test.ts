import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { placesWords } from '../../src/words/places.ts';
import { inBrowser } from './support.ts';

const { open } = inBrowser();

/** Draws a finger across the page, as the screen reports it. */
async function draw(page: Page, from: readonly [number, number], to: readonly [number, number]) {
  const touch = await page.context().newCDPSession(page);
  const send = (
    type: 'touchStart' | 'touchMove' | 'touchEnd',
    points: { x: number; y: number }[],
  ) => touch.send('Input.dispatchTouchEvent', { type, touchPoints: points });
  const at = (t: number) => ({
    x: from[0] + (to[0] - from[0]) * t,
    y: from[1] + (to[1] - from[1]) * t,
  });
  await send('touchStart', [at(0)]);
  for (const t of [0.25, 0.5, 0.75, 1]) await send('touchMove', [at(t)]);
  await send('touchEnd', []);
  await touch.detach();
}

it('goes from the plan to 3D and back with a finger drawn across on a phone', async () => {
  const { page, faults } = await open({ screen: 'phone', sheet: 'places' });
  await page.locator('[data-place]').first().waitFor();
  const chosen = page
    .getByRole('tablist', { name: placesWords.view.tabs })
    .locator('[aria-selected=true]');
  expect(await chosen.textContent()).toBe(placesWords.view.plan);
  await draw(page, [320, 560], [80, 566]);
  await page.locator('.solid-pane').waitFor();
  expect(await chosen.textContent()).toBe(placesWords.view.solid);
  // Over the drawing a finger turns the shell; over its heading it goes back.
  const heading = await page.locator('.solid-pane h2').boundingBox();
  const y = (heading?.y ?? 0) + 10;
  await draw(page, [80, y], [320, y]);
  await page.locator('.plan-pane').waitFor();
  expect(await chosen.textContent()).toBe(placesWords.view.plan);
  expect(faults).toEqual([]);
});
