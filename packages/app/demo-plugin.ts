// The demo project, read and checked by core when the app is built, as the module `virtual:demo`:
// the page then opens on it without a parser.

import { readFileSync } from 'node:fs';
import { describeFault, readProject } from '@shellraise/core';
import type { Plugin } from 'vite';

const file = new URL('../../examples/demo/project.json', import.meta.url);

/** Serves `virtual:demo`: a function that gives the demo project. */
export const demoPlugin = (): Plugin => ({
  name: 'shellraise-demo',
  resolveId: (id) => (id === 'virtual:demo' ? '\0demo' : null),
  load: (id) => {
    if (id !== '\0demo') return null;
    const read = readProject(readFileSync(file, 'utf8'));
    if (!read.ok) throw new Error(read.faults.map(describeFault).join('\n'));
    const text = JSON.stringify(JSON.stringify(read.value));
    return `export const demoProject = () => JSON.parse(${text});`;
  },
});
