// What the server offers to tests and scripts.

export { type ListenOptions, lanAddresses, listen, USUAL_PORT } from './listen.ts';
export { createServer } from './server.ts';
