// What others may use of the server.

export { type Listening, type ListenOptions, listen, PortTaken, USUAL_PORT } from './listening.ts';
export { main } from './main.ts';
export { createServer, NotBuilt, type ServerOptions } from './server.ts';
