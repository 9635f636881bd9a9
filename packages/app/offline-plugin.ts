// Writes the service worker `sw.js` beside the page, with the list of every file of the bundle.

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build, type Plugin } from 'vite';

const worker = join(import.meta.dirname, 'src', 'offline', 'service-worker.ts');

/** The plugin. Runs when everything else is written. */
export function offlinePlugin(): Plugin {
  let folder = '';
  return {
    name: 'shellraise-offline',
    apply: 'build',
    configResolved: ({ root, build: { outDir } }) => {
      folder = resolve(root, outDir);
    },
    closeBundle: { sequential: true, order: 'post', handler: () => writeWorker(folder) },
  };
}

/** Fonts are kept in their newest form alone: a browser that has service workers reads it. Those that go
 * into a PDF are kept as the PDF takes them. */
const isKept = (file: string): boolean =>
  !/(^|\/)sw\.js$|\.woff$|\.map$/.test(file) ||
  /-latin(-ext)?-(400|600)-normal-[^/]*\.woff$/.test(file);

async function writeWorker(folder: string): Promise<void> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter(isKept)
    .sort();
  const hash = createHash('sha256');
  for (const file of files) hash.update(file).update(readFileSync(join(folder, file)));
  const list = ['./', ...files.filter((file) => file !== 'index.html').map((file) => `./${file}`)];
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    define: {
      SHELLRAISE_FILES: JSON.stringify(list),
      SHELLRAISE_VERSION: JSON.stringify(hash.digest('hex').slice(0, 12)),
    },
    build: {
      outDir: folder,
      emptyOutDir: false,
      lib: { entry: worker, formats: ['iife'], name: 'shellraiseOffline', fileName: () => 'sw.js' },
    },
  });
}
