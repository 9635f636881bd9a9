// Finds a port to listen on: the one that was asked for, or the usual one and those after it.

import type { AddressInfo } from 'node:net';
import type { FastifyInstance } from 'fastify';
import type { Root } from './https/root.ts';
import type { Secure } from './https/secure.ts';
import { createServer, type ServerOptions } from './server.ts';

/** The port that is tried first where none was asked for. */
export const USUAL_PORT = 4180;
/** The port that is tried first for https. */
const USUAL_HTTPS_PORT = 4443;
/** How many ports are tried, the usual one with them. */
const TRIES = 20;

/** Where to listen. */
export interface ListenOptions extends ServerOptions {
  /** `127.0.0.1` for this computer alone, `0.0.0.0` for every network it is on. */
  readonly host: string;
  /** The only port to try, 0 for any free one; null for the usual one or the next free. */
  readonly port: number | null;
  /** Serve over https as well, by this root, on this port, or null for the usual one or the next free. */
  readonly https?: { readonly root: Root; readonly port: number | null };
}

/** A server that listens. */
export interface Listening {
  readonly server: FastifyInstance;
  readonly port: number;
  /** Absent without https. */
  readonly https?: Secure & { readonly port: number };
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
export async function listen({ host, port, https, ...served }: ListenOptions): Promise<Listening> {
  const opened = await firstFree(port, USUAL_PORT, async (next) => {
    const server = createServer(served);
    try {
      const safe = https && (await (await import('./https/secure.ts')).secure(server, https.root));
      await server.listen({ host, port: next });
      return { server, safe, port: (server.server.address() as AddressInfo).port };
    } catch (error) {
      await server.close();
      throw error;
    }
  });
  const { server, safe } = opened;
  if (!https || !safe) return { server, port: opened.port };
  try {
    const own = await firstFree(https.port, USUAL_HTTPS_PORT, (next) => safe.listen(host, next));
    server.httpsAt.port = own;
    return { server, port: opened.port, https: { ...safe, port: own } };
  } catch (error) {
    await server.close();
    throw error;
  }
}

/** The first port that can be had: the asked one alone, or the usual one and those after it. */
async function firstFree<T>(
  asked: number | null,
  usual: number,
  open: (port: number) => Promise<T>,
): Promise<T> {
  const first = asked ?? usual;
  const last = asked === null ? first + TRIES - 1 : first;
  let code = '';
  for (let next = first; next <= last; next++) {
    try {
      return await open(next);
    } catch (error) {
      code = (error as NodeJS.ErrnoException).code ?? '';
      if (code !== 'EADDRINUSE' && code !== 'EACCES') throw error;
    }
  }
  throw new PortTaken(first, last, code);
}
