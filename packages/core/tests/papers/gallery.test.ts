// The gallery in the documents shows every set of sheets that there is.

import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { sheetMakers } from '../../src/papers/sets/list.ts';

const docs = fileURLToPath(new URL('../../../../docs/', import.meta.url));
const page = readFileSync(`${docs}gallery.md`, 'utf8');
const rows = page.split('\n').filter((row) => row.startsWith('| <a'));

/** Sets that the gallery neither shows as they are told, nor names as those that the demo lacks. */
const lacking = (makers: readonly { readonly name: string; readonly what: string }[]): string[] =>
  makers
    .filter(
      ({ name, what }) =>
        !rows.some((row) => row.includes(`| \`${name}\` | ${what} |`)) &&
        !new RegExp(`^The demo has nothing for .*\`${name}\``, 'm').test(page),
    )
    .map(({ name }) => name);

it('has every set, and would miss one: node scripts/make-gallery.mjs makes it anew', () => {
  expect(lacking(sheetMakers)).toEqual([]);
  expect(lacking([{ name: 'wanting', what: 'no such set' }])).toEqual(['wanting']);
  expect(rows.length).toBeGreaterThan(20);
});

it('has a picture in each row, no picture besides, and all in 2 MB', () => {
  const shown = rows.map((row) => row.match(/src="(gallery\/[a-z-]+\.svg)"/)?.[1] as string);
  for (const file of shown) expect(existsSync(docs + file), file).toBe(true);
  const files = readdirSync(`${docs}gallery`).map((name) => `gallery/${name}`);
  expect([...files].sort()).toEqual([...shown].sort());
  const bytes = files.reduce((sum, file) => sum + statSync(docs + file).size, 0);
  expect(bytes).toBeLessThan(2e6);
});
