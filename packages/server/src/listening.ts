// Finds a port to listen on: the one that was asked for, or the usual one and those after it.

import type { AddressInfo } from 'node:net';
import type { FastifyInstance } from 'fastify';
import { createServer, type ServerOptions } from './server.ts';

/** The port that is tried first where none was asked for. */
export const USUAL_PORT = 4180;
/** How many ports are tried, the usual one with them. */
const TRIES = 20;

/** Where to listen. */
export interface ListenOptions extends ServerOptions {
  /** `127.0.0.1` for this computer alone, `0.0.0.0` for every network it is on. */
  readonly host: string;
  /** The only port to try, 0 for any free one; null for the usual one or the next free. */
  readonly port: number | null;
}

/** A server that listens. */
export interface Listening {
  readonly server: FastifyInstance;
  readonly port: number;
}

/** No port could be had. */
export class PortTaken extends Error {
  constructor(
    readonly first: number,
    readonly last: number,
    /** The system's own word, `EADDRINUSE` or `EACCES`. */
    readonly code: string,
  ) {
    super(`port ${first}: ${code}`);
  }
}

/** Listens. Throws `PortTaken` where no port could be had, `NotBuilt` where there is no app. */
export async function listen({ host, port, ...served }: ListenOptions): Promise<Listening> {
  const first = port ?? USUAL_PORT;
  const last = port === null ? first + TRIES - 1 : first;
  let code = '';
  for (let next = first; next <= last; next++) {
    const server = createServer(served);
    try {
      await server.listen({ host, port: next });
      return { server, port: (server.server.address() as AddressInfo).port };
    } catch (error) {
      await server.close();
      code = (error as NodeJS.ErrnoException).code ?? '';
      if (code !== 'EADDRINUSE' && code !== 'EACCES') throw error;
    }
  }
  throw new PortTaken(first, last, code);
}
