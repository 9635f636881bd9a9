// What the command line loads before it knows what is asked: help and completion come at once, and an
// interrupt is heard from the start.

import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { openingRanks } from '@shellraise/core';
import { expect, it } from 'vitest';
import { rankNames } from '../src/options.ts';
import { root } from './run.ts';

const IMPORT = /^(?:import|export) (?!type )(?:[^;]*? from )?'([^']+)';/gms;

/** Every module that is loaded with one, types aside: files by path, packages by name. */
function loadedWith(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen;
  seen.add(file);
  for (const [, name] of readFileSync(file, 'utf8').matchAll(IMPORT)) {
    if (!name?.startsWith('.')) seen.add(name as string);
    else loadedWith(join(dirname(file), name), seen);
  }
  return seen;
}

it('loads the engine with a command, not before', () => {
  const src = join(root, 'packages/cli/src');
  const loaded = loadedWith(join(src, 'main.ts'));
  expect(loaded).toContain('commander');
  expect(loaded).toContain(join(src, 'program.ts'));
  expect([...loaded].filter((name) => name.startsWith('@shellraise'))).toEqual([]);
  // A command does load it, so that the walk above is known to see it.
  expect(loadedWith(join(src, 'commands/shape.ts'))).toContain('@shellraise/core');
});

it('ranks openings by all that core ranks them by', () => {
  expect(rankNames).toEqual([...openingRanks]);
});
