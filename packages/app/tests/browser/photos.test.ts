import { expect, it } from 'vitest';
import { dropFile, inBrowser } from './support.ts';

const { open } = inBrowser();

const pile = 'tag,side1 mm,side2 mm,side3 mm\n001,920,920,1073\n002,1071,1071,1073\n';

it('keeps a photo with its panel through a reload, and puts a removed one back', async () => {
  const { page, faults } = await open();
  await dropFile(page, 'heap.csv', pile);
  await page.getByText('heap.csv is open.').waitFor();
  await page.locator('main').getByText('001', { exact: true }).click();
  await page.getByRole('heading', { name: 'Photos of panel 001' }).waitFor();
  const picture = await page.screenshot({ type: 'png' });
  const input = page.locator('.photo-add input');
  await input.setInputFiles({ name: 'dent.png', mimeType: 'image/png', buffer: picture });
  const photo = page.getByRole('img', { name: 'photo 1 of panel 001' });
  await photo.waitFor();

  await page.reload();
  await page.locator('main').getByText('001', { exact: true }).click();
  await photo.waitFor();
  expect(await photo.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(1280);

  await page
    .locator('.photos')
    .getByRole('button', { name: /Remove/ })
    .click();
  await photo.waitFor({ state: 'detached' });
  await page.getByRole('button', { name: 'Put the photo back' }).click();
  await photo.waitFor();

  await input.setInputFiles({
    name: 'list.txt',
    mimeType: 'text/plain',
    buffer: Buffer.from('no'),
  });
  await page.getByText('list.txt is no picture').waitFor();
  expect(faults).toEqual([]);
});
