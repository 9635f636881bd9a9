// `shellraise serve`: the server that `npm start` runs.

import { main } from '@shellraise/server';
import type { ServeOptions } from '../options.ts';

/** Runs the command until it is interrupted. */
export async function serve({ port, data, lan, codes, open }: ServeOptions): Promise<void> {
  // The server ends by itself when it is interrupted.
  process.removeAllListeners('SIGINT');
  await main([
    ...(port === undefined ? [] : [`--port=${port}`]),
    ...(data === undefined ? [] : [`--data=${data}`]),
    ...(lan ? ['--lan'] : []),
    ...(codes ? ['--codes'] : []),
    ...(open ? [] : ['--no-open']),
  ]);
}
