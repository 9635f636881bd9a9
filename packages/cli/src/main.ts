// The entry: runs the command line and turns every end into an exit code.

import { CommanderError } from 'commander';
import { Ending } from './ending.ts';
import { program } from './program.ts';

/** Runs `shellraise` with the words after the program's name; sets the process's exit code. */
export async function main(words: readonly string[]): Promise<void> {
  // Files are written in one go, between interrupts: all are there, or none.
  process.once('SIGINT', () => {
    console.error(`${process.stderr.isTTY ? '\n' : ''}Interrupted; nothing was written.`);
    process.exit(130);
  });
  // A reader that closes early (`shellraise … | head`) has what it wanted.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
  try {
    if (words[0] === 'complete') await complete(words);
    else await program().parseAsync([...words], { from: 'user' });
  } catch (error) {
    process.exitCode = end(error);
  }
}

async function complete(words: readonly string[]): Promise<void> {
  const { withCompletion } = await import('./completion.ts');
  await withCompletion(program()).parseAsync([...words], { from: 'user' });
}

function end(error: unknown): number {
  if (error instanceof Ending) {
    for (const line of error.lines) console.error(line);
    return error.exit;
  }
  // Help and version end by this way too; commander has printed what there is to say.
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
  console.error(
    'This is a fault of ours, not of your file. Please report it with the lines below.',
  );
  console.error(error instanceof Error ? (error.stack ?? error.message) : String(error));
  return 3;
}
