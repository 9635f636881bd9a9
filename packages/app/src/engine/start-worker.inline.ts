// The engine's worker out of the page's own text: a page without a server can load no other file.

import EngineWorker from './engine-worker.ts?worker&inline';

/** Starts a worker. */
export const startWorker = (): Worker => new EngineWorker();

/** Names the engine's build: the file's, by when it was written. */
export const engineBuild: string = document.lastModified;
