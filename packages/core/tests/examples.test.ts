import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'node:util';
import { describe, expect, it, vi } from 'vitest';

const core = join(import.meta.dirname, '..');
const folder = join(core, 'examples');
const names = readdirSync(folder).map((file) => file.replace('.mjs', ''));

/** Lines that a file says it prints. */
const promised = (name: string): string[] =>
  [...readFileSync(join(folder, `${name}.mjs`), 'utf8').matchAll(/^\/\/ → (.*)$/gm)].map(
    ([, line]) => line as string,
  );

describe('the examples', () => {
  it('are one for each folder, and what they share', () => {
    const folders = readdirSync(join(core, 'src')).filter((name) => name !== 'index.ts');
    expect(names.sort()).toEqual([...folders, 'half-ball'].sort());
  });

  it.each(names)('%s prints what it says', async (name) => {
    const log = vi.spyOn(console, 'log').mockImplementation(() => {});
    try {
      await import(join(folder, `${name}.mjs`));
      const lines = log.mock.calls.map((words) => format(...words));
      expect(lines).toEqual(promised(name));
      expect(lines.length > 0).toBe(name !== 'half-ball');
    } finally {
      log.mockRestore();
    }
  });
});
