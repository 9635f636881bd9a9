// The fitting of a stock in a thread of its own, so that the bar moves and an interrupt is heard.

import { parentPort, workerData } from 'node:worker_threads';
import { fitStock, type HighsRuntime, highsSolver } from '@shellraise/core';
import highsLoader from 'highs';
import type { FitQuestion } from './fitting.ts';

const port = parentPort;
if (port === null) throw new Error('fit-worker runs as a worker only');

// The package declares its types as CommonJS, so its default export looks like a namespace here.
const load = highsLoader as unknown as () => Promise<HighsRuntime>;
const { shell, kinds, wishes, interchangeable, groups, seconds } = workerData as FitQuestion;
const answer = fitStock(shell, kinds, wishes, highsSolver(await load()), {
  interchangeable,
  groups,
  seconds,
  now: () => performance.now() / 1000,
  onProgress: (progress) => port.postMessage({ progress }),
});
port.postMessage({ answer });
