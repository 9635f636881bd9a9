// Where the server listens: this computer alone, or all its networks; the port asked for, or the
// first free one from the usual port on.

import { networkInterfaces } from 'node:os';
import type { FastifyInstance } from 'fastify';

/** The port tried first. */
export const USUAL_PORT = 4180;
/** Ports tried in turn where none was asked for. */
const TRIED = 20;

/** Where to listen. */
export interface ListenOptions {
  /** True for all networks of this computer; else this computer alone. */
  readonly lan: boolean;
  /** The port, or null for the first free one. */
  readonly port: number | null;
}

/** Listens; returns the port. Throws what the system says where it can't. */
export async function listen(
  server: FastifyInstance,
  { lan, port }: ListenOptions,
): Promise<number> {
  const host = lan ? '0.0.0.0' : '127.0.0.1';
  const ports = port === null ? [...Array(TRIED).keys()].map((i) => USUAL_PORT + i) : [port];
  for (const tried of ports) {
    try {
      const address = await server.listen({ host, port: tried });
      return Number(new URL(address).port || tried);
    } catch (error) {
      const taken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
      if (!taken || tried === ports.at(-1)) throw error;
    }
  }
  throw new Error('no port was tried');
}

/** Addresses of this computer in its networks (IPv4), for phones nearby. */
export function lanAddresses(): string[] {
  return Object.values(networkInterfaces()).flatMap((list) =>
    (list ?? []).filter((one) => one.family === 'IPv4' && !one.internal).map((one) => one.address),
  );
}
