// Pictures of the walks: what is on the screen, as a small WebP that the browser itself makes.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Widths of the pictures, pixels. */
const WIDE = { laptop: 800, phone: 320 };
const QUALITY = 0.5;

/** Takes pictures into a folder; `drawn` is a page that is used for nothing else. */
export function camera(folder, drawn) {
  return async (page, name, screen) => {
    const png = (await page.screenshot()).toString('base64');
    const url = await drawn.evaluate(
      async ([data, width, quality]) => {
        const image = new Image();
        image.src = `data:image/png;base64,${data}`;
        await image.decode();
        const canvas = document.createElement('canvas');
        canvas.width = width;
        canvas.height = Math.round((image.height * width) / image.width);
        const context = canvas.getContext('2d');
        context.imageSmoothingQuality = 'high';
        context.drawImage(image, 0, 0, canvas.width, canvas.height);
        return canvas.toDataURL('image/webp', quality);
      },
      [png, WIDE[screen], QUALITY],
    );
    const bytes = Buffer.from(url.slice(url.indexOf(',') + 1), 'base64');
    writeFileSync(join(folder, `${name}.webp`), bytes);
    console.log(`${name}.webp  ${Math.round(bytes.length / 1024)} kB`);
  };
}
