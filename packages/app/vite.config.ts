// The app's bundle: hashed assets, workers as modules, the demo read at build time.

import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { demoPlugin } from './demo-plugin.ts';
import { offlinePlugin } from './offline-plugin.ts';

export default defineConfig({
  root: import.meta.dirname,
  plugins: [react(), demoPlugin(), offlinePlugin()],
  worker: { format: 'es' },
  build: { target: 'es2022', outDir: 'dist', emptyOutDir: true, assetsInlineLimit: 0 },
});
