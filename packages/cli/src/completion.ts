// Completion for bash, zsh and fish: `shellraise complete bash` prints the script to source.

import tab from '@bomb.sh/tab/commander';
import type { Command } from 'commander';

/** The program with its `complete` command filled in. */
export function withCompletion(program: Command): Command {
  const root = tab(program);
  for (const name of [
    'pile',
    'shape',
    'places',
    'takeoff',
    'ground',
    'raise',
    'dossier',
    'papers',
    'patterns',
    'fitout',
  ]) {
    const file = root.commands.get(name)?.arguments.get('FILE');
    // No suggestion of ours: the shell then completes file names.
    if (file) file.handler = () => {};
  }
  return program;
}
