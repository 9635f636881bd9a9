// The server: hands out the built app, file by file, and nothing else. It changes nothing and
// keeps nothing; every project stays in the browser.

import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import fastifyStatic from '@fastify/static';
import fastify, { type FastifyInstance } from 'fastify';
import { everywhere, keeping } from './headers.ts';

/** What is served. */
export interface ServerOptions {
  /** The folder of the built app. */
  readonly root: string;
}

/** The app's folder has no page in it. */
export class NotBuilt extends Error {
  constructor(readonly root: string) {
    super(`${root} holds no built app`);
  }
}

/** A server of the built app, not listening yet. Throws `NotBuilt` where the folder has no
 * `index.html`. */
export function createServer({ root }: ServerOptions): FastifyInstance {
  if (!existsSync(join(root, 'index.html'))) throw new NotBuilt(root);
  const server = fastify({ forceCloseConnections: true });
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
  server.setNotFoundHandler(async (_request, reply) => {
    reply.code(404).type('text/plain; charset=utf-8').header('cache-control', 'no-store');
    return 'There is no such file. The app is at /\n';
  });
  server.setErrorHandler(async (error, _request, reply) => {
    const { statusCode } = error as { readonly statusCode?: number };
    const code = statusCode !== undefined && statusCode >= 400 ? statusCode : 500;
    reply.code(code).type('text/plain; charset=utf-8').header('cache-control', 'no-store');
    return code < 500 ? 'That address can not be read.\n' : 'A fault of the server.\n';
  });
  return server;
}
