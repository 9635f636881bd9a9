import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { wholeTable } from '../src/words/words.ts';

const docs = join(import.meta.dirname, '../../../docs');
const guide = readFileSync(join(docs, 'guide.md'), 'utf8');

/** Every plain text of the app's words. */
const textsIn = (value: unknown): readonly string[] => {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
};

it('the guide calls buttons and sheets as the app does', async () => {
  const texts = textsIn(await wholeTable());
  const called = [...guide.matchAll(/(?<!\*)\*([^*\n]+)\*(?!\*)/g)].map(
    ([, name]) => name as string,
  );
  expect(called.length).toBeGreaterThan(20);
  const unheard = called.filter(
    (name) => !texts.some((text) => text.toLowerCase().startsWith(name.toLowerCase())),
  );
  expect(unheard).toEqual([]);
});

it('the guide has ten pages, and pictures that are there', () => {
  expect(guide.match(/^## /gm)).toHaveLength(10);
  const pictures = [...guide.matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(([, path]) => path as string);
  expect(pictures.length).toBeGreaterThanOrEqual(8);
  for (const path of pictures) expect(existsSync(join(docs, path)), path).toBe(true);
});
