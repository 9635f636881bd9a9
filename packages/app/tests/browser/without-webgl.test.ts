import { describe, expect, it } from 'vitest';
import { shapeWords } from '../../src/words/shape.ts';
import { inBrowser, putAway } from './support.ts';

const { open } = inBrowser({ args: ['--no-sandbox', '--disable-3d-apis'] });

describe('a browser without WebGL', () => {
  it('shows the shell as a plain drawing that can be turned, and says so', async () => {
    const { page } = await open({ sheet: 'shape' });
    expect(
      await page.evaluate(() => document.createElement('canvas').getContext('webgl2')),
    ).toBeNull();
    await page.getByRole('button', { name: shapeWords.close, exact: true }).click();
    await page.locator('[data-stage=found]').waitFor();
    await page.getByText(shapeWords.view.missing).waitFor();
    await putAway(page);
    const skip = page.getByRole('button', { name: shapeWords.drawn.skip });
    if (await skip.isVisible()) await skip.click();
    const drawing = page.locator('.shell-view-canvas');
    await expect.poll(() => drawing.locator('path, polygon').count()).toBeGreaterThan(100);
    const before = await drawing.innerHTML();
    await drawing.focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(() => drawing.innerHTML()).not.toBe(before);
  });
});
