// A progress bar on standard error, for work that takes over a second, where that is a terminal.

import type { SingleBar } from 'cli-progress';

const patience = 1000;

/** A bar that may never be seen. */
export interface Progress {
  /** `done` from 0 to 1, and what is being done. */
  update(done: number, step: string): void;
  stop(): void;
}

/** Starts the clock. Nothing is drawn in the first second, or where standard error is no terminal. */
export function startProgress(): Progress {
  const began = performance.now();
  let bar: SingleBar | null = null;
  let opening = false;
  let stopped = false;
  const open = async () => {
    opening = true;
    const { default: cliProgress } = await import('cli-progress');
    if (stopped) return;
    bar = new cliProgress.SingleBar({
      format: '{bar} {percentage} %  {step}',
      barCompleteChar: '█',
      barIncompleteChar: '░',
      barsize: 30,
      clearOnComplete: true,
      // Neither is undone by an interrupt, so neither is touched.
      hideCursor: false,
      linewrap: true,
      stream: process.stderr,
    });
    bar.start(100, 0, { step: '' });
  };
  return {
    update(done, step) {
      if (process.stderr.isTTY !== true || performance.now() - began < patience) return;
      if (bar) bar.update(Math.floor(Math.min(1, Math.max(0, done)) * 100), { step });
      else if (!opening) void open();
    },
    stop() {
      stopped = true;
      bar?.stop();
    },
  };
}
