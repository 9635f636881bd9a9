// docs/method.md traces every number that people act on to outside checks, or calls it unproven.

import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const page = readFileSync(here('../../../docs/method.md'), 'utf8');
const chapter = (title: string): string =>
  page.split(`\n## ${title}\n`)[1]?.split('\n## ')[0] ?? '';
const rows = chapter('Numbers that people act on')
  .split('\n')
  .filter((line) => line.startsWith('| '))
  .slice(1)
  .map((line) => line.split('|').map((cell) => cell.trim()));
const named = rows.flatMap(([, , , checks = '']) =>
  [...checks.matchAll(/`([^`]+)`/g)].map(([, name]) => name as string),
);

it('names checks that there are, and leaves none of them out', () => {
  const files = readdirSync(here('outside'))
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => name.replace('.test.ts', ''));
  expect([...new Set(named)].sort()).toEqual(files.sort());
});

it('calls every number that no check holds unproven', () => {
  expect(rows.length).toBeGreaterThan(30);
  const bare = rows.filter(([, , , checks]) => checks === '—');
  expect(bare.length).toBeGreaterThan(0);
  for (const [, number, , , unproven] of bare) expect(unproven, number).toContain('**unproven**');
});

it('has a row for each folder of core that reckons', () => {
  const folders = readdirSync(here('../src'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory() && !['math', 'measure', 'project'].includes(entry.name))
    .map(({ name }) => name);
  for (const folder of folders)
    expect(chapter('Each computation'), folder).toContain(`| **${folder}**`);
});
