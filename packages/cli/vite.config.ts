// The command line in a few files: the engine's seven hundred modules take longer to load one by
// one than most commands take to answer. Each command and each worker loads its part only.

import { join } from 'node:path';
import { defineConfig } from 'vite';

const source = (name: string) => join(import.meta.dirname, 'src', `${name}.ts`);

export default defineConfig({
  root: import.meta.dirname,
  // What finds files beside itself (the server's app, the solver's WebAssembly) stays a package.
  ssr: { noExternal: true, external: ['@shellraise/server', 'highs', 'pdfkit'] },
  build: {
    target: 'node20',
    ssr: true,
    // As deep as `dist/commands`, so that a path to the examples is the same from both.
    outDir: 'dist/run',
    emptyOutDir: true,
    minify: false,
    rolldownOptions: {
      input: ['main', 'identify-worker', 'fit-worker'].map(source),
      output: { entryFileNames: '[name].js', chunkFileNames: '[name]-[hash].js' },
    },
  },
});
