// The page on method lists every number of the table as it is.

import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { LOAD_NUMBER_KEYS, LOAD_NUMBERS } from '../../src/loads/numbers.ts';

const page = readFileSync(
  fileURLToPath(new URL('../../../../docs/method.md', import.meta.url)),
  'utf8',
);

test.each(LOAD_NUMBER_KEYS)('%s stands in docs/method.md as it is in the table', (key) => {
  const { what, unit, value, least, most, source } = LOAD_NUMBERS[key];
  const size = unit === '' ? `${value}` : `${value} ${unit}`;
  expect(page).toContain(
    `| \`${key}\` | ${what} | ${size} | ${least} to ${most} | ${source.confirmation} | ${source.text} |`,
  );
});

test('and no number that is not', () => {
  const rows = [...page.matchAll(/^\| `(\w+)` \|.* \| -?[\d.]+ to [\d.]+ \|/gm)].map((m) => m[1]);
  expect(rows).toEqual(LOAD_NUMBER_KEYS);
});
