// The server: hands out the built app, file by file, and, where it was given a folder to keep them in,
// shares a project and its record between devices.

import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import fastifyStatic from '@fastify/static';
import fastify, { type FastifyInstance } from 'fastify';
import { everywhere, keeping } from './headers.ts';
import { codesOf } from './sync/codes.ts';
import type { OnFault } from './sync/room.ts';
import { syncRoutes } from './sync/routes.ts';
import { openSite, type Site, type Where } from './sync/site.ts';
import type { CodeRow } from './sync/storage.ts';

declare module 'fastify' {
  interface FastifyInstance {
    /** The living join codes; absent where nothing is shared. */
    joinCodes?: () => Promise<readonly CodeRow[]>;
    /** The port at which the same is served over https; null where it is not. */
    httpsAt: { port: number | null };
  }
}

/** What is served. */
export interface ServerOptions {
  /** The folder of the built app. */
  readonly root: string;
  /** Where project and record are kept: a folder, or a database's address; without it nothing is shared.
   * It is opened when somebody first asks for it. */
  readonly data?: string | Where;
  /** Names besides this computer's own by which people reach it, as that of a balancer. */
  readonly names?: readonly string[];
  /** Addresses of balancers, whose word on who asks is taken. */
  readonly proxies?: readonly string[];
  /** Told of faults of ours, as a full disk. */
  readonly onFault?: OnFault;
}

/** The app's folder has no page in it. */
export class NotBuilt extends Error {
  constructor(readonly root: string) {
    super(`${root} holds no built app`);
  }
}

/** A server of the built app, not listening yet. Throws `NotBuilt` where the folder has no
 * `index.html`. */
export function createServer(options: ServerOptions): FastifyInstance {
  const { root, data, proxies = [] } = options;
  if (!existsSync(join(root, 'index.html'))) throw new NotBuilt(root);
  const server = fastify({
    forceCloseConnections: true,
    ...(proxies.length > 0 && { trustProxy: [...proxies] }),
  });
  server.decorate('httpsAt', { port: null });
  server.addHook('onRequest', async (_request, reply) => {
    reply.headers(everywhere);
  });
  server.register(fastifyStatic, {
    root,
    cacheControl: false,
    dotfiles: 'ignore',
    index: 'index.html',
    setHeaders: (reply, path) => {
      reply.header('cache-control', keeping(relative(root, path)));
    },
  });
  if (data !== undefined)
    share(server, typeof data === 'string' ? { folder: data } : data, options);
  server.setNotFoundHandler(async (_request, reply) => {
    reply.code(404).type('text/plain; charset=utf-8').header('cache-control', 'no-store');
    return 'There is no such file. The app is at /\n';
  });
  server.setErrorHandler(async (error, _request, reply) => {
    const { statusCode } = error as { readonly statusCode?: number };
    const code = statusCode !== undefined && statusCode >= 400 ? statusCode : 500;
    reply.code(code).type('text/plain; charset=utf-8').header('cache-control', 'no-store');
    return code < 500 ? 'That address cannot be read.\n' : 'A fault of the server.\n';
  });
  return server;
}

function share(
  server: FastifyInstance,
  where: Where,
  { names = [], onFault = () => undefined }: ServerOptions,
): void {
  let opening: Promise<Site> | null = null;
  let cut = (): void => undefined;
  const site = (): Promise<Site> => {
    opening ??= openSite(where, onFault, () => cut()).catch((error: unknown) => {
      opening = null;
      onFault(error);
      throw error;
    });
    return opening;
  };
  const onCodes = (does: () => void): void => {
    cut = does;
  };
  server.decorate('joinCodes', async () => codesOf((await site()).storage, Date.now()));
  server.register(syncRoutes, { site, onCodes, names });
  server.addHook('onClose', async () => (await opening?.catch(() => null))?.close());
}
