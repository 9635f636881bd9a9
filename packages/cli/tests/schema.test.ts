import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectJsonSchema } from '@shellraise/core';
import { expect, it } from 'vitest';
import { root } from './run.ts';

const published = JSON.parse(readFileSync(join(root, 'docs/project.schema.json'), 'utf8'));

it('is published as the code validates: node scripts/make-schema.mjs writes it anew', () => {
  expect(published).toEqual(JSON.parse(JSON.stringify(projectJsonSchema())));
});

it('has every section and key named in the page on files', () => {
  const page = readFileSync(join(root, 'docs/file-format.md'), 'utf8');
  const { pile, takeoff, wishes, places } = published.properties;
  const rows = ['kinds', 'readings', 'groups', 'hardware'].flatMap((list) =>
    Object.keys(pile.properties[list].items.properties),
  );
  const names = [pile, takeoff, wishes, places].flatMap((part) => Object.keys(part.properties));
  expect(names.length).toBeGreaterThan(20);
  const missing = [...new Set([...Object.keys(published.properties), ...names, ...rows])].filter(
    (name) => !page.includes(`\`${name}\``) && !page.includes(`"${name}"`),
  );
  expect(missing).toEqual([]);
});
