// The identification in a thread of its own, so that the bar moves and an interrupt is heard.

import { parentPort, workerData } from 'node:worker_threads';
import { type IdentifyProgress, identify, type ShapeQuestion } from '@shellraise/core';

const port = parentPort;
if (port === null) throw new Error('identify-worker runs as a worker only');

const answer = identify(workerData as ShapeQuestion, {
  onProgress: (progress: IdentifyProgress) => port.postMessage({ progress }),
});
port.postMessage({ answer });
