import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { damagedText, fuzzLater } from '../../../core/tests/fuzz/fuzzing.ts';
import { openRoot, rootFile } from '../../src/https/root.ts';
import { RootUnusable } from '../../src/https/unusable.ts';

const folder = mkdtempSync(join(tmpdir(), 'shellraise-root-'));
afterAll(() => rmSync(folder, { recursive: true }));

const NOW = Date.UTC(2026, 5, 12);

it('a damaged root certificate is not used, and stays where it is', {
  timeout: 3_600_000,
}, async () => {
  const { fingerprint } = await openRoot(folder, NOW);
  const good = readFileSync(rootFile(folder), 'utf8');
  await fuzzLater(
    'certificates',
    0.02,
    (random) => damagedText(random, [good]),
    async (text) => {
      writeFileSync(rootFile(folder), text, { mode: 0o600 });
      const before = readFileSync(rootFile(folder));
      const root = await openRoot(folder, NOW).catch((error: unknown) => error);
      if (root instanceof Error) {
        expect(root).toBeInstanceOf(RootUnusable);
        expect(readFileSync(rootFile(folder))).toEqual(before);
        return 'refused';
      }
      // Damage beside the key and the certificate is none.
      expect(root).toHaveProperty('fingerprint', fingerprint);
      return 'read';
    },
  );
});
