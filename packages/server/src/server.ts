// Serves the built app: its files, with the headers that a page needs to work offline and that keep
// foreign code out. It knows nothing of projects; these stay in the browser.

import { existsSync } from 'node:fs';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import fastify, { type FastifyInstance, type FastifyReply } from 'fastify';

/** What the page may load: its own files, pictures that it draws, its own workers. Styles may stand
 * in the page, because drawings set widths and places by them. No encryption is asked for: phones
 * nearby come over plain http. */
const POLICY = [
  "default-src 'self'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "worker-src 'self' blob:",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
].join('; ');

/** Files whose names change with what is in them. */
const HASHED = /[\\/]assets[\\/]/;

/** A server for the files in a folder, not yet listening. Throws where the folder has no page. */
export async function createServer(folder: string): Promise<FastifyInstance> {
  if (!existsSync(join(folder, 'index.html')))
    throw new Error(`the app is not built: ${join(folder, 'index.html')} is missing`);
  const server = fastify({ logger: false, forceCloseConnections: true });
  server.addHook('onSend', async (_request, reply) => {
    reply.header('Content-Security-Policy', POLICY);
    reply.header('X-Content-Type-Options', 'nosniff');
    reply.header('Referrer-Policy', 'no-referrer');
  });
  await server.register(fastifyStatic, {
    root: folder,
    cacheControl: false,
    setHeaders: (reply, path) => {
      const lasting = HASHED.test(path);
      reply.header('Cache-Control', lasting ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
  server.setNotFoundHandler(notFound);
  return server;
}

async function notFound(_request: unknown, reply: FastifyReply): Promise<FastifyReply> {
  return reply.code(404).type('text/plain; charset=utf-8').send('There is no such file here.\n');
}
