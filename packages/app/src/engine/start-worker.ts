// The engine's worker as a file of its own.

import address from './engine-worker.ts?worker&url';

/** Starts a worker. */
export const startWorker = (): Worker => new Worker(address, { type: 'module' });

/** Names the engine's build: the address says what is in it. */
export const engineBuild: string = address;
