// The pocket copy's bundle: the whole app in one file that opens without a server. It is written beside
// the app, which carries a project into it.

import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
import { viteSingleFile } from 'vite-plugin-singlefile';
import { demoPlugin } from './demo-plugin.ts';

const here = import.meta.dirname;

/** The solver's WebAssembly is handed to it (`engine/stock.ts`): its own way to the file, which it then
 * never goes, would bring all of it a second time. */
const onceOnly: Plugin = {
  name: 'shellraise-once-only',
  enforce: 'pre',
  transform: (code, id) =>
    id.includes('/highs/build/highs.mjs')
      ? code.replace('new URL("highs.wasm",import.meta.url)', 'new URL("about:blank")')
      : null,
};

export default defineConfig({
  root: here,
  publicDir: false,
  plugins: [react(), demoPlugin(), viteSingleFile()],
  resolve: {
    alias: [
      {
        find: /^\.\/start-worker\.ts$/,
        replacement: join(here, 'src/engine/start-worker.inline.ts'),
      },
      {
        find: /^\.\/pdf-tools\.ts$/,
        replacement: join(here, 'src/engine/pdf-tools.pocket.ts'),
      },
    ],
  },
  worker: {
    // A page from a file may start no module as a worker.
    format: 'iife',
    plugins: () => [onceOnly],
    rolldownOptions: { output: { codeSplitting: false } },
  },
  build: {
    target: 'es2022',
    outDir: 'dist',
    emptyOutDir: false,
    rolldownOptions: { input: join(here, 'pocket.html') },
  },
});
